/* SPDX-License-Identifier: MIT */
#include "figure.h"

#include <sillet/core/units.h>

#include <stdio.h>

brief_figure figure_length(sil_unit unit, double mm, sil_rounding way)
{
    brief_figure figure = {.exact = mm, .rounding = way};
    sil_figure_write(figure.shown, sizeof figure.shown, mm, unit, way);
    return figure;
}

brief_figure figure_nearest(const brief *b, double mm)
{
    return figure_length(b->unit, mm, SIL_NEAREST);
}

brief_figure figure_gauge(sil_unit unit, double mm)
{
    const double half_thousandth = 0.0127;
    brief_figure figure = figure_length(unit, mm, SIL_NEAREST);
    if (unit == SIL_INCH && sil_known(mm)) {
        double told = floor(mm / half_thousandth + 0.5 + 1e-9) * half_thousandth;
        size_t length = sil_number_write(figure.shown, sizeof figure.shown, told / 25.4, 4);
        figure.shown[length - 1] = figure.shown[length - 1] == '0' ? '\0' : '5';
    }
    return figure;
}

brief_figure figure_action(sil_unit unit, double mm)
{
    brief_figure figure = figure_length(unit, mm, SIL_NEAREST);
    int marks = unit == SIL_INCH && mm > 0.0 && mm < 25.4 ? (int)lround(mm / 25.4 * 64.0) : 0;
    int of = 64;
    while (marks > 0 && marks % 2 == 0) {
        marks /= 2;
        of /= 2;
    }
    if (marks > 0) {
        snprintf(figure.marks, sizeof figure.marks, "%u/%u", (unsigned)marks % 64,
                 (unsigned)of % 100);
    }
    return figure;
}

brief_figure figure_radius(sil_unit unit, double mm)
{
    brief_figure figure = {.exact = mm, .rounding = SIL_NEAREST};
    sil_length_write(figure.shown, sizeof figure.shown, mm, unit, 0);
    return figure;
}

brief_figure figure_plain(sil_unit unit, double mm)
{
    brief_figure figure = {.exact = mm, .rounding = SIL_NEAREST};
    sil_number_trimmed(figure.shown, sizeof figure.shown, unit == SIL_INCH ? mm / 25.4 : mm,
                       unit == SIL_INCH ? 3 : 2);
    return figure;
}

brief_figure figure_number(double value, int decimals)
{
    brief_figure figure = {.exact = value, .rounding = SIL_NEAREST};
    sil_number_write(figure.shown, sizeof figure.shown, value, decimals);
    return figure;
}

brief_figure figure_share(double share)
{
    brief_figure figure = {.exact = 100.0 * share, .rounding = SIL_DOWN};
    sil_number_write(figure.shown, sizeof figure.shown, floor(100.0 * share + 1e-9), 0);
    return figure;
}

brief_figure figure_signed(double value)
{
    brief_figure figure = {.exact = value, .rounding = SIL_NEAREST};
    bool plus = value > 0.05;
    figure.shown[0] = '+';
    sil_number_trimmed(figure.shown + plus, sizeof figure.shown - plus, value, 1);
    return figure;
}

brief_figure figure_turns(double turns)
{
    if (!sil_known(turns) || !(fabs(turns) < 1000.0)) {
        return figure_none();
    }
    static const char *const eighth[] = {"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
    brief_figure figure = {.exact = fabs(turns), .rounding = SIL_NEAREST};
    int count = (int)floor(8.0 * fabs(turns) + 0.5 + 1e-9);
    size_t length = 0;
    if (count >= 8) {
        length = sil_number_write(figure.shown, sizeof figure.shown, floor(count / 8.0), 0);
    }
    if (count % 8 != 0 || count == 0) {
        snprintf(figure.shown + length, sizeof figure.shown - length, "%s%s",
                 count == 0   ? "<"
                 : length > 0 ? "-"
                              : "",
                 eighth[count == 0 ? 1 : count % 8]);
    }
    return figure;
}

brief_figure figure_none(void)
{
    return (brief_figure){.exact = SIL_UNKNOWN, .shown = "-"};
}

static const char *turns_about(text_store *store, brief_figure turns, const char *about)
{
    if (turns.shown[0] == '<') {
        return text_keep(store, "less than %s turn", turns.shown + 1);
    }
    bool one = turns.exact < 1.0 + 1.0 / 16.0 - 1e-9;
    return text_keep(store, "%s%s turn%s", about, turns.shown, one ? "" : "s");
}

const char *brief_turns(text_store *store, brief_figure turns)
{
    return turns_about(store, turns, "about ");
}

const char *brief_turns_each(text_store *store, brief_figure turns)
{
    return turns_about(store, turns, "");
}
