/* SPDX-License-Identifier: MIT */
/* The outlines of the parts at full size, for a mill or a laser. The only other marks show which
 * end is which. */
#include <stdlib.h>

#include "part.h"

static const double margin = 5, apart = 12; /* mm */

static void put_caption(const draw_draft *draft, draw_shapes *list, double top, const char *words)
{
    bool left = draw_left_handed(draft);
    const char *ref = draft->plan->job->about.ref;
    draw_text(list, DRAW_TEXT, (draw_point){0, top + 3}, DRAW_NOTE, DRAW_LEFT, 0,
              draw_say(draft, "%s%s%s%s", words, left ? ", left-handed" : "", ref ? ", " : "",
                       ref ? ref : ""));
}

/* Words that replace an outline: what is missing, and why if there is a reason to give. */
static draw_shapes *words_only(sil_drawing *drawing, const char *words, const char *why)
{
    drawing->missing[drawing->missing_count++] =
        draw_say(&drawing->draft, "%s%s%s", words, why ? ": " : "", why ? why : "");
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    draw_note(list, 0, -DRAW_NOTE, words);
    draw_note(list, 0, -DRAW_NOTE - 4.5, why);
    return list;
}

static draw_shapes *waits(sil_drawing *drawing, const char *words, brief_stage_of stage)
{
    const draw_draft *draft = &drawing->draft;
    return words_only(drawing, words, paper_reason(draft, &draft->brief->stage[stage], 0));
}

/* Adds a block below the contents of the list, with the same x 0; the first block stays where it
 * is. Frees the block. */
static void put_under(sil_drawing *drawing, draw_shapes *list, draw_shapes *block, double gap)
{
    if (list == NULL || block == NULL) {
        drawing->no_memory = true;
    } else {
        double down = list->count > 0 ? list->box.bottom - gap - block->box.top : 0;
        draw_shapes_add(list, block, 0, down);
    }
    draw_shapes_free(block);
}

/* Says which layer is cut today. */
static const char *say_layer(const draw_draft *draft, const char *part, bool cut, bool more)
{
    return draw_say(draft, "%s, 1:1; %s", part,
                    more  ? "cut the layer cut-first, then measure"
                    : cut ? "cut the layer finished"
                          : "nothing is cut; for a copy take the layer finished");
}

/* The nut from above, with the fall of its slots in words, because no outline shows it. */
static draw_shapes *nut_plan(const sil_drawing *drawing, draw_place place)
{
    const draw_draft *draft = &drawing->draft;
    const brief_nut *nut = &draft->brief->nut;
    draw_shapes *list = draw_shapes_new(draft->letters);
    view_nut_plan(draft, list, place);
    if (list != NULL) {
        const char *fall = brief_known(nut->drop)
                               ? draw_say(draft, "; slots angled down %s\u00b0, %s %s",
                                          draw_figure(draft, nut->fall),
                                          draw_figure(draft, nut->drop), draft->brief->unit_name)
                               : "";
        draw_text(list, DRAW_TEXT, (draw_point){0, list->box.top + 3}, DRAW_NOTE, DRAW_LEFT, 0,
                  draw_say(draft, "Nut from above, headstock up%s", fall));
    }
    return list;
}

/* A nut has an outline without a solid where its slots' fall is not known, or takes them off it. */
static void look_for_solid(sil_drawing *drawing)
{
    part_solid *solid = malloc(sizeof *solid);
    if (solid == NULL) {
        drawing->no_memory = true;
        return;
    }
    drawing->solid[0] = part_nut_solid(&drawing->brief->nut_part, solid);
    if (!drawing->solid[0]) {
        drawing->missing[drawing->missing_count++] =
            brief_known(drawing->brief->nut.drop)
                ? "Nut: no solid: A slot leaves it behind, at its end or its bottom."
                : "Nut: no solid: Its thickness or the headstock's angle is not known.";
    }
    free(solid);
}

static draw_shapes *put_nut(sil_drawing *drawing)
{
    const draw_draft *draft = &drawing->draft;
    const brief_nut *nut = &draft->brief->nut;
    double length = draft->brief->nut_part.length;
    if (nut->remedy == SIL_NUT_WAIT) {
        return waits(drawing, "Nut: WAIT, nothing to cut", BRIEF_NUT);
    }
    if (!brief_known(nut->height)) {
        return nut->zero_fret
                   ? words_only(drawing, "Nut: no height to cut to", "A zero fret sets it.")
                   : words_only(drawing, "Nut: its height is not known",
                                "Measure the board over the floor of the nut's slot.");
    }
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    draw_place place = draw_place_part(draft, length, 1);
    if (!view_nut_outline(draft, list, place)) {
        draw_shapes_free(list);
        return words_only(drawing, "Nut: no outline",
                          "Its slots run into each other or off the end.");
    }
    look_for_solid(drawing);
    paper_ends(draft, list, place, length, 0, 0);
    put_caption(draft, list, draw_shapes_box(list).top,
                say_layer(draft, "Nut from the body", nut->remedy != SIL_NUT_NONE,
                          draft->brief->nut_part.more));
    if (sil_known(draft->brief->nut_part.thickness)) {
        put_under(drawing, list, nut_plan(drawing, place), 5);
    }
    return list;
}

static const char *say_saddle_layer(const draw_draft *draft)
{
    const part_saddle *part = &draft->brief->saddle_part;
    if (part->more && !part->takes) {
        return "Saddle from the tail, 1:1; nothing comes off yet: measure and plan again; the "
               "layer finished is a forecast";
    }
    return say_layer(draft, "Saddle from the tail", part->cut || part->anew, part->more);
}

/* The saddle's face, and below it the saddle from above. */
static draw_shapes *put_saddle(sil_drawing *drawing)
{
    const draw_draft *draft = &drawing->draft;
    const part_saddle *part = &draft->brief->saddle_part;
    if (draft->brief->saddle.remedy == SIL_SADDLE_WAIT) {
        return waits(drawing, "Saddle: WAIT, nothing to cut", BRIEF_SADDLE);
    }
    if (sil_working_turns(draft->brief->saddle.working)) {
        return words_only(drawing, "Saddles on screws: nothing to cut", NULL);
    }
    if (!sil_known(part->length + part->thickness)) {
        return words_only(drawing, "Saddle: no full-size outline", "See the saddle's own paper.");
    }
    if (part->finished_top.count == 0) {
        return words_only(drawing, "Saddle: no outline",
                          "Its height over the bottom was not read.");
    }
    if (!part_saddle_has_ends(part)) {
        return words_only(drawing, "Saddle: no outline",
                          "Its top, straight on beyond its strings, falls below its bottom.");
    }
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    draw_shapes *above = draw_shapes_new(drawing->draft.letters);
    draw_place place = draw_place_part(draft, part->length, 1);
    view_saddle_outline(draft, list, place);
    paper_ends(draft, list, place, part->length, 0, 0);
    put_caption(draft, list, draw_shapes_box(list).top, say_saddle_layer(draft));
    drawing->solid[1] = true;
    view_saddle_plan(draft, above, place);
    if (above != NULL) {
        draw_text(above, DRAW_TEXT, (draw_point){0, above->box.top + 3}, DRAW_NOTE, DRAW_LEFT, 0,
                  "Saddle from above, nut side up");
    }
    put_under(drawing, list, above, 5);
    return list;
}

void paper_outlines(sil_drawing *drawing)
{
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    drawing->papers[0] = (draw_paper){.shapes = list, .name = "outlines", .number = 1};
    drawing->paper_count = 1;
    drawing->outlines = true;
    drawing->widest = 0.18; /* a hairline, so that a slot 0.3 mm wide can be seen */
    if (drawing->order.part != SIL_PART_SADDLE) {
        put_under(drawing, list, put_nut(drawing), apart);
    }
    if (drawing->order.part != SIL_PART_NUT) {
        put_under(drawing, list, put_saddle(drawing), apart);
    }
    if (list != NULL && list->count > 0) {
        draw_box box = list->box;
        drawing->size = (draw_box){box.left - margin, box.bottom - margin, box.right + margin,
                                   box.top + margin};
    }
}
