/* SPDX-License-Identifier: MIT */
#include "views.h"

/* In mm of the part: how much is shown of the bridge in front of the saddle and under it, and of
 * the string. */
static const double before = 6, under = 2.5, string_before = 10, behind = 6;

typedef struct end {
    const draw_draft *draft;
    draw_shapes *list;
    draw_place place;
    const sil_job_saddle *job;
    int string;
    double half, top, height; /* half the thickness; heights over the saddle's bottom */
    double peak;              /* where the string leaves it, behind its middle */
} end;

/* How much the top falls for each mm from the peak toward a face: the slope it is filed at. */
static double slope(void)
{
    return sil_back_drop(1.0);
}

static double right_edge(const end *e)
{
    double pin = e->job->pin_distance[e->string];
    return e->half + (sil_known(pin) ? pin + 2 : before);
}

static void draw_bridge(const end *e)
{
    double floor = -e->job->pickup, low = floor - under, right = right_edge(e);
    draw_point bridge[] = {{-before, low},     {right, low},     {right, e->top},
                           {e->half, e->top},  {e->half, floor}, {-e->half, floor},
                           {-e->half, e->top}, {-before, e->top}};
    draw_place_points(e->place, bridge, 8);
    draw_path(e->list, DRAW_OUTLINE, bridge + 2, 6, false);
    const draw_point broken[] = {bridge[7], bridge[0], bridge[1], bridge[2]};
    draw_path(e->list, DRAW_DIMENSION, broken, 4, false);
    draw_hatch(e->list, bridge, 8, -1.6);
}

/* Draws a piece as thick as the slot, with a flat top. */
static void draw_block(const end *e, double from, double top, double spacing)
{
    draw_point block[] = {{-e->half, from}, {e->half, from}, {e->half, top}, {-e->half, top}};
    draw_place_points(e->place, block, 4);
    draw_path(e->list, DRAW_OUTLINE, block, 4, true);
    draw_hatch(e->list, block, 4, spacing);
}

/* The height of the string at x. It is level up to the peak of the saddle, then goes down to where
 * it enters the bridge. */
static double behind_saddle(const end *e, double x)
{
    double pin = e->job->pin_distance[e->string];
    if (!sil_known(pin)) {
        return e->height;
    }
    double exit = e->top + e->job->exit_height;
    return e->height + (exit - e->height) * (x - e->peak) / (e->half - e->peak + pin);
}

/* Draws the saddle: its top falls from the peak to both faces, at the back at least as the string
 * does, but not below the bridge. */
static void draw_saddle(const end *e, double from)
{
    double front = fmax(e->height - (e->peak + e->half) * slope(), e->top);
    double back = fmin(e->height - (e->half - e->peak) * slope(), behind_saddle(e, e->half));
    draw_point block[] = {{-e->half, from},
                          {e->half, from},
                          {e->half, fmax(back, e->top)},
                          {e->peak, e->height},
                          {-e->half, front}};
    draw_place_points(e->place, block, 5);
    draw_path(e->list, DRAW_OUTLINE, block, 5, true);
    draw_hatch(e->list, block, 5, 1.6);
}

static void draw_string(const end *e)
{
    double pin = e->job->pin_distance[e->string];
    double far = e->half + (sil_known(pin) ? pin : behind);
    double gauge = e->draft->plan->job->strings[e->string].gauge;
    for (int edge = 0; edge < 2; edge++) {
        double up = edge * gauge;
        draw_point line[] = {{-string_before, e->height + up},
                             {e->peak, e->height + up},
                             {far, behind_saddle(e, far) + up}};
        draw_place_points(e->place, line, 3);
        draw_path(e->list, DRAW_STRING, line, 3, false);
    }
}

static void dimension(const end *e)
{
    const draw_draft *draft = e->draft;
    const brief_bearing *string = &draft->brief->saddle.string[e->string];
    double pickup = e->job->pickup, right = right_edge(e), low = -pickup - under;
    double x = draw_at(e->place, -string_before, 0).x, far = draw_at(e->place, right, 0).x;
    draw_point bottom = draw_at(e->place, -before, 0), bridge = draw_at(e->place, -before, e->top);
    draw_point contact = draw_at(e->place, -string_before, e->height);
    draw_dim_up(draft, e->list, bridge, contact, x - 5, view_again(string->out));
    draw_dim_up(draft, e->list, bottom, contact, x - 13, view_again(string->height));
    draw_dim_up(draft, e->list, draw_at(e->place, right, -pickup), draw_at(e->place, right, e->top),
                far + 7, string->slot_wall);
    draw_dim_across(draft, e->list, draw_at(e->place, -e->half, low),
                    draw_at(e->place, e->half, low), draw_at(e->place, 0, low).y - 6,
                    view_again(draft->brief->saddle.thickness));
}

void view_saddle_end(const draw_draft *draft, draw_shapes *list, draw_place place, int string)
{
    const part_saddle *saddle = &draft->brief->saddle_part;
    const sil_job_saddle *job = &draft->plan->job->saddle;
    double height = draft->brief->saddle.string[string].height.exact, shim = saddle->shim;
    end e = {draft,
             list,
             place,
             job,
             string,
             saddle->thickness / 2,
             saddle->bridge[string],
             height,
             saddle->peak[string] * cos(saddle->slant)};
    draw_bridge(&e);
    draw_saddle(&e, shim);
    if (shim > 0) {
        draw_block(&e, 0, shim, 0.8);
    }
    if (job->pickup > 0) {
        draw_block(&e, -job->pickup, 0, 0.8);
    }
    draw_of(list, string + 1);
    draw_string(&e);
    draw_of(list, 0);
    dimension(&e);
}
