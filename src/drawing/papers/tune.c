/* SPDX-License-Identifier: MIT */
/* Will it play in tune: cents by fret, where each string is to leave nut and saddle, the slot. */
#include <stdio.h>

#include "../views/sound.h"
#include "part.h"

enum { TEXT_SIZE = 512 };

/* The farthest any string known is from in tune; unknown where none is. */
static double farthest(const draw_draft *draft, bool best)
{
    double far = SIL_UNKNOWN;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        const sil_compensation *told = &draft->plan->compensation[i];
        far = fmax(far, view_cents_worst(best ? told->at_best : told->as_built));
    }
    return far;
}

static void put_tune_title(draw_flow *flow, double follow)
{
    const draw_draft *draft = &flow->drawing->draft;
    double built = farthest(draft, false), best = farthest(draft, true);
    draw_words words =
        sil_known(built)
            ? draw_say("Will it play in tune? Out by %s cents as built, %s at best",
                       draw_say_number(draft, built, 1).text, draw_say_number(draft, best, 1).text)
            : draw_say("Will it play in tune?");
    draw_flow_title(flow, words.text, follow);
}

static void put_untold(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool untold[SIL_STRINGS_MAX] = {false};
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        untold[i] = !sil_known(view_cents_worst(draft->plan->compensation[i].as_built));
    }
    draw_words strings = draw_say_which(draft, "string", untold);
    if (strings.text[0] != '\0') {
        draw_flow_words(
            flow, draw_say("Pitch, mass, core and heights are wanted for %s.", strings.text).text,
            3);
    }
}

static void put_tune_words(draw_flow *flow)
{
    draw_flow_words(
        flow,
        "Saddle only: in tune at the 12th, the nut as it is. Best: saddle and nut together, "
        "least out over frets 1 to 12. For the heights the work leaves; longer is +.",
        3);
}

/* What the figures rest on, and how much of them can be heard. */
static void put_trust(draw_flow *flow)
{
    static const char *const ends[] = {[SIL_CLAMPED_PINNED] =
                                           "held fast at nut and fret, free to turn at the saddle",
                                       [SIL_PINNED] = "free to turn at both ends",
                                       [SIL_CLAMPED] = "held fast at both ends"};
    const draw_draft *draft = &flow->drawing->draft;
    char text[TEXT_SIZE];
    snprintf(text, sizeof text,
             "Reckoned from mass, tension and stiffness, the string %s (published work "
             "disagrees): a tuner's reading beats it. In a blind test (R. M. Mottola, Savart "
             "Journal) 32 listeners found no significant difference between straight and "
             "individual compensation on steel strings: nothing under a tenth of a cent is "
             "claimed.",
             ends[draft->plan->job->model.ends]);
    draw_flow_findings(flow, SIL_STRING_STIFF);
    draw_flow_words(flow, text, 4);
}

static void put_graphs(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    view_cents_scale scale = view_cents_measure(draft);
    draw_shapes *key = draw_flow_list(flow);
    view_cents_key(key);
    draw_flow_put(flow, key, DRAW_LEFT, 4, 40);
    for (int first = 0; first < draft->plan->job->string_count; first += VIEW_GRAPHS_ABREAST) {
        draw_shapes *list = draw_flow_list(flow);
        view_cents(draft, list, &scale, first, DRAW_COLUMN);
        draw_flow_put(flow, list, DRAW_LEFT, 3, 0);
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

static void put_slot_words(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const double *z = plan->bench.board.saddle_z;
    int last = plan->job->string_count - 1;
    double needs = thickness_for(plan, plan->slot_best);
    draw_words treble = draw_say_length(draft, sil_line_at(plan->slot_best, z[0]));
    draw_words bass = draw_say_length(draft, sil_line_at(plan->slot_best, z[last]));
    draw_words ends =
        last > 0 ? draw_say("%s at string 1, %s at string %d", treble.text, bass.text, last + 1)
                 : treble;
    draw_words reach =
        sil_above(needs, plan->job->saddle.thickness)
            ? draw_say("for all, a saddle %s thick", draw_say_stop(draft, needs).text)
            : draw_say("it carries all");
    char text[TEXT_SIZE];
    snprintf(text, sizeof text, "Best straight slot: setback %s; %s.", ends.text, reach.text);
    draw_flow_words(flow, text, 2);
}

/* Where a point falls outside the saddle: how it stands to the slot, and what slot would do. */
static void put_slot(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool told = sil_known(draft->plan->slot_best.b0);
    double scale = 2 * draft->plan->job->saddle.length <= DRAW_COLUMN ? 2 : 1;
    if (!view_saddle_any_outside(draft)) {
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    view_slot(draft, list, scale);
    if (list != NULL && list->count > 0) {
        draw_caption(list, DRAW_MIDDLE,
                     draw_say("Saddle from above %s, nut side up: in tune at the crosses%s",
                              draw_say_scale(scale).text,
                              view_best_slot_fits(draft) ? "; dashed, the best slot" : "")
                         .text);
    }
    draw_flow_put(flow, list, DRAW_MIDDLE, 4, told ? 8.5 : 0);
    if (told) {
        put_slot_words(flow);
    }
}

void paper_tune(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool known = sil_known(farthest(draft, false));
    put_tune_title(flow, known ? 60 : 10);
    put_untold(flow);
    if (!known) {
        return;
    }
    put_tune_words(flow);
    put_graphs(flow);
    draw_shapes *table = draw_flow_list(flow);
    view_pitch(draft, table, DRAW_COLUMN);
    draw_flow_put(flow, table, DRAW_LEFT, 5, 0);
    put_trust(flow);
    put_slot(flow);
}
