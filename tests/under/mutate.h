/* SPDX-License-Identifier: MIT */
/* Text with mistakes in it, as a hand or a disk makes them. */
#ifndef MUTATE_H
#define MUTATE_H

#include <stddef.h>
#include <stdint.h>

/* A file's bytes, with a NUL behind them. */
typedef struct content {
    char *bytes;
    size_t size;
} content;

/* The same state gives the same numbers on every machine; it must not be 0. */
uint32_t any_below(uint64_t *state, size_t limit);

/* The text with one mistake more. It must have been allocated, and may move. */
void mutate(uint64_t *state, content *text);

/* Puts `with` in the place of `length` bytes; ends the program where there is no memory. */
void put_in_place(content *text, size_t at, size_t length, const char *with, size_t size);

#endif
