/* SPDX-License-Identifier: MIT */
/* The words of the steps: what to do, and what to check by. One row an act. */
#include "say.h"

void say_unit(text *t)
{
    text_add(t, t->unit == SIL_MM ? " mm" : " in");
}

void say_finer(const sil_plan *plan, sil_stage_name stage, text *t)
{
    double tool = plan_finer_tool(plan, stage);
    if (!sil_known(tool)) {
        text_add(t, ", and a finer reading alone would not help: the range wanted is too narrow.");
        return;
    }
    text_add(t, "; read to \xC2\xB1");
    text_length_unit(t, tool, SIL_NEAREST);
    text_add(t, " (%s) one can be told.",
             tool >= 0.05   ? "feelers under the string"
             : tool >= 0.02 ? "feelers in fine steps, or a dial gauge"
                            : "a dial indicator");
}

string_list say_strings(const sil_plan *plan, const sil_verdict *verdicts, sil_verdict wanted,
                        const double *value)
{
    string_list list = {.count = plan->job->string_count};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = verdicts[i] == wanted;
        list.value[i] = value[i];
    }
    return list;
}

string_list say_known(const sil_plan *plan, const double *value)
{
    string_list list = {.count = plan->job->string_count};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = sil_known(value[i]);
        list.value[i] = value[i];
    }
    return list;
}

static void say_prepare(const sil_plan *plan, text *t)
{
    const sil_reading *reading = sil_plan_reading(plan);
    const sil_limits *limits = &plan->job->limits;
    char low[32];
    char high[32];
    sil_number_write(low, sizeof low, limits->humidity_low_pct, 0);
    sil_number_write(high, sizeof high, limits->humidity_high_pct, 0);
    if (reading && reading->condition.strings == SIL_UNSOUND) {
        text_add(t, "First new strings: these are worn. Tune, let them settle, and read again. ");
    }
    static const char *const bridges[] = {
        [SIL_SADDLE_KIND_NOT_GIVEN] = "bridge flat down",
        [SIL_SADDLE_SLOTTED] = "bridge flat down, no brace loose",
        [SIL_SADDLE_GLUED] = "bridge flat down, no brace loose",
        [SIL_SADDLE_INDIVIDUAL] = "bridge firm on the body",
        [SIL_SADDLE_TWO_POST] = "bridge upright on its posts",
        [SIL_SADDLE_FLOATING] = "bridge upright where it belongs, its feet flat on the top",
    };
    text_add(t,
             "Before anything is cut: %s, good strings at pitch, instrument in playing position, "
             "humidity %s to %s %%.",
             bridges[plan->job->saddle.kind], low, high);
}

static void check_prepare(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "The readings were taken so; if not, take them again.");
}

static void say_stop(const sil_plan *plan, text *t)
{
    const sil_withheld *why = &plan->nut_withheld;
    if (sil_withheld_by(why, SIL_BRIDGE_LIFTED) || sil_withheld_by(why, SIL_BRACES_LOOSE)) {
        text_add(t, "Stop: slack the strings; have bridge and braces glued by a qualified "
                    "repairer. ");
    }
    if (sil_withheld_by(why, SIL_CLIMATE)) {
        text_add(t, "Stop: keep the instrument inside the limits of humidity for a few days. ");
    }
    if (sil_withheld_by(why, SIL_NOT_TUNED)) {
        text_add(t, "Tune to pitch and let the neck settle. ");
    }
}

static void check_stop(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Nothing is cut until this is right.");
}

static void say_measure_relief(const sil_plan *plan, text *t)
{
    text_add(t,
             "Read the relief: hold a string down on frets 1 and %d and read the gap over fret %d "
             "with a feeler; or lay a straightedge on the same crowns.",
             plan->bench.board.join, plan->bench.board.relief_at);
}

static void say_straightedge(const sil_plan *plan, text *t)
{
    text_add(t,
             "Lay a straightedge on the crowns of frets 1 and %d. Light under it over fret %d is "
             "relief; if it rocks there, rest it on two equal shims: gap less shim is the "
             "back-bow, with a minus.",
             plan->bench.board.join, plan->bench.board.relief_at);
}

static void say_read_crowns(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Look at the crowns of frets 1 to 3 under each string: dents and flats by eye and "
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

static void say_measure_first(const sil_plan *plan, text *t)
{
    string_list missing = first_missing(plan, false);
    string_list on_fret = first_missing(plan, true);
    if (text_chosen(&missing) > 0) {
        text_add(t, "Read the gap at the 1st fret of ");
        text_which(t, &missing);
        text_add(t, ", held at the 3rd. ");
    }
    if (text_chosen(&on_fret) > 0) {
        text_add(t, "Held at the 3rd, ");
        text_which(t, &on_fret);
        text_add(t,
                 " lies on the 1st fret, or would lie under it: that gives no figure. Read the gap "
                 "of the open string there and write it beside, as the open gap; if it lies on the "
                 "fret open "
                 "too, raise it on a slip of paper in its slot and read then.");
    }
}

static void say_measure_action(const sil_plan *plan, text *t)
{
    string_list missing = {.count = plan->job->string_count};
    for (int i = 0; i < missing.count; i++) {
        missing.chosen[i] = !(plan->bench.gaps.action[i] > 0.0);
    }
    text_add(t, "Read the open action at the 12th fret of ");
    text_which(t, &missing);
    text_add(t, "; where it lies on a fret, raise it until it does not, and read then.");
}

static void say_gaps_again(const sil_plan *plan, text *t)
{
    string_list apart = {.count = plan->job->string_count};
    for (int i = 0; i < apart.count; i++) {
        apart.chosen[i] = plan_gaps_apart(plan, i);
    }
    text_add(t, "Read the gap at the 1st fret of ");
    text_which(t, &apart);
    text_add(t, " again, held and open: the two tell of different slots.");
}

static void say_measure_crown(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t,
             "Measure how high the crown of the 1st fret stands over the board, where it is sound: "
             "the feelers to stop at hang on it, and the least error in it is an error in them.");
}

static void say_measure_saddle(const sil_plan *plan, text *t)
{
    text_add(
        t,
        "Before the saddle is sanded, measure it: by caliper from its seat to the underside of ");
    if (plan->job->string_count > 1) {
        text_add(t, "strings 1 and %d", plan->job->string_count);
    } else {
        text_add(t, "the string");
    }
    text_add(
        t,
        ", and the depth of its slot. Without them nobody knows how far it will stand out of the "
        "bridge, nor what the caliper is to read.");
}

static void check_written(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Write it on the sheet and plan again.");
}

static void say_read_again(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Tune, let it settle overnight if you can, and read everything again: relief, gap "
                "at the 1st fret, action.");
}

static void check_read_again(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Nut and saddle are not cut before: their figures today are a forecast.");
}

/* Crowns past the limit in one direction: "fret 1 0.12, fret 2 0.09". */
static void add_crowns(const sil_plan *plan, sil_code code, text *t)
{
    const char *gap = "";
    for (int k = 0; k < plan->finding_count; k++) {
        const sil_finding *finding = &plan->findings[k];
        if (finding->code == code) {
            text_add(t, "%sfret %d ", gap, finding->fret);
            text_length(t, finding->read, SIL_NEAREST);
            gap = ", ";
        }
    }
}

static void say_seat(const sil_plan *plan, text *t)
{
    text_add(t, "Seat or spot-dress what stands proud: ");
    add_crowns(plan, SIL_FRET_HIGH, t);
    text_add(t, ". Touch nothing else.");
}

static void check_seat(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "A rocker over each three frets lies still.");
}

static void say_level(const sil_plan *plan, text *t)
{
    text_add(t, "Level the frets with the neck straight, down to the deepest dent: ");
    text_length_unit(t, plan->stages.level_depth, SIL_NEAREST);
    text_add(t, " off every crown (dents: ");
    add_crowns(plan, SIL_FRET_WORN, t);
    text_add(t, "); crown and polish; set the rod back.");
}

static void check_level(const sil_plan *plan, text *t)
{
    text_add(t, "Crowns in one line, no dent left");
    if (sil_known(plan->bench.crown)) {
        text_add(t, ", ");
        text_length_unit(t, plan->bench.crown - plan->stages.level_depth, SIL_NEAREST);
        text_add(t, " high over the board");
    }
    text_add(t, ".");
}

static void say_new_frets(const sil_plan *plan, text *t)
{
    text_add(t, "New frets (dents: ");
    add_crowns(plan, SIL_FRET_WORN, t);
    text_add(t, "): levelled to the deepest dent, the crowns would be thinner than ");
    text_length_unit(t, plan->bench.least_crown, SIL_NEAREST);
    text_add(t, ".");
}

static void check_new_frets(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Crowns in one line under a straightedge.");
}

static void say_check(const sil_plan *plan, text *t)
{
    text_add(t, plan->done ? "Done: every reading is in its range and nothing is left to cut. Play "
                             "every string at every "
                             "fret and listen."
                           : "Tune, read everything again, write it on the sheet and plan again.");
}

static void check_check(const sil_plan *plan, text *t)
{
    (void)plan;
    text_add(t, "Done when every reading is in its range.");
}

typedef struct step_words {
    say *what, *check;
} step_words;

static const step_words acts[SIL_ACTS] = {
    [SIL_ACT_PREPARE] = {say_prepare, check_prepare},
    [SIL_ACT_STOP] = {say_stop, check_stop},
    [SIL_ACT_MEASURE_RELIEF] = {say_measure_relief, check_written},
    [SIL_ACT_STRAIGHTEDGE] = {say_straightedge, check_written},
    [SIL_ACT_READ_CROWNS] = {say_read_crowns, check_written},
    [SIL_ACT_MEASURE_FIRST] = {say_measure_first, check_written},
    [SIL_ACT_MEASURE_ACTION] = {say_measure_action, check_written},
    [SIL_ACT_READ_GAPS_AGAIN] = {say_gaps_again, check_written},
    [SIL_ACT_MEASURE_CROWN] = {say_measure_crown, check_written},
    [SIL_ACT_MEASURE_SADDLE] = {say_measure_saddle, check_written},
    [SIL_ACT_FIND_ROD] = {say_find_rod, check_written},
    [SIL_ACT_ROD_BY_EAR] = {say_rod_by_ear, check_rod_by_ear},
    [SIL_ACT_NECK_BOW] = {say_neck_bow, check_stop},
    [SIL_ACT_ROD] = {say_rod, check_rod},
    [SIL_ACT_READ_AGAIN] = {say_read_again, check_read_again},
    [SIL_ACT_SEAT_FRETS] = {say_seat, check_seat},
    [SIL_ACT_LEVEL_FRETS] = {say_level, check_level},
    [SIL_ACT_NEW_FRETS] = {say_new_frets, check_new_frets},
    [SIL_ACT_FILE_SLOTS] = {say_file, check_filed},
    [SIL_ACT_FILL_SLOT] = {say_fill, check_filled},
    [SIL_ACT_SHIM_NUT] = {say_shim_nut, check_first},
    [SIL_ACT_NEW_NUT] = {say_new_nut, check_first},
    [SIL_ACT_SAND_SADDLE] = {say_sand, check_sand},
    [SIL_ACT_DRESS_SADDLE] = {say_dress, check_action},
    [SIL_ACT_SHIM_SADDLE] = {say_shim_saddle, check_shimmed},
    [SIL_ACT_NEW_SADDLE] = {say_new_saddle, check_action},
    [SIL_ACT_TURN_SCREWS] = {say_screws, check_action},
    [SIL_ACT_TURN_POSTS] = {say_posts, check_action},
    [SIL_ACT_BRIDGE_CURVE] = {say_curve, check_action},
    [SIL_ACT_ZERO_FRET] = {say_zero_fret, check_zero_fret},
    [SIL_ACT_NECK_SHIM] = {say_neck_shim, check_neck},
    [SIL_ACT_NECK_RESET] = {say_neck_reset, check_neck},
    [SIL_ACT_NECK_ANGLE] = {say_neck_angle, check_neck_angle},
    [SIL_ACT_CHECK] = {say_check, check_check},
};

size_t sil_step_do(const sil_plan *plan, int step, sil_unit unit, char *out, size_t size)
{
    text t;
    text_begin(&t, out, size, unit);
    acts[plan->steps[step].act].what(plan, &t);
    return text_end(&t);
}

size_t sil_step_check(const sil_plan *plan, int step, sil_unit unit, char *out, size_t size)
{
    text t;
    text_begin(&t, out, size, unit);
    acts[plan->steps[step].act].check(plan, &t);
    return text_end(&t);
}
