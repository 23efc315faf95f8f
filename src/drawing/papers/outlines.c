/* SPDX-License-Identifier: MIT */
/* The outlines of the parts at full size, for a mill or a laser: nothing round them but what tells
 * which end is which. */
#include <ctype.h>

#include "part.h"

static const double margin = 5, apart = 12; /* mm */

/* A part's place: its bass end at the origin, whichever hand it is for. */
static draw_place at_bass_end(const draw_draft *draft)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    return (draw_place){0, 0, left ? -1 : 1, 1};
}

static void put_caption(const draw_draft *draft, draw_shapes *list, double length, double top,
                        const char *text)
{
    const sil_job *job = draft->plan->job;
    draw_place place = at_bass_end(draft);
    bool left = place.across < 0;
    const char *ref = job->about.ref;
    draw_words words = draw_say("%s%s%s", text, left ? ", left-handed" : "", ref ? ", " : "");
    draw_text(list, DRAW_TEXT, (draw_point){left ? -length : 0, top + 3}, DRAW_NOTE, DRAW_LEFT, 0,
              draw_say("%s%.40s", words.text, ref ? ref : "").text);
}

/* In place of lines. */
static draw_shapes *words_only(const sil_drawing *drawing, const char *text, const char *why)
{
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    draw_note(list, 0, -DRAW_NOTE, text);
    if (why != NULL) {
        draw_words reason = draw_say("%s.", why);
        reason.text[0] = (char)toupper((unsigned char)reason.text[0]);
        draw_note(list, 0, -DRAW_NOTE - 4.5, reason.text);
    }
    return list;
}

static draw_shapes *waits(const sil_drawing *drawing, const char *text,
                          const sil_withheld *withheld)
{
    return words_only(drawing, text, withheld->count > 0 ? sil_code_waits(withheld->by[0]) : NULL);
}

/* A block under what is there already, x for x; the first stands where it is. Frees it. */
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

static draw_shapes *nut(const sil_drawing *drawing)
{
    const draw_draft *draft = &drawing->draft;
    const sil_plan *plan = draft->plan;
    if (plan->nut.remedy == SIL_NUT_WAIT) {
        return waits(drawing, "Nut: WAIT, nothing to cut", &plan->nut_withheld);
    }
    if (!sil_known(plan->nut.top)) {
        return plan->bench.zero_fret
                   ? words_only(drawing, "Nut: no height to cut to", "a zero fret sets it")
                   : words_only(drawing, "Nut: its height is not known",
                                "measure the board over the nut's seat");
    }
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    draw_place place = at_bass_end(draft);
    view_nut_face(draft, list, place, false);
    draw_ends(draft, list, place, plan->job->nut.width, 0, 0);
    put_caption(draft, list, plan->job->nut.width, draw_shapes_box(list).top,
                "Nut from the body, 1:1");
    return list;
}

/* The saddle from above under its face. */
static draw_shapes *saddle(sil_drawing *drawing)
{
    const draw_draft *draft = &drawing->draft;
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        return waits(drawing, "Saddle: WAIT, nothing to cut", &plan->saddle_withheld);
    }
    if (draw_on_screws(draft)) {
        return words_only(drawing, "Saddles on screws: nothing to cut", NULL);
    }
    if (!sil_known(length + plan->job->saddle.thickness)) {
        return words_only(drawing, "Saddle: no full-size outline", "see the saddle's own sheet");
    }
    draw_shapes *list = draw_shapes_new(drawing->draft.letters);
    draw_shapes *above = draw_shapes_new(drawing->draft.letters);
    draw_place place = at_bass_end(draft);
    view_saddle_outline(draft, list, place);
    draw_ends(draft, list, place, length, 0, 0);
    put_caption(draft, list, length, draw_shapes_box(list).top,
                "Saddle from the tail, 1:1; under it from above");
    view_saddle_top(draft, above, place, (double)INFINITY);
    put_under(drawing, list, above, 5);
    return list;
}

void paper_outlines(sil_drawing *drawing)
{
    draw_shapes *page = draw_shapes_new(drawing->draft.letters);
    drawing->pages[0] = (draw_paper){.shapes = page, .sheet = "outlines", .number = 1};
    drawing->page_count = 1;
    drawing->widest = 0.18; /* a hairline: a slot of a third of a millimetre must be seen */
    if (drawing->order.part != SIL_PART_SADDLE) {
        put_under(drawing, page, nut(drawing), apart);
    }
    if (drawing->order.part != SIL_PART_NUT) {
        put_under(drawing, page, saddle(drawing), apart);
    }
    if (page != NULL && page->count > 0) {
        draw_box box = page->box;
        drawing->paper = (draw_box){box.left - margin, box.bottom - margin, box.right + margin,
                                    box.top + margin};
    }
}
