/* SPDX-License-Identifier: MIT */
/* What was found, in words: each finding by itself, and with those that say the same of other
 * strings. */
#include <string.h>

#include "say.h"
#include "within.h"

#include "../plan/plan.h"

/* What the figure behind a finding is. */
typedef enum figure_kind { NO_FIGURE, LENGTH, PERCENT, SHARE, DEGREES, NEWTONS } figure_kind;

typedef struct finding_words {
    figure_kind figure;
    const char *subject; /* what was read; "%" stands for the fret */
    const char *meaning; /* and what of it */
} finding_words;

static finding_words neck_words(sil_code code)
{
    if (code == SIL_BACK_BOW) {
        return (finding_words){LENGTH, "Relief at fret %",
                               "A string lies flat on a straight neck and on a back-bowed one "
                               "alike. A back-bow shows only under a straightedge, and buzzes at "
                               "the first frets."};
    }
    if (code == SIL_RELIEF_LOW) {
        return (finding_words){LENGTH, "Relief at fret %",
                               "Too straight: buzzes toward the first frets when picked hard."};
    }
    if (code == SIL_RELIEF_HIGH) {
        return (finding_words){LENGTH, "Relief at fret %",
                               "Too much bow: high and stiff in the middle of the neck, and buzzes "
                               "near the body."};
    }
    return (finding_words){LENGTH, "Relief at fret %",
                           "No truss rod can put it right here, so it stays, and the plan takes it "
                           "as it is."};
}

static finding_words words_of(sil_code code)
{
    switch (code) {
    case SIL_BACK_BOW:
    case SIL_RELIEF_LOW:
    case SIL_RELIEF_HIGH:
    case SIL_ROD_LIMIT:
        return neck_words(code);
    case SIL_RELIEF_UNKNOWN:
        return (finding_words){NO_FIGURE, "Relief was not measured",
                               "Every height depends on it: measure it before cutting anything."};
    case SIL_FRET_WORN:
        return (finding_words){
            LENGTH, "Worn spot in fret %",
            "A note fretted behind it buzzes, and the gap measured over it is too "
            "large by its depth."};
    case SIL_FRET_HIGH:
        return (finding_words){LENGTH, "Fret % stands proud",
                               "Notes fretted behind it buzz on it: seat it, or dress it on the "
                               "spot."};
    case SIL_CROWN_THIN:
        return (finding_words){LENGTH, "Fret height after levelling to the deepest worn spot",
                               "Too little to level: fit new frets."};
    case SIL_CROWNS_UNREAD:
        return (finding_words){NO_FIGURE, "Nobody has looked at the frets for wear",
                               "Worn first frets look like a high nut. Look at frets 1 to 3 before "
                               "you file a slot."};
    case SIL_SLOT_LOW:
        return (finding_words){LENGTH, "Gap at the 1st fret",
                               "Nut slot too low: the open string rattles on the 1st fret."};
    case SIL_SLOT_HIGH:
        return (finding_words){LENGTH, "Gap at the 1st fret",
                               "Nut slot too high: stiff, and sharp at the first frets."};
    case SIL_SADDLE_LOW:
        return (finding_words){LENGTH, "Action at the 12th fret",
                               "Too low at the saddle: buzzes up the neck."};
    case SIL_SADDLE_HIGH:
        return (finding_words){LENGTH, "Action at the 12th fret",
                               "Too high at the saddle: hard to play up the neck."};
    case SIL_PROTRUSION_LOW:
        return (finding_words){LENGTH, "Finished saddle stands out of the bridge",
                               "Too little saddle left over the bridge."};
    case SIL_PROTRUSION_HIGH:
        return (finding_words){LENGTH, "Finished saddle stands out of the bridge",
                               "A tall saddle leans on its slot and may split the bridge."};
    case SIL_SEAT_SHALLOW:
        return (finding_words){SHARE, "Share of the saddle inside its slot",
                               "At least half belongs inside: else it leans and may split the "
                               "bridge."};
    case SIL_BREAK_ANGLE_LOW:
        return (finding_words){DEGREES, "Break angle over the saddle",
                               "A shallow angle presses too little: weak tone, and a string that "
                               "rattles or wanders on the saddle."};
    case SIL_NECK_ANGLE:
        return (finding_words){NO_FIGURE, "The target action needs more than the saddle has",
                               "The angle of the neck is at fault, and sanding would not cure it: "
                               "have a qualified repairer look at it."};
    case SIL_CLIMATE:
        return (finding_words){PERCENT, "Humidity",
                               "Tops and necks move with it: bring it back inside its limits, then "
                               "measure again."};
    case SIL_BRIDGE_LIFTED:
        return (finding_words){NO_FIGURE, "The bridge is lifting",
                               "Have a qualified repairer glue it first: every height changes."};
    case SIL_BRACES_LOOSE:
        return (finding_words){
            NO_FIGURE, "A brace is loose",
            "Have a qualified repairer glue it first: the top moves when it is."};
    case SIL_NOT_TUNED:
        return (finding_words){NO_FIGURE, "The strings were not at pitch",
                               "The neck bends with the tension: tune, then measure again."};
    case SIL_READINGS_DISAGREE:
        return (finding_words){LENGTH, "Gap at the 1st fret",
                               "The open gap of the same string does not fit: measure both again."};
    case SIL_TOOL_COARSE:
        return (finding_words){
            LENGTH, "Uncertainty of the cut",
            "More than the cut leaves room for: no first pass is safe with these "
            "tools. Measure with a finer one."};
    case SIL_FORECAST:
        return (finding_words){NO_FIGURE, "Figures past this work are a forecast",
                               "Measure everything again after it, and only then cut."};
    case SIL_ADJUST_LIMIT:
        return (finding_words){LENGTH, "Travel the saddle needs",
                               "More than it is likely to have left: look at the neck's angle "
                               "first."};
    case SIL_EDGE_NARROW:
        return (finding_words){LENGTH, "Outer string to the board's edge",
                               "Little room: the string slips off the board when pulled sideways."};
    case SIL_TWIST:
        return (finding_words){LENGTH, "Heights on treble and bass differ by",
                               "The neck may be twisted: sight along it, and lay a straightedge on "
                               "both sides."};
    case SIL_TECHNIQUE:
        return (finding_words){
            NO_FIGURE, "Heard to buzz, though it should ring clear",
            "Press the string squarely, close behind the fret, and listen again."};
    case SIL_UNEXPLAINED:
        return (finding_words){NO_FIGURE, "The readings don't explain this buzz",
                               "Look in this order: tuning and the age of the strings; the fall of "
                               "nut slot and saddle toward their front edges; loose parts; a fret "
                               "rocker across the next three frets; technique."};
    case SIL_ATTACK:
        return (finding_words){NEWTONS, "Hardest pluck that rings clean",
                               "With every reading at its target it would still buzz under this "
                               "pick: raise the targets, or pick lighter."};
    case SIL_STRING_UNKNOWN:
        return (finding_words){NO_FIGURE, "Tension not known",
                               "Give its note or pitch, and the core of a wound string (or its "
                               "mass): without them nobody can say what buzzes and what plays in "
                               "tune."};
    case SIL_STRING_STIFF:
        return (finding_words){NO_FIGURE, "Very stiff for its length",
                               "Its compensation is past what the formulas are good for: trust a "
                               "tuner."};
    case SIL_OFF_SADDLE:
        return (finding_words){LENGTH, "In-tune point off the saddle's line",
                               "It lies outside the saddle's thickness: the line of the slot is at "
                               "fault, not the top of the saddle. By ear it may well pass."};
    case SIL_ROD_UNKNOWN:
        return (finding_words){
            NO_FIGURE, "The sheet does not say whether there is a truss rod",
            "If there is one, set the relief first: nut and saddle may then need "
            "nothing, so both wait."};
    case SIL_WRONG_WAY:
        return (finding_words){LENGTH, "Relief since the rod was turned, by",
                               "It moved the wrong way, or the rod isn't engaging: turn an eighth "
                               "back, retune, measure. Never force it."};
    case SIL_ZERO_FRET_LOW:
        return (finding_words){LENGTH, "Gap at the 1st fret",
                               "The zero fret is too low: the open string rattles on the 1st fret. "
                               "Its slots only guide: filing or filling them changes nothing."};
    case SIL_ZERO_FRET_HIGH:
        return (finding_words){
            LENGTH, "Gap at the 1st fret",
            "The zero fret is too high: stiff, and sharp at the first frets. Its "
            "slots only guide: filing them changes nothing."};
    case SIL_OFF_FORECAST: /* say_off_forecast and say_moved tell these */
    case SIL_MOVED:
    case SIL_CODES:
        break;
    }
    return (finding_words){NO_FIGURE, "", ""};
}

/* A figure with its unit, or bare where one with its unit follows. */
static void tell_kind(telling *t, figure_kind kind, const char *of, int string, double value,
                      bool bare)
{
    switch (kind) {
    case LENGTH:
        (bare ? tell_figure : tell_length)(t, of, string,
                                           figure_length(t->b->unit, value, SIL_NEAREST));
        return;
    case PERCENT:
        tell_figure(t, of, string, figure_number(value, 0));
        tell(t, " %%");
        return;
    case SHARE:
        tell_figure(t, of, string, figure_number(value * 100.0, 0));
        tell(t, " %%");
        return;
    case DEGREES:
        tell_figure(t, of, string, figure_number(value, 0));
        tell(t, "\u00b0");
        return;
    case NEWTONS:
        tell_figure(t, of, string, figure_number(value, 2));
        tell(t, " N");
        return;
    case NO_FIGURE:
        return;
    }
}

static void tell_subject(telling *t, const char *subject, int fret)
{
    const char *gap = strchr(subject, '%');
    if (!gap) {
        tell(t, "%s", subject);
    } else {
        tell(t, "%.*s%d%s", (int)(gap - subject), subject, fret, gap + 1);
    }
}

/* " (target 1.50 to 2.00 mm)", or the limit that was passed. */
static void tell_range(telling *t, figure_kind kind, const sil_finding *finding)
{
    bool low = sil_known(finding->low), high = sil_known(finding->high);
    if (low && high && finding->low < finding->high) {
        tell(t, " (target ");
        tell_kind(t, kind, "low", finding->string, finding->low, true);
        tell(t, " to ");
        tell_kind(t, kind, "high", finding->string, finding->high, false);
        tell(t, ")");
    } else if (low != high) {
        tell(t, low ? " (at least " : " (at most ");
        tell_kind(t, kind, low ? "low" : "high", finding->string,
                  low ? finding->low : finding->high, false);
        tell(t, ")");
    }
}

static bool speaks_of_slots(const sil_finding *finding)
{
    return finding->code == SIL_SLOT_LOW || finding->code == SIL_SLOT_HIGH ||
           finding->code == SIL_ZERO_FRET_LOW || finding->code == SIL_ZERO_FRET_HIGH;
}

static bool speaks_of_action(const sil_finding *finding)
{
    return finding->code == SIL_SADDLE_LOW || finding->code == SIL_SADDLE_HIGH;
}

/* What may have been judged without a gauge. */
static bool told_by_ear(const sil_finding *finding)
{
    return finding->code == SIL_SLOT_HIGH || finding->code == SIL_RELIEF_HIGH;
}

static bool speaks_of_notes(const sil_finding *finding)
{
    return finding->code == SIL_TECHNIQUE || finding->code == SIL_UNEXPLAINED ||
           finding->code == SIL_ATTACK;
}

/* Whether the figure is what it will be once earlier work is done, not what was measured. */
static bool foretold(const sil_plan *plan, const sil_finding *finding)
{
    const bool *changed = plan->stages.changed;
    bool before_nut = changed[SIL_ROD] || changed[SIL_FRETS];
    return (speaks_of_slots(finding) && before_nut) ||
           (speaks_of_action(finding) && (before_nut || changed[SIL_NUT]));
}

static void tell_heading(const brief *b, const sil_finding *finding, telling *t)
{
    const sil_bench *bench = &b->plan->bench;
    tell_subject(t, words_of(finding->code).subject, finding->fret);
    if (speaks_of_slots(finding)) {
        tell(t, ", %s", brief_hold(bench->targets.first_held));
    }
    if (finding->code == SIL_READINGS_DISAGREE) {
        tell(t, ", %s", brief_hold(bench->gaps.first_held));
    }
    if (foretold(b->plan, finding)) {
        tell(t, ", once the work before it is done");
    }
}

static void tell_reading(const sil_finding *finding, telling *t)
{
    figure_kind kind = words_of(finding->code).figure;
    t->fret = finding->fret;
    if (finding->read == 0.0 && (speaks_of_slots(finding) || speaks_of_action(finding))) {
        tell_figure(t, "read", finding->string, figure_number(0.0, 0));
        tell(t, ", it lies on the fret");
    } else if (!sil_known(finding->read) && told_by_ear(finding)) {
        tell(t, "wide, by finger and ear");
    } else {
        bool ranged = sil_known(finding->low) || sil_known(finding->high);
        tell_kind(t, kind, "read", finding->string, finding->read,
                  ranged && finding->code != SIL_TOOL_COARSE);
    }
    tell_range(t, kind, finding);
    t->fret = -1;
}

/* How many findings from this one on say the same of other strings. */
static int count_alike(const sil_plan *plan, int first)
{
    const sil_finding *f = &plan->findings[first];
    int count = 1;
    bool told_together = f->string >= 0 && (f->fret < 0 || speaks_of_notes(f));
    while (told_together && first + count < plan->finding_count && f[count].code == f->code &&
           f[count].level == f->level && f[count].stage == f->stage && f[count].string >= 0) {
        count++;
    }
    return count;
}

static void tell_place(const brief *b, const sil_finding *finding, bool leads, telling *t)
{
    if (finding->string >= 0 && b->strings > 1) {
        tell(t, leads ? ", string " : "; string ");
        tell_string(t, finding->string);
    }
    if (speaks_of_notes(finding) && finding->fret == 0) {
        tell(t, " open");
    } else if (speaks_of_notes(finding)) {
        tell(t, " at fret %d", finding->fret);
    }
}

static void tell_findings(const brief *b, const sil_finding *f, int count, telling *t)
{
    if (f->code == SIL_READINGS_DISAGREE && f->stage == SIL_SADDLE) {
        tell(t, "Saddle height by caliper and by the bridge's top differ by more than ");
        tell_length(t, "high", -1, figure_length(b->unit, 0.3, SIL_NEAREST));
        tell(t, ". The plan uses neither: measure both again.");
        return;
    }
    if (f->code == SIL_MOVED || f->code == SIL_OFF_FORECAST) {
        (f->code == SIL_MOVED ? say_moved : say_off_forecast)(b, f->read, t);
        return;
    }
    finding_words words = words_of(f->code);
    tell_heading(b, f, t);
    for (int k = 0; k < count; k++) {
        tell_place(b, &f[k], k == 0, t);
        if (words.figure != NO_FIGURE) {
            tell(t, ": ");
            tell_reading(&f[k], t);
        }
    }
    tell(t, ". %s", words.meaning);
}

static brief_sentence said(brief *b, int first, int count)
{
    telling t = tell_begin(b);
    tell_findings(b, &b->plan->findings[first], count, &t);
    return tell_end(&t);
}

void brief_fill_findings(brief *b)
{
    int count = b->plan->finding_count, told = 0;
    b->findings = text_store_room(&b->store, (size_t)(count + 1) * sizeof *b->findings);
    for (int k = 0; b->findings && k < count; k++) {
        brief_finding *finding = &b->findings[k];
        int alike = count_alike(b->plan, k);
        *finding = (brief_finding){.alone = said(b, k, 1), .alike = alike};
        finding->together = finding->alone;
        if (k >= told && alike > 1) { /* only the first of a group is told with the others */
            finding->together = said(b, k, alike);
            told = k + alike;
        }
    }
}

const char *brief_hold(sil_hold hold)
{
    switch (hold) {
    case SIL_HOLD_OPEN:
        return "open";
    case SIL_HOLD_2:
        return "fretted at the 2nd";
    case SIL_HOLD_3:
        return "fretted at the 3rd";
    }
    return "";
}
