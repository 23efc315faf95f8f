/* SPDX-License-Identifier: MIT */
/* Where each string has to leave the nut and the saddle, in figures. */
#include <string.h>

#include "../board/plain.h"
#include "tone.h"

enum { STRING, NOTE, BUILT, ONLY, BEST, ADVANCE, CENTS, MOVE, PLACE, COLUMNS };

static const draw_table empty_table = {.columns = COLUMNS,
                                       .span = {{BUILT, BEST, "setback at the saddle"}},
                                       .head = {[STRING] = {NULL, "string"},
                                                [NOTE] = {NULL, "note"},
                                                [BUILT] = {NULL, "as built"},
                                                [ONLY] = {NULL, "saddle only"},
                                                [BEST] = {NULL, "best"},
                                                [ADVANCE] = {"best nut", "compensation"},
                                                [CENTS] = {"cents", "read"},
                                                [MOVE] = {"move by", "the tuner"},
                                                [PLACE] = {"on the", "saddle"}}};

bool view_saddle_in_slot(const draw_draft *draft)
{
    return sil_working_in_slot(draft->brief->saddle.working) &&
           sil_known(draft->brief->saddle_part.thickness);
}

double view_saddle_outside(const draw_draft *draft, int string)
{
    double off = draft->plan->compensation[string].off_slot;
    /* Half the thickness along the string, which crosses a slanted saddle at an angle. */
    const part_saddle *part = &draft->brief->saddle_part;
    double half = part->thickness / 2 / cos(part->slant);
    double past = sil_above(off, half) ? off - half : sil_below(off, -half) ? off + half : 0;
    return sil_known(off) ? past : off;
}

bool view_saddle_any_outside(const draw_draft *draft)
{
    bool any = false;
    for (int i = 0; i < draft->brief->strings && view_saddle_in_slot(draft); i++) {
        double outside = view_saddle_outside(draft, i);
        any = any || fabs(outside) > 0;
    }
    return any;
}

static double cents_read(const draw_draft *draft, int string)
{
    const sil_reading *reading = sil_plan_reading(draft->plan);
    return reading != NULL ? reading->cents[string] : SIL_UNKNOWN;
}

static const char *signed_words(const draw_draft *draft, double value, const char *words)
{
    bool nothing = strpbrk(words, "123456789") == NULL; /* the figure is rounded to zero */
    return value > 0 && !nothing ? draw_say(draft, "+%s", words) : words;
}

static const char *say_place(const draw_draft *draft, int string)
{
    double outside = view_saddle_outside(draft, string);
    const char *much = draw_plain_length(draft, fabs(outside));
    return outside < 0          ? draw_say(draft, "%s ahead", much)
           : outside > 0        ? draw_say(draft, "%s behind", much)
           : sil_known(outside) ? "inside"
                                : "-";
}

static void fill_row(const draw_draft *draft, int i, const char **cell)
{
    const brief_tone *tone = &draft->brief->tone[i];
    double cents = cents_read(draft, i);
    cell[STRING] = draw_say(draft, "%d", i + 1);
    cell[NOTE] = draw_say(draft, "%s%s", draw_say_note(draft, i), tone->assumed);
    cell[BUILT] = draw_figure(draft, tone->built);
    cell[ONLY] = draw_figure(draft, tone->in_tune);
    cell[BEST] = draw_figure(draft, tone->setback);
    cell[ADVANCE] = draw_figure(draft, tone->advance);
    cell[CENTS] = signed_words(draft, cents, draw_plain_number(draft, cents, 1));
    cell[MOVE] = signed_words(draft, tone->move.exact, draw_figure(draft, tone->move));
    cell[PLACE] = view_saddle_in_slot(draft) ? say_place(draft, i) : "-";
}

void view_pitch(const draw_draft *draft, draw_shapes *list, double width)
{
    draw_table t = empty_table;
    t.rows = draft->brief->strings;
    t.row_height = draw_row_height(draft);
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, t.cell[i]);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE || c == PLACE ? DRAW_LEFT : DRAW_RIGHT;
    }
    draw_add_table(list, 0, 0, width, &t);
}
