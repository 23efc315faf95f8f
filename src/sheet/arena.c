/* SPDX-License-Identifier: MIT */
#include "arena.h"

#include <stdlib.h>
#include <string.h>

enum { CHUNK = 32 * 1024 };

struct sheet_chunk {
    sheet_chunk *older;
    size_t size;
    max_align_t start[];
};

static bool grow(sheet_arena *arena, size_t size)
{
    size_t room = size > CHUNK ? size : CHUNK;
    sheet_chunk *chunk = calloc(1, sizeof *chunk + room);
    if (!chunk) {
        arena->failed = true;
        return false;
    }
    chunk->older = arena->newest;
    chunk->size = room;
    arena->newest = chunk;
    arena->used = 0;
    return true;
}

void *sheet_arena_take(sheet_arena *arena, size_t size)
{
    const size_t step = sizeof(max_align_t);
    size = (size + step - 1) / step * step;
    if ((!arena->newest || arena->newest->size - arena->used < size) && !grow(arena, size)) {
        return NULL;
    }
    void *taken = (char *)arena->newest->start + arena->used;
    arena->used += size;
    return taken;
}

char *sheet_arena_text(sheet_arena *arena, const char *text, size_t length)
{
    char *copy = sheet_arena_take(arena, length + 1);
    if (copy) {
        memcpy(copy, text, length);
    }
    return copy;
}

void sheet_arena_free(sheet_arena *arena)
{
    while (arena->newest) {
        sheet_chunk *older = arena->newest->older;
        free(arena->newest);
        arena->newest = older;
    }
}
