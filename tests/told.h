/* SPDX-License-Identifier: MIT */
/* What is told of a sheet, as one text. */
#ifndef SILLET_TESTS_TOLD_H
#define SILLET_TESTS_TOLD_H

#include <string.h>

#include <sillet/sheet.h>

#include "near.h"

enum { TEXT = 256 * 1024 };

/* How a sheet of nothing but its profile begins. */
#define HEAD "sillet: 1\nprofile: steel-string-acoustic\n"

static inline void append(char *all, const char *text)
{
    size_t used = strlen(all), length = strlen(text);
    assert_true(used + length + 2 < TEXT);
    memcpy(all + used, text, length + 1);
}

/* All complaints as a person reads them, a line end after each. */
static inline void told(const sil_sheet *sheet, char *all)
{
    char one[4096];
    all[0] = '\0';
    for (int k = 0; k < sil_sheet_complaint_count(sheet); k++) {
        sil_complaint complaint = sil_sheet_complaint(sheet, k);
        size_t length = sil_complaint_write(&complaint, one, sizeof one);
        assert_true(length < sizeof one && length == strlen(one));
        append(all, one);
        append(all, "\n");
    }
}

#endif
