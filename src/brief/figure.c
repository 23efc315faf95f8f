/* SPDX-License-Identifier: MIT */
#include "figure.h"

#include <sillet/core/units.h>

brief_figure figure_length(sil_unit unit, double mm, sil_rounding way)
{
    brief_figure figure = {.exact = mm, .rounding = way};
    sil_figure_write(figure.shown, sizeof figure.shown, mm, unit, way);
    return figure;
}

brief_figure figure_size(sil_unit unit, double mm)
{
    brief_figure figure = {.exact = mm, .rounding = SIL_NEAREST};
    sil_length_write(figure.shown, sizeof figure.shown, mm, unit, 1);
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

brief_figure figure_signed(double value)
{
    brief_figure figure = {.exact = value, .rounding = SIL_NEAREST};
    bool plus = value > 0.05;
    figure.shown[0] = '+';
    sil_number_trimmed(figure.shown + plus, sizeof figure.shown - plus, value, 1);
    return figure;
}

brief_figure figure_none(void)
{
    return (brief_figure){.exact = SIL_UNKNOWN, .shown = "-"};
}
