/* SPDX-License-Identifier: MIT */
/* Keeps bodies, and counts what all of them hold together. */
#include "body.h"

#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

/* Bytes of a body that is not kept. */
enum { DROPPED_MAX = 4 * WEB_BODY_MAX };

enum { KIB = 1024, MIB = 1024 * KIB };

/* Up to `small` bytes are always let in: a sheet of many visits has fewer than 16 KiB, the plan of
 * twelve strings fewer than 64. A connection holds either its body or its answer, so that 500
 * small ones come to 32 MiB, and with the large ones and all else the server stays under 64. */
static const struct {
    size_t small, large_max;
} limits[HELD_KINDS] = {
    [HELD_BODY] = {(size_t)16 * KIB, (size_t)8 * MIB},
    [HELD_ANSWER] = {(size_t)64 * KIB, (size_t)8 * MIB},
};

static atomic_size_t large[HELD_KINDS];

/* What counts of a size: nothing while it is small. */
static size_t counted(held_kind kind, size_t size)
{
    return size > limits[kind].small ? size : 0;
}

bool held_more(held_kind kind, size_t from, size_t to)
{
    size_t more = counted(kind, to) - counted(kind, from);
    size_t before = atomic_fetch_add(&large[kind], more);
    if (more > 0 && before + more > limits[kind].large_max) {
        atomic_fetch_sub(&large[kind], more);
        return false;
    }
    return true;
}

void held_less(held_kind kind, size_t from, size_t to)
{
    atomic_fetch_sub(&large[kind], counted(kind, from) - counted(kind, to));
}

/* Makes room for so many bytes; false if there is none. */
static bool make_room(body *b, size_t size)
{
    size_t room = 2 * size > WEB_BODY_MAX ? WEB_BODY_MAX : 2 * size;
    if (size <= b->room) {
        return true;
    }
    if (!held_more(HELD_BODY, b->room, room)) {
        return false;
    }
    char *bytes = realloc(b->bytes, room);
    if (!bytes) {
        held_less(HELD_BODY, room, b->room);
        return false;
    }
    b->bytes = bytes;
    b->room = room;
    return true;
}

bool body_take(body *b, const char *bytes, size_t size)
{
    b->over = b->over || size > WEB_BODY_MAX - b->size;
    b->crowded = b->crowded || (!b->over && !make_room(b, b->size + size));
    if (b->over || b->crowded) {
        body_free(b);
        b->dropped += size;
        return b->dropped <= DROPPED_MAX;
    }
    memcpy(b->bytes + b->size, bytes, size);
    b->size += size;
    return true;
}

void body_free(body *b)
{
    held_less(HELD_BODY, b->room, 0);
    free(b->bytes);
    b->bytes = NULL;
    b->size = b->room = 0;
}
