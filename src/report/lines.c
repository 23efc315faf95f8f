/* SPDX-License-Identifier: MIT */
#include "lines.h"

const char *report_string(text_store *store, const brief *b, int string, const char *mark)
{
    const char *note = b->plan->job->strings[string].note;
    text words = {0}, start = {0};
    text_add(&words, "%s%s", note ? note : "", mark);
    text_add(&start, "  %2d ", string + 1);
    text_left(&start, 9, text_read(&words));
    start.failed = start.failed || words.failed;
    text_free(&words);
    return text_keep_made(store, &start);
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
