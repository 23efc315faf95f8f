/* SPDX-License-Identifier: MIT */
/* How far a part may be off the sizes it is made to. */
#include <string.h>

#include "within.h"

typedef struct limits {
    double upper, lower; /* mm */
} limits;

/* Common practice, no source. The side on which material could not be put back is 0. */
static limits limits_for(figure_use use)
{
    switch (use) {
    case FIGURE_FLOOR:
        return (limits){0.02, 0};
    case FIGURE_WIDTH:
    case FIGURE_HEIGHT:
        return (limits){0.05, 0};
    case FIGURE_FIT:
        return (limits){-0.02, -0.05};
    case FIGURE_OFF_SLOT:
        return (limits){0, -0.02};
    case FIGURE_OFF_SADDLE:
        return (limits){0, -0.05};
    case FIGURE_FLAT:
        return (limits){0.02, 0};
    }
    return (limits){0, 0};
}

/* Puts a limit as ISO 129-1 writes it: a plain 0, otherwise with its sign. Returns its length. */
static size_t put_limit(char *out, size_t size, sil_unit unit, double mm)
{
    if (mm == 0.0) {
        return sil_number_write(out, size, 0.0, 0);
    }
    size_t sign = mm > 0.0;
    memcpy(out, "+", sign);
    return sign + sil_figure_write(out + sign, size - sign, mm, unit, SIL_NEAREST);
}

brief_figure figure_limited(sil_unit unit, double mm, sil_rounding way, figure_use use)
{
    enum { EACH = sizeof((brief_figure *)NULL)->limits / 2 };
    brief_figure figure = figure_length(unit, mm, way);
    limits l = limits_for(use);
    if (brief_known(figure)) {
        size_t upper = put_limit(figure.limits, EACH, unit, l.upper);
        figure.limits[upper] = '/';
        put_limit(figure.limits + upper + 1, EACH, unit, l.lower);
    }
    return figure;
}

brief_figure figure_reference(brief_figure figure)
{
    figure.reference = true;
    return figure;
}

brief_figure brief_thickness(const brief *b, double thickness, bool anew)
{
    return anew ? figure_limited(b->unit, thickness, SIL_NEAREST, FIGURE_FIT)
                : figure_reference(figure_nearest(b, thickness));
}

const char *brief_fit_words(brief *b, brief_figure thickness)
{
    return thickness.limits[0]
               ? text_keep(&b->store, "push fit in %s: %s", thickness.shown, thickness.limits)
               : "";
}

const char *brief_bottom_words(brief *b)
{
    brief_figure flat = figure_nearest(b, limits_for(FIGURE_FLAT).upper);
    return text_keep(&b->store, "flat within %s, square", flat.shown);
}
