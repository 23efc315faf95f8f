/* SPDX-License-Identifier: MIT */
/* Within the plan: one text put together piece by piece, cut at a character where it is full. */
#ifndef SILLET_PLAN_TEXT_H
#define SILLET_PLAN_TEXT_H

#include <sillet/plan.h>

typedef struct text {
    char *out;
    size_t size, length;
    sil_unit unit;
} text;

void plan_text_begin(text *t, char *out, size_t size, sil_unit unit);
size_t plan_text_end(text *t);

__attribute__((format(printf, 2, 3))) void plan_text_add(text *t, const char *format, ...);

/* A length without and with its unit behind it. */
void plan_text_length(text *t, double mm, sil_rounding way);
void plan_text_length_unit(text *t, double mm, sil_rounding way);

/* "1: 0.12, 3: 0.20" for the strings chosen; a bare figure where one is. */
typedef struct string_list {
    int count;
    bool chosen[SIL_STRINGS_MAX];
    double value[SIL_STRINGS_MAX];
} string_list;

int plan_text_chosen(const string_list *list);

void plan_text_strings(text *t, const string_list *list, sil_rounding way);

/* "string 2", "strings 1, 3 and 4", "all strings". */
void plan_text_which(text *t, const string_list *list);

#endif
