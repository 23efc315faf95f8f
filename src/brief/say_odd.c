/* SPDX-License-Identifier: MIT */
/* The sentences for readings that must be taken again. */
#include "codes.h"
#include "say.h"

#include "../plan/plan.h"

static void tell_of_string(const brief *b, int string, telling *t)
{
    if (b->strings > 1) {
        tell(t, " of string ");
        tell_string(t, string);
    }
}

/* Names the reading that a finding is about. */
static void tell_what(const brief *b, const sil_finding *f, telling *t)
{
    if (f->stage == SIL_NUT) {
        tell(t, "Measure the gap at the 1st fret");
        tell_of_string(b, f->string, t);
    } else if (f->stage == SIL_SADDLE && f->string >= 0) {
        tell(t, "Measure the action");
        tell_of_string(b, f->string, t);
    } else {
        tell(t, "%s",
             f->stage == SIL_ROD     ? "Measure the relief"
             : f->stage == SIL_FRETS ? "Measure the worn spot or proud crown"
                                     : "Measure the saddle's height");
    }
}

static const sil_odd_one *odd_of(const sil_odd *odd, const sil_finding *f)
{
    switch (f->stage) {
    case SIL_ROD:
        return &odd->relief;
    case SIL_FRETS:
        return &odd->crowns;
    case SIL_NUT:
        return &odd->first[f->string];
    default:
        return f->string >= 0 ? &odd->action[f->string] : &odd->saddle;
    }
}

/* Gaps that hold nothing up, but that their slots should not be worked by unseen. */
static void say_doubtful(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell_list read = {.count = b->strings}, off = {.count = b->strings};
    for (int k = 0; k < count; k++) {
        int i = f[k].string;
        read.chosen[i] = off.chosen[i] = true;
        read.figure[i] = figure_nearest(b, f[k].read);
        off.figure[i] = b->first_off[i];
    }
    bool one = count == 1;
    tell(t, one ? "The gap at the 1st fret of " : "The gaps at the 1st fret of ");
    tell_which(t, &off);
    if (one) {
        tell(t, ", ");
        tell_each(t, "read", &read);
        tell_unit(t);
        tell(t, ",");
    }
    tell(t, one ? " is off the others by " : " are off the others by ");
    tell_each(t, "off", &off);
    tell_unit(t);
    tell(t, one ? ". Measure it once more before you work that nut slot."
                : ". Measure them once more before you work those nut slots.");
}

void say_doubted(const brief *b, tell_list slots, telling *t)
{
    tell_list doubted = {.count = b->strings};
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        bool gap = f->code == SIL_READING_ODD && f->level == SIL_LEVEL_WATCH && f->string >= 0;
        if (gap && slots.chosen[f->string]) {
            doubted.chosen[f->string] = true;
        }
    }
    int count = tell_chosen(&doubted);
    if (count > 0) {
        tell(t, "First measure the %s at the 1st fret of ", count == 1 ? "gap" : "gaps");
        tell_which(t, &doubted);
        tell(t, " once more: %s not fit the others. ", count == 1 ? "it does" : "they do");
    }
}

/* Writes with which other string's action this one looks swapped. */
static void tell_swapped(const brief *b, int string, telling *t)
{
    tell(t, " looks swapped with that of string ");
    for (int i = 0; i < b->strings; i++) {
        if (i != string && b->plan->odd.action[i].why == SIL_ODD_SWAPPED) {
            tell_string(t, i);
        }
    }
}

void say_reading_odd(const brief *b, const sil_finding *f, int count, telling *t)
{
    if (f->level == SIL_LEVEL_WATCH) {
        say_doubtful(b, f, count, t);
        return;
    }
    const sil_odd_one *odd = odd_of(&b->plan->odd, f);
    brief_figure off = figure_nearest(b, fabs(odd->off));
    tell_what(b, f, t);
    tell(t, " again: ");
    tell_length(t, "read", f->string, figure_nearest(b, odd->read));
    switch (odd->why) {
    case SIL_ODD_UNLIKELY:
    case SIL_NOT_ODD:
        tell(t, " is unlikely");
        break;
    case SIL_ODD_LINE:
        tell(t, " is ");
        tell_length(t, "off", f->string, off);
        tell(t, " off the line of the others");
        break;
    case SIL_ODD_OTHERS:
        tell(t, " is ");
        tell_length(t, "off", f->string, off);
        tell(t, " off the others");
        break;
    case SIL_ODD_MOVED:
        tell(t, " is ");
        tell_length(t, "off", f->string, off);
        tell(t, " from the last visit, and nothing was worked there");
        break;
    case SIL_ODD_SWAPPED:
        tell_swapped(b, f->string, t);
        break;
    }
    tell(t, ". Cut nothing before that.");
}

/* Names the lists that may have been begun at the wrong end. */
static void tell_look_at_lists(const brief *b, telling *t)
{
    tell(t, "Look at which end %s begun",
         b->plan->bench.standing.first_order
             ? "the lists of the action and the gap at the 1st fret were"
             : "the list of the action was");
}

void say_reading_order(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    bool both = b->plan->bench.standing.first_order;
    tell(t, "The action falls by ");
    tell_length(t, "read", -1, figure_nearest(b, f->read));
    tell(t, " from string ");
    tell_string(t, 0);
    tell(t, " to string ");
    tell_string(t, b->strings - 1);
    tell(t, both ? ", and the gap at the 1st fret falls with it, though their targets rise. "
                 : ", though its target rises. ");
    tell_look_at_lists(b, t);
    tell(t, ": string 1 is on the treble side. Cut nothing before that.");
}

/* What a figure that cannot be is, and the readings and dimensions it came from, of which one is
 * likely a slip. */
typedef struct cannot {
    const char *what, *from;
} cannot;

static cannot cannot_of(plan_figure figure)
{
    static const char nut[] =
        "the depth of the nut's slot in the neck, the fret height, the relief";
    static const char saddle[] = "the saddle's height, the depth of the saddle slot";
    switch (figure) {
    case PLAN_FLOOR:
        return (cannot){"Floor of the nut slot over the nut's bottom", nut};
    case PLAN_STACK:
        return (cannot){"Floor of the nut slot over the board", nut};
    case PLAN_PRESENT:
        return (cannot){"Height of the saddle over its bottom", saddle};
    case PLAN_HEIGHT:
        return (cannot){"Height of the finished saddle over its bottom", saddle};
    case PLAN_STANDS:
        return (cannot){"Saddle out of the bridge", saddle};
    case PLAN_OUT:
        return (cannot){"Finished saddle out of the bridge", saddle};
    case PLAN_SHARE:
        return (cannot){"Share of the saddle inside the saddle slot", saddle};
    case PLAN_ACTION:
    case PLAN_POSSIBLE:
        break;
    }
    return (cannot){"", ""};
}

static const plan_sense *sense_of(const brief *b, const sil_finding *f)
{
    return f->stage == SIL_NUT ? &b->plan->nut_sense[f->string] : &b->plan->saddle_sense[f->string];
}

static brief_figure shown_as(const brief *b, plan_figure figure, double value)
{
    return figure == PLAN_SHARE ? figure_share(value) : figure_nearest(b, value);
}

/* Writes what a figure would have to be: "it must be 0 to 4.00 mm". */
static void tell_possible(const brief *b, const plan_sense *sense, telling *t)
{
    bool share = sense->figure == PLAN_SHARE;
    tell(t, sil_known(sense->range.high) ? "it must be 0 to " : "it must be over 0");
    if (sil_known(sense->range.high)) {
        tell_figure(t, "high", -1, shown_as(b, sense->figure, sense->range.high));
        share ? tell(t, " %%") : tell_unit(t);
    }
}

/* Writes "Floor of the nut slot over the board, all strings: 11.06 to 11.10 mm" of those findings that
 * are of one figure. */
static void tell_alike(const brief *b, const sil_finding *f, int count, plan_figure figure,
                       telling *t)
{
    tell_list list = {.count = b->strings};
    for (int k = 0; k < count; k++) {
        list.chosen[f[k].string] = sense_of(b, &f[k])->figure == figure;
        list.figure[f[k].string] = shown_as(b, figure, f[k].read);
    }
    tell(t, "%s, ", cannot_of(figure).what);
    tell_which(t, &list);
    tell(t, ": ");
    tell_span(t, "read", &list);
    figure == PLAN_SHARE ? tell(t, " %%") : tell_unit(t);
}

void say_impossible(const brief *b, const sil_finding *f, int count, telling *t)
{
    unsigned told = 0;
    for (int k = 0; k < count; k++) {
        const plan_sense *sense = sense_of(b, &f[k]);
        if (!(told & 1U << sense->figure)) {
            told |= 1U << sense->figure;
            tell_alike(b, f, count, sense->figure, t);
            tell(t, "; ");
            tell_possible(b, sense, t);
            tell(t, ". ");
        }
    }
    tell(t, "Likely a slip in one of these: %s. Measure them again before you cut anything.",
         cannot_of(sense_of(b, f)->figure).from);
}

/* Names what the figures that cannot be came from. */
static void tell_impossible(const brief *b, tell_things *things, telling *t)
{
    bool nut = sil_withheld_by(&b->plan->nut_withheld, SIL_IMPOSSIBLE);
    bool saddle = sil_withheld_by(&b->plan->saddle_withheld, SIL_IMPOSSIBLE);
    tell_thing(t, things, cannot_of(PLAN_FLOOR).from, nut);
    tell_thing(t, things, cannot_of(PLAN_HEIGHT).from, saddle);
}

/* Whether anything but the actions, whose list is to be measured again as a whole, stands out. */
static bool others_stand_out(const brief *b, const tell_list *first)
{
    const sil_standing *standing = &b->plan->bench.standing;
    return standing->relief_odd || standing->crowns_odd || standing->saddle_odd ||
           tell_chosen(first) > 0 || plan_any_impossible(b->plan);
}

void say_measure_odd(const brief *b, telling *t)
{
    const sil_standing *standing = &b->plan->bench.standing;
    tell_list first = {.count = b->strings}, action = first;
    tell_things things = {.joint = "; "};
    for (int i = 0; i < b->strings; i++) {
        first.chosen[i] = standing->first_odd[i] && !standing->first_order;
        action.chosen[i] = standing->action_odd[i] && !standing->action_order;
    }
    if (standing->action_order) {
        tell_look_at_lists(b, t);
        tell(t, ": string ");
        tell_string(t, 0);
        tell(t, " comes first, string ");
        tell_string(t, b->strings - 1);
        tell(t, " last. Measure both again.");
        if (!others_stand_out(b, &first)) {
            return;
        }
        tell(t, " ");
    }
    tell(t, "Measure again what does not fit: ");
    tell_thing(t, &things, "the relief", standing->relief_odd);
    tell_thing(t, &things, "the worn spots and proud crowns", standing->crowns_odd);
    tell_thing_of(t, &things, "the gap at the 1st fret of ", &first);
    tell_thing_of(t, &things, "the action at the 12th fret of ", &action);
    tell_thing(t, &things, "the saddle's height", standing->saddle_odd);
    tell_impossible(b, &things, t);
    tell(t, ".");
}

void say_check_odd(const brief *b, telling *t)
{
    bool list = b->plan->bench.standing.action_order;
    tell(t,
         "Correct the sheet if it was a slip of the pen. If it reads the same, add it as a new "
         "reading, or list %s under confirmed. Then plan again.",
         list ? "every string" : "the string");
}
