/* SPDX-License-Identifier: MIT */
/* Cents by fret: one small graph per string, as built and at its best pair. All have the same
 * scale, so that strings can be compared. */
#include "../board/plain.h"
#include "tone.h"

static const double label_width = 9, gap = 5;
static const double head = 7.5, foot = 4.5; /* above and below a plot */

/* The height of a graph between its lowest and its highest cents. */
static double plot_height(const draw_draft *draft)
{
    return draft->dense ? 12 : 18;
}

double view_cents_worst(const double *cents)
{
    double worst = 0;
    for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
        double off = fabs(cents[fret]);
        worst = off > worst || !sil_known(off) ? off : worst;
    }
    return worst;
}

/* Chooses the smallest step of 1, 2, 5, 10, .. cents that divides the plot into no more than six parts. */
view_cents_scale view_cents_measure(const draw_draft *draft)
{
    const int most_steps = draft->dense ? 4 : 6; /* so that their figures do not touch */
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
    view_cents_scale scale = {0};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
        scale.step = steps[i];
        scale.low = (int)floor(low / scale.step) * scale.step;
        scale.high = (int)ceil(high / scale.step) * scale.step;
        if (scale.high - scale.low <= most_steps * scale.step) {
            break;
        }
    }
    return scale;
}

static double fret_x(draw_box plot, int fret)
{
    return plot.left + (fret - 0.5) * draw_box_width(plot) / SIL_PITCH_FRETS;
}

static double cents_y(draw_box plot, const view_cents_scale *scale, double cents)
{
    return plot.bottom + (cents - scale->low) / (scale->high - scale->low) * draw_box_height(plot);
}

static void draw_axes(const draw_draft *draft, draw_shapes *list, draw_box plot,
                      const view_cents_scale *scale)
{
    static const int frets[] = {1, 3, 5, 7, 9, 12};
    for (int cents = scale->low; cents <= scale->high; cents += scale->step) {
        double y = cents_y(plot, scale, cents);
        draw_line(list, cents == 0 ? DRAW_DIMENSION : DRAW_RULE, (draw_point){plot.left, y},
                  (draw_point){plot.right, y});
        draw_text(list, DRAW_TEXT, (draw_point){plot.left - 1.5, y - DRAW_NOTE / 2}, DRAW_NOTE,
                  DRAW_RIGHT, 0, draw_say(draft, cents > 0 ? "+%d" : "%d", cents));
    }
    for (size_t i = 0; i < sizeof frets / sizeof *frets; i++) {
        double x = fret_x(plot, frets[i]);
        draw_line(list, DRAW_RULE, (draw_point){x, plot.bottom},
                  (draw_point){x, plot.bottom - 1}); /* a tick under the plot */
        draw_number(list, (draw_point){x, plot.bottom - 2 - DRAW_NOTE}, DRAW_NOTE, DRAW_MIDDLE,
                    frets[i]);
    }
}

static void put_curve(draw_shapes *list, draw_layer layer, draw_box plot,
                      const view_cents_scale *scale, const double *cents)
{
    draw_point points[SIL_PITCH_FRETS];
    for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
        points[fret - 1] = (draw_point){fret_x(plot, fret), cents_y(plot, scale, cents[fret])};
    }
    draw_path(list, layer, points, SIL_PITCH_FRETS, false);
}

static void draw_graph(const draw_draft *draft, draw_shapes *list, const view_cents_scale *scale,
                       int string, double left, double width)
{
    const sil_compensation *told = &draft->plan->compensation[string];
    draw_box plot = {left + label_width, -head - plot_height(draft), left + width, -head};
    double built = view_cents_worst(told->as_built), best = view_cents_worst(told->at_best);
    draw_ring(list, (draw_point){plot.left + 2.3, -2.3}, string + 1);
    draw_note(list, plot.left + 6.5, -2.3 - DRAW_NOTE / 2, draw_say_note(draft, string));
    if (!sil_known(built + best)) {
        draw_rectangle(list, DRAW_RULE, plot);
        draw_text(list, DRAW_TEXT,
                  (draw_point){(plot.left + plot.right) / 2, -head - plot_height(draft) / 2},
                  DRAW_NOTE, DRAW_MIDDLE, 0, "not known");
        return;
    }
    draw_text(list, DRAW_TEXT, (draw_point){plot.right, -2.3 - DRAW_NOTE / 2}, DRAW_NOTE,
              DRAW_RIGHT, 0,
              draw_say(draft, "%s, best %s", draw_plain_number(draft, built, 1),
                       draw_plain_number(draft, best, 1)));
    draw_axes(draft, list, plot, scale);
    put_curve(list, DRAW_PRESENT, plot, scale, told->as_built);
    put_curve(list, DRAW_OUTLINE, plot, scale, told->at_best);
}

void view_cents(const draw_draft *draft, draw_shapes *list, const view_cents_scale *scale,
                int first, double width)
{
    double each = (width - (VIEW_GRAPHS_ABREAST - 1) * gap) / VIEW_GRAPHS_ABREAST;
    for (int k = 0; k < VIEW_GRAPHS_ABREAST && first + k < draft->plan->job->string_count; k++) {
        draw_of(list, first + k + 1);
        draw_graph(draft, list, scale, first + k, k * (each + gap), each);
    }
    draw_of(list, 0);
    draw_shapes_strut(list, (draw_box){0, -head - plot_height(draft) - foot, 1, 0});
}

void view_cents_key(draw_shapes *list)
{
    double x = draw_key(list, 0, 0, DRAW_PRESENT, "as built") + 8;
    x = draw_key(list, x, 0, DRAW_OUTLINE, "at the best pair") + 8;
    draw_note(list, x, 0, "cents over frets, + sharp; above, the most");
}
