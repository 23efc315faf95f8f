/* SPDX-License-Identifier: MIT */
/* The figures that are shown for the saddle as one piece; its strings' are in bearing.c. */
#include "within.h"

static double end_x(const brief *b, brief_end end)
{
    return end == BRIEF_TREBLE ? b->saddle_part.length : 0.0;
}

/* Whether a string in its range is set to its target with the others. */
static bool any_set_along(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_verdict verdict = plan->saddle.verdict[i];
        if ((verdict == SIL_TAKE || verdict == SIL_RAISE) &&
            !sil_side_out(plan->stages.action_side[i])) {
            return true;
        }
    }
    return false;
}

/* The cut at the two ends of the bottom, and the caliper readings to stop at. */
static void fill_ends(brief *b)
{
    const part_saddle *part = &b->saddle_part;
    brief_saddle *saddle = &b->saddle;
    const int outer[BRIEF_ENDS] = {[BRIEF_TREBLE] = 0, [BRIEF_BASS] = b->strings - 1};
    double most_left = 0.0, most_first = 0.0, most_all = 0.0;
    for (brief_end end = BRIEF_TREBLE; end < BRIEF_ENDS; end++) {
        double first = part_base_at(part, part->base_first, end_x(b, end));
        double all = part_base_at(part, part->base_all, end_x(b, end));
        double stop = part->present[outer[end]] -
                      part_base_at(part, part->base_first, part->along[outer[end]]);
        saddle->base_first[end] = figure_length(b->unit, first, SIL_DOWN);
        saddle->base_all[end] = figure_length(b->unit, all, SIL_DOWN);
        saddle->base_left[end] = figure_nearest(b, all - first);
        saddle->caliper[end] = part->base ? figure_length(b->unit, stop, SIL_UP) : figure_none();
        most_left = fmax(most_left, all - first);
        most_first = fmax(most_first, first);
        most_all = fmax(most_all, all);
    }
    saddle->base = part->base;
    saddle->curve_off = plan_curve_off(b->plan);
    saddle->one_pass = most_left < brief_least_pass;
    saddle->takes_first = part->base && most_first >= 0.01;
    bool takes = part->base && most_all >= 0.01;
    saddle->sands_later = takes && !saddle->takes_first;
    saddle->dresses_later = takes && !saddle->one_pass;
    for (brief_end end = BRIEF_TREBLE; saddle->one_pass && end < BRIEF_ENDS; end++) {
        saddle->base_all[end] = saddle->base_first[end];
    }
}

static void fill_posts(brief *b)
{
    const sil_saddle_work *work = &b->plan->saddle;
    b->saddle.posts = work->posts;
    for (brief_end end = BRIEF_TREBLE; end < BRIEF_ENDS; end++) {
        b->saddle.post[end] =
            (brief_post){brief_way_of(work->post[end]), figure_nearest(b, fabs(work->post[end])),
                         figure_turns(work->post_turns[end])};
    }
}

/* What the saddle can do short of work on the neck. */
static void fill_half_cure(brief *b)
{
    const sil_neck *neck = &b->plan->neck;
    double out = SIL_UNKNOWN;
    for (int i = 0; i < b->strings; i++) {
        out = fmin(out, neck->half_out[i]);
        b->saddle.half_action[i] = figure_action(b->unit, neck->half_action[i]);
        b->saddle.half_shallow[i] =
            sil_below(neck->half_break_deg[i], b->plan->job->limits.least_break_deg);
    }
    b->saddle.half_out = figure_length(b->unit, out, SIL_UP);
}

static void fill_neck(brief *b)
{
    const sil_neck *neck = &b->plan->neck;
    b->saddle.lift = figure_nearest(b, neck->lift);
    b->saddle.wedge = figure_nearest(b, neck->shim);
    b->saddle.wedge_angle = figure_number(neck->degrees, 2);
    b->saddle.bow = figure_nearest(b, neck->explains);
    b->saddle.bow_accepted = figure_nearest(b, neck->accepted);
    b->saddle.heel = figure_nearest(b, neck->heel);
    fill_half_cure(b);
    b->saddle.lift_string = neck->string;
}

/* The best straight slot, and the thickness of a saddle that has every contact point in it. */
static void fill_best_slot(brief *b)
{
    const sil_plan *plan = b->plan;
    const double *z = plan->bench.board.saddle_z;
    double most = 0.0, thickness = plan->job->saddle.thickness;
    for (int i = 0; i < b->strings; i++) {
        double built = sil_line_at(plan->slot_as_built, z[i]);
        double best = sil_line_at(plan->slot_best, z[i]);
        most = fmax(most, fabs(built + plan->compensation[i].off_slot - best));
    }
    double needs = 2.0 * most * cos(plan->bench.board.saddle_slant);
    b->saddle.best_setback[BRIEF_TREBLE] = figure_nearest(b, sil_line_at(plan->slot_best, z[0]));
    b->saddle.best_setback[BRIEF_BASS] =
        figure_nearest(b, sil_line_at(plan->slot_best, z[b->strings - 1]));
    b->saddle.best_thickness =
        sil_above(needs, thickness) ? figure_length(b->unit, needs, SIL_UP) : figure_none();
}

static const char *headline(brief *b)
{
    const brief_saddle *saddle = &b->saddle;
    bool floats = sil_working_floats(saddle->working);
    bool feet = saddle->working == SIL_WORKING_FEET;
    switch (saddle->remedy) {
    case SIL_SADDLE_SAND:
        return saddle->sands_later ? "Nothing is sanded yet: measure the action with a finer tool"
               : saddle->base && feet ? "Sand the feet to the solid line, then measure again"
               : saddle->base         ? "Sand the bottom to the solid line, then measure again"
               : saddle->dressed      ? "Dress the top, a little at a time"
                                      : "Nothing comes off: it is too little for a file";
    case SIL_SADDLE_SHIM:
        return text_keep(&b->store, "Shim the %s: %s, %s %s", floats ? "bridge" : "saddle",
                         floats ? "a hard piece under each foot" : "one hard full-length piece",
                         saddle->shim.shown, b->unit_name);
    case SIL_SADDLE_REPLACE:
        return text_keep(&b->store, "New %s%s", floats ? "bridge" : "saddle",
                         brief_blank_words(b, &saddle->blank));
    case SIL_SADDLE_SCREW:
        return saddle->posts ? "Set the bridge by its two posts" : "Set each saddle by its screws";
    case SIL_SADDLE_WAIT:
        return "Wait: nothing is cut at the saddle today";
    case SIL_SADDLE_NONE:
        return sil_working_turns(saddle->working)
                   ? "Nothing is turned"
                   : "Nothing comes off: every string is in its range";
    }
    return "";
}

/* The greatest height of the finished saddle; unknown where the height at a string is unknown. */
static double highest(const brief *b)
{
    double high = -(double)INFINITY;
    for (int i = 0; i < b->strings; i++) {
        double height = b->plan->saddle.height[i];
        high = sil_known(height) && sil_known(high) ? fmax(high, height) : SIL_UNKNOWN;
    }
    return high;
}

static void fill_piece(brief *b)
{
    const part_saddle *part = &b->saddle_part;
    const sil_plan *plan = b->plan;
    brief_saddle *saddle = &b->saddle;
    double left_on = 0.0;
    for (int i = 0; i < b->strings; i++) {
        left_on = fmax(left_on, sil_left_on(plan, i));
        saddle->dressed = saddle->dressed || brief_known(saddle->string[i].dress);
    }
    saddle->left_on = left_on >= brief_least_pass ? figure_nearest(b, left_on) : figure_none();
    saddle->length = figure_nearest(b, part->length);
    saddle->thickness = brief_thickness(b, part->thickness, saddle->replaced);
    saddle->fit = brief_fit_words(b, saddle->thickness);
    saddle->bottom =
        (saddle->base || saddle->replaced) && !saddle->floats ? brief_bottom_words(b) : "";
    saddle->pickup = plan->job->saddle.pickup > 0.0 ? figure_nearest(b, plan->job->saddle.pickup)
                                                    : figure_none();
    saddle->top_radius = figure_radius(b->unit, part->top_radius);
    const part_curve none = {0}, *top = saddle->replaced ? &part->finished_top : &none;
    saddle->crest = top->radius > 0 ? figure_length(b->unit, fmax(top->crest, highest(b)), SIL_UP)
                                    : figure_none();
    saddle->crest_at = brief_crest_at(b, top);
    saddle->ends[BRIEF_TREBLE] = brief_end_height(b, top, part->length);
    saddle->ends[BRIEF_BASS] = brief_end_height(b, top, 0);
    saddle->shim = figure_nearest(b, plan->saddle.shim);
    saddle->lean = brief_lean(part->slant);
    saddle->bass_to_head = part->slant < 0;
    bool ordered = saddle->remedy != SIL_SADDLE_WAIT && sil_working_in_slot(saddle->working);
    const double done[] = {part->length, part->thickness, highest(b)};
    saddle->blank = brief_blank_of(b, ordered, plan->saddle_blank, done,
                                   part->along[0] - part->along[b->strings - 1], part->top_radius);
    saddle->blank.done_height = figure_length(b->unit, done[2], brief_made_way(b));
}

void brief_fill_saddle(brief *b)
{
    brief_saddle *saddle = &b->saddle;
    saddle->working = b->plan->saddle.working;
    saddle->remedy = b->plan->saddle.remedy;
    saddle->replaced = saddle->remedy == SIL_SADDLE_REPLACE;
    saddle->floats = sil_working_floats(saddle->working);
    saddle->along =
        saddle->remedy == SIL_SADDLE_SCREW && !b->plan->saddle.posts && any_set_along(b->plan);
    saddle->from_bridge = saddle->working == SIL_WORKING_TOP;
    saddle->in_slot = sil_working_in_slot(saddle->working);
    fill_ends(b);
    for (int i = 0; i < b->strings; i++) {
        brief_fill_bearing(b, i);
    }
    fill_posts(b);
    fill_piece(b);
    fill_neck(b);
    fill_best_slot(b);
    saddle->headline = headline(b);
}
