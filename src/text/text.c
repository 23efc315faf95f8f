/* SPDX-License-Identifier: MIT */
#include "text.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "letters.h"

/* Marks a text as failed, since there is no memory, and empties it. Always returns false. */
static bool fail(text *t)
{
    t->failed = true;
    t->length = 0;
    return false;
}

/* Makes room for `more` bytes and the NUL after them. */
static bool reserve(text *t, size_t more)
{
    enum { LEAST = 256 };
    size_t wanted = t->length + more + 1;
    if (t->failed) {
        return false;
    }
    if (wanted <= t->room) {
        return true;
    }
    size_t room = t->room > LEAST ? 2 * t->room : LEAST;
    char *larger = realloc(t->bytes, room > wanted ? room : wanted);
    if (!larger) {
        return fail(t);
    }
    t->bytes = larger;
    t->room = room > wanted ? room : wanted;
    return true;
}

void text_put_bytes(text *t, const char *bytes, size_t size)
{
    if (reserve(t, size)) {
        memcpy(t->bytes + t->length, bytes, size);
        t->length += size;
        t->bytes[t->length] = '\0';
    }
}

void text_put(text *t, const char *words)
{
    text_put_bytes(t, words, strlen(words));
}

void text_put_number(text *t, int number)
{
    char digits[12];
    char *first = digits + sizeof digits;
    do {
        *--first = (char)('0' + number % 10);
        number /= 10;
    } while (number > 0);
    text_put_bytes(t, first, (size_t)(digits + sizeof digits - first));
}

/* Whether a format has nothing but words to fill in. Such a one, as most are, needs no printf. */
static bool only_words(const char *format)
{
    const char *at = strchr(format, '%');
    while (at && (at[1] == 's' || at[1] == '%')) {
        at = strchr(at + 2, '%');
    }
    return at == NULL;
}

static void add_words(text *t, const char *format, va_list arguments)
{
    const char *at;
    for (; (at = strchr(format, '%')) != NULL; format = at + 2) {
        text_put_bytes(t, format, (size_t)(at - format));
        text_put(t, at[1] == 's' ? va_arg(arguments, const char *) : "%");
    }
    text_put(t, format);
}

void text_add_list(text *t, const char *format, va_list arguments)
{
    if (only_words(format)) {
        add_words(t, format, arguments);
        return;
    }
    va_list again;
    va_copy(again, arguments);
    size_t room = reserve(t, 0) ? t->room - t->length : 0;
    int wanted = vsnprintf(room ? t->bytes + t->length : NULL, room, format, arguments);
    if (wanted < 0) {
        fail(t);
    } else if ((size_t)wanted >= room && reserve(t, (size_t)wanted)) {
        vsnprintf(t->bytes + t->length, (size_t)wanted + 1, format, again);
    }
    va_end(again);
    t->length += t->failed ? 0 : (size_t)wanted;
}

void text_add(text *t, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    text_add_list(t, format, arguments);
    va_end(arguments);
}

void text_space(text *t, int count)
{
    if (count > 0 && reserve(t, (size_t)count)) {
        memset(t->bytes + t->length, ' ', (size_t)count);
        t->length += (size_t)count;
        t->bytes[t->length] = '\0';
    }
}

void text_left(text *t, int columns, const char *words)
{
    size_t size = 0;
    int letters = 0;
    while (words[size] != '\0' && letters < columns) {
        size += letter_size(words + size);
        letters++;
    }
    text_put_bytes(t, words, size);
    text_space(t, columns - letters);
}

void text_right(text *t, int columns, const char *words)
{
    text_space(t, columns - text_letters(words, strlen(words)));
    text_put(t, words);
}

/* Whether a word is a unit, which stays on the line of the figure before it. */
static bool is_unit(const char *word, size_t size)
{
    static const char *const units[] = {"mm", "in", "%", "N"};
    size_t bare = size > 1 && strchr(".,;:)", word[size - 1]) ? size - 1 : size;
    for (size_t k = 0; k < sizeof units / sizeof *units; k++) {
        if (strlen(units[k]) == bare && strncmp(units[k], word, bare) == 0) {
            return true;
        }
    }
    return false;
}

/* Whether a word is a number with its colon, as "6:" before a figure of string 6. */
static bool is_place(const char *word, size_t size)
{
    return size > 1 && word[size - 1] == ':' && strspn(word, "0123456789") == size - 1;
}

bool text_may_break(const char *words, const char *space)
{
    const char *word = space, *next = space + 1;
    while (word > words && word[-1] != ' ') {
        word--;
    }
    size_t size = (size_t)(space - word);
    bool figure = size > 0 && space[-1] >= '0' && space[-1] <= '9';
    return *next == ' ' || !(is_place(word, size) || (figure && is_unit(next, strcspn(next, " "))));
}

/* The size of the next word, with those that stay on its line. */
static size_t word_size(const char *at)
{
    size_t size = strcspn(at, " ");
    while (at[size] == ' ' && at[size + 1] != '\0' && !text_may_break(at, at + size)) {
        size += 1 + strcspn(at + size + 1, " ");
    }
    return size;
}

void text_wrap(text *t, const char *words, int indent, int columns)
{
    int column = indent;
    for (const char *at = words; *at != '\0'; at += strspn(at, " ")) {
        size_t size = word_size(at);
        int letters = text_letters(at, size);
        if (column > indent && column + 1 + letters > columns) {
            text_put_bytes(t, "\n", 1);
            text_space(t, indent);
            column = indent;
        } else if (column > indent) {
            text_space(t, 1);
            column++;
        }
        text_put_bytes(t, at, size);
        column += letters;
        at += size;
    }
    text_put_bytes(t, "\n", 1);
}

const char *text_read(const text *t)
{
    return t->length > 0 && !t->failed ? t->bytes : "";
}

char *text_take(text *t, size_t *size)
{
    char *taken = reserve(t, 0) ? t->bytes : NULL;
    if (!taken) {
        free(t->bytes);
    } else {
        taken[t->length] = '\0';
        if (size) {
            *size = t->length;
        }
    }
    *t = (text){0};
    return taken;
}

void text_free(text *t)
{
    free(t->bytes);
    *t = (text){0};
}
