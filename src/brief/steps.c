/* SPDX-License-Identifier: MIT */
/* Which sentences each step is told in. */
#include "say.h"
#include "within.h"

typedef struct step_words {
    say *what, *check;
} step_words;

static step_words words_of(sil_act act)
{
    switch (act) {
    case SIL_ACT_PREPARE:
        return (step_words){say_prepare, say_check_prepare};
    case SIL_ACT_STOP:
        return (step_words){say_stop, say_check_stop};
    case SIL_ACT_MEASURE_RELIEF:
        return (step_words){say_measure_relief, say_check_written};
    case SIL_ACT_STRAIGHTEDGE:
        return (step_words){say_straightedge, say_check_written};
    case SIL_ACT_READ_CROWNS:
        return (step_words){say_read_crowns, say_check_written};
    case SIL_ACT_MEASURE_FIRST:
        return (step_words){say_measure_first, say_check_written};
    case SIL_ACT_MEASURE_ACTION:
        return (step_words){say_measure_action, say_check_written};
    case SIL_ACT_READ_GAPS_AGAIN:
        return (step_words){say_gaps_again, say_check_written};
    case SIL_ACT_MEASURE_CROWN:
        return (step_words){say_measure_crown, say_check_written};
    case SIL_ACT_MEASURE_SADDLE:
        return (step_words){say_measure_saddle, say_check_written};
    case SIL_ACT_FIND_ROD:
        return (step_words){say_find_rod, say_check_written};
    case SIL_ACT_ROD_BY_EAR:
        return (step_words){say_rod_by_ear, say_check_rod_by_ear};
    case SIL_ACT_NECK_BOW:
        return (step_words){say_neck_bow, say_check_stop};
    case SIL_ACT_ROD:
        return (step_words){say_rod, say_check_rod};
    case SIL_ACT_READ_AGAIN:
        return (step_words){say_read_again, say_check_read_again};
    case SIL_ACT_SEAT_FRETS:
        return (step_words){say_seat, say_check_seat};
    case SIL_ACT_LEVEL_FRETS:
        return (step_words){say_level, say_check_level};
    case SIL_ACT_NEW_FRETS:
        return (step_words){say_new_frets, say_check_new_frets};
    case SIL_ACT_FILE_SLOTS:
        return (step_words){say_file, say_check_filed};
    case SIL_ACT_FILL_SLOT:
        return (step_words){say_fill, say_check_filled};
    case SIL_ACT_SHIM_NUT:
        return (step_words){say_shim_nut, say_check_first};
    case SIL_ACT_NEW_NUT:
        return (step_words){say_new_nut, say_check_first};
    case SIL_ACT_SAND_SADDLE:
        return (step_words){say_sand, say_check_sand};
    case SIL_ACT_DRESS_SADDLE:
        return (step_words){say_dress, say_check_action};
    case SIL_ACT_SHIM_SADDLE:
        return (step_words){say_shim_saddle, say_check_shimmed};
    case SIL_ACT_NEW_SADDLE:
        return (step_words){say_new_saddle, say_check_action};
    case SIL_ACT_TURN_SCREWS:
        return (step_words){say_screws, say_check_action};
    case SIL_ACT_TURN_POSTS:
        return (step_words){say_posts, say_check_action};
    case SIL_ACT_BRIDGE_CURVE:
        return (step_words){say_curve, say_check_action};
    case SIL_ACT_ZERO_FRET:
        return (step_words){say_zero_fret, say_check_zero_fret};
    case SIL_ACT_NECK_SHIM:
        return (step_words){say_neck_shim, say_check_neck};
    case SIL_ACT_NECK_RESET:
        return (step_words){say_neck_reset, say_check_neck};
    case SIL_ACT_NECK_ANGLE:
        return (step_words){say_neck_angle, say_check_neck_angle};
    case SIL_ACT_CHECK:
        return (step_words){say_check, say_check_check};
    case SIL_ACTS:
        break;
    }
    return (step_words){say_check_written, say_check_written};
}

static brief_sentence said(brief *b, say *sentence)
{
    telling t = tell_begin(b);
    sentence(b, &t);
    return tell_end(&t);
}

void brief_fill_steps(brief *b)
{
    const sil_plan *plan = b->plan;
    b->steps = text_store_room(&b->store, SIL_STEPS_MAX * sizeof *b->steps);
    for (int k = 0; b->steps && k < plan->step_count; k++) {
        const sil_step *step = &plan->steps[k];
        step_words words = words_of(step->act);
        b->steps[k] =
            (brief_step){step->stage, step->act, said(b, words.what), said(b, words.check)};
    }
}
