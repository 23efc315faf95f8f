/* SPDX-License-Identifier: MIT */
/* The result as JSON. Field by field as docs/result.md has it. */
#include <sillet/version.h>

#include "writer.h"

enum { TEXT_MAX = 2048 };

static void put_strings(writer *w, cJSON *root)
{
    const sil_plan *plan = w->plan;
    const sil_board *board = &plan->bench.board;
    cJSON *array = put_array(w, root, "strings");
    for (int i = 0; i < board->strings; i++) {
        cJSON *row = add_string_row(w, array, i);
        put_word(w, row, "note", plan->job->strings[i].note);
        put_number(w, row, "hz", plan->job->strings[i].hz);
        put_number(w, row, "unit_mass", plan->unit_mass_kg_m[i]);
        put_number(w, row, "tension", plan->pluck.tension[i]);
        put_number(w, row, "nut_z", board->nut_z[i]);
        put_number(w, row, "saddle_z", board->saddle_z[i]);
        put_number(w, row, "saddle_x", board->saddle_x[i]);
        put_number(w, row, "leverage", sil_leverage(board, i));
        put_number(w, row, "scale", board->scale[i]);
        put_number(w, row, "nut_x", board->nut_x[i]);
        put_int(w, row, "course", board->course[i] + 1);
    }
}

static void put_stage(writer *w, cJSON *stages, sil_stage_name name)
{
    const sil_plan *plan = w->plan;
    const sil_board *board = &plan->bench.board;
    const sil_fit *fit = &plan->stages.fit[name];
    cJSON *stage = add_row(w, stages);
    put_word(w, stage, "stage", sil_stage_word(name));
    put_bool(w, stage, "changed", plan->stages.changed[name]);
    put_bool(w, stage, "forecast", plan->stages.forecast[name]);
    put_number(w, stage, "relief", sil_relief(board, fit->bend));
    cJSON *array = put_array(w, stage, "strings");
    for (int i = 0; i < board->strings; i++) {
        cJSON *row = add_string_row(w, array, i);
        put_number(w, row, "nut_height", fit->nut_height[i]);
        put_number(w, row, "saddle_height", fit->saddle_height[i]);
        put_number(w, row, "first_open", sil_first_gap(board, fit, i, SIL_HOLD_OPEN));
        put_number(w, row, "first_held2", sil_first_gap(board, fit, i, SIL_HOLD_2));
        put_number(w, row, "first_held3", sil_first_gap(board, fit, i, SIL_HOLD_3));
        put_number(w, row, "action", sil_action(board, fit, i, 12));
    }
}

static void put_withheld(writer *w, cJSON *part, const sil_withheld *withheld)
{
    cJSON *array = put_array(w, part, "withheld_by");
    for (int i = 0; i < withheld->count; i++) {
        add_word(w, array, sil_code_word(withheld->by[i]));
    }
}

static void put_blank(writer *w, cJSON *part, bool ordered, sil_blank blank)
{
    if (!ordered) {
        put_null(w, part, "blank");
        return;
    }
    cJSON *object = put_object(w, part, "blank");
    put_number(w, object, "length", blank.length);
    put_number(w, object, "thickness", blank.thickness);
    put_number(w, object, "height", blank.height);
}

static void put_degrees(writer *w, cJSON *object, const char *key, double radians)
{
    put_number(w, object, key, radians * 180.0 / 3.14159265358979323846);
}

static void put_nut(writer *w, cJSON *root)
{
    static const char *const verdicts[] = {"leave", "file", "raise", "wait"};
    static const char *const remedies[] = {"none", "file", "fill", "shim", "replace", "wait"};
    const sil_plan *plan = w->plan;
    const sil_nut_work *work = &plan->nut;
    cJSON *nut = put_object(w, root, "nut");
    put_withheld(w, nut, &plan->nut_withheld);
    put_word(w, nut, "remedy", remedies[work->remedy]);
    cJSON *array = put_array(w, nut, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        cJSON *row = add_string_row(w, array, i);
        put_number(w, row, "centre", plan->job->nut.width / 2.0 + plan->bench.board.nut_z[i]);
        put_number(w, row, "width", plan->slot_width[i]);
        put_number(w, row, "now", sil_first_now(plan, i));
        put_number(w, row, "deepen", plan->stages.deepen[i]);
        put_number(w, row, "deepen_u", plan->stages.deepen_u[i]);
        put_number(w, row, "first_pass", work->first_pass[i]);
        put_word(w, row, "verdict", verdicts[work->verdict[i]]);
        put_number(w, row, "floor", work->floor[i]);
        put_number(w, row, "stack", work->stack[i]);
        put_number(w, row, "depth", work->depth[i]);
    }
    put_number(w, nut, "gap", plan->nut_gap);
    put_number(w, nut, "shim", work->shim);
    put_number(w, nut, "fall_angle", work->fall_angle_deg);
    bool ordered = work->remedy != SIL_NUT_WAIT && !plan->bench.zero_fret;
    put_blank(w, nut, ordered, plan->nut_blank);
    put_degrees(w, nut, "slant", plan->bench.board.nut_slant);
}

static void put_ends(writer *w, cJSON *cut, sil_line line)
{
    double half = w->plan->job->saddle.length / 2.0;
    put_number(w, cut, "treble", sil_line_at(line, half));
    put_number(w, cut, "bass", sil_line_at(line, -half));
}

static void put_bottom_cut(writer *w, cJSON *saddle)
{
    const sil_saddle_work *work = &w->plan->saddle;
    if (!work->bottom) {
        put_null(w, saddle, "bottom_cut");
        return;
    }
    cJSON *cut = put_object(w, saddle, "bottom_cut");
    put_ends(w, cut, work->cut);
    put_ends(w, put_object(w, cut, "first_pass"), work->cut_first);
    int last = w->plan->job->string_count - 1;
    const double *z = w->plan->bench.board.saddle_z;
    cJSON *caliper = put_object(w, cut, "caliper");
    put_number(w, caliper, "treble", work->present[0] - sil_line_at(work->cut_first, z[0]));
    put_number(w, caliper, "bass", work->present[last] - sil_line_at(work->cut_first, z[last]));
}

static void put_posts(writer *w, cJSON *saddle)
{
    const sil_saddle_work *work = &w->plan->saddle;
    if (!work->posts) {
        put_null(w, saddle, "posts");
        return;
    }
    cJSON *posts = put_object(w, saddle, "posts");
    put_number(w, posts, "treble", work->post[0]);
    put_number(w, posts, "bass", work->post[1]);
    cJSON *turns = put_object(w, posts, "turns");
    put_number(w, turns, "treble", work->post_turns[0]);
    put_number(w, turns, "bass", work->post_turns[1]);
}

static void put_neck(writer *w, cJSON *saddle)
{
    const sil_neck *neck = &w->plan->neck;
    if (!sil_known(neck->lift)) {
        put_null(w, saddle, "neck");
        return;
    }
    cJSON *object = put_object(w, saddle, "neck");
    put_number(w, object, "lift", neck->lift);
    put_number(w, object, "shim", neck->shim);
    put_number(w, object, "heel", neck->heel);
}

/* What the steps ask for, where they leave on what no file can feel. */
static void put_asked(writer *w, cJSON *row, int string)
{
    const sil_plan *plan = w->plan;
    const sil_saddle_work *work = &plan->saddle;
    double left_on = sil_left_on(plan, string);
    cJSON *asked = put_object(w, row, "asked");
    put_number(w, asked, "dress", work->dress[string] - left_on);
    put_number(w, asked, "height", work->height[string] + left_on);
    put_number(w, asked, "protrusion", work->protrusion[string] + left_on);
    put_number(w, asked, "action", sil_action_after(plan, string));
}

static void put_saddle(writer *w, cJSON *root)
{
    static const char *const verdicts[] = {"leave", "lower", "raise", "wait"};
    static const char *const remedies[] = {"none", "sand", "shim", "screw", "replace", "wait"};
    const sil_plan *plan = w->plan;
    const sil_saddle_work *work = &plan->saddle;
    cJSON *saddle = put_object(w, root, "saddle");
    put_withheld(w, saddle, &plan->saddle_withheld);
    put_word(w, saddle, "remedy", remedies[work->remedy]);
    cJSON *array = put_array(w, saddle, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        cJSON *row = add_string_row(w, array, i);
        put_number(w, row, "now", sil_action_now(plan, i));
        put_number(w, row, "lower", plan->stages.lower[i]);
        put_number(w, row, "lower_u", plan->stages.lower_u[i]);
        put_number(w, row, "first_pass", work->first_pass[i]);
        put_word(w, row, "verdict", verdicts[work->verdict[i]]);
        put_number(w, row, "dress", work->dress[i]);
        put_number(w, row, "present", work->present[i]);
        put_number(w, row, "height", work->height[i]);
        put_number(w, row, "protrusion", work->protrusion[i]);
        put_number(w, row, "in_slot", work->in_slot[i]);
        put_number(w, row, "break_angle", work->break_angle_deg[i]);
        put_number(w, row, "turns", work->turns[i]);
        put_asked(w, row, i);
    }
    put_bottom_cut(w, saddle);
    put_number(w, saddle, "shim", work->shim);
    put_number(w, saddle, "top_radius", work->top_radius);
    bool ordered = work->remedy != SIL_SADDLE_WAIT && sil_working_in_slot(plan->saddle.working);
    put_blank(w, saddle, ordered, plan->saddle_blank);
    put_degrees(w, saddle, "slant", plan->bench.board.saddle_slant);
    put_posts(w, saddle);
    put_neck(w, saddle);
}

static void put_index(writer *w, cJSON *object, const char *key, int value, int from)
{
    put_number(w, object, key, value < 0 ? SIL_UNKNOWN : value + from);
}

static void put_findings(writer *w, cJSON *root)
{
    char words[TEXT_MAX];
    cJSON *array = put_array(w, root, "findings");
    for (int k = 0; k < w->plan->finding_count; k++) {
        const sil_finding *finding = &w->plan->findings[k];
        cJSON *row = add_row(w, array);
        put_word(w, row, "code", sil_code_word(finding->code));
        put_word(w, row, "level", sil_level_word(finding->level));
        put_index(w, row, "string", finding->string, 1);
        put_index(w, row, "fret", finding->fret, 0);
        sil_finding_text(w->plan, finding, w->unit, words, sizeof words);
        put_word(w, row, "text", words);
    }
}

static void put_steps(writer *w, cJSON *root)
{
    char words[TEXT_MAX];
    cJSON *array = put_array(w, root, "steps");
    for (int k = 0; k < w->plan->step_count; k++) {
        cJSON *row = add_row(w, array);
        put_int(w, row, "step", k + 1);
        put_word(w, row, "stage", sil_stage_word(w->plan->steps[k].stage));
        sil_step_do(w->plan, k, w->unit, words, sizeof words);
        put_word(w, row, "do", words);
        sil_step_check(w->plan, k, w->unit, words, sizeof words);
        put_word(w, row, "check", words);
    }
}

/* A gap judged by ear lies in its range, or over it: low and high, null where it has no end. */
static void put_tap(writer *w, cJSON *row, sil_tap tap, sil_band range)
{
    if (tap == SIL_NOT_TAPPED) {
        put_null(w, row, "low");
        put_null(w, row, "high");
        return;
    }
    put_number(w, row, "low", tap == SIL_TAP_WIDE ? range.high : range.low);
    put_number(w, row, "high", tap == SIL_TAP_WIDE ? SIL_UNKNOWN : range.high);
}

static void put_judged(writer *w, cJSON *root)
{
    const sil_bench *bench = &w->plan->bench;
    cJSON *judged = put_object(w, root, "judged");
    put_tap(w, put_object(w, judged, "relief"), bench->relief.tap, bench->targets.relief);
    cJSON *array = put_array(w, judged, "first");
    for (int i = 0; i < w->plan->job->string_count; i++) {
        put_tap(w, add_string_row(w, array, i), bench->gaps.first_tap[i], bench->targets.first[i]);
    }
}

static void put_all(writer *w, cJSON *root)
{
    cJSON *about = put_object(w, root, "sillet");
    put_word(w, about, "version", SILLET_VERSION);
    put_int(w, about, "result", 1);
    put_strings(w, root);
    cJSON *stages = put_array(w, root, "stages");
    for (int stage = SIL_NOW; stage < SIL_STAGES; stage++) {
        put_stage(w, stages, (sil_stage_name)stage);
    }
    put_nut(w, root);
    put_saddle(w, root);
    put_sound(w, root);
    put_visits(w, root);
    put_judged(w, root);
    put_findings(w, root);
    put_steps(w, root);
    put_bool(w, root, "done", w->plan->done);
}

char *sil_report_json(const sil_plan *plan, sil_unit unit)
{
    writer w = {.plan = plan, .unit = unit};
    put_all(&w, put_root(&w));
    return put_end(&w);
}

char *sil_report_line(const char *sheet, int code, const sil_plan *plan, sil_unit unit)
{
    writer w = {.plan = plan, .unit = unit};
    cJSON *root = put_root(&w);
    put_word(&w, root, "sheet", sheet);
    put_int(&w, root, "exit", code);
    if (plan) {
        put_all(&w, put_object(&w, root, "result"));
    } else {
        put_null(&w, root, "result");
    }
    return put_end(&w);
}
