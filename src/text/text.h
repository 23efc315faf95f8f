/* SPDX-License-Identifier: MIT */
/* Texts that grow as they are written. A letter is never cut in two, and nothing is lost because a
 * buffer is too small. If there is no memory, the whole text fails, and text_take shows it. */
#ifndef SILLET_TEXT_H
#define SILLET_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A text that is being written. It starts as {0}. */
typedef struct text {
    char *bytes; /* NUL-terminated once anything was added */
    size_t length, room;
    bool failed; /* there was no memory: anything added later is ignored */
} text;

__attribute__((format(printf, 2, 3))) void text_add(text *t, const char *format, ...);
__attribute__((format(printf, 2, 0))) void text_add_list(text *t, const char *format,
                                                         va_list arguments);
void text_put(text *t, const char *words);
void text_put_bytes(text *t, const char *bytes, size_t size);

/* text_put_number: adds a whole number, at least 0, as of a string or a fret. */
void text_put_number(text *t, int number);

/* text_space: adds a number of spaces. */
void text_space(text *t, int count);

/* text_left, text_right: add words in a number of columns, aligned left or right, one letter to a
 * column. Words that are too long are cut after a whole letter by text_left; text_right lets them
 * take more columns. */
void text_left(text *t, int columns, const char *words);
void text_right(text *t, int columns, const char *words);

/* text_wrap: adds words in lines of at most a number of columns. The first line continues the
 * present one, the others are indented, and the last one is ended. */
void text_wrap(text *t, const char *words, int indent, int columns);

/* text_may_break: whether a line may end at a space of words: not between a figure and its unit, nor
 * between a string's number and its figure, "6: 0.15". */
bool text_may_break(const char *words, const char *space);

/* text_read: what was written so far; "" if nothing was, or if there was no memory. */
const char *text_read(const text *t);

/* text_take: the text, to be freed by the caller; NULL if there was no memory. After that the text
 * is empty again. */
char *text_take(text *t, size_t *size);
void text_free(text *t);

/* text_letters: how many letters a text of a given size has; each takes one column. */
int text_letters(const char *words, size_t size);

/* text_prefix: how many bytes of a text fit within a limit without cutting a letter. */
size_t text_prefix(const char *words, size_t limit);

/* text_next: reads one letter and moves on past it; U+FFFD if it is not valid, 0 at the end.
 * text_letter: writes one letter and returns its length in bytes, 1 to 4. */
uint32_t text_next(const char **words);
int text_letter(uint32_t code, char *out);

/* Texts that are kept together and freed together. */
typedef struct text_block text_block;
typedef struct text_store {
    text_block *newest;
    size_t used; /* of the newest */
    bool failed;
} text_store;

/* text_store_room: memory of a given size, aligned for any type; NULL if there is none.
 * text_keep: keeps a formatted text; returns "" if there is no memory.
 * text_keep_bytes: keeps a copy with a NUL at its end; returns "" if there is no memory. */
void *text_store_room(text_store *store, size_t size);
__attribute__((format(printf, 2, 3))) const char *text_keep(text_store *store, const char *format,
                                                            ...);
__attribute__((format(printf, 2, 0))) const char *
text_keep_list(text_store *store, const char *format, va_list arguments);
const char *text_keep_bytes(text_store *store, const char *bytes, size_t size);

/* text_keep_capital: keeps a copy of words, with a capital where they begin with a small letter. */
const char *text_keep_capital(text_store *store, const char *words);

/* text_keep_made: keeps a text that was being written, and frees it. If the text had failed, the
 * store fails too. */
const char *text_keep_made(text_store *store, text *made);
void text_store_free(text_store *store);

#endif
