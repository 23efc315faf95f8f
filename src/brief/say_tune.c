/* SPDX-License-Identifier: MIT */
/* Sentences about bringing the strings into tune at fret 12. */
#include <math.h>

#include "say.h"
#include "within.h"

static const char back_is[] = "Back is away from the nut.";

/* "string 1 back 1.50 mm (about 3 turns)" of each string whose screw is turned. */
void say_tune_screws(const brief *b, telling *t)
{
    const char *gap = "";
    tell(t, "Turn the intonation screws: ");
    for (int i = 0; i < b->strings; i++) {
        const brief_tuned *string = &b->tuning.string[i];
        if (!string->moves) {
            continue;
        }
        tell(t, "%sstring ", gap);
        tell_string(t, i);
        tell(t, " ");
        tell_way_word(t, string->way);
        tell(t, " ");
        tell_length(t, "tune", i, string->move);
        if (brief_known(string->turns)) {
            tell(t, " (%s)", brief_turns(&t->b->store, string->turns));
            tell_noted(t, "tune-turns", i, string->turns);
        }
        t->figure_way = BRIEF_NO_WAY;
        gap = ", ";
    }
    t->way = BRIEF_NO_WAY;
    tell(t, ". %s Slacken a string before you turn its screw.", back_is);
}

static void tell_side(const brief *b, brief_end end, telling *t)
{
    tell_end_word(t, end);
    if (b->tuning.end_way[end] == BRIEF_NO_WAY) {
        tell(t, " side stays");
    } else {
        tell(t, " side ");
        tell_way_word(t, b->tuning.end_way[end]);
        tell(t, " ");
        tell_length(t, "tune-end", -1, b->tuning.end[end]);
        t->figure_way = BRIEF_NO_WAY;
    }
    tell_end_word(t, BRIEF_NO_END);
}

void say_tune_ends(const brief *b, telling *t)
{
    bool floats = b->saddle.floats;
    tell(t, floats ? "Move the bridge: " : "Move the bridge at its ends: ");
    tell_side(b, BRIEF_TREBLE, t);
    if (b->strings > 1) {
        tell(t, ", ");
        tell_side(b, BRIEF_BASS, t);
    }
    t->way = BRIEF_NO_WAY;
    tell(t, ", at the outer strings. %s%s", back_is,
         floats ? " First mark where it stands, and slacken the strings a little, but never take "
                  "all of them off. Stand it upright again before you tune."
                : " First slacken the strings a little.");
}

/* "String 1: back to 1.85, 6: forward to 0.90 mm." of each peak that is filed. */
static void tell_peaks(const brief *b, telling *t)
{
    const char *gap = ", measured from its front face, the one nearer the nut. String ";
    for (int i = 0; i < b->strings; i++) {
        const brief_tuned *string = &b->tuning.string[i];
        if (!string->moves) {
            continue;
        }
        tell(t, "%s", gap);
        tell_string(t, i);
        tell(t, ": ");
        tell_way_word(t, string->way);
        tell(t, " to ");
        tell_figure(t, "peak", i, string->peak);
        t->figure_way = BRIEF_NO_WAY;
        gap = ", ";
    }
    t->way = BRIEF_NO_WAY;
    tell_unit(t);
    tell(t, ". Behind each peak the top falls at ");
    tell_figure(t, "back-slope", -1, figure_number(SIL_BACK_SLOPE_DEG, 0));
    tell(t, "\u00b0; in front of it nothing may touch the string.");
}

/* Which peaks nobody read a tuner for. */
static void tell_modelled(const brief *b, telling *t)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < b->strings; i++) {
        list.chosen[i] = b->plan->tuning.modelled[i];
    }
    if (tell_chosen(&list) > 0) {
        tell(t, " Worked out from the strings, since no cents were read: ");
        tell_which(t, &list);
        tell(t, ".");
    }
}

void say_file_peaks(const brief *b, telling *t)
{
    bool anew = b->saddle.remedy == SIL_SADDLE_REPLACE;
    tell(t, anew ? "File the new saddle's top so that each string leaves it in its place"
                 : "File the saddle's top so that the strings leave it in other places");
    tell_peaks(b, t);
    tell_modelled(b, t);
    if (brief_known(b->tuning.most_drop)) {
        tell(t, " That lowers the strings at the saddle by up to ");
        tell_length(t, "peak-drop", -1, b->tuning.most_drop);
        tell(t, b->saddle.working == SIL_WORKING_BASE
                    ? ", so do it before anything more goes off the bottom."
                    : ". Let the owner play it before the last stroke.");
    }
}

void say_tuned_saddle(const brief *b, telling *t)
{
    tell(t, "Make a new saddle: this one is down to its height, and has no material left where "
            "the strings should leave it. Give it the heights of this one, and file its peaks");
    tell_peaks(b, t);
    tell_modelled(b, t);
    tell(t, " Keep the old one until the owner has played.");
}

/* How far fret 12 may be out: "±6". */
static void tell_within(const brief *b, telling *t)
{
    tell(t, "\u00b1");
    tell_figure(t, "cents-within", -1, figure_number(b->plan->job->targets.cents, 0));
    tell(t, " cents");
}

void say_check_cents(const brief *b, telling *t)
{
    tell(t, "Tune, and read fret 12 again against the octave of the open string: in tune within ");
    tell_within(b, t);
    tell(t, ".");
}

void say_check_peaks(const brief *b, telling *t)
{
    if (b->plan->bench.fresh.saddle) {
        tell(t, "With the strings on: ");
    }
    say_check_cents(b, t);
    tell(t, " Write the new places under saddle.peak on the sheet.");
}

void say_tune_out(const brief *b, telling *t)
{
    const sil_tuning *tuning = &b->plan->tuning;
    tell(t, "A sharp string (+) must become longer, a flat one (-) shorter. ");
    switch (tuning->remedy) {
    case SIL_TUNE_WAIT:
        tell(t, "Not yet: %s.", brief_tune_waits(tuning->waits));
        return;
    case SIL_TUNE_NOTE:
        tell(t, b->saddle.in_slot && !b->plan->job->cents_wanted
                    ? "The saddle is fixed, and by ear it may well pass. If the owner wants it "
                      "better, give targets.cents on the sheet."
                    : "On this bridge nothing moves that would put it right.");
        return;
    case SIL_TUNE_NONE:
    case SIL_TUNE_SCREWS:
    case SIL_TUNE_ENDS:
    case SIL_TUNE_PEAKS:
    case SIL_TUNE_REPLACE:
        tell(t, "The steps say what to move.");
        return;
    }
}

void say_off_saddle(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "The place where it would play in tune is off the saddle's middle");
    for (int k = 0; k < count; k++) {
        bool front = f[k].read < 0.0;
        say_next_string(f, k, t);
        tell(t, front ? "nearer the nut by " : "farther from the nut by ");
        t->figure_way = front ? BRIEF_FORWARD : BRIEF_BACK;
        tell_length(t, "read", f[k].string, figure_nearest(b, fabs(f[k].read)));
        t->figure_way = BRIEF_NO_WAY;
    }
    say_at_most(f, t);
    tell(t,
         ". That is outside the saddle's thickness: the saddle slot is out of place, and shaping "
         "the saddle's top is not enough.");
}

void say_peak_short(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "The saddle ends before the place where the strings should leave it");
    for (int k = 0; k < count; k++) {
        int i = f[k].string;
        say_next_string(f, k, t);
        tell(t, "by ");
        tell_length(t, "read", i, figure_nearest(b, f[k].read));
        if (brief_known(b->tuning.string[i].left)) {
            tell(t, " (it stays ");
            tell_figure(t, "cents-left", i, b->tuning.string[i].left);
            tell(t, " cents off)");
        }
    }
    if (brief_known(b->tuning.thick)) {
        tell(t, ". Either make a saddle ");
        tell_length(t, "thick", -1, b->tuning.thick);
        tell(t, " thick, in a saddle slot widened to it; or fill");
    } else {
        tell(t, ". No saddle is thick enough for that: fill");
    }
    tell(t, " the saddle slot and cut it again on the line that suits the strings best.");
}
