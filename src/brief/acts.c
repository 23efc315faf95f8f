/* SPDX-License-Identifier: MIT */
/* The words of every act, all in one place: the fixed word for scripts, the two sentences of the
 * step, and the few words for a table of many sheets. */
#include "acts.h"

static const unsigned cutting = ACT_CUTTING, parting = ACT_PARTING | ACT_CUTTING,
                      gluing = ACT_CUTTING | ACT_GLUING;

/* A figure at which the step does not stop. */
static act_figure shown_as(const char *of, const char *label)
{
    return (act_figure){of, label, NULL};
}

act_words act_words_of(sil_act act)
{
    switch (act) {
    case SIL_ACT_PREPARE:
        return (act_words){.word = "prepare", .what = say_prepare, .check = say_check_prepare};
    case SIL_ACT_STOP:
        return (act_words){.word = "stop", .what = say_stop, .check = say_check_stop};
    case SIL_ACT_MEASURE_RELIEF:
        return (act_words){.word = "measure-relief",
                           .what = say_measure_relief,
                           .check = say_check_written,
                           .next = "measure the relief"};
    case SIL_ACT_STRAIGHTEDGE:
        return (act_words){.word = "straightedge",
                           .what = say_straightedge,
                           .check = say_check_written,
                           .next = "lay on a straightedge"};
    case SIL_ACT_READ_CROWNS:
        return (act_words){.word = "look-at-frets",
                           .what = say_read_crowns,
                           .check = say_check_written,
                           .next = "look at the frets"};
    case SIL_ACT_LOOK_AT_SADDLE:
        return (act_words){.word = "look-at-saddle",
                           .what = say_look_at_saddle,
                           .check = say_check_written,
                           .next = "look at the saddle's fit"};
    case SIL_ACT_FIT_SADDLE:
        return (act_words){.word = "fit-saddle",
                           .what = say_fit_saddle,
                           .check = say_check_fit,
                           .next = "fit the saddle",
                           .dangers = parting};
    case SIL_ACT_MEASURE_FIRST:
        return (act_words){.word = "measure-first",
                           .what = say_measure_first,
                           .check = say_check_written,
                           .next = "measure gaps at fret 1"};
    case SIL_ACT_MEASURE_ACTION:
        return (act_words){.word = "measure-action",
                           .what = say_measure_action,
                           .check = say_check_written,
                           .next = "measure the action"};
    case SIL_ACT_READ_GAPS_AGAIN:
        return (act_words){.word = "measure-gaps-again",
                           .what = say_gaps_again,
                           .check = say_check_written,
                           .next = "measure fret 1 again"};
    case SIL_ACT_READ_ODD:
        return (act_words){.word = "measure-odd",
                           .what = say_measure_odd,
                           .check = say_check_odd,
                           .next = "measure again"};
    case SIL_ACT_MEASURE_CROWN:
        return (act_words){.word = "measure-fret-height",
                           .what = say_measure_crown,
                           .check = say_check_written,
                           .next = "measure a fret's height"};
    case SIL_ACT_MEASURE_SADDLE:
        return (act_words){.word = "measure-saddle",
                           .what = say_measure_saddle,
                           .check = say_check_written,
                           .next = "measure the saddle"};
    case SIL_ACT_FIND_ROD:
        return (act_words){.word = "find-rod",
                           .what = say_find_rod,
                           .check = say_check_written,
                           .next = "look for a truss rod"};
    case SIL_ACT_ROD_BY_EAR:
        return (act_words){.word = "rod-by-ear",
                           .what = say_rod_by_ear,
                           .check = say_check_rod_by_ear,
                           .next = "turn the rod, by ear"};
    case SIL_ACT_NECK_BOW:
        return (act_words){
            .word = "neck-bow",
            .what = say_neck_bow,
            .check = say_check_stop,
            .next = "neck to a repairer",
            .large = {shown_as("relief", "the relief is"), shown_as("relief-limit", "at most")}};
    case SIL_ACT_ROD_FIRST:
        return (act_words){.word = "rod-first",
                           .what = say_rod_first,
                           .check = say_check_rod_first,
                           .next = "put the truss rod right",
                           .large = {shown_as("relief", "the relief is"),
                                     shown_as("relief-target", "it is to be")}};
    case SIL_ACT_BACK_BOW:
        return (act_words){.word = "back-bow",
                           .what = say_back_bow,
                           .check = say_check_back_bow,
                           .next = "ease the back-bow",
                           .large = {shown_as("relief", "the relief is"),
                                     shown_as("relief-target", "it is to be")}};
    case SIL_ACT_ROD:
        return (act_words){.word = "rod",
                           .what = say_rod,
                           .check = say_check_rod,
                           .next = "turn the truss rod",
                           .main = "relief-target",
                           .large = {shown_as("relief-target", "bring the relief to"),
                                     shown_as("relief", "it is now")}};
    case SIL_ACT_READ_AGAIN:
        return (act_words){.word = "measure-again",
                           .what = say_read_again,
                           .check = say_check_read_again,
                           .next = "measure everything again"};
    case SIL_ACT_SEAT_FRETS:
        return (act_words){.word = "seat-frets",
                           .what = say_seat,
                           .check = say_check_seat,
                           .next = "seat the proud frets",
                           .main = "proud",
                           .dangers = gluing,
                           .large = {shown_as("proud", "stands proud by")}};
    case SIL_ACT_LEVEL_FRETS:
        return (act_words){.word = "level-frets",
                           .what = say_level,
                           .check = say_check_level,
                           .next = "level the frets",
                           .main = "level",
                           .dangers = cutting,
                           .large = {shown_as("level", "off every fret")}};
    case SIL_ACT_NEW_FRETS:
        return (act_words){.word = "new-frets",
                           .what = say_new_frets,
                           .check = say_check_new_frets,
                           .next = "new frets",
                           .dangers = gluing,
                           .large = {shown_as("worn", "worn by")}};
    case SIL_ACT_FILE_SLOTS:
        return (act_words){.word = "file-slots",
                           .what = say_file,
                           .first = say_doubted_high,
                           .check = say_check_filed,
                           .next = "file the nut slots",
                           .main = "slot",
                           .dangers = cutting,
                           .large = {{"stack", "stop at feelers of", " to feelers of"},
                                     shown_as("slot", "deeper, this pass")}};
    case SIL_ACT_FILL_SLOT:
        return (act_words){
            .word = "fill-slot",
            .what = say_fill,
            .first = say_doubted_low,
            .check = say_check_filled,
            .next = "fill and recut a nut slot",
            .main = "slot",
            .dangers = gluing,
            .large = {{"stack-first", "recut at first to feelers of", ", at first to feelers of"},
                      shown_as("slot", "under its target by")}};
    case SIL_ACT_SHIM_NUT:
        return (act_words){.word = "shim-nut",
                           .what = say_shim_nut,
                           .first = say_doubted_low,
                           .check = say_check_shimmed_nut,
                           .next = "shim the nut",
                           .main = "shim",
                           .dangers = parting,
                           .large = {shown_as("shim", "shim, full length"),
                                     shown_as("stack-first", "then at first to feelers of")}};
    case SIL_ACT_SAND_SADDLE:
        return (act_words){
            .word = "sand-saddle",
            .what = say_sand,
            .check = say_check_sand,
            .next = "sand the saddle's bottom",
            .main = "base",
            .dangers = parting,
            .large = {{"caliper", "caliper, bottom to top", " until the caliper reads"},
                      shown_as("base", "off the bottom, this pass")}};
    case SIL_ACT_DRESS_SADDLE:
        return (act_words){.word = "dress-saddle",
                           .what = say_dress,
                           .check = say_check_dress,
                           .next = "dress the saddle's top",
                           .main = "top",
                           .dangers = cutting,
                           .large = {shown_as("top", "off the top, this pass")}};
    case SIL_ACT_SHIM_SADDLE:
        return (act_words){.word = "shim-saddle",
                           .what = say_shim_saddle,
                           .check = say_check_shimmed,
                           .next = "shim the saddle",
                           .main = "shim",
                           .dangers = parting,
                           .large = {shown_as("shim", "shim, full length")}};
    case SIL_ACT_NEW_SADDLE:
        return (act_words){
            .word = "new-saddle",
            .what = say_new_saddle,
            .check = say_check_new_saddle,
            .next = "new saddle",
            .dangers = parting,
            .large = {{"height-first", "at first, over its bottom", ", at first to a height of"},
                      shown_as("height", "final")}};
    case SIL_ACT_TURN_SCREWS:
        return (act_words){.word = "turn-screws",
                           .what = say_screws,
                           .check = say_check_action,
                           .next = "turn the height screws",
                           .main = "screw",
                           .large = {shown_as("turns", "turns, both screws"),
                                     shown_as("screw", "which moves it by")}};
    case SIL_ACT_TURN_POSTS:
        return (act_words){
            .word = "turn-posts",
            .what = say_posts,
            .check = say_check_action,
            .next = "turn the bridge's posts",
            .main = "screw",
            .large = {shown_as("turns", "turns"), shown_as("screw", "which moves it by")}};
    case SIL_ACT_BRIDGE_CURVE:
        return (act_words){.word = "bridge-curve",
                           .what = say_curve,
                           .check = say_check_curve,
                           .next = "fit the bridge's curve",
                           .dangers = cutting};
    case SIL_ACT_ZERO_FRET:
        return (act_words){.word = "zero-fret",
                           .what = say_zero_fret,
                           .check = say_check_zero_fret,
                           .next = "work the zero fret",
                           .main = "zero-fret",
                           .dangers = cutting,
                           .large = {shown_as("zero-fret", "too high by")}};
    case SIL_ACT_RAISE_ZERO_FRET:
        return (act_words){.word = "raise-zero-fret",
                           .what = say_raise_zero_fret,
                           .check = say_check_zero_fret,
                           .next = "raise the zero fret",
                           .main = "zero-fret-over",
                           .dangers = cutting,
                           .large = {shown_as("zero-fret-height", "fret height before dressing"),
                                     shown_as("zero-fret-over", "over the other frets")}};
    case SIL_ACT_NECK_ANGLE:
        return (act_words){.word = "neck-angle",
                           .what = say_neck_angle,
                           .check = say_check_neck_angle,
                           .next = "neck to a repairer"};
    case SIL_ACT_NECK_SHIM:
        return (act_words){.word = "neck-shim",
                           .what = say_neck_shim,
                           .check = say_check_neck,
                           .next = "neck to a repairer",
                           .large = {shown_as("wedge", "wedge, at its thick end"),
                                     shown_as("lift", "frets higher by")}};
    case SIL_ACT_NECK_RESET:
        return (act_words){.word = "neck-reset",
                           .what = say_neck_reset,
                           .check = say_check_neck,
                           .next = "neck to a repairer",
                           .large = {shown_as("heel", "off the heel, about"),
                                     shown_as("lift", "frets higher by")}};
    case SIL_ACT_TUNE_SCREWS:
        return (act_words){
            .word = "tune-screws",
            .what = say_tune_screws,
            .check = say_check_cents,
            .next = "turn intonation screws",
            .large = {shown_as("tune", "move it by"), shown_as("tune-turns", "turns")}};
    case SIL_ACT_TUNE_ENDS:
        return (act_words){.word = "tune-ends",
                           .what = say_tune_ends,
                           .check = say_check_cents,
                           .next = "move the bridge",
                           .large = {shown_as("tune-end", "move that end by")}};
    case SIL_ACT_FILE_PEAKS:
        return (act_words){.word = "file-peaks",
                           .what = say_file_peaks,
                           .check = say_check_peaks,
                           .next = "file the saddle's peaks",
                           .dangers = cutting,
                           .large = {shown_as("peak", "peak, from the front edge")}};
    case SIL_ACT_TUNED_SADDLE:
        return (act_words){.word = "tuned-saddle",
                           .what = say_tuned_saddle,
                           .check = say_check_peaks,
                           .next = "new saddle, for tune",
                           .dangers = parting,
                           .large = {shown_as("thick", "as thick as")}};
    case SIL_ACT_FIT_NUT:
        return (act_words){.word = "fit-nut-blank",
                           .what = say_fit_nut,
                           .check = say_check_fit_blank,
                           .next = "new nut: fit a blank",
                           .dangers = parting,
                           .goes_on = true,
                           .large = {shown_as("thickness", "push fit, about"),
                                     shown_as("length", "cut it to a length of")}};
    case SIL_ACT_MARK_NUT:
        return (act_words){.word = "mark-nut",
                           .what = say_mark_nut,
                           .check = say_check_mark_nut,
                           .next = "new nut: mark its slots",
                           .dangers = cutting,
                           .goes_on = true,
                           .large = {shown_as("centre", "from the bass end")}};
    case SIL_ACT_CUT_NUT:
        return (act_words){
            .word = "cut-nut-slots",
            .what = say_cut_nut,
            .check = say_check_cut_nut,
            .next = "new nut: cut its slots",
            .dangers = cutting,
            .goes_on = true,
            .large = {{"stack-first", "at first, feelers of", ", at first to feelers of"},
                      shown_as("stack", "final")}};
    case SIL_ACT_SHAPE_NUT:
        return (act_words){.word = "shape-nut",
                           .what = say_shape_nut,
                           .check = say_check_shape_nut,
                           .next = "new nut: shape its top",
                           .dangers = gluing,
                           .large = {shown_as("depth", "depth when done"),
                                     shown_as("height", "height of the nut")}};
    case SIL_ACT_MEASURE_BRIDGE:
        return (act_words){.word = "measure-bridge",
                           .what = say_measure_bridge,
                           .check = say_check_written,
                           .next = "measure the bridge"};
    case SIL_ACT_FIT_BLANK:
        return (act_words){.word = "fit-saddle-blank",
                           .what = say_fit_blank,
                           .check = say_check_fit_blank,
                           .next = "new saddle: fit a blank",
                           .dangers = parting,
                           .goes_on = true,
                           .large = {shown_as("thickness", "push fit, about"),
                                     shown_as("length", "cut it to a length of")}};
    case SIL_ACT_SHAPE_SADDLE:
        return (act_words){
            .word = "shape-saddle",
            .what = say_shape_saddle,
            .check = say_check_shape_saddle,
            .next = "new saddle: shape its top",
            .dangers = cutting,
            .large = {{"height-first", "at first, over its bottom", ", at first to a height of"},
                      shown_as("height", "final")}};
    case SIL_ACT_READ_NEW:
        return (act_words){.word = "measure-new-part",
                           .what = say_read_new,
                           .check = say_check_read_new,
                           .next = "measure with it in"};
    case SIL_ACT_CHOOSE:
        return (act_words){.word = "choose-attack",
                           .what = say_choose,
                           .check = say_check_written,
                           .next = "choose target or pick"};
    case SIL_ACT_CHECK:
        return (act_words){.word = "check", .what = say_check, .check = say_check_check};
    case SIL_ACTS:
        break;
    }
    return (act_words){.what = say_check_written, .check = say_check_written};
}

const char *act_called(const sil_plan *plan, sil_act act)
{
    return act == SIL_ACT_TURN_POSTS && plan->saddle.working == SIL_WORKING_THUMBWHEELS
               ? "turn the thumbwheels"
               : act_words_of(act).next;
}

const char *sil_act_word(sil_act act)
{
    return act_words_of(act).word;
}
