/* SPDX-License-Identifier: MIT */
/* Readings of the same thing at two visits: what was read at both, and not worked between them. */
#include <math.h>

#include "plan.h"

static const double same_air = 5.0; /* humidity, %: judgement of the shop, no source */

/* What the steps of a visit move. */
typedef struct moved {
    bool neck;                    /* relief, and with it every gap */
    bool slot[SIL_STRINGS_MAX];   /* the string at the nut */
    bool saddle[SIL_STRINGS_MAX]; /* the string at the saddle */
    bool caliper;                 /* the saddle itself */
} moved;

static void move_all(bool *strings)
{
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        strings[i] = true;
    }
}

static void move_everything(moved *m)
{
    m->neck = m->caliper = true;
    move_all(m->slot);
    move_all(m->saddle);
}

static void move_slots(const sil_plan *plan, moved *m)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_verdict verdict = plan->nut.verdict[i];
        m->slot[i] = m->slot[i] || verdict == SIL_TAKE || verdict == SIL_RAISE;
    }
}

static void move_screws(const sil_plan *plan, moved *m)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        m->saddle[i] = m->saddle[i] || plan->saddle.turns[i] != 0.0; /* unknown: it may have */
    }
}

static void dress(const sil_plan *plan, moved *m)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        m->saddle[i] = m->saddle[i] || !(plan->saddle.dress[i] <= 0.0);
    }
    m->caliper = true;
}

static void file_peaks(const sil_plan *plan, moved *m)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        m->saddle[i] = m->saddle[i] || plan->tuning.filed[i];
    }
    m->caliper = true;
}

static void do_act(const sil_plan *plan, sil_act act, moved *m)
{
    switch (act) {
    case SIL_ACT_PREPARE:
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
    case SIL_ACT_FIND_ROD:
    case SIL_ACT_MEASURE_BRIDGE:
    case SIL_ACT_READ_AGAIN:
    case SIL_ACT_TUNE_SCREWS: /* along, not up or down */
    case SIL_ACT_TUNE_ENDS:
    case SIL_ACT_READ_NEW:
    case SIL_ACT_CHOOSE:
    case SIL_ACT_CHECK:
    case SIL_ACTS:
        break;
    case SIL_ACT_ROD_BY_EAR:
    case SIL_ACT_ROD:
    case SIL_ACT_SEAT_FRETS:
    case SIL_ACT_LEVEL_FRETS:
    case SIL_ACT_NEW_FRETS:
        m->neck = true;
        break;
    case SIL_ACT_FILE_SLOTS:
    case SIL_ACT_FILL_SLOT:
        move_slots(plan, m);
        break;
    case SIL_ACT_SHIM_NUT:
    case SIL_ACT_FIT_NUT:
    case SIL_ACT_MARK_NUT:
    case SIL_ACT_CUT_NUT:
    case SIL_ACT_SHAPE_NUT:
    case SIL_ACT_ZERO_FRET:
    case SIL_ACT_RAISE_ZERO_FRET:
        move_all(m->slot);
        break;
    case SIL_ACT_DRESS_SADDLE:
        dress(plan, m);
        break;
    case SIL_ACT_FILE_PEAKS:
        file_peaks(plan, m);
        break;
    case SIL_ACT_TURN_SCREWS:
        move_screws(plan, m);
        m->caliper = true;
        break;
    case SIL_ACT_FIT_SADDLE:
    case SIL_ACT_SAND_SADDLE:
    case SIL_ACT_SHIM_SADDLE:
    case SIL_ACT_NEW_SADDLE:
    case SIL_ACT_TUNED_SADDLE:
    case SIL_ACT_FIT_BLANK:
    case SIL_ACT_SHAPE_SADDLE:
    case SIL_ACT_TURN_POSTS:
    case SIL_ACT_BRIDGE_CURVE:
        move_all(m->saddle);
        m->caliper = true;
        break;
    case SIL_ACT_STOP:
    case SIL_ACT_NECK_BOW:
    case SIL_ACT_ROD_FIRST:
    case SIL_ACT_BACK_BOW:
    case SIL_ACT_NECK_ANGLE:
    case SIL_ACT_NECK_SHIM:
    case SIL_ACT_NECK_RESET:
        move_everything(m);
        break;
    }
}

typedef struct teller {
    sil_hear_pair *hear;
    void *with;
} teller;

/* 0 is no figure of a gap: the string lies on the crown, or under it. */
static void tell(const teller *to, sil_tool tool, double before, double after)
{
    if (sil_known(before) && sil_known(after) && before != 0.0 && after != 0.0) {
        to->hear(to->with, tool, before, after);
    }
}

static bool is_same_relief(const sil_relief_reading *a, const sil_relief_reading *b)
{
    return a->over == b->over && a->low == b->low && a->high == b->high && a->string == b->string &&
           a->straightedge == b->straightedge;
}

static bool is_comparable(const sil_reading *a, const sil_reading *b)
{
    return fabs(a->humidity_pct - b->humidity_pct) <= same_air &&
           a->condition.tuned != SIL_UNSOUND && b->condition.tuned != SIL_UNSOUND &&
           a->condition.strings == b->condition.strings;
}

static void tell_gaps(const teller *to, const sil_gaps *a, const sil_gaps *b, const moved *m, int i)
{
    bool open_still = !m->slot[i] && !m->saddle[i];
    if (a->action_at == b->action_at && a->capo == b->capo && !m->saddle[i] &&
        (!m->slot[i] || a->capo)) {
        tell(to, SIL_TOOL_ACTION, a->action[i], b->action[i]);
    }
    if (a->first_held == b->first_held && !m->slot[i] &&
        (a->first_held != SIL_HOLD_OPEN || open_still)) {
        tell(to, SIL_TOOL_FIRST, a->first[i], b->first[i]);
    }
    if (open_still) {
        tell(to, SIL_TOOL_FIRST, a->first_open[i], b->first_open[i]);
    }
}

static void tell_pairs(const sil_plan *plan, const sil_reading *after, const teller *to)
{
    const sil_reading *before = &plan->job->readings[plan->reading];
    moved m = {false};
    for (int k = 0; k < plan->step_count; k++) {
        do_act(plan, plan->steps[k].act, &m);
    }
    if (!is_comparable(before, after)) {
        return;
    }
    if (!m.caliper) {
        tell(to, SIL_TOOL_CALIPER, before->saddle_height_treble, after->saddle_height_treble);
        tell(to, SIL_TOOL_CALIPER, before->saddle_height_bass, after->saddle_height_bass);
    }
    if (!m.neck && is_same_relief(&before->relief, &after->relief)) {
        tell(to, SIL_TOOL_RELIEF, before->relief.gap, after->relief.gap);
    }
    for (int i = 0; i < plan->job->string_count && !m.neck; i++) {
        tell_gaps(to, &before->gaps, &after->gaps, &m, i);
    }
}

sil_status sil_plan_pairs(const sil_job *job, sil_hear_pair *hear, void *with)
{
    const teller to = {hear, with};
    for (int k = 0; k + 1 < job->reading_count; k++) {
        sil_plan *plan;
        sil_job until = *job; /* as it was at that visit */
        until.reading_count = k + 1;
        sil_status status = sil_plan_make(&until, &plan);
        if (status != SIL_DONE) {
            return status;
        }
        tell_pairs(plan, &job->readings[k + 1], &to);
        sil_plan_free(plan);
    }
    return SIL_DONE;
}
