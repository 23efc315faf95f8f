/* SPDX-License-Identifier: MIT */
/* The words of every act, all in one place: the fixed word for scripts, the two sentences of the
 * step, and the few words for a table of many sheets. */
#include "acts.h"

act_words act_words_of(sil_act act)
{
    switch (act) {
    case SIL_ACT_PREPARE:
        return (act_words){"prepare", say_prepare, say_check_prepare, NULL, NULL};
    case SIL_ACT_STOP:
        return (act_words){"stop", say_stop, say_check_stop, NULL, NULL};
    case SIL_ACT_MEASURE_RELIEF:
        return (act_words){"measure-relief", say_measure_relief, say_check_written,
                           "measure the relief", NULL};
    case SIL_ACT_STRAIGHTEDGE:
        return (act_words){"straightedge", say_straightedge, say_check_written,
                           "lay on a straightedge", NULL};
    case SIL_ACT_READ_CROWNS:
        return (act_words){"look-at-frets", say_read_crowns, say_check_written, "look at the frets",
                           NULL};
    case SIL_ACT_LOOK_AT_SADDLE:
        return (act_words){"look-at-saddle", say_look_at_saddle, say_check_written,
                           "look at the saddle's fit", NULL};
    case SIL_ACT_FIT_SADDLE:
        return (act_words){"fit-saddle", say_fit_saddle, say_check_fit, "fit the saddle", NULL};
    case SIL_ACT_MEASURE_FIRST:
        return (act_words){"measure-first", say_measure_first, say_check_written,
                           "measure gaps at fret 1", NULL};
    case SIL_ACT_MEASURE_ACTION:
        return (act_words){"measure-action", say_measure_action, say_check_written,
                           "measure the action", NULL};
    case SIL_ACT_READ_GAPS_AGAIN:
        return (act_words){"measure-gaps-again", say_gaps_again, say_check_written,
                           "measure fret 1 again", NULL};
    case SIL_ACT_READ_ODD:
        return (act_words){"measure-odd", say_measure_odd, say_check_odd, "measure again", NULL};
    case SIL_ACT_MEASURE_CROWN:
        return (act_words){"measure-fret-height", say_measure_crown, say_check_written,
                           "measure a fret's height", NULL};
    case SIL_ACT_MEASURE_SADDLE:
        return (act_words){"measure-saddle", say_measure_saddle, say_check_written,
                           "measure the saddle", NULL};
    case SIL_ACT_FIND_ROD:
        return (act_words){"find-rod", say_find_rod, say_check_written, "look for a truss rod",
                           NULL};
    case SIL_ACT_ROD_BY_EAR:
        return (act_words){"rod-by-ear", say_rod_by_ear, say_check_rod_by_ear,
                           "turn the rod, by ear", NULL};
    case SIL_ACT_NECK_BOW:
        return (act_words){"neck-bow", say_neck_bow, say_check_stop, "neck to a repairer", NULL};
    case SIL_ACT_ROD:
        return (act_words){"rod", say_rod, say_check_rod, "turn the truss rod", "relief-target"};
    case SIL_ACT_READ_AGAIN:
        return (act_words){"measure-again", say_read_again, say_check_read_again,
                           "measure all again", NULL};
    case SIL_ACT_SEAT_FRETS:
        return (act_words){"seat-frets", say_seat, say_check_seat, "seat the proud frets", "proud"};
    case SIL_ACT_LEVEL_FRETS:
        return (act_words){"level-frets", say_level, say_check_level, "level the frets", "level"};
    case SIL_ACT_NEW_FRETS:
        return (act_words){"new-frets", say_new_frets, say_check_new_frets, "new frets", NULL};
    case SIL_ACT_FILE_SLOTS:
        return (act_words){"file-slots", say_file, say_check_filed, "file the nut slots", "slot"};
    case SIL_ACT_FILL_SLOT:
        return (act_words){"fill-slot", say_fill, say_check_filled, "fill and recut a nut slot",
                           "slot"};
    case SIL_ACT_SHIM_NUT:
        return (act_words){"shim-nut", say_shim_nut, say_check_first, "shim the nut", "shim"};
    case SIL_ACT_NEW_NUT:
        return (act_words){"new-nut", say_new_nut, say_check_first, "new nut", NULL};
    case SIL_ACT_SAND_SADDLE:
        return (act_words){"sand-saddle", say_sand, say_check_sand, "sand the saddle's bottom",
                           "base"};
    case SIL_ACT_DRESS_SADDLE:
        return (act_words){"dress-saddle", say_dress, say_check_action, "dress the saddle's top",
                           "top"};
    case SIL_ACT_SHIM_SADDLE:
        return (act_words){"shim-saddle", say_shim_saddle, say_check_shimmed, "shim the saddle",
                           "shim"};
    case SIL_ACT_NEW_SADDLE:
        return (act_words){"new-saddle", say_new_saddle, say_check_action, "new saddle", NULL};
    case SIL_ACT_TURN_SCREWS:
        return (act_words){"turn-screws", say_screws, say_check_action, "turn the height screws",
                           "screw"};
    case SIL_ACT_TURN_POSTS:
        return (act_words){"turn-posts", say_posts, say_check_action, "turn the bridge's posts",
                           "screw"};
    case SIL_ACT_BRIDGE_CURVE:
        return (act_words){"bridge-curve", say_curve, say_check_action, "fit the bridge's curve",
                           NULL};
    case SIL_ACT_ZERO_FRET:
        return (act_words){"zero-fret", say_zero_fret, say_check_zero_fret, "work the zero fret",
                           "zero-fret"};
    case SIL_ACT_NECK_ANGLE:
        return (act_words){"neck-angle", say_neck_angle, say_check_neck_angle, "neck to a repairer",
                           NULL};
    case SIL_ACT_NECK_SHIM:
        return (act_words){"neck-shim", say_neck_shim, say_check_neck, "neck to a repairer", NULL};
    case SIL_ACT_NECK_RESET:
        return (act_words){"neck-reset", say_neck_reset, say_check_neck, "neck to a repairer",
                           NULL};
    case SIL_ACT_TUNE_SCREWS:
        return (act_words){"tune-screws", say_tune_screws, say_check_cents,
                           "turn intonation screws", NULL};
    case SIL_ACT_TUNE_ENDS:
        return (act_words){"tune-ends", say_tune_ends, say_check_cents, "move the bridge", NULL};
    case SIL_ACT_FILE_PEAKS:
        return (act_words){"file-peaks", say_file_peaks, say_check_peaks, "file the saddle's peaks",
                           NULL};
    case SIL_ACT_TUNED_SADDLE:
        return (act_words){"tuned-saddle", say_tuned_saddle, say_check_peaks,
                           "new saddle, for tune", NULL};
    case SIL_ACT_FIT_NUT:
        return (act_words){"fit-nut-blank", say_fit_nut, say_check_fit_blank,
                           "new nut: fit a blank", NULL};
    case SIL_ACT_MARK_NUT:
        return (act_words){"mark-nut", say_mark_nut, say_check_mark_nut, "new nut: mark its slots",
                           NULL};
    case SIL_ACT_CUT_NUT:
        return (act_words){"cut-nut-slots", say_cut_nut, say_check_cut_nut,
                           "new nut: cut its slots", NULL};
    case SIL_ACT_SHAPE_NUT:
        return (act_words){"shape-nut", say_shape_nut, say_check_shape_nut,
                           "new nut: shape its top", NULL};
    case SIL_ACT_MEASURE_BRIDGE:
        return (act_words){"measure-bridge", say_measure_bridge, say_check_written,
                           "measure the bridge", NULL};
    case SIL_ACT_FIT_BLANK:
        return (act_words){"fit-saddle-blank", say_fit_blank, say_check_fit_blank,
                           "new saddle: fit a blank", NULL};
    case SIL_ACT_SHAPE_SADDLE:
        return (act_words){"shape-saddle", say_shape_saddle, say_check_shape_saddle,
                           "new saddle: shape its top", NULL};
    case SIL_ACT_READ_NEW:
        return (act_words){"measure-new-part", say_read_new, say_check_read_new,
                           "measure with it in", NULL};
    case SIL_ACT_CHOOSE:
        return (act_words){"choose-attack", say_choose, say_check_written, "choose target or pick",
                           NULL};
    case SIL_ACT_CHECK:
        return (act_words){"check", say_check, say_check_check, NULL, NULL};
    case SIL_ACTS:
        break;
    }
    return (act_words){NULL, say_check_written, say_check_written, NULL, NULL};
}

static const char cutting[] = "Wear eye protection. Use dust extraction and a mask.";
static const char parting[] = "Slacken the strings before the part comes out. Wear eye protection. "
                              "Use dust extraction and a mask.";
static const char gluing[] = "Wear eye protection. Use dust extraction and a mask. Ventilate where "
                             "glue is used.";

const char *act_care(sil_act act)
{
    switch (act) {
    case SIL_ACT_FILE_SLOTS:
    case SIL_ACT_ZERO_FRET:
    case SIL_ACT_LEVEL_FRETS:
    case SIL_ACT_DRESS_SADDLE:
    case SIL_ACT_BRIDGE_CURVE:
    case SIL_ACT_MARK_NUT:
    case SIL_ACT_CUT_NUT:
    case SIL_ACT_SHAPE_NUT:
    case SIL_ACT_SHAPE_SADDLE:
    case SIL_ACT_FILE_PEAKS:
        return cutting;
    case SIL_ACT_SHIM_NUT:
    case SIL_ACT_NEW_NUT:
    case SIL_ACT_SAND_SADDLE:
    case SIL_ACT_SHIM_SADDLE:
    case SIL_ACT_NEW_SADDLE:
    case SIL_ACT_FIT_SADDLE:
    case SIL_ACT_TUNED_SADDLE:
    case SIL_ACT_FIT_NUT:
    case SIL_ACT_FIT_BLANK:
        return parting;
    case SIL_ACT_FILL_SLOT:
    case SIL_ACT_SEAT_FRETS:
    case SIL_ACT_NEW_FRETS:
        return gluing;
    case SIL_ACT_PREPARE:
    case SIL_ACT_STOP:
    case SIL_ACT_MEASURE_RELIEF:
    case SIL_ACT_STRAIGHTEDGE:
    case SIL_ACT_READ_CROWNS:
    case SIL_ACT_LOOK_AT_SADDLE:
    case SIL_ACT_MEASURE_FIRST:
    case SIL_ACT_MEASURE_ACTION:
    case SIL_ACT_READ_GAPS_AGAIN:
    case SIL_ACT_READ_ODD:
    case SIL_ACT_MEASURE_CROWN:
    case SIL_ACT_MEASURE_SADDLE:
    case SIL_ACT_MEASURE_BRIDGE:
    case SIL_ACT_FIND_ROD:
    case SIL_ACT_ROD_BY_EAR:
    case SIL_ACT_NECK_BOW:
    case SIL_ACT_ROD:
    case SIL_ACT_READ_AGAIN:
    case SIL_ACT_TURN_SCREWS:
    case SIL_ACT_TURN_POSTS:
    case SIL_ACT_TUNE_SCREWS:
    case SIL_ACT_TUNE_ENDS:
    case SIL_ACT_NECK_ANGLE:
    case SIL_ACT_NECK_SHIM:
    case SIL_ACT_NECK_RESET:
    case SIL_ACT_READ_NEW:
    case SIL_ACT_CHOOSE:
    case SIL_ACT_CHECK:
    case SIL_ACTS:
        break;
    }
    return "";
}

const char *sil_act_word(sil_act act)
{
    return act_words_of(act).word;
}
