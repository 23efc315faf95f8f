/* SPDX-License-Identifier: MIT */
#include "lines.h"

void report_string(text *t, const brief *b, int string)
{
    const char *note = b->plan->job->strings[string].note;
    text_add(t, "  %2d ", string + 1);
    text_left(t, 9, note ? note : "");
}

void report_wrap(text *t, text *words, int indent)
{
    report_wrap_at(t, words, indent, REPORT_COLUMNS);
}

void report_wrap_at(text *t, text *words, int indent, int columns)
{
    text_wrap(t, text_read(words), indent, columns);
    t->failed = t->failed || words->failed;
    text_free(words);
}
