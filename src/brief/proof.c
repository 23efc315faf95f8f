/* SPDX-License-Identifier: MIT */
/* What tools prove to read to, in words. */
#include <sillet/core/repeat.h>

#include "figure.h"
#include "quick.h"

enum { COLUMNS = 88 };

typedef struct tool_words {
    const char *subject, *read, *have, *them;
} tool_words;

static tool_words words_of(sil_tool tool)
{
    switch (tool) {
    case SIL_TOOL_ACTION:
        return (tool_words){"The ruler at fret 12", "reads", "has", "it"};
    case SIL_TOOL_FIRST:
        return (tool_words){"The feelers at fret 1", "read", "have", "them"};
    case SIL_TOOL_RELIEF:
        return (tool_words){"The feelers at the relief", "read", "have", "them"};
    case SIL_TOOL_CALIPER:
    case SIL_TOOLS:
        break;
    }
    return (tool_words){"The caliper", "reads", "has", "it"};
}

/* To a thousandth of a millimetre, or a ten-thousandth of an inch. */
static brief_figure fine_length(sil_unit unit, double mm)
{
    brief_figure figure = unit == SIL_MM ? figure_number(mm, 3) : figure_number(mm / 25.4, 4);
    figure.exact = mm;
    return figure;
}

static double root_mean(const brief_pairs *pairs)
{
    return pairs->count > 0 ? sqrt(pairs->stated_squares / pairs->count) : SIL_UNKNOWN;
}

/* A difference of less than twice the figure's own uncertainty, or of 15 %, is none. */
static const char *compared(const brief_tool *tool, double stated)
{
    double sure = fmax(0.15, 2.0 / sqrt(2.0 * (tool->pairs - 1)));
    double apart = tool->half_width / stated - 1.0;
    return apart > sure    ? ", which is too little"
           : apart < -sure ? ", which is more than need be"
                           : ", which agrees";
}

static void put_found(text *t, const brief_tool *tool, const brief_pairs *pairs, tool_words say,
                      sil_unit unit)
{
    const char *mm = unit == SIL_MM ? "mm" : "in";
    brief_figure low = fine_length(unit, pairs->stated_low);
    brief_figure high = fine_length(unit, pairs->stated_high);
    bool range = pairs->stated_high > pairs->stated_low;
    text_add(t, "%s %s to \u00b1%s %s, by %d pairs of readings.", say.subject, say.read,
             tool->found.shown, mm, tool->pairs);
    text_add(t, " The sheets give %s \u00b1%s%s%s %s%s.", say.them, low.shown,
             range ? " to \u00b1" : "", range ? high.shown : "", mm,
             range ? "" : compared(tool, pairs->stated_low));
    if (tool->half_width <= root_mean(pairs) / 2.0 * (1.0 + 1e-9)) {
        text_put(t, " Less than half of what the sheets give is not believed.");
    }
    if (tool->dropped > 0) {
        text_add(t, " %d more pair%s left out: they differ by more than a tool can.", tool->dropped,
                 tool->dropped == 1 ? " is" : "s are");
    }
}

static void put_missing(text *t, const brief_tool *tool, tool_words say)
{
    if (tool->pairs == 0) {
        text_add(t, "%s %s no pair of readings yet; %d are needed.", say.subject, say.have,
                 SIL_PAIRS_LEAST);
    } else {
        text_add(t, "%s %s %d pair%s of readings; %d more %s needed.", say.subject, say.have,
                 tool->pairs, tool->pairs == 1 ? "" : "s", tool->more,
                 tool->more == 1 ? "is" : "are");
    }
}

static void find_tool(const brief_pairs *pairs, sil_unit unit, brief_tool *tool)
{
    sil_repeat repeat;
    double stated = root_mean(pairs);
    bool enough = pairs->count >= SIL_PAIRS_LEAST;
    tool->graduation = enough ? sil_readings_step(pairs->readings, 2 * pairs->count) : 0.0;
    sil_repeat_find(pairs->difference, pairs->count, tool->graduation,
                    pairs->count > 0 ? sil_rectangular(stated) : 0.0, &repeat);
    tool->dropped = repeat.dropped;
    tool->pairs = pairs->count - repeat.dropped;
    tool->more = tool->pairs < SIL_PAIRS_LEAST ? SIL_PAIRS_LEAST - tool->pairs : 0;
    tool->u = tool->more > 0 ? SIL_UNKNOWN : repeat.u;
    tool->half_width = sqrt(3.0) * tool->u;
    tool->found = tool->more > 0 ? figure_none() : fine_length(unit, tool->half_width);
}

/* The line for a shop file: each figure with its unit, whatever the file's is. */
static void put_line(text *t, const brief_proof *proof, sil_unit unit)
{
    const char *joint = "\nPut what is found under tools in shop.yaml:\n\n  tools: {";
    bool any = false;
    for (int k = 0; k < SIL_TOOLS; k++) {
        if (proof->tool[k].more == 0) {
            text_add(t, "%s%s: %s %s", joint, sil_tool_word((sil_tool)k),
                     proof->tool[k].found.shown, unit == SIL_MM ? "mm" : "in");
            joint = ", ";
            any = true;
        }
    }
    text_put(t,
             any ? "}\n"
                 : "\nNothing can be said of your tools yet. Keep the sheets, read again at each "
                   "visit what\nwas not worked, and write down the humidity.\n");
}

void brief_prove(const brief_pairs *pairs, int sheets, int visits, sil_unit unit,
                 brief_proof *proof)
{
    text t = {0};
    *proof = (brief_proof){0};
    text_add(&t, "%d sheet%s, %d visit%s after the first.\n\n", sheets, sheets == 1 ? "" : "s",
             visits, visits == 1 ? "" : "s");
    for (int k = 0; k < SIL_TOOLS; k++) {
        brief_tool *tool = &proof->tool[k];
        tool_words say = words_of((sil_tool)k);
        find_tool(&pairs[k], unit, tool);
        text said = {0};
        if (tool->more > 0) {
            put_missing(&said, tool, say);
        } else {
            put_found(&said, tool, &pairs[k], say, unit);
        }
        text_wrap(&t, text_read(&said), 2, COLUMNS);
        t.failed = t.failed || said.failed;
        text_free(&said);
    }
    put_line(&t, proof, unit);
    const char *words = text_read(&t);
    proof->words = text_keep(&proof->store, "%s", words);
    proof->words = t.failed || proof->store.failed ? NULL : proof->words;
    text_free(&t);
}

void brief_proof_free(brief_proof *proof)
{
    text_store_free(&proof->store);
}
