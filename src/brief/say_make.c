/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at a nut or saddle that is made from a blank, or anew for a worn one. */
#include "say.h"

#include "../plan/plan.h"

/* How closely the width is measured that a part is pushed into, mm. Common practice, no source. */
static const double fit = 0.02;

static void tell_blank(const brief_blank *blank, telling *t)
{
    if (!blank->complete) {
        return;
    }
    tell(t, " Blank: ");
    tell_figure(t, "blank-length", -1, blank->length);
    tell(t, " \u00d7 ");
    tell_figure(t, "blank-thickness", -1, blank->thickness);
    tell(t, " \u00d7 ");
    tell_length(t, "blank-height", -1, blank->height);
    tell(t, " (length, thickness, height, spare included).");
}

/* Says how thick and how long the blank becomes; the place it goes into decides, not the figure. */
static void tell_fit(const brief *b, const char *place, double thickness, brief_figure length,
                     telling *t)
{
    if (sil_known(thickness)) {
        tell(t, " Measure the width of %s, along the strings, to ", place);
        tell_length(t, "fit", -1, figure_nearest(b, fit));
        tell(t, ".");
    }
    tell(t, " Cut the blank ");
    tell_length(t, "length", -1, length);
    tell(t, " long. Bring its faces to a push fit in %s", place);
    if (sil_known(thickness)) {
        tell(t, ", about ");
        tell_length(t, "thickness", -1, figure_nearest(b, thickness));
        tell(t, " thick");
    }
    tell(t, ". Then sand its bottom flat, and square to them.");
}

/* The slot that is too low by most; -1 where a string lies on its fret, so that nobody knows. */
static int lowest_slot(const brief *b)
{
    const sil_stages *stages = &b->plan->stages;
    int lowest = -1;
    for (int i = 0; i < b->strings; i++) {
        bool low = stages->nut[i] == SIL_RAISE;
        if (stages->on_fret[i]) {
            return -1;
        }
        lowest = low && (lowest < 0 || stages->deepen[i] < stages->deepen[lowest]) ? i : lowest;
    }
    return lowest;
}

/* Why a nut that was read is made anew. */
static void tell_why_new_nut(const brief *b, telling *t)
{
    int lowest = lowest_slot(b);
    if (lowest < 0) {
        tell(t, "Make a new nut: so many slots are too low that filling them is not worth while. "
                "With a string on the "
                "1st fret nobody can say how thick a shim would have to be. ");
        return;
    }
    tell(t, "Make a new nut: two slots or more are too low, by up to ");
    t->figure_way = BRIEF_UP;
    tell_length(t, "slot", lowest, figure_nearest(b, -b->plan->stages.deepen[lowest]));
    t->figure_way = BRIEF_NO_WAY;
    const sil_job *job = b->plan->job;
    double shim = sil_shim_thickness(-b->plan->stages.deepen[lowest], job->allowances.shim_step);
    tell(t, sil_above(shim, job->limits.most_shim) ? ", more than a shim should make up. " : ". ");
}

void say_fit_nut(const brief *b, telling *t)
{
    const brief_nut *nut = &b->nut;
    bool worn_out = !plan_makes_nut(b->plan);
    if (worn_out) {
        tell_why_new_nut(b, t);
    }
    tell(t,
         "Slacken the strings, score the finish around the old nut, and take it out. Clean the old "
         "glue out of its place in the neck, and take no wood.");
    tell_blank(&nut->blank, t);
    tell_fit(b, "the nut's place in the neck", nut->thickness.exact, nut->length, t);
    if (brief_known(nut->rough)) {
        tell(t, " Bring its top down to about ");
        tell_length(t, "rough", -1, nut->rough);
        tell(t, " over its bottom, so that no nut slot has to be cut deep.");
    }
    tell(t, worn_out ? " Keep the old one until the owner has played." : "");
}

void say_fit_blank(const brief *b, telling *t)
{
    const brief_saddle *saddle = &b->saddle;
    tell(t,
         saddle->working == SIL_WORKING_TOP
             ? "Slacken the strings. Take the glued saddle out with heat and patience, or have it "
               "taken out, and clean the saddle slot."
             : "If a saddle is still in, slacken the strings and take it out. Clean the saddle "
               "slot.");
    tell_blank(&saddle->blank, t);
    tell_fit(b, "the saddle slot", saddle->thickness.exact, saddle->length, t);
}

void say_check_fit_blank(const brief *b, telling *t)
{
    (void)b;
    tell(t, "It slides in by hand and stays in when turned over. Pencil lead rubbed on the floor "
            "under it "
            "marks its whole bottom.");
}

void say_mark_nut(const brief *b, telling *t)
{
    tell_list centre = tell_every(b);
    for (int i = 0; i < centre.count; i++) {
        centre.figure[i] = b->nut.slot[i].along;
    }
    tell(t,
         "With the blank in the neck, lay a pencil split lengthwise flat on the frets and "
         "draw the line of the fret tops on its face. Mark the centres of the nut slots from the "
         "printed strip, or "
         "from the ");
    tell_end_word(t, BRIEF_BASS);
    tell(t, " end: ");
    tell_each(t, "centre", &centre);
    tell_end_word(t, BRIEF_NO_END);
    tell_unit(t);
    tell(t, ".");
}

void say_check_mark_nut(const brief *b, telling *t)
{
    (void)b;
    tell(t, "A nut slot filed down to that line leaves no gap at the 1st fret: stay over it.");
}

void say_cut_nut(const brief *b, telling *t)
{
    bool any = false;
    for (int i = 0; i < b->strings; i++) {
        any = any || brief_known(b->nut.slot[i].stack_first);
    }
    t->way = BRIEF_DOWN;
    tell(t,
         any ? "Cut the nut slots."
             : "Cut the nut slots after the fret height was measured: the feelers depend on it.");
    say_first_stacks(b, tell_every(b), t);
    say_files(b, tell_every(b), t);
}

void say_check_cut_nut(const brief *b, telling *t)
{
    (void)b;
    tell(t, "The file touched the first stack at each nut slot, and went no deeper.");
}

void say_shape_nut(const brief *b, telling *t)
{
    tell_list depth = tell_every(b);
    for (int i = 0; i < depth.count; i++) {
        depth.figure[i] = b->nut.slot[i].depth;
    }
    tell(t, "Shape the top, falling ");
    if (brief_known(b->nut.fall)) {
        tell_figure(t, "fall", -1, b->nut.fall);
        tell(t, "\u00b0 ");
    }
    tell(t, "toward the tuners as the slots do, so that each finished slot is this deep: ");
    tell_each(t, "depth", &depth);
    tell_unit(t);
    tell(t, say_top_usual(b)
                ? ". Wound strings then lie half in their nut slots, and plain ones fully. "
                : ". ");
    tell(t, "Round its edges over, and polish it.");
    if (brief_known(b->nut.height)) {
        tell(t, " At its highest it is ");
        tell_length(t, "height", -1, b->nut.height);
        tell(t, " over its bottom.");
    }
}

void say_check_shape_nut(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "It stays loose in the neck, or is held by a single drop of glue, until it is finished.");
}

void say_measure_bridge(const brief *b, telling *t)
{
    (void)b;
    tell(t, "The height of a new saddle follows from the saddle slot. Lay a straightedge on the "
            "frets and out over the bridge. Measure from it down to the bridge's top at ");
    tell_outer_strings(t);
    tell(t, ", and measure the depth of the saddle slot. To copy the old saddle instead, write "
            "its heights under old.");
}

void say_shape_saddle(const brief *b, telling *t)
{
    tell_list first = tell_every(b), good = first;
    for (int i = 0; i < first.count; i++) {
        first.figure[i] = b->saddle.string[i].height_first;
        good.figure[i] = b->saddle.string[i].height;
    }
    t->way = BRIEF_DOWN;
    tell(t, "Bring its top down. At first leave it this high over its bottom: ");
    say_first_and_final("height", "height-first", &first, &good, t);
    tell(t, b->plan->tuning.remedy == SIL_TUNE_PEAKS
                ? ". Leave the top flat and square for now: its peaks are filed next."
                : ". Round the top over, and keep the place where each string leaves it.");
    tell(t, " Keep the old one, if there is one, until the owner has played.");
}

void say_check_shape_saddle(const brief *b, telling *t)
{
    tell_list out = tell_every(b);
    for (int i = 0; i < out.count; i++) {
        out.figure[i] = b->saddle.string[i].out;
    }
    out = tell_known(out);
    if (tell_chosen(&out) == 0) {
        tell(t, "Caliper from its bottom to its top at each string.");
        return;
    }
    tell(t, "When finished it stands out of the bridge by ");
    tell_each(t, "out", &out);
    tell_unit(t);
    tell(t, ".");
}

void say_read_new(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "String up, tune, and let the neck settle, overnight if you can. Then measure: the relief "
         "first, the gap at the 1st fret, the action. Write it as the next visit and "
         "plan again: that plan finishes the new part.");
}

void say_check_read_new(const brief *b, telling *t)
{
    (void)b;
    tell(t, "It is done when every reading, taken with the new part in, is in its range.");
}

static const char *why_new(const brief *b, int raised)
{
    if (b->saddle.working == SIL_WORKING_TOP) {
        return " must come up, and this saddle is glued in";
    }
    if (b->plan->saddle.thick_shim && (raised > 1 || b->strings == 1)) {
        return " must come up by more than a shim can make up";
    }
    return " alone must come up: a worn notch, which no shim cures";
}

/* What a new saddle's heights follow from where the old one was not measured. */
static void tell_old_heights(const brief *b, telling *t)
{
    double most = 0.0;
    for (int i = 0; i < b->strings; i++) {
        most = fmax(most, b->plan->saddle.leave[i]);
    }
    tell(t, ", with the heights of the old one and the rise added. Measure the old one at ");
    tell_outer_strings(t);
    tell(t, ". At first leave ");
    tell_length(t, "leave", -1, figure_length(b->unit, most, SIL_UP));
    tell(t, " more on, until you have strung up and measured.");
}

void say_new_saddle(const brief *b, telling *t)
{
    tell_list raised = {.count = b->strings}, first = tell_every(b), height = first;
    for (int i = 0; i < b->strings; i++) {
        raised.chosen[i] = b->saddle.string[i].verdict == SIL_RAISE;
        first.figure[i] = b->saddle.string[i].height_first;
        height.figure[i] = b->saddle.string[i].height;
    }
    first = tell_known(first);
    height = tell_known(height);
    bool feet = b->saddle.working == SIL_WORKING_FEET;
    t->way = BRIEF_UP;
    tell(t, feet ? "Make a new bridge" : "Make a new saddle");
    if (tell_chosen(&height) > 0) {
        tell(t, feet ? ", at first this high over the top: "
                     : ", at first this high over its bottom: ");
        say_first_and_final("height", "height-first", &first, &height, t);
        tell(t, ".");
    } else {
        tell_old_heights(b, t);
    }
    tell(t, feet ? " Fit its feet to the top before you bring it to height. A new bridge is needed "
                   "because "
                 : " Fit the blank to its slot before you bring it to height. A new saddle is "
                   "needed because ");
    tell_which(t, &raised);
    tell(t, "%s.", why_new(b, tell_chosen(&raised)));
    tell(t, " Keep the old one until the owner has played.");
}
