/* SPDX-License-Identifier: MIT */
/* The words of findings, all in one table: what scripts rely on, and what a person reads. */
#include "say.h"

/* What the figure behind a finding is. */
typedef enum figure_kind { NO_FIGURE, LENGTH, PERCENT, SHARE, DEGREES, NEWTONS } figure_kind;

typedef struct finding_words {
    const char *code;
    figure_kind figure;
    const char *subject; /* what was read; "%" stands for the fret */
    const char *meaning;
} finding_words;

static const finding_words words[SIL_CODES] = {
    [SIL_BACK_BOW] = {"back-bow", LENGTH, "Relief over fret %",
                      "A string lies flat on a straight neck and on a back-bowed one alike; a "
                      "back-bow shows under a straightedge only, and buzzes at the first frets."},
    [SIL_RELIEF_LOW] = {"relief-low", LENGTH, "Relief over fret %",
                        "Too straight: buzzes toward the first frets when picked hard."},
    [SIL_RELIEF_HIGH] = {"relief-high", LENGTH, "Relief over fret %",
                         "Too much bow: high and stiff in the middle of the neck, and buzzes near "
                         "the body."},
    [SIL_RELIEF_UNKNOWN] = {"relief-unknown", NO_FIGURE, "Relief was not read",
                            "Every height hangs on it: nothing is cut before it is known."},
    [SIL_ROD_LIMIT] =
        {"rod-limit", LENGTH, "Relief over fret %",
         "No truss rod can put it right here, so it stays, and the rest is planned on "
         "it as it is."},
    [SIL_FRET_WORN] = {"fret-worn", LENGTH, "Dent in fret %",
                       "A note stopped behind it buzzes, and the gap read over it is too large by "
                       "its depth."},
    [SIL_FRET_HIGH] = {"fret-high", LENGTH, "Fret % stands proud",
                       "Notes stopped behind it buzz on it: seat it, or dress it on the spot."},
    [SIL_CROWN_THIN] = {"crown-thin", LENGTH, "Crown left after levelling to the deepest dent",
                        "Too little to level: new frets."},
    [SIL_CROWNS_UNREAD] = {"crowns-unread", NO_FIGURE, "The crowns were not looked at",
                           "Worn first frets look like a high nut: no slot is filed before frets 1 "
                           "to 3 are read or called sound."},
    [SIL_SLOT_LOW] = {"slot-low", LENGTH, "Gap at the 1st fret",
                      "Slot too low: the open string rattles on the 1st fret."},
    [SIL_SLOT_HIGH] = {"slot-high", LENGTH, "Gap at the 1st fret",
                       "Slot too high: stiff, and sharp at the first frets."},
    [SIL_SADDLE_LOW] = {"saddle-low", LENGTH, "Action at the 12th fret",
                        "Too low at the saddle: buzzes up the neck."},
    [SIL_SADDLE_HIGH] = {"saddle-high", LENGTH, "Action at the 12th fret",
                         "Too high at the saddle: hard to play up the neck."},
    [SIL_PROTRUSION_LOW] = {"protrusion-low", LENGTH, "Saddle standing out of the bridge, finished",
                            "Too little saddle left over the bridge."},
    [SIL_PROTRUSION_HIGH] = {"protrusion-high", LENGTH,
                             "Saddle standing out of the bridge, finished",
                             "A tall saddle leans on its slot and may split the bridge."},
    [SIL_SEAT_SHALLOW] = {"seat-shallow", SHARE, "Share of the saddle inside its slot",
                          "At least half belongs inside: it leans, and may split the bridge."},
    [SIL_BREAK_ANGLE_LOW] = {"break-angle-low", DEGREES, "Angle of the string over the saddle",
                             "A shallow angle presses too little: weak tone, and a string that "
                             "rattles or wanders on the saddle."},
    [SIL_NECK_ANGLE] = {"neck-angle", NO_FIGURE, "The action wanted needs more than the saddle has",
                        "The angle of the neck is at fault. Sanding would not cure it: to be seen "
                        "by a qualified repairer."},
    [SIL_CLIMATE] = {"climate", PERCENT, "Humidity",
                     "Tops and necks move with it: bring it back inside its limits, then read "
                     "again."},
    [SIL_BRIDGE_LIFTED] = {"bridge-lifted", NO_FIGURE, "The bridge is lifting",
                           "Glue first: every height changes. Work for a qualified repairer."},
    [SIL_BRACES_LOOSE] = {"braces-loose", NO_FIGURE, "A brace is loose",
                          "Glue first: the top stands otherwise after. Work for a qualified "
                          "repairer."},
    [SIL_NOT_TUNED] = {"not-tuned", NO_FIGURE, "The strings were not at pitch",
                       "The neck stands otherwise under full tension: tune, then read again."},
    [SIL_READINGS_DISAGREE] = {"readings-disagree", LENGTH, "Gap at the 1st fret",
                               "The open gap of the same string says otherwise: read both again."},
    [SIL_TOOL_COARSE] = {"tool-coarse", LENGTH, "Uncertainty of the cut",
                         "More than the cut leaves room for: no first pass can be told safely with "
                         "these tools. Read with a finer one."},
    [SIL_FORECAST] = {"forecast", NO_FIGURE, "Figures past this work are a forecast",
                      "Read everything again after it; only then is anything cut."},
    [SIL_ADJUST_LIMIT] = {"adjust-limit", LENGTH, "Way the saddle's screw is to go",
                          "More than such a screw is likely to have left: look at the neck's angle "
                          "first."},
    [SIL_EDGE_NARROW] = {"edge-narrow", LENGTH, "Outer string to the board's edge",
                         "Little room: the string slips off the board when pulled sideways."},
    [SIL_TWIST] =
        {"twist", LENGTH, "Heights on treble and bass differ by",
         "The neck may be twisted: sight along it, and lay a straightedge on both sides."},
    [SIL_TECHNIQUE] = {"technique", NO_FIGURE, "Heard to buzz, though it stands clear",
                       "Stop the string close behind the wire and press it squarely, then listen "
                       "again."},
    [SIL_UNEXPLAINED] = {"unexplained", NO_FIGURE,
                         "Heard to buzz, though by the readings it should not",
                         "Look in this order: tuning and the age of the strings; slot and saddle "
                         "highest at their front edges; loose parts; a rocker over the next three "
                         "frets; technique."},
    [SIL_ATTACK] = {"attack", NEWTONS, "Hardest pluck that rings clean",
                    "With every reading at its aim it would still buzz under this pick strength: "
                    "raise the targets, or pick lighter."},
    [SIL_STRING_UNKNOWN] = {"string-unknown", NO_FIGURE, "Tension not known",
                            "Its note or pitch, and the core of a wound string (or its mass), are "
                            "wanted: what buzzes and what plays in tune cannot be told without."},
    [SIL_STRING_STIFF] = {"string-stiff", NO_FIGURE, "Very stiff for its length",
                          "Its compensation is told by formulas no longer good for it: trust a "
                          "tuner."},
    [SIL_OFF_SADDLE] = {"off-saddle", LENGTH, "Contact point off the saddle's line",
                        "It lies outside the saddle's thickness: the line of the slot is at fault, "
                        "not the top of the saddle. By ear it may well pass."},
    [SIL_OFF_FORECAST] = {"off-forecast", LENGTH, NULL, NULL}, /* plan_say_off_forecast tells it */
    [SIL_ROD_UNKNOWN] = {"rod-unknown", NO_FIGURE, "Nobody said whether there is a truss rod",
                         "With one the relief is put right first, and nut and saddle may need "
                         "nothing: both wait."},
    [SIL_WRONG_WAY] = {"wrong-way", LENGTH, "Relief since the rod was turned, by",
                       "Away from what was wanted: the rod went the wrong way, or does not bite. "
                       "An eighth of a turn the other way, tuned again, tells; never force it."},
    [SIL_MOVED] = {"moved", LENGTH, NULL, NULL}, /* plan_say_moved tells it */
    [SIL_ZERO_FRET_LOW] = {"zero-fret-low", LENGTH, "Gap at the 1st fret",
                           "The zero fret stands too low: the open string rattles on the 1st fret. "
                           "Its slots only guide: filing or filling them changes nothing."},
    [SIL_ZERO_FRET_HIGH] = {"zero-fret-high", LENGTH, "Gap at the 1st fret",
                            "The zero fret stands too high: stiff, and sharp at the first frets. "
                            "Its slots only guide: filing them changes nothing."},
};

static const char *const level_words[] = {"fine", "watch", "act", "stop"};
static const char *const cause_words[] = {"relief",   "crown",  "slot",      "saddle",
                                          "combined", "attack", "technique", "unexplained"};
static const char *const stage_words[] = {"now", "rod", "frets", "nut", "saddle"};

const char *sil_code_word(sil_code code)
{
    return words[code].code;
}

const char *sil_level_word(sil_level level)
{
    return level_words[level];
}

const char *sil_stage_word(sil_stage_name stage)
{
    return stage_words[stage];
}

/* A figure with its unit, or bare where one with its unit follows. */
static void add_figure(text *t, figure_kind figure, double value, bool bare)
{
    char digits[32];
    switch (figure) {
    case LENGTH:
        (bare ? plan_text_length : plan_text_length_unit)(t, value, SIL_NEAREST);
        return;
    case PERCENT:
    case SHARE:
        sil_number_write(digits, sizeof digits, figure == SHARE ? value * 100.0 : value, 0);
        plan_text_add(t, "%s %%", digits);
        return;
    case DEGREES:
        sil_number_write(digits, sizeof digits, value, 0);
        plan_text_add(t, "%s\xC2\xB0", digits);
        return;
    case NEWTONS:
        sil_number_write(digits, sizeof digits, value, 2);
        plan_text_add(t, "%s N", digits);
        return;
    case NO_FIGURE:
        return;
    }
}

const char *sil_hold_words(sil_hold hold)
{
    return hold == SIL_HOLD_OPEN ? "open"
           : hold == SIL_HOLD_2  ? "lying on the 2nd"
                                 : "held at the 3rd";
}

const char *sil_cause_word(sil_cause_name cause)
{
    return cause_words[cause];
}

static void add_subject(text *t, const char *subject, int fret)
{
    for (const char *at = subject; *at; at++) {
        if (*at == '%') {
            plan_text_add(t, "%d", fret);
        } else {
            plan_text_add(t, "%c", *at);
        }
    }
}

/* " (wanted 1.50 to 2.00 mm)", or the limit that was passed. */
static void add_range(text *t, figure_kind figure, const sil_finding *finding)
{
    bool low = sil_known(finding->low);
    bool high = sil_known(finding->high);
    if (low && high && finding->low < finding->high) {
        plan_text_add(t, " (wanted ");
        add_figure(t, figure, finding->low, true);
        plan_text_add(t, " to ");
        add_figure(t, figure, finding->high, false);
        plan_text_add(t, ")");
    } else if (low != high) {
        plan_text_add(t, low ? " (at least " : " (at most ");
        add_figure(t, figure, low ? finding->low : finding->high, false);
        plan_text_add(t, ")");
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

/* Whether the figure is what it will be once earlier work is done, not what the gauge said. */
static bool foretold(const sil_plan *plan, const sil_finding *finding)
{
    const bool *changed = plan->stages.changed;
    bool before_nut = changed[SIL_ROD] || changed[SIL_FRETS];
    return (speaks_of_slots(finding) && before_nut) ||
           (speaks_of_action(finding) && (before_nut || changed[SIL_NUT]));
}

static void add_heading(const sil_plan *plan, const sil_finding *finding, text *t)
{
    add_subject(t, words[finding->code].subject, finding->fret);
    if (speaks_of_slots(finding)) {
        plan_text_add(t, ", %s", sil_hold_words(plan->bench.targets.first_held));
    }
    if (finding->code == SIL_READINGS_DISAGREE) {
        plan_text_add(t, ", %s", sil_hold_words(plan->bench.gaps.first_held));
    }
    if (foretold(plan, finding)) {
        plan_text_add(t, ", once the work before it is done");
    }
}

static void add_reading(const sil_finding *finding, text *t)
{
    figure_kind figure = words[finding->code].figure;
    if (finding->read == 0.0 && (speaks_of_slots(finding) || speaks_of_action(finding))) {
        plan_text_add(t, "0: on the fret, or it would be under it");
    } else if (!sil_known(finding->read) && told_by_ear(finding)) {
        plan_text_add(t, "wide, by finger and ear");
    } else {
        bool ranged = sil_known(finding->low) || sil_known(finding->high);
        add_figure(t, figure, finding->read, ranged && finding->code != SIL_TOOL_COARSE);
    }
    add_range(t, figure, finding);
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

static void write_findings(const sil_plan *plan, const sil_finding *f, int count, text *t)
{
    if (f->code == SIL_READINGS_DISAGREE && f->stage == SIL_SADDLE) {
        plan_text_add(t, "Saddle height by caliper and by the bridge's top differ by more than ");
        plan_text_length_unit(t, 0.3, SIL_NEAREST);
        plan_text_add(t, ". Neither is used: read both again.");
        return;
    }
    if (f->code == SIL_MOVED || f->code == SIL_OFF_FORECAST) {
        (f->code == SIL_MOVED ? plan_say_moved : plan_say_off_forecast)(plan, f->read, t);
        return;
    }
    add_heading(plan, f, t);
    for (int k = 0; k < count; k++) {
        if (f[k].string >= 0 && plan->job->string_count > 1) {
            plan_text_add(t, k == 0 ? ", string %d" : "; string %d", f[k].string + 1);
        }
        if (speaks_of_notes(f) && f[k].fret == 0) {
            plan_text_add(t, " open");
        } else if (speaks_of_notes(f)) {
            plan_text_add(t, " at fret %d", f[k].fret);
        }
        if (words[f->code].figure != NO_FIGURE) {
            plan_text_add(t, ": ");
            add_reading(&f[k], t);
        }
    }
    plan_text_add(t, ". %s", words[f->code].meaning);
}

size_t sil_finding_text(const sil_plan *plan, const sil_finding *finding, sil_unit unit, char *out,
                        size_t size)
{
    text t;
    plan_text_begin(&t, out, size, unit);
    write_findings(plan, finding, 1, &t);
    return plan_text_end(&t);
}

int sil_findings_text(const sil_plan *plan, int first, sil_unit unit, char *out, size_t size)
{
    text t;
    plan_text_begin(&t, out, size, unit);
    int count = count_alike(plan, first);
    write_findings(plan, &plan->findings[first], count, &t);
    return count;
}
