/* SPDX-License-Identifier: MIT */
/* The parts of the result on nut and saddle: what is wrong with each, what is done, and by how much. */
#include "result.h"

static void put_withheld(json_at part, const sil_withheld *withheld)
{
    json_at array = json_put_array(part, "withheld_by");
    for (int i = 0; i < withheld->count; i++) {
        json_add_word(array, sil_code_word(withheld->by[i]));
    }
}

static void put_blank(json_at part, bool ordered, sil_blank blank)
{
    if (!ordered) {
        json_put_null(part, "blank");
        return;
    }
    json_at object = json_put_object(part, "blank");
    json_put_number(object, "length", blank.length);
    json_put_number(object, "thickness", blank.thickness);
    json_put_number(object, "height", blank.height);
}

static void put_degrees(json_at object, const char *key, double radians)
{
    json_put_number(object, key, radians * 180.0 / 3.14159265358979323846);
}

/* Past the edge of its range by no more than it may be wrong by, and so left. */
static void put_at_edge(json_at row, sil_side side, bool worked)
{
    json_put_bool(row, "at_edge", !worked && sil_side_edge(side));
}

static void put_zero_fret(json_at nut, const sil_zero_fret *is)
{
    if (!sil_known(is->over)) {
        json_put_null(nut, "zero_fret");
        return;
    }
    json_at object = json_put_object(nut, "zero_fret");
    json_put_number(object, "over", is->over);
    json_put_number(object, "over_u", is->over_u);
    json_put_number(object, "height", is->height);
    json_put_number(object, "height_u", is->height_u);
}

void result_nut(const brief *b, json_at root)
{
    static const char *const verdicts[] = {"leave", "file", "raise", "wait"};
    static const char *const remedies[] = {"none", "file", "fill", "shim", "replace", "wait"};
    const sil_plan *plan = b->plan;
    const sil_nut_work *work = &plan->nut;
    json_at nut = json_put_object(root, "nut");
    put_withheld(nut, &plan->nut_withheld);
    json_put_word(nut, "remedy", remedies[work->remedy]);
    json_at array = json_put_array(nut, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        json_at row = result_string(array, i);
        json_put_number(row, "centre", b->nut.slot[i].across.exact);
        json_put_number(row, "width", plan->slot_width[i]);
        json_put_number(row, "now", b->first[i].now.exact);
        json_put_number(row, "deepen", plan->stages.deepen[i]);
        json_put_number(row, "deepen_u", plan->stages.deepen_u[i]);
        json_put_number(row, "goal", plan_slot_goal(plan, i));
        json_put_number(row, "first_pass", work->first_pass[i]);
        json_put_number(row, "filed_back",
                        work->remedy == SIL_NUT_SHIM ? plan->stages.filed_back[i] : SIL_UNKNOWN);
        json_put_word(row, "verdict", verdicts[work->verdict[i]]);
        put_at_edge(row, plan->stages.first_side[i], plan->stages.finish_slot[i]);
        result_from(plan, row, "carried", plan->carried.first[i]);
        json_put_number(row, "floor", work->floor[i]);
        json_put_number(row, "stack_now", b->nut.slot[i].stack_now.exact);
        json_put_number(row, "stack", work->stack[i]);
        json_put_number(row, "stack_u", work->stack_u[i]);
        json_put_number(row, "stack_bend", work->stack_bend[i]);
        json_put_number(row, "depth", work->depth[i]);
        json_put_number(row, "leave", plan_cuts_anew(plan, i) ? work->leave[i] : SIL_UNKNOWN);
    }
    json_put_bool(nut, "make", plan_makes_nut(plan));
    json_put_number(nut, "gap", plan->nut_gap);
    json_put_number(nut, "shim", work->shim);
    json_put_number(nut, "fall_angle", work->fall_angle_deg);
    put_zero_fret(nut, &plan->zero_fret);
    put_blank(nut, b->nut.blank.ordered, plan->nut_blank);
    put_degrees(nut, "slant", plan->bench.board.nut_slant);
}

static void put_ends(const sil_plan *plan, json_at cut, sil_line line)
{
    double half = plan->job->saddle.length / 2.0;
    json_put_number(cut, "treble", sil_line_at(line, half));
    json_put_number(cut, "bass", sil_line_at(line, -half));
}

static void put_bottom_cut(const brief *b, json_at saddle)
{
    const sil_saddle_work *work = &b->plan->saddle;
    if (!work->bottom) {
        json_put_null(saddle, "bottom_cut");
        return;
    }
    json_at cut = json_put_object(saddle, "bottom_cut");
    put_ends(b->plan, cut, work->cut);
    put_ends(b->plan, json_put_object(cut, "first_pass"), work->cut_first);
    json_at caliper = json_put_object(cut, "caliper");
    json_put_number(caliper, "treble", b->saddle.caliper[BRIEF_TREBLE].exact);
    json_put_number(caliper, "bass", b->saddle.caliper[BRIEF_BASS].exact);
}

static void put_posts(const sil_plan *plan, json_at saddle)
{
    const sil_saddle_work *work = &plan->saddle;
    if (!work->posts) {
        json_put_null(saddle, "posts");
        return;
    }
    json_at posts = json_put_object(saddle, "posts");
    json_put_number(posts, "treble", work->post[0]);
    json_put_number(posts, "bass", work->post[1]);
    json_at turns = json_put_object(posts, "turns");
    json_put_number(turns, "treble", work->post_turns[0]);
    json_put_number(turns, "bass", work->post_turns[1]);
}

/* Puts how far the saddle goes short of work on the neck, string by string. */
static void put_half_cure(const sil_plan *plan, json_at object)
{
    const sil_neck *neck = &plan->neck;
    if (!sil_known(neck->half_out[0])) {
        json_put_null(object, "half");
        return;
    }
    json_at rows = json_put_array(object, "half");
    for (int i = 0; i < plan->job->string_count; i++) {
        json_at row = result_string(rows, i);
        json_put_number(row, "action", neck->half_action[i]);
        json_put_number(row, "stands_out", neck->half_out[i]);
        json_put_number(row, "break_angle", neck->half_break_deg[i]);
    }
}

/* Puts why the saddle cannot come down far enough. */
static void put_short(const sil_plan *plan, json_at saddle)
{
    static const char *const causes[] = {NULL, "relief", "relief-and-angle", "bridge", "angle"};
    const sil_neck *neck = &plan->neck;
    if (neck->cause == SIL_NOT_SHORT) {
        json_put_null(saddle, "short");
        return;
    }
    json_at object = json_put_object(saddle, "short");
    json_put_word(object, "cause", causes[neck->cause]);
    json_put_number(object, "bow", neck->explains);
    put_half_cure(plan, object);
}

static void put_neck(const sil_plan *plan, json_at saddle)
{
    const sil_neck *neck = &plan->neck;
    if (!sil_known(neck->lift)) {
        json_put_null(saddle, "neck");
        return;
    }
    json_at object = json_put_object(saddle, "neck");
    json_put_number(object, "lift", neck->lift);
    json_put_number(object, "shim", neck->shim);
    json_put_number(object, "heel", neck->heel);
    json_put_number(object, "degrees", neck->degrees);
}

/* Puts what the steps ask for: the figures of the plan, less the amount that is left on because
 * a file cannot feel it. */
static void put_asked(const brief *b, json_at row, int string)
{
    const brief_bearing *bearing = &b->saddle.string[string];
    double dress = b->plan->saddle.dress[string] - sil_left_on(b->plan, string);
    const json_named asked[] = {
        {"dress", dress},
        {"dress_now", b->saddle.dresses_later ? SIL_UNKNOWN : bearing->dress_now.exact},
        {"height", bearing->height.exact},
        {"protrusion", bearing->out.exact},
        {"action", bearing->action_curved.exact}};
    json_put_named(row, "asked", asked, RESULT_COUNT(asked));
}

void result_saddle(const brief *b, json_at root)
{
    static const char *const verdicts[] = {"leave", "lower", "raise", "wait"};
    static const char *const remedies[] = {"none", "sand", "shim", "screw", "replace", "wait"};
    const sil_plan *plan = b->plan;
    const sil_saddle_work *work = &plan->saddle;
    json_at saddle = json_put_object(root, "saddle");
    put_withheld(saddle, &plan->saddle_withheld);
    json_put_word(saddle, "remedy", remedies[work->remedy]);
    json_at array = json_put_array(saddle, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        json_at row = result_string(array, i);
        json_put_number(row, "now", b->action[i].now.exact);
        json_put_number(row, "off_line", plan->off_line[i]);
        json_put_number(row, "lower", plan->stages.lower[i]);
        json_put_number(row, "lower_u", plan->stages.lower_u[i]);
        json_put_number(row, "first_pass", work->first_pass[i]);
        json_put_word(row, "verdict", verdicts[work->verdict[i]]);
        bool worked = plan->stages.saddle[i] == SIL_TAKE || plan->stages.saddle[i] == SIL_RAISE;
        put_at_edge(row, plan->stages.action_side[i], worked);
        result_from(plan, row, "carried", plan->carried.action[i]);
        json_put_number(row, "goal", work->goal[i]);
        json_put_number(row, "dress", work->dress[i]);
        json_put_number(row, "dress_first", work->dress_first[i]);
        json_put_number(row, "present", work->present[i]);
        json_put_number(row, "height", work->height[i]);
        json_put_number(row, "leave",
                        work->remedy == SIL_SADDLE_REPLACE ? work->leave[i] : SIL_UNKNOWN);
        json_put_number(row, "stands_out", work->stands[i]);
        json_put_number(row, "room", work->room[i]);
        json_put_number(row, "protrusion", work->protrusion[i]);
        json_put_number(row, "in_slot", work->in_slot[i]);
        json_put_number(row, "break_angle", work->break_angle_deg[i]);
        json_put_number(row, "turns", work->turns[i]);
        json_put_number(row, "peak", plan->tuning.peak[i]);
        json_put_number(row, "peak_short", plan->tuning.peak_short[i]);
        put_asked(b, row, i);
    }
    json_put_bool(saddle, "make", plan_makes_saddle(plan));
    put_bottom_cut(b, saddle);
    json_put_number(saddle, "shim", work->shim);
    json_put_number(saddle, "top_radius", work->top_radius);
    put_blank(saddle, b->saddle.blank.ordered, plan->saddle_blank);
    put_degrees(saddle, "slant", plan->bench.board.saddle_slant);
    put_posts(plan, saddle);
    put_short(plan, saddle);
    json_put_number(saddle, "bow_accepted", plan->neck.accepted);
    put_neck(plan, saddle);
}
