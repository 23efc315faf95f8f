/* SPDX-License-Identifier: MIT */
/* Texts that grow as they are written. Nothing is ever cut in the middle of a letter, and nothing
 * is lost for want of room: without memory a text fails as a whole, and says so at its end. */
#ifndef SILLET_TEXT_H
#define SILLET_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A text in the making; begin with {0}. */
typedef struct text {
    char *bytes; /* NUL-terminated once anything was added */
    size_t length, room;
    bool failed; /* no memory: everything added later is passed over */
} text;

__attribute__((format(printf, 2, 3))) void text_add(text *t, const char *format, ...);
__attribute__((format(printf, 2, 0))) void text_add_list(text *t, const char *format,
                                                         va_list arguments);
void text_put(text *t, const char *words);
void text_put_bytes(text *t, const char *bytes, size_t size);

/* text_space: so many spaces. */
void text_space(text *t, int count);

/* text_left, text_right: words in so many columns, a letter each, at their left or right end. Words
 * too long are cut behind a whole letter by text_left and stand out of text_right. */
void text_left(text *t, int columns, const char *words);
void text_right(text *t, int columns, const char *words);

/* text_wrap: words in lines of at most so many columns, the first at the column already reached,
 * the others behind an indent; ends the last line. */
void text_wrap(text *t, const char *words, int indent, int columns);

/* text_read: what was written so far; "" for nothing, and where memory ran out. */
const char *text_read(const text *t);

/* text_take: the text, to be freed by whoever takes it; NULL where memory ran out. The text is
 * empty again. */
char *text_take(text *t, size_t *size);
void text_free(text *t);

/* text_letters: how many letters a text of so many bytes has; a column each. */
int text_letters(const char *words, size_t size);

/* text_prefix: the most bytes of a text, up to a limit, that do not end inside a letter. */
size_t text_prefix(const char *words, size_t limit);

/* text_next: takes one letter off a text; U+FFFD for a broken one, 0 at the end.
 * text_letter: writes one letter, returns its length in bytes, 1 to 4. */
uint32_t text_next(const char **words);
int text_letter(uint32_t code, char *out);

/* Texts kept together and freed together. */
typedef struct text_block text_block;
typedef struct text_store {
    text_block *newest;
    size_t used; /* of the newest */
    bool failed;
} text_store;

/* text_store_room: so many bytes, aligned for anything; NULL without memory.
 * text_keep: a formatted text. text_keep_bytes: a copy, NUL-terminated. "" without memory. */
void *text_store_room(text_store *store, size_t size);
__attribute__((format(printf, 2, 3))) const char *text_keep(text_store *store, const char *format,
                                                            ...);
__attribute__((format(printf, 2, 0))) const char *
text_keep_list(text_store *store, const char *format, va_list arguments);
const char *text_keep_bytes(text_store *store, const char *bytes, size_t size);

/* text_keep_made: a text in the making, kept and freed; the store fails with it. */
const char *text_keep_made(text_store *store, text *made);
void text_store_free(text_store *store);

#endif
