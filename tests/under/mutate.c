/* SPDX-License-Identifier: MIT */
#include "mutate.h"

#include <ctype.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

/* A stretch of the text. */
typedef struct span {
    size_t at, length;
} span;

static const char *const FIGURES[] = {"0",       "-1",    "0.0001",  "9999",      "1e308", ".nan",
                                      "-.inf",   "1/0",   "5/64 in", "12 thou",   "7 deg", "2,5",
                                      "0.8 GPa", "70 %",  "6 N",     "1e-320",    "3 m",   "17 C",
                                      "0x10",    "1 2 3", "- 4",     "5 g/m",     "½ in",  "2e1",
                                      "1:30",    "+3",    "007",     "4294967297"};
static const char *const VALUES[] = {"",
                                     "~",
                                     "yes",
                                     "no",
                                     "[]",
                                     "{}",
                                     "[1, 2, 3]",
                                     "[[[[]]]]",
                                     "\"\"",
                                     "'",
                                     "{",
                                     "]",
                                     "any",
                                     "open",
                                     "*one",
                                     "&one 1",
                                     "!!str 1",
                                     "|",
                                     "works",
                                     "steel",
                                     "flat",
                                     "none",
                                     "<<",
                                     "? x",
                                     "{treble: 1, bass: 2}",
                                     "{low: 3, aim: 2, high: 1}",
                                     "[1, , 2]",
                                     "no such word at all",
                                     "../../shop.yaml",
                                     "mandolin",
                                     "new\\nline",
                                     "{a: {b: {c: {d: {e: {f: 1}}}}}}"};
static const char *const BYTES[] = {"\0",
                                    "\t",
                                    "\r",
                                    "\n",
                                    "\r\n",
                                    ":",
                                    "{",
                                    "}",
                                    "[",
                                    "]",
                                    ",",
                                    "#",
                                    "&",
                                    "*",
                                    "!",
                                    "|",
                                    ">",
                                    "'",
                                    "\"",
                                    "%",
                                    "@",
                                    "`",
                                    "-",
                                    "?",
                                    " ",
                                    "\\",
                                    "\xff",
                                    "\xc3",
                                    "\xe2\x80\xa8",
                                    "\x7f",
                                    "---\n",
                                    "...\n",
                                    "\xef\xbb\xbf",
                                    "\xc2\x85",
                                    "\xf0\x9f\x8e\xb8"};

#define COUNT(list) (sizeof(list) / sizeof *(list))

uint32_t any_below(uint64_t *state, size_t limit)
{
    *state ^= *state << 13; /* xorshift: Marsaglia 2003 */
    *state ^= *state >> 7;
    *state ^= *state << 17;
    return (uint32_t)((*state >> 32) % (limit > 0 ? limit : 1));
}

void put_in_place(content *text, size_t at, size_t length, const char *with, size_t size)
{
    char *bytes = malloc(text->size - length + size + 1);
    if (!bytes) {
        abort();
    }
    memcpy(bytes, text->bytes, at);
    memcpy(bytes + at, with, size);
    memcpy(bytes + at + size, text->bytes + at + length, text->size - at - length);
    text->size = text->size - length + size;
    bytes[text->size] = '\0';
    free(text->bytes);
    text->bytes = bytes;
}

static bool in_word(char c)
{
    return isalnum((unsigned char)c) || c == '_' || c == '-';
}

static bool in_figure(char c)
{
    return isdigit((unsigned char)c) || c == '.';
}

/* The next word, or figure, at or behind a place anywhere in the text; around its end once. */
static span next(uint64_t *state, const content *text, bool figure, bool key)
{
    size_t from = any_below(state, text->size);
    for (size_t step = 0; step < text->size; step++) {
        size_t at = (from + step) % text->size, end = at;
        const char *b = text->bytes;
        bool begins = (at == 0 || !(in_word(b[at - 1]) || b[at - 1] == '.')) && b[at] != '-';
        while (end < text->size && (figure ? in_figure(b[end]) : in_word(b[end]))) {
            end++;
        }
        if (begins && end > at && (!key || b[end] == ':')) {
            return (span){at, end - at};
        }
    }
    return (span){0, 0};
}

static span line_at(const content *text, size_t at)
{
    size_t from = at, to = at;
    while (from > 0 && text->bytes[from - 1] != '\n') {
        from--;
    }
    while (to < text->size && text->bytes[to++] != '\n') {
    }
    return (span){from, to - from};
}

static void change_figure(uint64_t *state, content *text)
{
    span s = next(state, text, true, false);
    uint32_t way = any_below(state, 4);
    if (way == 0) { /* ten times as much, or a digit more */
        put_in_place(text, s.at + s.length, 0, "0", 1);
    } else if (way == 1) {
        put_in_place(text, s.at, 0, "0.", 2);
    } else {
        const char *with = FIGURES[any_below(state, COUNT(FIGURES))];
        put_in_place(text, s.at, s.length, with, strlen(with));
    }
}

static void change_value(uint64_t *state, content *text)
{
    span s = next(state, text, false, false);
    const char *with = VALUES[any_below(state, COUNT(VALUES))];
    put_in_place(text, s.at, s.length, with, strlen(with));
}

/* A key loses a letter, has two in each other's place, or is another one; or its value is gone. */
static void change_key(uint64_t *state, content *text)
{
    span s = next(state, text, false, true), other = next(state, text, false, true);
    size_t letter = s.at + any_below(state, s.length);
    uint32_t way = any_below(state, 4);
    if (way == 0) {
        put_in_place(text, letter, s.length > 0, "", 0);
    } else if (way == 1 && letter + 1 < s.at + s.length) {
        const char turned[2] = {text->bytes[letter + 1], text->bytes[letter]};
        put_in_place(text, letter, 2, turned, 2);
    } else if (way == 2) {
        put_in_place(text, s.at, s.length, text->bytes + other.at, other.length);
    } else {
        span line = line_at(text, s.at);
        size_t from = s.at + s.length + (s.length > 0);
        put_in_place(text, from, line.at + line.length - from, "\n", 1);
    }
}

static void change_line(uint64_t *state, content *text)
{
    span line = line_at(text, any_below(state, text->size));
    span other = line_at(text, any_below(state, text->size));
    switch (any_below(state, 6)) {
    case 0:
        put_in_place(text, line.at, line.length, "", 0);
        break;
    case 1:
        put_in_place(text, line.at, 0, text->bytes + line.at, line.length);
        break;
    case 2:
        put_in_place(text, line.at, 0, "  ", 2);
        break;
    case 3:
        put_in_place(text, line.at, line.length > 2 ? 2 : 0, "", 0);
        break;
    case 4:
        put_in_place(text, line.at, line.length, text->bytes + other.at, other.length);
        break;
    default:
        put_in_place(text, line.at, 0, "- ", 2);
    }
}

static void change_bytes(uint64_t *state, content *text)
{
    size_t at = any_below(state, text->size), from = any_below(state, text->size);
    size_t length = any_below(state, 40);
    length = length < text->size - from ? length : text->size - from;
    uint32_t way = any_below(state, 8);
    if (way == 0) {
        text->bytes[at] = (char)(text->bytes[at] ^ (1 << any_below(state, 8)));
    } else if (way == 1) {
        put_in_place(text, at, text->size > 0, "", 0);
    } else if (way == 2) {
        put_in_place(text, at, text->size - at, "", 0);
    } else if (way == 3) {
        put_in_place(text, from, length, "", 0);
    } else if (way == 4) {
        put_in_place(text, at, 0, text->bytes + from, length);
    } else {
        const char *with = BYTES[any_below(state, COUNT(BYTES))];
        put_in_place(text, at, 0, with, *with ? strlen(with) : 1);
    }
}

void mutate(uint64_t *state, content *text)
{
    static void (*const ways[])(uint64_t *, content *) = {
        change_figure, change_figure, change_value, change_key, change_line, change_bytes};
    if (text->size > 0) {
        ways[any_below(state, COUNT(ways))](state, text);
    }
}
