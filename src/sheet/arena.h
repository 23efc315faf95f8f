/* SPDX-License-Identifier: MIT */
/* Memory that is given back all at once. */
#ifndef SILLET_SHEET_ARENA_H
#define SILLET_SHEET_ARENA_H

#include <stdbool.h>
#include <stddef.h>

typedef struct sheet_chunk sheet_chunk;

typedef struct sheet_arena {
    sheet_chunk *newest;
    size_t used; /* of the newest */
    bool failed; /* the system gave no more memory */
} sheet_arena;

/* sheet_arena_take: size zeroed bytes, aligned for anything; NULL (and failed) without memory. */
void *sheet_arena_take(sheet_arena *arena, size_t size);

/* sheet_arena_text: a NUL-terminated copy of length bytes; NULL without memory. */
char *sheet_arena_text(sheet_arena *arena, const char *text, size_t length);

void sheet_arena_free(sheet_arena *arena);

#endif
