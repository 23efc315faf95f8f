/* SPDX-License-Identifier: MIT */
/* Will it play in tune: cents by fret, where each string is to leave nut and saddle, the slot. */
#include <stdio.h>

#include "part.h"
#include "sound.h"

enum { TEXT_SIZE = 512 };

/* The farthest any string known is from in tune; unknown where none is. */
static double farthest(const sil_draft *draft, bool best)
{
    double far = SIL_UNKNOWN;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        const sil_compensation *told = &draft->plan->compensation[i];
        far = fmax(far, sil_cents_worst(best ? told->at_best : told->as_built));
    }
    return far;
}

static void put_tune_title(sil_flow *flow, double follow)
{
    const sil_draft *draft = &flow->drawing->draft;
    double built = farthest(draft, false), best = farthest(draft, true);
    sil_words words =
        sil_known(built)
            ? sil_say("Will it play in tune? Out by %s cents as built, %s at best",
                      sil_say_number(draft, built, 1).text, sil_say_number(draft, best, 1).text)
            : sil_say("Will it play in tune?");
    sil_flow_title(flow, words.text, follow);
}

static void put_untold(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    bool untold[SIL_STRINGS_MAX] = {false};
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        untold[i] = !sil_known(sil_cents_worst(draft->plan->compensation[i].as_built));
    }
    sil_words strings = sil_say_which(draft, "string", untold);
    if (strings.text[0] != '\0') {
        sil_flow_words(
            flow, sil_say("Pitch, mass, core and heights are wanted for %s.", strings.text).text,
            3);
    }
}

static void put_tune_words(sil_flow *flow)
{
    sil_flow_words(
        flow,
        "Saddle only: in tune at the 12th, the nut as it is. Best: saddle and nut together, "
        "least out over frets 1 to 12. For the heights the work leaves; longer is +.",
        3);
}

/* What the figures rest on, and how much of them can be heard. */
static void put_trust(sil_flow *flow)
{
    static const char *const ends[] = {[SIL_CLAMPED_PINNED] =
                                           "held fast at nut and fret, free to turn at the saddle",
                                       [SIL_PINNED] = "free to turn at both ends",
                                       [SIL_CLAMPED] = "held fast at both ends"};
    const sil_draft *draft = &flow->drawing->draft;
    char text[TEXT_SIZE];
    snprintf(text, sizeof text,
             "Reckoned from mass, tension and stiffness, the string %s (published work "
             "disagrees): a tuner's reading beats it. In a blind test (R. M. Mottola, Savart "
             "Journal) 32 listeners found no significant difference between straight and "
             "individual compensation on steel strings: nothing under a tenth of a cent is "
             "claimed.",
             ends[draft->plan->job->model.ends]);
    sil_flow_findings(flow, SIL_STRING_STIFF);
    sil_flow_words(flow, text, 4);
}

static void put_graphs(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    sil_cents_scale scale = sil_cents_measure(draft);
    sil_shapes *key = sil_flow_list(flow);
    sil_cents_key(key);
    sil_flow_put(flow, key, SIL_LEFT, 4, 40);
    for (int first = 0; first < draft->plan->job->string_count; first += SIL_GRAPHS_ABREAST) {
        sil_shapes *list = sil_flow_list(flow);
        sil_cents_view(draft, list, &scale, first, SIL_COLUMN);
        sil_flow_put(flow, list, SIL_LEFT, 3, 0);
    }
    flow->y -= 1;
}

/* The thickness a saddle would need for all points to fall on it, in a slot of a line. */
static double thickness_for(const sil_plan *plan, sil_line line)
{
    double most = 0;
    for (int i = 0; i < plan->job->string_count; i++) {
        double there = sil_line_at(line, plan->bench.board.saddle_z[i]);
        most = fmax(most, fabs(plan->compensation[i].saddle_only - there));
    }
    return 2 * most * cos(plan->bench.board.saddle_slant);
}

static void put_slot_words(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const double *z = plan->bench.board.saddle_z;
    int last = plan->job->string_count - 1;
    double needs = thickness_for(plan, plan->slot_best);
    sil_words treble = sil_say_length(draft, sil_line_at(plan->slot_best, z[0]));
    sil_words bass = sil_say_length(draft, sil_line_at(plan->slot_best, z[last]));
    sil_words ends =
        last > 0 ? sil_say("%s at string 1, %s at string %d", treble.text, bass.text, last + 1)
                 : treble;
    sil_words reach = sil_above(needs, plan->job->saddle.thickness)
                          ? sil_say("for all, a saddle %s thick", sil_say_stop(draft, needs).text)
                          : sil_say("it carries all");
    char text[TEXT_SIZE];
    snprintf(text, sizeof text, "Best straight slot: setback %s; %s.", ends.text, reach.text);
    sil_flow_words(flow, text, 2);
}

/* Where a point falls outside the saddle: how it stands to the slot, and what slot would do. */
static void put_slot(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    bool told = sil_known(draft->plan->slot_best.b0);
    double scale = 2 * draft->plan->job->saddle.length <= SIL_COLUMN ? 2 : 1;
    if (!sil_saddle_any_outside(draft)) {
        return;
    }
    sil_shapes *list = sil_flow_list(flow);
    sil_slot_view(draft, list, scale);
    if (list != NULL && list->count > 0) {
        sil_caption(list, SIL_MIDDLE,
                    sil_say("Saddle from above %s, nut side up: in tune at the crosses%s",
                            sil_say_scale(scale).text,
                            sil_best_slot_fits(draft) ? "; dashed, the best slot" : "")
                        .text);
    }
    sil_flow_put(flow, list, SIL_MIDDLE, 4, told ? 8.5 : 0);
    if (told) {
        put_slot_words(flow);
    }
}

void sil_flow_tune(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    bool known = sil_known(farthest(draft, false));
    put_tune_title(flow, known ? 60 : 10);
    put_untold(flow);
    if (!known) {
        return;
    }
    put_tune_words(flow);
    put_graphs(flow);
    sil_shapes *table = sil_flow_list(flow);
    sil_pitch_table(draft, table, SIL_COLUMN);
    sil_flow_put(flow, table, SIL_LEFT, 5, 0);
    put_trust(flow);
    put_slot(flow);
}
