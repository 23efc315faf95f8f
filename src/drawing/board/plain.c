/* SPDX-License-Identifier: MIT */
#include "plain.h"

#include <string.h>

enum { DIGITS = 32 };

static const char *keep(const draw_draft *draft, const char *digits)
{
    return draw_set_decimals(draft, text_keep_bytes(draft->store, digits, strlen(digits)));
}

static const char *keep_length(const draw_draft *draft, double mm, int decimals)
{
    char digits[DIGITS];
    sil_length_write(digits, sizeof digits, mm, draft->brief->unit, decimals);
    return keep(draft, digits);
}

const char *draw_plain_length(const draw_draft *draft, double mm)
{
    char digits[DIGITS];
    sil_figure_write(digits, sizeof digits, mm, draft->brief->unit, SIL_NEAREST);
    return keep(draft, digits);
}

const char *draw_plain_size(const draw_draft *draft, double mm)
{
    return keep_length(draft, mm, 1);
}

const char *draw_plain_radius(const draw_draft *draft, double mm)
{
    return keep_length(draft, mm, 0);
}

const char *draw_plain_number(const draw_draft *draft, double value, int decimals)
{
    char digits[DIGITS];
    sil_number_write(digits, sizeof digits, value, decimals);
    return keep(draft, digits);
}
