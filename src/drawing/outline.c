/* SPDX-License-Identifier: MIT */
/* The outlines of the parts at full size, for a mill or a laser: nothing round them but what tells
 * which end is which. */
#include <ctype.h>

#include "part.h"

static const double margin = 5, apart = 12; /* mm */

/* A part's place: its bass end at the origin, whichever hand it is for. */
static sil_place at_bass_end(const sil_draft *draft)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    return (sil_place){0, 0, left ? -1 : 1, 1};
}

static void put_caption(const sil_draft *draft, sil_shapes *list, double length, double top,
                        const char *text)
{
    const sil_job *job = draft->plan->job;
    sil_place place = at_bass_end(draft);
    bool left = place.across < 0;
    const char *ref = job->about.ref;
    sil_words words = sil_say("%s%s%s", text, left ? ", left-handed" : "", ref ? ", " : "");
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){left ? -length : 0, top + 3}, SIL_NOTE,
                  SIL_LEFT, 0, sil_say("%s%.40s", words.text, ref ? ref : "").text);
}

/* In place of lines. */
static sil_shapes *words_only(const sil_drawing *drawing, const char *text, const char *why)
{
    sil_shapes *list = sil_shapes_new(drawing->draft.letters);
    sil_draw_note(list, 0, -SIL_NOTE, text);
    if (why != NULL) {
        sil_words reason = sil_say("%s.", why);
        reason.text[0] = (char)toupper((unsigned char)reason.text[0]);
        sil_draw_note(list, 0, -SIL_NOTE - 4.5, reason.text);
    }
    return list;
}

static sil_shapes *waits(const sil_drawing *drawing, const char *text, const sil_withheld *withheld)
{
    return words_only(drawing, text, withheld->count > 0 ? sil_code_waits(withheld->by[0]) : NULL);
}

static sil_shapes *nut(const sil_drawing *drawing)
{
    const sil_draft *draft = &drawing->draft;
    const sil_plan *plan = draft->plan;
    if (plan->nut.remedy == SIL_NUT_WAIT) {
        return waits(drawing, "Nut: WAIT, nothing to cut", &plan->nut_withheld);
    }
    if (!sil_known(plan->nut.top)) {
        return words_only(drawing, "Nut: its height is not known",
                          "measure the board over the nut's seat");
    }
    sil_shapes *list = sil_shapes_new(drawing->draft.letters);
    sil_place place = at_bass_end(draft);
    sil_nut_face(draft, list, place, false);
    sil_draw_ends(draft, list, place, plan->job->nut.width, 0, 0);
    put_caption(draft, list, plan->job->nut.width, list != NULL ? list->box.top : 0,
                "Nut from the body, 1:1");
    return list;
}

/* The saddle from above under its face. */
static sil_shapes *saddle(const sil_drawing *drawing)
{
    const sil_draft *draft = &drawing->draft;
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length, half = plan->job->saddle.thickness / 2;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        return waits(drawing, "Saddle: WAIT, nothing to cut", &plan->saddle_withheld);
    }
    if (plan->job->saddle.kind == SIL_SADDLE_INDIVIDUAL) {
        return words_only(drawing, "Saddles on screws: nothing to cut", NULL);
    }
    sil_shapes *list = sil_shapes_new(drawing->draft.letters);
    sil_place place = at_bass_end(draft), above = place;
    sil_saddle_outline(draft, list, place);
    sil_draw_ends(draft, list, place, length, 0, 0);
    put_caption(draft, list, length, list != NULL ? list->box.top : 0,
                "Saddle from the tail, 1:1; under it from above");
    above.y = (list != NULL ? list->box.bottom : 0) - 5 - half;
    sil_saddle_top(draft, list, above, (double)INFINITY);
    return list;
}

/* A part under what is there already, its seat's bass end in line with the first one's. */
static void put_part(sil_drawing *drawing, sil_shapes *page, sil_shapes *part)
{
    if (page == NULL || part == NULL) {
        drawing->no_memory = true;
    } else {
        bool first = page->count == 0;
        sil_shapes_add(page, part, 0, first ? 0 : page->box.bottom - apart - part->box.top);
        page->no_memory = page->no_memory || part->no_memory;
        page->no_number = page->no_number || part->no_number;
    }
    sil_shapes_free(part);
}

void sil_draw_outlines(sil_drawing *drawing)
{
    sil_shapes *page = sil_shapes_new(drawing->draft.letters);
    drawing->pages[0] = (sil_page){.shapes = page, .sheet = "outlines", .number = 1};
    drawing->page_count = 1;
    drawing->widest = 0.18; /* a hairline: a slot of a third of a millimetre must be seen */
    if (drawing->order.part != SIL_PART_SADDLE) {
        put_part(drawing, page, nut(drawing));
    }
    if (drawing->order.part != SIL_PART_NUT) {
        put_part(drawing, page, saddle(drawing));
    }
    if (page != NULL && page->count > 0) {
        sil_box box = page->box;
        drawing->paper =
            (sil_box){box.left - margin, box.bottom - margin, box.right + margin, box.top + margin};
    }
}
