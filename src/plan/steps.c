/* SPDX-License-Identifier: MIT */
/* The words of the steps: what to do, and what to check by. One row an act. */
#include "say.h"

void plan_say_unit(text *t)
{
    plan_text_add(t, t->unit == SIL_MM ? " mm" : " in");
}

void plan_say_finer(const sil_plan *plan, sil_stage_name stage, text *t)
{
    double tool = plan_finer_tool(plan, stage);
    if (!sil_known(tool)) {
        plan_text_add(
            t, ", and a finer reading alone would not help: the range wanted is too narrow.");
        return;
    }
    plan_text_add(t, "; read to \xC2\xB1");
    plan_text_length_unit(t, tool, SIL_NEAREST);
    plan_text_add(t, " (%s) one can be told.",
                  tool >= 0.05   ? "feelers under the string"
                  : tool >= 0.02 ? "feelers in fine steps, or a dial gauge"
                                 : "a dial indicator");
}

string_list plan_say_strings(const sil_plan *plan, const sil_verdict *verdicts, sil_verdict wanted,
                             const double *value)
{
    string_list list = {.count = plan->job->string_count};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = verdicts[i] == wanted;
        list.value[i] = value[i];
    }
    return list;
}

string_list plan_say_known(const sil_plan *plan, const double *value)
{
    string_list list = {.count = plan->job->string_count};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = sil_known(value[i]);
        list.value[i] = value[i];
    }
    return list;
}

static void plan_say_prepare(const sil_plan *plan, text *t)
{
    const sil_reading *reading = sil_plan_reading(plan);
    const sil_limits *limits = &plan->job->limits;
    char low[32];
    char high[32];
    sil_number_write(low, sizeof low, limits->humidity_low_pct, 0);
    sil_number_write(high, sizeof high, limits->humidity_high_pct, 0);
    if (reading && reading->condition.strings == SIL_UNSOUND) {
        plan_text_add(t,
                      "First new strings: these are worn. Tune, let them settle, and read again. ");
    }
    static const char *const bridges[] = {
        [SIL_SADDLE_KIND_NOT_GIVEN] = "bridge flat down",
        [SIL_SADDLE_SLOTTED] = "bridge flat down, no brace loose",
        [SIL_SADDLE_GLUED] = "bridge flat down, no brace loose",
        [SIL_SADDLE_INDIVIDUAL] = "bridge firm on the body",
        [SIL_SADDLE_TWO_POST] = "bridge upright on its posts",
        [SIL_SADDLE_FLOATING] = "bridge upright where it belongs, its feet flat on the top",
    };
    plan_text_add(
        t,
        "Before anything is cut: %s, good strings at pitch, instrument in playing position, "
        "humidity %s to %s %%.",
        bridges[plan->job->saddle.kind], low, high);
}

static void check_prepare(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "The readings were taken so; if not, take them again.");
}

static void plan_say_stop(const sil_plan *plan, text *t)
{
    const sil_withheld *why = &plan->nut_withheld;
    if (sil_withheld_by(why, SIL_BRIDGE_LIFTED) || sil_withheld_by(why, SIL_BRACES_LOOSE)) {
        plan_text_add(t, "Stop: slack the strings; have bridge and braces glued by a qualified "
                         "repairer. ");
    }
    if (sil_withheld_by(why, SIL_CLIMATE)) {
        plan_text_add(t,
                      "Stop: keep the instrument inside the limits of humidity for a few days. ");
    }
    if (sil_withheld_by(why, SIL_NOT_TUNED)) {
        plan_text_add(t, "Tune to pitch and let the neck settle. ");
    }
}

static void check_stop(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Nothing is cut until this is right.");
}

static void plan_say_measure_relief(const sil_plan *plan, text *t)
{
    plan_text_add(
        t,
        "Read the relief: hold a string down on frets 1 and %d and read the gap over fret %d "
        "with a feeler; or lay a straightedge on the same crowns.",
        plan->bench.board.join, plan->bench.board.relief_at);
}

static void plan_say_straightedge(const sil_plan *plan, text *t)
{
    plan_text_add(
        t,
        "Lay a straightedge on the crowns of frets 1 and %d. Light under it over fret %d is "
        "relief; if it rocks there, rest it on two equal shims: gap less shim is the "
        "back-bow, with a minus.",
        plan->bench.board.join, plan->bench.board.relief_at);
}

static void plan_say_read_crowns(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(
        t, "Look at the crowns of frets 1 to 3 under each string: dents and flats by eye and "
           "fingertip, a rocker over each three. Write how deep, or that they are sound.");
}

/* Strings whose gap at fret 1 was not read, or read as 0: nothing there, or on the fret. */
static string_list first_missing(const sil_plan *plan, bool on_the_fret)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    string_list list = {.count = plan->job->string_count};
    for (int i = 0; i < list.count; i++) {
        bool settled = gaps->first[i] > 0.0 || gaps->first_open[i] > 0.0;
        bool nought = gaps->first[i] == 0.0 || gaps->first_open[i] == 0.0;
        list.chosen[i] = !settled && nought == on_the_fret;
    }
    return list;
}

static void plan_say_measure_first(const sil_plan *plan, text *t)
{
    string_list missing = first_missing(plan, false);
    string_list on_fret = first_missing(plan, true);
    if (plan_text_chosen(&missing) > 0) {
        plan_text_add(t, "Read the gap at the 1st fret of ");
        plan_text_which(t, &missing);
        plan_text_add(t, ", held at the 3rd. ");
    }
    if (plan_text_chosen(&on_fret) > 0) {
        plan_text_add(t, "Held at the 3rd, ");
        plan_text_which(t, &on_fret);
        plan_text_add(
            t, " lies on the 1st fret, or would lie under it: that gives no figure. Read the gap "
               "of the open string there and write it beside, as the open gap; if it lies on the "
               "fret open "
               "too, raise it on a slip of paper in its slot and read then.");
    }
}

static void plan_say_measure_action(const sil_plan *plan, text *t)
{
    string_list missing = {.count = plan->job->string_count};
    for (int i = 0; i < missing.count; i++) {
        missing.chosen[i] = !(plan->bench.gaps.action[i] > 0.0);
    }
    plan_text_add(t, "Read the open action at the 12th fret of ");
    plan_text_which(t, &missing);
    plan_text_add(t, "; where it lies on a fret, raise it until it does not, and read then.");
}

static void plan_say_gaps_again(const sil_plan *plan, text *t)
{
    string_list apart = {.count = plan->job->string_count};
    for (int i = 0; i < apart.count; i++) {
        apart.chosen[i] = plan_gaps_apart(plan, i);
    }
    plan_text_add(t, "Read the gap at the 1st fret of ");
    plan_text_which(t, &apart);
    plan_text_add(t, " again, held and open: the two tell of different slots.");
}

static void plan_say_measure_crown(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(
        t, "Measure how high the crown of the 1st fret stands over the board, where it is sound: "
           "the feelers to stop at hang on it, and the least error in it is an error in them.");
}

static void plan_say_measure_saddle(const sil_plan *plan, text *t)
{
    plan_text_add(
        t,
        "Before the saddle is sanded, measure it: by caliper from its seat to the underside of ");
    if (plan->job->string_count > 1) {
        plan_text_add(t, "strings 1 and %d", plan->job->string_count);
    } else {
        plan_text_add(t, "the string");
    }
    plan_text_add(
        t,
        ", and the depth of its slot. Without them nobody knows how far it will stand out of the "
        "bridge, nor what the caliper is to read.");
}

static void check_written(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Write it on the sheet and plan again.");
}

static void plan_say_read_again(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(
        t, "Tune, let it settle overnight if you can, and read everything again: relief, gap "
           "at the 1st fret, action.");
}

static void check_read_again(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Nut and saddle are not cut before: their figures today are a forecast.");
}

/* Crowns past the limit in one direction: "fret 1 0.12, fret 2 0.09". */
static void add_crowns(const sil_plan *plan, sil_code code, text *t)
{
    const char *gap = "";
    for (int k = 0; k < plan->finding_count; k++) {
        const sil_finding *finding = &plan->findings[k];
        if (finding->code == code) {
            plan_text_add(t, "%sfret %d ", gap, finding->fret);
            plan_text_length(t, finding->read, SIL_NEAREST);
            gap = ", ";
        }
    }
}

static void plan_say_seat(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Seat or spot-dress what stands proud: ");
    add_crowns(plan, SIL_FRET_HIGH, t);
    plan_text_add(t, ". Touch nothing else.");
}

static void check_seat(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "A rocker over each three frets lies still.");
}

static void plan_say_level(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Level the frets with the neck straight, down to the deepest dent: ");
    plan_text_length_unit(t, plan->stages.level_depth, SIL_NEAREST);
    plan_text_add(t, " off every crown (dents: ");
    add_crowns(plan, SIL_FRET_WORN, t);
    plan_text_add(t, "); crown and polish; set the rod back.");
}

static void check_level(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Crowns in one line, no dent left");
    if (sil_known(plan->bench.crown)) {
        plan_text_add(t, ", ");
        plan_text_length_unit(t, plan->bench.crown - plan->stages.level_depth, SIL_NEAREST);
        plan_text_add(t, " high over the board");
    }
    plan_text_add(t, ".");
}

static void plan_say_new_frets(const sil_plan *plan, text *t)
{
    plan_text_add(t, "New frets (dents: ");
    add_crowns(plan, SIL_FRET_WORN, t);
    plan_text_add(t, "): levelled to the deepest dent, the crowns would be thinner than ");
    plan_text_length_unit(t, plan->bench.least_crown, SIL_NEAREST);
    plan_text_add(t, ".");
}

static void check_new_frets(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Crowns in one line under a straightedge.");
}

static void plan_say_check(const sil_plan *plan, text *t)
{
    plan_text_add(t, plan->done
                         ? "Done: every reading is in its range and nothing is left to cut. Play "
                           "every string at every "
                           "fret and listen."
                         : "Tune, read everything again, write it on the sheet and plan again.");
}

static void check_check(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Done when every reading is in its range.");
}

typedef struct step_words {
    say *what, *check;
} step_words;

static const step_words acts[SIL_ACTS] = {
    [SIL_ACT_PREPARE] = {plan_say_prepare, check_prepare},
    [SIL_ACT_STOP] = {plan_say_stop, check_stop},
    [SIL_ACT_MEASURE_RELIEF] = {plan_say_measure_relief, check_written},
    [SIL_ACT_STRAIGHTEDGE] = {plan_say_straightedge, check_written},
    [SIL_ACT_READ_CROWNS] = {plan_say_read_crowns, check_written},
    [SIL_ACT_MEASURE_FIRST] = {plan_say_measure_first, check_written},
    [SIL_ACT_MEASURE_ACTION] = {plan_say_measure_action, check_written},
    [SIL_ACT_READ_GAPS_AGAIN] = {plan_say_gaps_again, check_written},
    [SIL_ACT_MEASURE_CROWN] = {plan_say_measure_crown, check_written},
    [SIL_ACT_MEASURE_SADDLE] = {plan_say_measure_saddle, check_written},
    [SIL_ACT_FIND_ROD] = {plan_say_find_rod, check_written},
    [SIL_ACT_ROD_BY_EAR] = {plan_say_rod_by_ear, plan_check_rod_by_ear},
    [SIL_ACT_NECK_BOW] = {plan_say_neck_bow, check_stop},
    [SIL_ACT_ROD] = {plan_say_rod, plan_check_rod},
    [SIL_ACT_READ_AGAIN] = {plan_say_read_again, check_read_again},
    [SIL_ACT_SEAT_FRETS] = {plan_say_seat, check_seat},
    [SIL_ACT_LEVEL_FRETS] = {plan_say_level, check_level},
    [SIL_ACT_NEW_FRETS] = {plan_say_new_frets, check_new_frets},
    [SIL_ACT_FILE_SLOTS] = {plan_say_file, plan_check_filed},
    [SIL_ACT_FILL_SLOT] = {plan_say_fill, plan_check_filled},
    [SIL_ACT_SHIM_NUT] = {plan_say_shim_nut, plan_check_first},
    [SIL_ACT_NEW_NUT] = {plan_say_new_nut, plan_check_first},
    [SIL_ACT_SAND_SADDLE] = {plan_say_sand, plan_check_sand},
    [SIL_ACT_DRESS_SADDLE] = {plan_say_dress, plan_check_action},
    [SIL_ACT_SHIM_SADDLE] = {plan_say_shim_saddle, plan_check_shimmed},
    [SIL_ACT_NEW_SADDLE] = {plan_say_new_saddle, plan_check_action},
    [SIL_ACT_TURN_SCREWS] = {plan_say_screws, plan_check_action},
    [SIL_ACT_TURN_POSTS] = {plan_say_posts, plan_check_action},
    [SIL_ACT_BRIDGE_CURVE] = {plan_say_curve, plan_check_action},
    [SIL_ACT_ZERO_FRET] = {plan_say_zero_fret, plan_check_zero_fret},
    [SIL_ACT_NECK_SHIM] = {plan_say_neck_shim, plan_check_neck},
    [SIL_ACT_NECK_RESET] = {plan_say_neck_reset, plan_check_neck},
    [SIL_ACT_NECK_ANGLE] = {plan_say_neck_angle, plan_check_neck_angle},
    [SIL_ACT_CHECK] = {plan_say_check, check_check},
};

size_t sil_step_do(const sil_plan *plan, int step, sil_unit unit, char *out, size_t size)
{
    text t;
    plan_text_begin(&t, out, size, unit);
    acts[plan->steps[step].act].what(plan, &t);
    return plan_text_end(&t);
}

size_t sil_step_check(const sil_plan *plan, int step, sil_unit unit, char *out, size_t size)
{
    text t;
    plan_text_begin(&t, out, size, unit);
    acts[plan->steps[step].act].check(plan, &t);
    return plan_text_end(&t);
}
