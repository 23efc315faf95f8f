/* SPDX-License-Identifier: MIT */
/* The words of findings, all in one table: what scripts rely on, and what a person reads. */
#include "text.h"

/* What the figure behind a finding is. */
typedef enum figure_kind { NO_FIGURE, LENGTH, PERCENT, SHARE, DEGREES } figure_kind;

typedef struct finding_words {
    const char *code;
    figure_kind figure;
    const char *subject; /* what was read; "%" stands for the fret */
    const char *meaning;
    const char *waits; /* why a part waits; only for what withholds */
} finding_words;

static const finding_words words[SIL_CODES] = {
    [SIL_BACK_BOW] = {"back-bow", LENGTH, "Relief over fret %",
                      "A string lies flat on a straight neck and on a back-bowed one alike; a "
                      "back-bow shows under a straightedge only, and buzzes at the first frets.",
                      "the neck may be back-bowed, which a string cannot show"},
    [SIL_RELIEF_LOW] = {"relief-low", LENGTH, "Relief over fret %",
                        "Too straight: buzzes toward the first frets when picked hard."},
    [SIL_RELIEF_HIGH] = {"relief-high", LENGTH, "Relief over fret %",
                         "Too much bow: high and stiff in the middle of the neck, and buzzes near "
                         "the body."},
    [SIL_RELIEF_UNKNOWN] = {"relief-unknown", NO_FIGURE, "Relief was not read",
                            "Every height hangs on it: nothing is cut before it is known.",
                            "relief was not read"},
    [SIL_ROD_LIMIT] =
        {"rod-limit", LENGTH, "Relief over fret %",
         "No truss rod can put it right here, so it stays, and the rest is planned on "
         "it as it is."},
    [SIL_FRET_WORN] = {"fret-worn", LENGTH, "Dent in fret %",
                       "A note stopped behind it buzzes, and the gap read over it is too large by "
                       "its depth.",
                       "the frets are levelled first"},
    [SIL_FRET_HIGH] = {"fret-high", LENGTH, "Fret % stands proud by",
                       "Notes stopped behind it buzz on it: seat it, or dress it on the spot."},
    [SIL_CROWN_THIN] = {"crown-thin", LENGTH, "Crown left after levelling to the deepest dent",
                        "Too little to level: new frets.", "new frets come first"},
    [SIL_CROWNS_UNREAD] = {"crowns-unread", NO_FIGURE, "The crowns were not looked at",
                           "Worn first frets look like a high nut: no slot is filed before frets 1 "
                           "to 3 are read or called sound.",
                           "the crowns were not looked at"},
    [SIL_SLOT_LOW] = {"slot-low", LENGTH, "Gap at the 1st fret",
                      "The slot is too low: the open string rattles on the 1st fret."},
    [SIL_SLOT_HIGH] = {"slot-high", LENGTH, "Gap at the 1st fret",
                       "The slot is too high: stiff, and sharp at the first frets."},
    [SIL_SADDLE_LOW] = {"saddle-low", LENGTH, "Action at the 12th fret",
                        "The string is too low at the saddle: buzzes up the neck."},
    [SIL_SADDLE_HIGH] = {"saddle-high", LENGTH, "Action at the 12th fret",
                         "The string is too high at the saddle: hard to play up the neck."},
    [SIL_PROTRUSION_LOW] = {"protrusion-low", LENGTH, "Saddle standing out of the bridge, finished",
                            "Too little saddle left over the bridge.",
                            "the saddle would stand too low; the neck's angle is at fault"},
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
                     "Tops and necks move with it: bring the instrument back inside, then read "
                     "again.",
                     "the humidity is outside its limits"},
    [SIL_BRIDGE_LIFTED] = {"bridge-lifted", NO_FIGURE, "The bridge is lifting",
                           "Glue first: every height changes. Work for a qualified repairer.",
                           "the bridge is lifting"},
    [SIL_BRACES_LOOSE] = {"braces-loose", NO_FIGURE, "A brace is loose",
                          "Glue first: the top stands otherwise after. Work for a qualified "
                          "repairer.",
                          "a brace is loose"},
    [SIL_NOT_TUNED] = {"not-tuned", NO_FIGURE, "The strings were not at pitch",
                       "The neck stands otherwise under full tension: tune, then read again.",
                       "the strings were not at pitch"},
    [SIL_READINGS_DISAGREE] = {"readings-disagree", LENGTH, "Gap at the 1st fret",
                               "The open gap of the same string says otherwise: read both again."},
    [SIL_TOOL_COARSE] = {"tool-coarse", LENGTH, "Uncertainty of the cut",
                         "More than the cut leaves room for: no first pass can be told safely with "
                         "these tools. Read with a finer one."},
    [SIL_FORECAST] = {"forecast", NO_FIGURE, "Figures past this work are a forecast",
                      "Read everything again after it; only then is anything cut.",
                      "the truss rod is turned first"},
};

static const char *const level_words[] = {"fine", "watch", "act", "stop"};
static const char *const stage_words[] = {"now", "rod", "frets", "nut", "saddle"};

const char *sil_code_word(sil_code code)
{
    return words[code].code;
}

const char *sil_code_waits(sil_code code)
{
    return words[code].waits;
}

const char *sil_level_word(sil_level level)
{
    return level_words[level];
}

const char *sil_stage_word(sil_stage_name stage)
{
    return stage_words[stage];
}

static void add_figure(text *t, figure_kind figure, double value)
{
    char digits[32];
    switch (figure) {
    case LENGTH:
        text_length_unit(t, value, NEAREST);
        return;
    case PERCENT:
    case SHARE:
        sil_number_write(digits, sizeof digits, figure == SHARE ? value * 100.0 : value, 0);
        text_add(t, "%s %%", digits);
        return;
    case DEGREES:
        sil_number_write(digits, sizeof digits, value, 0);
        text_add(t, "%s\xC2\xB0", digits);
        return;
    case NO_FIGURE:
        return;
    }
}

static void add_subject(text *t, const char *subject, int fret)
{
    for (const char *at = subject; *at; at++) {
        if (*at == '%') {
            text_add(t, "%d", fret);
        } else {
            text_add(t, "%c", *at);
        }
    }
}

static void add_range(text *t, figure_kind figure, const sil_finding *finding)
{
    bool low = sil_known(finding->low);
    bool high = sil_known(finding->high);
    if (low && high && finding->low < finding->high) {
        text_add(t, "; wanted ");
        add_figure(t, figure, finding->low);
        text_add(t, " to ");
        add_figure(t, figure, finding->high);
    } else if (low != high) {
        text_add(t, low ? "; at least " : "; at most ");
        add_figure(t, figure, low ? finding->low : finding->high);
    }
}

/* How the gap at the first fret was judged, for the findings that speak of it. */
static const char *hold_words(sil_hold hold)
{
    return hold == SIL_HOLD_OPEN ? " (open)"
           : hold == SIL_HOLD_2  ? " (lying on the 2nd)"
                                 : " (held at the 3rd)";
}

/* Whether the figure is what the gauge said, or what it will be once earlier work is done. */
static const char *verb(const sil_plan *plan, const sil_finding *finding)
{
    if (finding->code == SIL_SLOT_LOW || finding->code == SIL_SLOT_HIGH) {
        bool moved = plan->stages.changed[SIL_ROD] || plan->stages.changed[SIL_FRETS];
        return moved ? "will stand at" : "stands at";
    }
    if (finding->code == SIL_SADDLE_LOW || finding->code == SIL_SADDLE_HIGH) {
        bool moved = plan->stages.changed[SIL_ROD] || plan->stages.changed[SIL_FRETS] ||
                     plan->stages.changed[SIL_NUT];
        return moved ? "will stand, the work before it done, at" : "stands at";
    }
    return finding->code == SIL_FRET_HIGH ? "" : "is";
}

size_t sil_finding_text(const sil_plan *plan, const sil_finding *finding, sil_unit unit, char *out,
                        size_t size)
{
    const finding_words *w = &words[finding->code];
    text t;
    text_begin(&t, out, size, unit);
    if (finding->code == SIL_READINGS_DISAGREE && finding->stage == SIL_SADDLE) {
        text_add(&t, "Saddle height by caliper and by the bridge's top differ by more than ");
        text_length_unit(&t, 0.3, NEAREST);
        text_add(&t, ". Neither is used: read both again.");
        return text_end(&t);
    }
    if (finding->string >= 0 && plan->job->string_count > 1) {
        text_add(&t, "String %d: ", finding->string + 1);
    }
    add_subject(&t, w->subject, finding->fret);
    bool gap = finding->stage == SIL_NUT && w->figure == LENGTH && finding->code != SIL_TOOL_COARSE;
    if (gap) {
        text_add(&t, "%s",
                 hold_words(finding->code == SIL_READINGS_DISAGREE
                                ? plan->bench.gaps.first_held
                                : plan->bench.targets.first_held));
    }
    if (w->figure != NO_FIGURE) {
        bool nought = finding->read == 0.0 && (gap || finding->code == SIL_SADDLE_LOW);
        const char *is = verb(plan, finding);
        text_add(&t, "%s%s ", *is ? " " : "", nought ? "reads at or under" : is);
        add_figure(&t, w->figure, finding->read);
        add_range(&t, w->figure, finding);
    }
    text_add(&t, ". %s", w->meaning);
    return text_end(&t);
}
