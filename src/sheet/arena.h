/* SPDX-License-Identifier: MIT */
/* Memory that is given back all at once. */
#ifndef SILLET_SHEET_ARENA_H
#define SILLET_SHEET_ARENA_H

#include <stdbool.h>
#include <stddef.h>

typedef struct sil_chunk sil_chunk;

typedef struct sil_arena {
    sil_chunk *newest;
    size_t used; /* of the newest */
    bool failed; /* the system gave no more memory */
} sil_arena;

/* sil_arena_take: size zeroed bytes, aligned for anything; NULL (and failed) without memory. */
void *sil_arena_take(sil_arena *arena, size_t size);

/* sil_arena_text: a NUL-terminated copy of length bytes; NULL without memory. */
char *sil_arena_text(sil_arena *arena, const char *text, size_t length);

void sil_arena_free(sil_arena *arena);

#endif
