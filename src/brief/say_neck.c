/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at the neck and its frets, and for how the neck moved between visits.
 */
#include "say.h"

#include "../plan/plan.h"

/* Says "tighten the rod an eighth of a turn at a time", and which way that is. */
static void tell_turn(brief_way way, const char *after_each, telling *t)
{
    tell_way_word(t, way);
    tell(t,
         " the rod an eighth of a turn at a time%s. That is %s on most, looking at the end that "
         "the wrench goes into.",
         after_each, way == BRIEF_TIGHTEN ? "clockwise" : "counter-clockwise");
}

void say_rod(const brief *b, telling *t)
{
    bool less = b->relief.now.exact > b->relief.wanted.aim.exact;
    t->way = t->figure_way = less ? BRIEF_TIGHTEN : BRIEF_EASE;
    tell(t, "Bring the relief at fret %d from ", b->plan->bench.board.relief_at);
    tell_figure(t, "relief", -1, b->relief.now);
    tell(t, " to ");
    tell_length(t, "relief-target", -1, b->relief.wanted.aim);
    tell(t, less ? ". Slacken the strings a little, then " : ": ");
    tell_turn(less ? BRIEF_TIGHTEN : BRIEF_EASE, ", and tune and measure after each", t);
    bool through =
        !less && b->plan->job->instrument.rod == SIL_ROD_TWO_WAY && b->relief.now.exact < 0.0;
    tell(t, through ? " A two-way rod goes slack first, and then pushes." : "");
    tell(t, " Never force it.");
}

void say_check_rod(const brief *b, telling *t)
{
    const sil_plan *plan = b->plan;
    tell_list action = {.count = b->strings};
    for (int i = 0; i < action.count; i++) {
        action.figure[i] = b->saddle.string[i].action_rod;
        action.chosen[i] = brief_known(action.figure[i]);
    }
    tell(t, "Back at pitch, relief ");
    tell_length(t, "relief-target", -1, b->relief.wanted.aim);
    if (tell_chosen(&action) > 0) {
        tell(t, "; action at the 12th then about ");
        tell_each(t, "action", &action);
    }
    if (tell_chosen(&action) > 0 && plan->bench.rod_spread < SIL_ROD_SPREAD) {
        tell(t, ", since this neck moved before by ");
        tell_figure(t, "ratio", -1, figure_number(plan->bench.rod_ratio, 2));
        tell(t, " of what one that bends evenly would");
    }
    tell(t, ".");
}

void say_find_rod(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "The relief is out of its range: see whether there is a truss rod. Its nut is at the "
         "headstock, often under a cover; or in the sound hole, under the end of the board; or at "
         "the heel. At pitch, measure the relief, and mark where the nut stands. Slacken the "
         "strings a little, and ease the nut an eighth of a turn, without force. Tune, and measure "
         "again: if the relief has changed, the rod works. Set it back to the mark. Write rod and "
         "rod_state on the sheet.");
}

void say_rod_by_ear(const brief *b, telling *t)
{
    const sil_board *board = &b->plan->bench.board;
    tell(t, "Truss rod, by ear: ");
    tell_turn(BRIEF_TIGHTEN, "", t);
    tell(t,
         " Each time, slacken the strings a little, turn, and tune. Then hold a string down at "
         "frets 1 and %d, and tap it at fret %d. Stop when the tap just pings on the fret. Never "
         "force it.",
         board->join, board->relief_at);
}

void say_check_rod_by_ear(const brief *b, telling *t)
{
    (void)b;
    tell(t, "By ear is only approximate: measure before cutting.");
}

/* Names the frets past the limit in one direction: "fret 1 by 0.12, fret 2 by 0.09 mm". */
static void tell_frets(const brief *b, sil_code code, const char *of, telling *t)
{
    const char *gap = "";
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *finding = &b->plan->findings[k];
        if (finding->code == code) {
            tell(t, "%sfret %d by ", gap, finding->fret);
            t->fret = finding->fret;
            tell_figure(t, of, finding->string, figure_nearest(b, finding->read));
            gap = ", ";
        }
    }
    tell_unit(t);
    t->fret = -1;
}

void say_seat(const brief *b, telling *t)
{
    tell(t, "Press or tap home the frets that stand proud: ");
    tell_frets(b, SIL_FRET_HIGH, "proud", t);
    tell(t, ". File only what still stands proud after that, and crown and polish that fret. Touch "
            "nothing else.");
}

void say_check_seat(const brief *b, telling *t)
{
    (void)b;
    tell(t, "A fret rocker across every three frets does not rock.");
}

/* Frets that may be replaced alone where no other is worn. Common practice, no source. */
static const int first_frets = 5;

static bool worn_first_only(const sil_plan *plan)
{
    for (int k = 0; k < plan->finding_count; k++) {
        if (plan->findings[k].code == SIL_FRET_WORN && plan->findings[k].fret > first_frets) {
            return false;
        }
    }
    return true;
}

void say_level(const brief *b, telling *t)
{
    bool first = worn_first_only(b->plan), rod = b->plan->job->instrument.rod != SIL_ROD_NONE;
    tell(t, first
                ? "Only the first frets are worn: fit new ones there, as high as the rest, so that "
                  "no other fret loses height. Or level all frets by "
                : "Level all frets by ");
    tell_length(t, "level", -1, figure_nearest(b, b->plan->stages.level_depth));
    tell(t, ", down to the deepest worn spot. Worn spots: ");
    tell_frets(b, SIL_FRET_WORN, "worn", t);
    tell(t, rod ? ". Before you level, mark where the truss rod stands, and turn it until the neck "
                  "is straight. Crown and polish, then turn the rod back to its mark."
                : ". Crown and polish.");
}

void say_check_level(const brief *b, telling *t)
{
    tell(t, "All frets level, no worn spot left");
    if (sil_known(b->plan->bench.crown)) {
        tell(t, ", fret height ");
        tell_length(t, "fret-height", -1,
                    figure_nearest(b, b->plan->bench.crown - b->plan->stages.level_depth));
    }
    tell(t, ".");
}

void say_new_frets(const brief *b, telling *t)
{
    tell(t, worn_first_only(b->plan)
                ? "Fit new frets where they are worn, and dress them level with the rest"
                : "Fit new frets");
    tell(t, " (worn spots: ");
    tell_frets(b, SIL_FRET_WORN, "worn", t);
    tell(t, "). Levelled to the deepest worn spot, the frets would be lower than ");
    tell_length(t, "fret-height-limit", -1, figure_nearest(b, b->plan->bench.least_crown));
    tell(t, ".");
}

void say_check_new_frets(const brief *b, telling *t)
{
    (void)b;
    tell(t, "All frets level under a straightedge.");
}

void say_zero_fret(const brief *b, telling *t)
{
    tell_list high = {.count = b->strings};
    for (int i = 0; i < high.count; i++) {
        high.chosen[i] = b->nut.slot[i].zero_fret_high;
        high.figure[i] = b->nut.slot[i].off;
    }
    t->way = t->figure_way = BRIEF_DOWN;
    tell(t, "Bring the zero fret down under ");
    tell_which(t, &high);
    tell(t, " by ");
    tell_each(t, "zero-fret", &high);
    tell_unit(t);
    tell(
        t,
        " to the targets. First press it home along its whole length and measure again. Then "
        "dress down what is still too high, a little at a time. "
        "The zero fret, not the nut slots, sets the height at the nut. See that the floor of every "
        "nut slot lies lower than its crown, so that the string rests on the fret.");
}

/* How high a new one is: over the board, and over the other frets. */
static void tell_new_zero_fret(const brief *b, telling *t)
{
    const brief_nut *nut = &b->nut;
    if (!brief_known(nut->zero_over)) {
        tell(t, " Otherwise fit a higher one.");
        return;
    }
    tell(t, " Otherwise fit one whose crown is ");
    tell_length(t, "zero-fret-over", -1, nut->zero_over);
    tell(t, " over the other frets");
    if (brief_known(nut->zero_height)) {
        tell(t, ", ");
        tell_length(t, "zero-fret-height", -1, nut->zero_height);
        tell(t, " high");
    }
    tell(t, " (\u00b1");
    if (brief_known(nut->zero_height)) {
        tell_figure(t, "zero-fret-sure", -1, nut->zero_sure);
    } else {
        tell_figure(t, "zero-fret-sure", -1, nut->zero_over_sure);
    }
    tell(t, "). Press it fully home, and dress it down until each string has its gap.");
}

void say_raise_zero_fret(const brief *b, telling *t)
{
    tell_list low = {.count = b->strings}, known = low;
    for (int i = 0; i < low.count; i++) {
        low.chosen[i] = b->nut.slot[i].zero_fret_low;
        low.figure[i] = known.figure[i] = b->nut.slot[i].rise;
        known.chosen[i] = low.chosen[i] && brief_known(low.figure[i]);
    }
    t->way = t->figure_way = BRIEF_UP;
    tell(t, "Raise the zero fret under ");
    tell_which(t, &low);
    if (tell_chosen(&known) > 0) {
        tell(t, " by ");
        tell_each(t, "zero-fret-low", &known);
        tell_unit(t);
    }
    t->figure_way = BRIEF_NO_WAY;
    tell(t, ": it is worn, or sits too low. If it is loose or up at its ends, press it home and "
            "measure again first.");
    tell_new_zero_fret(b, t);
    tell(t, " The nut slots only guide: see that the floor of each lies lower than the zero fret's "
            "crown, so that the string rests on the fret.");
}

void say_check_zero_fret(const brief *b, telling *t)
{
    tell_list worked = {.count = b->strings};
    for (int i = 0; i < worked.count; i++) {
        worked.figure[i] = b->nut.slot[i].zero_fret_gap;
        worked.chosen[i] = brief_known(worked.figure[i]);
    }
    tell(t, "Measure the gap at the 1st fret, %s, after each pass, and stop at ",
         brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, "gap", &worked);
    tell_unit(t);
    tell(t, ". Then measure everything again.");
}

static void tell_humidity(telling *t, double then, double now)
{
    if (sil_known(then) && sil_known(now)) {
        tell(t, "; humidity ");
        tell_figure(t, "humidity-before", -1, figure_number(then, 0));
        tell(t, " %% then, ");
        tell_figure(t, "humidity", -1, figure_number(now, 0));
        tell(t, " %% now");
    }
}

/* The usual reasons why an action is not as planned. */
static const char *usual_reasons(const sil_visit *visit)
{
    if (visit->worked[SIL_SADDLE]) {
        return "the saddle not down in its slot at both ends, more or less taken off than planned, "
               "strings not settled or old, relief moved meanwhile";
    }
    if (visit->worked[SIL_NUT]) {
        return "a nut slot filed past its feelers or not down to them, strings not down in their "
               "slots, "
               "strings not settled or old, relief moved meanwhile";
    }
    return "the neck not settled yet, strings old or not back at pitch, a reading taken in another "
           "way than before";
}

void say_off_forecast(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    double by = f->read; /* the mean difference of the action */
    const sil_visit *now = &b->plan->visits[b->plan->visit_count - 1];
    const char *work = b->visits[b->visit_count - 1].work;
    tell(t, "After the work on the %s the action at the 12th came out ", work);
    t->figure_way = by > 0.0 ? BRIEF_UP : BRIEF_DOWN;
    tell_length(t, "action-apart", -1, figure_nearest(b, fabs(by)));
    tell(t, " %s than planned, on average: more than measuring error. Usual reasons: %s",
         by > 0.0 ? "higher" : "lower", usual_reasons(now));
    tell_humidity(t, b->plan->job->readings[now[-1].reading].humidity_pct,
                  sil_plan_reading(b->plan)->humidity_pct);
    tell(t, ". The plan goes by what was measured now.");
}

void say_wrong_way(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    double by = f->read; /* how far the relief came up */
    bool rose = by > 0.0;
    tell(t, rose ? "The relief rose by " : "The relief fell by ");
    t->figure_way = rose ? BRIEF_UP : BRIEF_DOWN;
    tell_length(t, "read", -1, figure_nearest(b, fabs(by)));
    t->figure_way = BRIEF_NO_WAY;
    tell(t,
         " when the rod was turned to %s it: it was turned the wrong way, or it does not engage. "
         "Turn it back an eighth, tune, measure. Never force it.",
         rose ? "lower" : "raise");
}

void say_twist(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    bool treble = f->read > 0.0; /* by how much the action is higher there */
    tell(t, "Against its target the action is ");
    t->end = treble ? BRIEF_TREBLE : BRIEF_BASS;
    tell_length(t, "read", -1, figure_nearest(b, fabs(f->read)));
    t->end = BRIEF_NO_END;
    tell(t, treble ? " higher at the treble than at the bass"
                   : " higher at the bass than at the treble");
    say_at_most(f, t);
    tell(t, ". The neck may be twisted: sight along it, and lay a straightedge on both sides.");
}

/* Whether the caliper found the saddle as high as before at each end that was read both times. */
static bool saddle_still(const brief *b, const sil_reading *was, const sil_reading *is)
{
    double still = 2.0 * b->plan->bench.tools.caliper;
    double treble = fabs(is->saddle_height_treble - was->saddle_height_treble);
    double bass = fabs(is->saddle_height_bass - was->saddle_height_bass);
    return (sil_known(treble) || sil_known(bass)) && !(treble > still) && !(bass > still);
}

void say_moved(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    double by = f->read; /* the mean difference of the action */
    const sil_visit *now = &b->plan->visits[b->plan->visit_count - 1], *then = now - 1;
    const sil_reading *was = &b->plan->job->readings[then->reading];
    const sil_reading *is = sil_plan_reading(b->plan);
    bool held = sil_withheld_by(&b->plan->saddle_withheld, SIL_MOVED);
    tell(t,
         held ? "The season has moved the instrument: take nothing off the saddle today, keep "
                "the instrument a week or two at its usual humidity, and measure everything again. "
              : "");
    tell(t, "No work was done since %s, and yet it moved",
         was->date ? was->date : "the visit before");
    bool both = sil_known(then->relief) && sil_known(now->relief);
    if (both) {
        tell(t, ": the relief from ");
        tell_figure(t, "relief-before", -1, figure_nearest(b, then->relief));
        tell(t, " to ");
        tell_length(t, "relief", -1, figure_nearest(b, now->relief));
    }
    if (sil_known(by)) {
        t->figure_way = by > 0.0 ? BRIEF_UP : BRIEF_DOWN;
        tell(t, "%s the action at the 12th %s by ", both ? "," : ":",
             by > 0.0 ? "rose" : "came down");
        tell_length(t, "action-apart", -1, figure_nearest(b, fabs(by)));
        tell(t, " on average");
        t->figure_way = BRIEF_NO_WAY;
    }
    tell_humidity(t, was->humidity_pct, sil_plan_reading(b->plan)->humidity_pct);
    tell(t, saddle_still(b, was, is)
                ? ". By the caliper the saddle is as it was, so it is not the saddle."
                : ".");
    tell(t, held ? " What the season did will go away by itself."
                 : " The season does that, new strings, or a joint. What the season did will go "
                   "away by itself: measure again at its usual humidity before you cut anything.");
}
