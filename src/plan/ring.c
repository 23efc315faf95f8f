/* SPDX-License-Identifier: MIT */
/* Finds which notes buzz and why, and the lowest set-up that rings clean. See docs/arithmetic.md,
 * "Clearance". */
#include <string.h>

#include "plan.h"

/* How far out of its range each thing is that a remedy can put right; 0: in its range. */
typedef struct astray {
    double how_far[SIL_STRINGS_MAX][SIL_REMEDIES];
    bool too_high[SIL_STRINGS_MAX][SIL_REMEDIES]; /* out, but no string buzzes for it */
} astray;

/* How far a reading is from its target, divided by the width of the narrower side of its range or by
 * the tool's reading error, whichever is larger. 0 where the reading is in range or at its edge, or
 * unknown. The narrower side, because a range that reaches far on one side, as relief does for a
 * light hand, says what is still played, not that a reading past it is less of a fault. */
static double distance(double read, sil_side side, sil_band range, double tool)
{
    double width = fmin(range.high - range.aim, range.aim - range.low);
    return sil_side_out(side) ? fabs(read - range.aim) / fmax(width, tool) : 0.0;
}

static double worst_crown(const sil_plan *plan, int string, int from)
{
    double worst = 0.0;
    for (int n = from; n <= plan->bench.board.frets; n++) {
        worst = fmax(worst, fabs(plan->bench.crowns.off[string][n]));
    }
    double limit = plan->bench.wear_limit;
    return sil_above(worst, limit) ? worst / limit : 0.0;
}

static void judge_readings(const sil_plan *plan, astray *a)
{
    const sil_bench *bench = &plan->bench;
    const sil_targets *targets = &bench->targets;
    const sil_standing *standing = &bench->standing;
    const sil_fit *now = &plan->stages.fit[SIL_NOW];
    double relief = sil_relief_now(plan);
    for (int i = 0; i < bench->board.strings; i++) {
        double *far = a->how_far[i];
        memset(a->too_high[i], 0, sizeof a->too_high[i]);
        double first = sil_slot_gap(bench, now, i);
        double action = sil_action(&bench->board, now, i, 12);
        far[SIL_CAUSE_RELIEF] =
            sil_board_bends(&bench->board)
                ? distance(relief, plan->stages.relief_side, targets->relief, bench->tools.relief)
                : 0.0;
        far[SIL_CAUSE_CROWN] = worst_crown(plan, i, 1);
        sil_side slot =
            sil_side_of(first, targets->first[i], sil_first_u(bench, i), standing->buzz_open[i]);
        far[SIL_CAUSE_SLOT] = distance(first, slot, targets->first[i], bench->tools.first);
        sil_side saddle =
            sil_side_of(action, targets->action[i], sil_action_u(bench, i), standing->buzz[i]);
        far[SIL_CAUSE_SADDLE] = distance(action, saddle, targets->action[i], bench->tools.action);
        a->too_high[i][SIL_CAUSE_SLOT] = slot == SIL_OVER;
        a->too_high[i][SIL_CAUSE_SADDLE] = saddle == SIL_OVER;
    }
}

/* Whether it is known to ring clean, compared as sil_buzzes_under does. */
static bool rings_under(double force, double attack)
{
    return sil_number_shown(force, 2) >= sil_number_shown(attack, 2);
}

/* The hardest clean pluck of the note with all remedies together, in the order of the work. */
static double remedied_together(const sil_plan *plan, const sil_cause *note)
{
    sil_fit fit = plan->stages.fit[SIL_NOW];
    for (int remedy = 0; remedy < SIL_REMEDIES; remedy++) {
        sil_remedy_fit(&plan->bench, (sil_remedy)remedy, &fit);
    }
    return sil_clearance_of(&plan->bench.board, &fit, &plan->pluck, note->string, note->fret);
}

/* A note may be put down to the player where it rings clean at this many times the pick strength.
 * Common practice, no source. */
static const double well_clear = 1.25;

/* The thing farthest out of its range of all that this note meets, or -1 for none: the slot holds up
 * an open string only, and no crown before the stop is touched. `low`: only what can make it buzz,
 * which a string that is too high cannot. */
static int farthest_out(const sil_plan *plan, const astray *a, const sil_cause *note, bool low)
{
    double far[SIL_REMEDIES];
    int worst = -1;
    memcpy(far, a->how_far[note->string], sizeof far);
    if (note->fret > 0) {
        far[SIL_CAUSE_CROWN] = worst_crown(plan, note->string, note->fret);
        far[SIL_CAUSE_SLOT] = 0.0;
    }
    for (int remedy = 0; remedy < SIL_REMEDIES; remedy++) {
        bool counts = !low || !a->too_high[note->string][remedy];
        if (counts && far[remedy] > (worst < 0 ? 0.0 : far[worst])) {
            worst = remedy;
        }
    }
    return worst;
}

/* The cause given for a note that should ring clean by the model. The player is blamed last: only
 * where no reading is out, the crowns were looked at, and the note is well clear. */
static sil_cause_name excuse(const sil_plan *plan, const astray *a, double attack, sil_cause *note)
{
    int likely = sil_known(note->clean_force) ? farthest_out(plan, a, note, true) : -1;
    note->likely = likely >= 0;
    if (note->likely) {
        return (sil_cause_name)likely;
    }
    if (!sil_known(note->clean_force) || !sil_known(attack) ||
        farthest_out(plan, a, note, false) >= 0 ||
        sil_plan_reading(plan)->crowns_read == SIL_CROWNS_NOT_READ) {
        return SIL_CAUSE_UNEXPLAINED;
    }
    if (note->clean_force < well_clear * attack) {
        return SIL_CAUSE_TOO_CLOSE;
    }
    return note->fret > 0 ? SIL_CAUSE_TECHNIQUE : SIL_CAUSE_UNEXPLAINED;
}

/* Whether this is an open string that rests on the first fret. No height can be computed from that,
 * but the cause of the buzz is clear without one. */
static bool lies_on_fret_1(const sil_plan *plan, const sil_cause *note)
{
    return note->fret == 0 && !sil_known(note->clean_force) &&
           sil_first_touches(&plan->bench.gaps, note->string);
}

/* The hardest clean pluck at a fret. Unknown at the last fret, since there is no fret beyond it to
 * touch. */
static double force_of(const sil_plan *plan, const sil_clearance *clean, int string, int fret)
{
    return fret < plan->bench.board.frets ? clean->force[string][fret] : SIL_UNKNOWN;
}

static sil_cause_name blame(const sil_plan *plan, const astray *a, double attack, sil_cause *note)
{
    if (lies_on_fret_1(plan, note)) {
        return SIL_CAUSE_SLOT;
    }
    if (!sil_buzzes_under(note->clean_force, attack)) {
        return excuse(plan, a, attack, note);
    }
    const double *far = a->how_far[note->string];
    int worst = -1;
    for (int remedy = 0; remedy < SIL_REMEDIES; remedy++) {
        bool cures = far[remedy] > 0.0 && rings_under(note->remedied[remedy], attack);
        if (cures && (worst < 0 || far[remedy] > far[worst])) {
            worst = remedy;
        }
    }
    if (worst >= 0) {
        return (sil_cause_name)worst;
    }
    if (rings_under(force_of(plan, &plan->clean_after, note->string, note->fret), attack)) {
        return SIL_CAUSE_COMBINED;
    }
    return rings_under(remedied_together(plan, note), attack) ? SIL_CAUSE_TARGETS
                                                              : SIL_CAUSE_ATTACK;
}

static bool heard(const sil_reading *reading, int string, int fret)
{
    for (int k = 0; k < reading->buzz_count; k++) {
        if (reading->buzz[k].string == string + 1 && reading->buzz[k].fret == fret) {
            return true;
        }
    }
    return false;
}

/* Lists the notes that were heard to buzz, or will buzz at this pick strength. */
static void list_notes(sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    for (int i = 0; i < plan->job->string_count; i++) {
        for (int fret = 0; fret <= plan->bench.board.frets; fret++) {
            double force = force_of(plan, &plan->clean_now, i, fret);
            bool buzzes = heard(reading, i, fret);
            if (buzzes || sil_buzzes_under(force, plan->job->attack.force[i])) {
                plan->causes[plan->cause_count++] =
                    (sil_cause){.string = i, .fret = fret, .heard = buzzes, .clean_force = force};
            }
        }
    }
}

/* The hardest clean pluck of the notes listed with one remedy alone. */
static void try_remedy(sil_plan *plan, int remedy)
{
    sil_fit fit = plan->stages.fit[SIL_NOW];
    sil_remedy_fit(&plan->bench, (sil_remedy)remedy, &fit);
    for (int k = 0; k < plan->cause_count; k++) {
        sil_cause *note = &plan->causes[k];
        note->remedied[remedy] =
            sil_clearance_of(&plan->bench.board, &fit, &plan->pluck, note->string, note->fret);
    }
}

static void find_causes(sil_plan *plan)
{
    astray a;
    list_notes(plan);
    if (plan->cause_count == 0) {
        return;
    }
    for (int remedy = 0; remedy < SIL_REMEDIES; remedy++) {
        try_remedy(plan, remedy);
    }
    judge_readings(plan, &a);
    for (int k = 0; k < plan->cause_count; k++) {
        sil_cause *note = &plan->causes[k];
        note->cause = blame(plan, &a, plan->job->attack.force[note->string], note);
    }
}

static void find_lowest(sil_plan *plan, void *room)
{
    const sil_limits *limits = &plan->job->limits;
    sil_lowest_wish wish = {.most_relief = limits->most_relief, .least_first = limits->least_first};
    for (int i = 0; i < plan->job->string_count; i++) {
        wish.force[i] = plan->job->attack.force[i];
    }
    sil_lowest_find(&plan->bench.board, &plan->stages.fit[SIL_FRETS].crowns, &plan->pluck, &wish,
                    room, &plan->lowest);
}

void plan_ring(sil_plan *plan, void *room)
{
    const sil_board *board = &plan->bench.board;
    plan->pluck.at = plan->job->attack.at;
    sil_clearance_find(board, &plan->stages.fit[SIL_NOW], &plan->pluck, &plan->clean_now);
    sil_clearance_find(board, &plan->finished, &plan->pluck, &plan->clean_after);
    if (sil_plan_reading(plan)) {
        find_causes(plan);
    }
    find_lowest(plan, room);
}
