/* SPDX-License-Identifier: MIT */
/* The result as JSON. docs/result.md describes every field. */
#include <sillet/report.h>
#include <sillet/version.h>

#include "glance.h"
#include "result.h"

/* What was not given of a string and stands at what is usual. */
static void put_assumed(const sil_plan *plan, json_at row, int string)
{
    json_at array = json_put_array(row, "assumed");
    if (plan->core_assumed[string]) {
        json_add_word(array, "core");
    }
}

static void put_strings(const sil_plan *plan, json_at root)
{
    const sil_board *board = &plan->bench.board;
    json_at array = json_put_array(root, "strings");
    for (int i = 0; i < board->strings; i++) {
        json_at row = result_string(array, i);
        json_put_word(row, "note", plan->job->strings[i].note);
        json_put_number(row, "hz", plan->job->strings[i].hz);
        json_put_number(row, "unit_mass", plan->unit_mass_kg_m[i]);
        json_put_number(row, "tension", plan->pluck.tension[i]);
        json_put_number(row, "nut_z", board->nut_z[i]);
        json_put_number(row, "saddle_z", board->saddle_z[i]);
        json_put_number(row, "saddle_x", board->saddle_x[i]);
        json_put_number(row, "leverage", sil_leverage(board, i));
        json_put_number(row, "scale", board->scale[i]);
        json_put_number(row, "nut_x", board->nut_x[i]);
        json_put_int(row, "course", board->course[i] + 1);
        put_assumed(plan, row, i);
    }
}

static void put_stage(const sil_plan *plan, json_at stages, sil_stage_name name)
{
    const sil_board *board = &plan->bench.board;
    const sil_fit *fit = &plan->stages.fit[name];
    json_at stage = json_add_object(stages);
    json_put_word(stage, "stage", sil_stage_word(name));
    json_put_bool(stage, "changed", plan->stages.changed[name]);
    json_put_bool(stage, "forecast", plan->stages.forecast[name]);
    json_put_number(stage, "relief",
                    name == SIL_NOW ? sil_relief_now(plan) : sil_relief(board, fit->bend));
    json_at array = json_put_array(stage, "strings");
    for (int i = 0; i < board->strings; i++) {
        const json_named row[] = {{"number", i + 1},
                                  {"nut_height", fit->nut_height[i]},
                                  {"saddle_height", fit->saddle_height[i]},
                                  {"first_open", plan_first_over(plan, fit, i, SIL_HOLD_OPEN)},
                                  {"first_held2", plan_first_over(plan, fit, i, SIL_HOLD_2)},
                                  {"first_held3", plan_first_over(plan, fit, i, SIL_HOLD_3)},
                                  {"action", plan_action_over(plan, fit, i)}};
        json_add_named(array, row, RESULT_COUNT(row));
    }
}

static void put_carried(const sil_plan *plan, json_at root)
{
    const plan_carried *carried = &plan->carried;
    json_at object = json_put_object(root, "carried");
    result_from(plan, object, "relief", carried->relief);
    result_from(plan, object, "frets", carried->frets);
    result_from(plan, object, "saddle_height", carried->saddle_height);
    result_from(plan, object, "bridge_top", carried->bridge_top);
    result_from(plan, object, "stands_out", carried->stands_out);
    result_from(plan, object, "bridge", carried->bridge);
    result_from(plan, object, "braces", carried->braces);
}

/* Puts the range of a gap that was judged by ear. A wide gap is above the range, so it has no
 * upper limit: high is then null. */
static void put_tap(json_at row, sil_tap tap, sil_band range)
{
    if (tap == SIL_NOT_TAPPED) {
        json_put_null(row, "low");
        json_put_null(row, "high");
        return;
    }
    json_put_number(row, "low", tap == SIL_TAP_WIDE ? range.high : range.low);
    json_put_number(row, "high", tap == SIL_TAP_WIDE ? SIL_UNKNOWN : range.high);
}

static void put_judged(const sil_plan *plan, json_at root)
{
    const sil_bench *bench = &plan->bench;
    json_at judged = json_put_object(root, "judged");
    put_tap(json_put_object(judged, "relief"), bench->relief.tap, bench->targets.relief);
    json_at array = json_put_array(judged, "first");
    for (int i = 0; i < plan->job->string_count; i++) {
        put_tap(result_string(array, i), bench->gaps.first_tap[i], bench->targets.first[i]);
    }
}

/* Puts the shop, as far as the sheet or a shop file gives it. */
static void put_shop(const sil_shop *shop, json_at root)
{
    if (!shop->name && !shop->contact && !shop->file) {
        json_put_null(root, "shop");
        return;
    }
    json_at object = json_put_object(root, "shop");
    json_put_word(object, "name", shop->name);
    json_put_word(object, "contact", shop->contact);
    json_put_word(object, "file", shop->file);
}

static void put_all(const brief *b, json_at root)
{
    const sil_plan *plan = b->plan;
    json_at about = json_put_object(root, "sillet");
    json_put_word(about, "version", SILLET_VERSION);
    json_put_int(about, "result", 1);
    put_shop(&plan->job->shop, root);
    json_put_word(root, "style", plan->job->style);
    put_strings(plan, root);
    json_at stages = json_put_array(root, "stages");
    for (int stage = SIL_NOW; stage < SIL_STAGES; stage++) {
        put_stage(plan, stages, (sil_stage_name)stage);
    }
    put_carried(plan, root);
    result_nut(b, root);
    result_saddle(b, root);
    result_tuning(b, root);
    result_tone(plan, root);
    result_visits(plan, root);
    put_judged(plan, root);
    result_findings(b, root);
    result_steps(b, root);
    json_put_bool(root, "done", plan->done);
}

char *report_of_brief(const brief *b)
{
    json j = {0};
    put_all(b, json_object(&j));
    return json_end(&j);
}

char *sil_report_json(const sil_plan *plan, sil_unit unit)
{
    brief *b = brief_make(plan, unit);
    char *made = b ? report_of_brief(b) : NULL; /* the brief lends it its words */
    brief_free(b);
    return made;
}

char *sil_report_line(const char *sheet, int code, const sil_plan *plan, sil_unit unit)
{
    json j = {0};
    brief *b = plan ? brief_make(plan, unit) : NULL;
    if (plan && !b) {
        return NULL;
    }
    json_at root = json_object(&j);
    json_put_word(root, "sheet", sheet);
    json_put_int(root, "exit", code);
    if (b) {
        put_all(b, json_put_object(root, "result"));
    } else {
        json_put_null(root, "result");
    }
    char *made = json_end(&j); /* the brief lends it its words */
    brief_free(b);
    return made;
}
