/* SPDX-License-Identifier: MIT */
/* Cents by fret: a small graph a string, as built and at its best pair, all to one scale so that
 * strings can be told against each other. */
#include "sound.h"

static const double plot_height = 18, label_width = 9, gap = 5;
static const double head = 7.5, foot = 4.5; /* over and under a plot */

double sil_cents_worst(const double *cents)
{
    double worst = 0;
    for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
        double off = fabs(cents[fret]);
        worst = off > worst || !sil_known(off) ? off : worst;
    }
    return worst;
}

/* Steps of 1, 2, 5, 10, .. cents, at most so many up the plot; never finer than a cent. */
sil_cents_scale sil_cents_measure(const sil_draft *draft)
{
    enum { STEPS = 6 };
    const sil_plan *plan = draft->plan;
    double low = -1, high = 1;
    for (int i = 0; i < plan->job->string_count; i++) {
        for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
            double built = plan->compensation[i].as_built[fret];
            double best = plan->compensation[i].at_best[fret];
            low = fmin(low, fmin(built, best));
            high = fmax(high, fmax(built, best));
        }
    }
    static const int steps[] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000};
    sil_cents_scale scale = {0};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
        scale.step = steps[i];
        scale.low = (int)floor(low / scale.step) * scale.step;
        scale.high = (int)ceil(high / scale.step) * scale.step;
        if (scale.high - scale.low <= STEPS * scale.step) {
            break;
        }
    }
    return scale;
}

static double fret_x(sil_box plot, int fret)
{
    return plot.left + (fret - 0.5) * sil_box_width(plot) / SIL_PITCH_FRETS;
}

static double cents_y(sil_box plot, const sil_cents_scale *scale, double cents)
{
    return plot.bottom + (cents - scale->low) / (scale->high - scale->low) * sil_box_height(plot);
}

static void draw_axes(sil_shapes *list, sil_box plot, const sil_cents_scale *scale)
{
    static const int frets[] = {1, 3, 5, 7, 9, 12};
    for (int cents = scale->low; cents <= scale->high; cents += scale->step) {
        double y = cents_y(plot, scale, cents);
        sil_draw_line(list, cents == 0 ? SIL_LAYER_DIMENSION : SIL_LAYER_RULE,
                      (sil_point){plot.left, y}, (sil_point){plot.right, y});
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){plot.left - 1.5, y - SIL_SMALL / 2},
                      SIL_SMALL, SIL_RIGHT, 0, sil_say(cents > 0 ? "+%d" : "%d", cents).text);
    }
    for (size_t i = 0; i < sizeof frets / sizeof *frets; i++) {
        double x = fret_x(plot, frets[i]);
        sil_draw_line(list, SIL_LAYER_RULE, (sil_point){x, plot.bottom},
                      (sil_point){x, plot.bottom - 1}); /* a tick under the plot */
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x, plot.bottom - 2 - SIL_SMALL}, SIL_SMALL,
                      SIL_MIDDLE, 0, sil_say("%d", frets[i]).text);
    }
}

static void draw_curve(sil_shapes *list, sil_layer layer, sil_box plot,
                       const sil_cents_scale *scale, const double *cents)
{
    sil_point points[SIL_PITCH_FRETS];
    for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
        points[fret - 1] = (sil_point){fret_x(plot, fret), cents_y(plot, scale, cents[fret])};
    }
    sil_draw_path(list, layer, points, SIL_PITCH_FRETS, false);
}

static void draw_graph(const sil_draft *draft, sil_shapes *list, const sil_cents_scale *scale,
                       int string, double left, double width)
{
    const sil_compensation *told = &draft->plan->compensation[string];
    sil_box plot = {left + label_width, -head - plot_height, left + width, -head};
    double built = sil_cents_worst(told->as_built), best = sil_cents_worst(told->at_best);
    sil_draw_ring(list, (sil_point){plot.left + 2.3, -2.3}, string + 1);
    sil_draw_note(list, plot.left + 6.5, -2.3 - SIL_NOTE / 2, sil_say_note(draft, string).text);
    if (!sil_known(built + best)) {
        sil_draw_box(list, SIL_LAYER_RULE, plot);
        sil_draw_text(list, SIL_LAYER_TEXT,
                      (sil_point){(plot.left + plot.right) / 2, -head - plot_height / 2}, SIL_NOTE,
                      SIL_MIDDLE, 0, "not known");
        return;
    }
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){plot.right, -2.3 - SIL_SMALL / 2}, SIL_SMALL,
                  SIL_RIGHT, 0,
                  sil_say("out by %s, best %s", sil_say_number(draft, built, 1).text,
                          sil_say_number(draft, best, 1).text)
                      .text);
    draw_axes(list, plot, scale);
    draw_curve(list, SIL_LAYER_PRESENT, plot, scale, told->as_built);
    draw_curve(list, SIL_LAYER_OUTLINE, plot, scale, told->at_best);
}

void sil_cents_view(const sil_draft *draft, sil_shapes *list, const sil_cents_scale *scale,
                    int first, double width)
{
    double each = (width - (SIL_GRAPHS_ABREAST - 1) * gap) / SIL_GRAPHS_ABREAST;
    for (int k = 0; k < SIL_GRAPHS_ABREAST && first + k < draft->plan->job->string_count; k++) {
        sil_draw_of(list, first + k + 1);
        draw_graph(draft, list, scale, first + k, k * (each + gap), each);
    }
    sil_draw_of(list, 0);
    sil_shapes_strut(list, (sil_box){0, -head - plot_height - foot, 1, 0});
}

void sil_cents_key(sil_shapes *list)
{
    double x = sil_draw_key(list, 0, 0, SIL_LAYER_PRESENT, "as built") + 8;
    x = sil_draw_key(list, x, 0, SIL_LAYER_OUTLINE, "at the best pair") + 8;
    sil_draw_note(list, x, 0, "cents over frets, + sharp");
}
