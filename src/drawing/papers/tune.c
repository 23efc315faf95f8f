/* SPDX-License-Identifier: MIT */
/* The part of a paper that answers "Will it play in tune?": cents by fret, where each string has
 * to leave the nut and the saddle, and the saddle slot. */
#include "../board/plain.h"
#include "../views/tone.h"
#include "part.h"
#include "tone.h"

/* How far the worst string is out of tune; unknown if no string is known. */
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
    draw_flow_title(
        flow,
        sil_known(built)
            ? draw_say(draft, "Will it play in tune? Out by %s cents as built, %s at best",
                       draw_plain_number(draft, built, 1), draw_plain_number(draft, best, 1))
            : "Will it play in tune?",
        follow);
}

static void put_untold(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool untold[SIL_STRINGS_MAX] = {false};
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        untold[i] = !sil_known(view_cents_worst(draft->plan->compensation[i].as_built));
    }
    const char *strings = draw_say_which(draft, "string", untold);
    if (strings[0] != '\0') {
        draw_flow_words(
            flow, draw_say(draft, "Pitch, mass, core and heights are needed for %s.", strings), 3);
    }
}

static void put_tune_words(draw_flow *flow)
{
    draw_flow_words(
        flow,
        "Saddle only: in tune at the 12th, the nut as it is. Best: saddle and nut together, "
        "least out over frets 1 to 12. Setback: how far past the scale length the string leaves "
        "the "
        "saddle. For the heights the work leaves; longer is +.",
        3);
}

static const char *ends_word(sil_ends ends)
{
    switch (ends) {
    case SIL_CLAMPED_PINNED:
        return "held fast at nut and fret, free to turn at the saddle";
    case SIL_PINNED:
        return "free to turn at both ends";
    case SIL_CLAMPED:
        return "held fast at both ends";
    }
    return "";
}

/* Says what the figures are based on, and how much of them can be heard. */
static void put_trust(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const char *words =
        draw_say(draft,
                 "Computed from mass, tension and stiffness, the string %s (published work "
                 "disagrees): a tuner's reading counts for more. In a blind test (Savart Journal) "
                 "32 listeners found no significant difference between straight and "
                 "individual compensation on steel strings: nothing under a tenth of a cent is "
                 "claimed.",
                 ends_word(draft->plan->job->model.ends));
    draw_flow_findings(flow, SIL_STRING_STIFF);
    draw_flow_words(flow, words, 4);
}

static void put_graphs(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    view_cents_scale scale = view_cents_measure(draft);
    draw_shapes *key = draw_flow_list(flow);
    view_cents_key(key);
    draw_flow_put(flow, key, DRAW_LEFT, 4, draft->dense ? 28 : 40);
    for (int first = 0; first < draft->plan->job->string_count; first += VIEW_GRAPHS_ABREAST) {
        draw_shapes *list = draw_flow_list(flow);
        view_cents(draft, list, &scale, first, DRAW_COLUMN);
        draw_flow_put(flow, list, DRAW_LEFT, 3, 0);
    }
    flow->y -= 1;
}

static void put_slot_words(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_saddle *saddle = &draft->brief->saddle;
    int strings = draft->brief->strings;
    const char *setback = draw_figure(draft, saddle->best_setback[BRIEF_TREBLE]);
    if (strings > 1) {
        setback = draw_say(draft, "%s at string 1, %s at string %d", setback,
                           draw_figure(draft, saddle->best_setback[BRIEF_BASS]), strings);
    }
    const char *reach = brief_known(saddle->best_thickness)
                            ? draw_say(draft, "for all, a saddle %s thick",
                                       draw_figure(draft, saddle->best_thickness))
                            : "every string fits it";
    draw_flow_words(flow, draw_say(draft, "Best straight slot: setback %s; %s.", setback, reach),
                    2);
}

/* If a contact point is outside the saddle, draws the points and the saddle slot, and the slot
 * that would suit them better. */
static void put_slot(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool told = brief_known(draft->brief->saddle.best_setback[BRIEF_TREBLE]);
    double length = draft->brief->saddle_part.length;
    double scale = 2 * length <= DRAW_COLUMN ? 2 : paper_full_size(length);
    if (!view_saddle_any_outside(draft)) {
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    view_slot(draft, list, scale);
    if (list != NULL && list->count > 0) {
        paper_caption(list, DRAW_MIDDLE,
                      draw_say(draft,
                               "Saddle from above %s, nut side up. Circle: where it would play in "
                               "tune%s",
                               draw_say_scale(draft, scale),
                               view_best_slot_fits(draft) ? "; dashed: best slot" : ""));
    }
    draw_flow_put(flow, list, DRAW_MIDDLE, 4, told ? 8.5 : 0);
    if (told) {
        put_slot_words(flow);
    }
}

bool paper_has_tune(const draw_draft *draft)
{
    return sil_known(farthest(draft, false));
}

void paper_tune(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool known = paper_has_tune(draft);
    put_tune_title(flow, !known ? 10 : draft->dense ? 50 : 60);
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
