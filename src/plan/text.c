/* SPDX-License-Identifier: MIT */
#include <stdarg.h>
#include <stdio.h>

#include "text.h"

void plan_text_begin(text *t, char *out, size_t size, sil_unit unit)
{
    *t = (text){out, size, 0, unit};
    if (size > 0) {
        out[0] = '\0';
    }
}

static bool continues_character(char c)
{
    return ((unsigned char)c & 0xC0) == 0x80;
}

size_t plan_text_end(text *t)
{
    return t->length;
}

void plan_text_add(text *t, const char *format, ...)
{
    if (t->length + 1 >= t->size) {
        return;
    }
    va_list arguments;
    va_start(arguments, format);
    size_t room = t->size - t->length;
    int wanted = vsnprintf(t->out + t->length, room, format, arguments);
    va_end(arguments);
    if (wanted < 0) {
        return;
    }
    if ((size_t)wanted < room) {
        t->length += (size_t)wanted;
        return;
    }
    /* Full. Take back a character that was cut in its middle: from its first byte on. */
    size_t end = t->size - 1;
    size_t start = end;
    while (start > t->length && continues_character(t->out[start - 1])) {
        start--;
    }
    bool multibyte = start > t->length && ((unsigned char)t->out[start - 1] & 0xC0) == 0xC0;
    end = multibyte ? start - 1 : end;
    t->out[end] = '\0';
    t->length = end;
    t->size = end + 1; /* nothing more goes in behind a cut */
}

void plan_text_length(text *t, double mm, sil_rounding way)
{
    char figure[64];
    sil_figure_write(figure, sizeof figure, mm, t->unit, way);
    plan_text_add(t, "%s", figure);
}

void plan_text_length_unit(text *t, double mm, sil_rounding way)
{
    plan_text_length(t, mm, way);
    plan_text_add(t, t->unit == SIL_MM ? " mm" : " in");
}

int plan_text_chosen(const string_list *list)
{
    int chosen = 0;
    for (int i = 0; i < list->count; i++) {
        chosen += list->chosen[i];
    }
    return chosen;
}

void plan_text_strings(text *t, const string_list *list, sil_rounding way)
{
    const char *gap = "";
    bool alone = plan_text_chosen(list) == 1;
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i]) {
            plan_text_add(t, alone ? "%s" : "%s%d: ", gap, i + 1);
            plan_text_length(t, list->value[i], way);
            gap = ", ";
        }
    }
}

void plan_text_which(text *t, const string_list *list)
{
    int chosen = plan_text_chosen(list);
    if (chosen == list->count) {
        plan_text_add(t, chosen == 1 ? "the string" : "all strings");
        return;
    }
    plan_text_add(t, chosen == 1 ? "string" : "strings");
    int said = 0;
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i]) {
            said++;
            plan_text_add(t, "%s%d", said == 1 ? " " : said == chosen ? " and " : ", ", i + 1);
        }
    }
}
