/* SPDX-License-Identifier: MIT */
/* What nut and saddle share: the words for a blank, an angle, and a list of slots. */
#include "within.h"

static void fill_size(const brief *b, double order, double done, brief_figure *size,
                      brief_figure *finished, brief_figure *spare)
{
    *size = figure_length(b->unit, order, SIL_UP);
    *finished = figure_nearest(b, done);
    *spare = figure_nearest(b, order - done);
}

brief_blank brief_blank_of(const brief *b, bool ordered, sil_blank order, const double done[3],
                           double spacing, double radius)
{
    brief_blank blank = {.ordered = ordered,
                         .complete = sil_known(order.length + order.thickness + order.height),
                         .spacing = figure_nearest(b, spacing),
                         .radius = figure_radius(b->unit, radius)};
    fill_size(b, order.length, done[0], &blank.length, &blank.done_length, &blank.spare_length);
    fill_size(b, order.thickness, done[1], &blank.thickness, &blank.done_thickness,
              &blank.spare_thickness);
    fill_size(b, order.height, done[2], &blank.height, &blank.done_height, &blank.spare_height);
    return blank;
}

const char *brief_blank_words(brief *b, const brief_blank *blank)
{
    return blank->complete
               ? text_keep(&b->store, ", blank %s \u00d7 %s \u00d7 %s %s", blank->length.shown,
                           blank->thickness.shown, blank->height.shown, b->unit_name)
               : "";
}

const char *brief_which(brief *b, const char *noun, const bool *meant)
{
    text t = {0};
    int count = 0, said = 0;
    for (int i = 0; i < b->strings; i++) {
        count += meant[i];
    }
    if (count > 1 && count == b->strings) {
        return text_keep(&b->store, "all %ss", noun);
    }
    text_put(&t, count > 0 ? noun : "");
    text_put(&t, count > 1 ? "s" : "");
    for (int i = 0; i < b->strings; i++) {
        if (meant[i]) {
            const char *gap = said == 0 ? " " : said == count - 1 ? " and " : ", ";
            text_add(&t, "%s%d", gap, i + 1);
            said++;
        }
    }
    return text_keep_made(&b->store, &t);
}

brief_figure brief_crest_at(const brief *b, const part_curve *top)
{
    return top->radius > 0 ? figure_nearest(b, top->centre) : figure_none();
}

brief_figure brief_end_height(const brief *b, const part_curve *top, double x)
{
    return top->count > 0 && top->radius <= 0 ? figure_nearest(b, part_curve_at(top, x))
                                              : figure_none();
}

brief_figure brief_lean(double slant)
{
    double degrees = fabs(slant) * 180.0 / 3.14159265358979323846;
    return degrees < 0.05 ? figure_none() : figure_number(degrees, 1);
}
