/* SPDX-License-Identifier: MIT */
/* Where each string has to leave the nut and the saddle, in figures. */
#include <string.h>

#include "../board/plain.h"
#include "tone.h"

/* The last three columns are there only if they have something to show. */
enum { STRING, NOTE, BUILT, ONLY, BEST, ADVANCE, OPTIONAL, COLUMNS = OPTIONAL + 3 };

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
    return outside < 0          ? draw_say(draft, "%s in front", much)
           : outside > 0        ? draw_say(draft, "%s behind", much)
           : sil_known(outside) ? "inside"
                                : "-";
}

static void fill_row(const draw_draft *draft, int i, draw_table *t, bool tuner)
{
    const brief_tone *tone = &draft->brief->tone[i];
    const char **cell = t->cell[i];
    double cents = cents_read(draft, i);
    int column = OPTIONAL;
    cell[STRING] = draw_say(draft, "%d", i + 1);
    cell[NOTE] = draw_say(draft, "%s%s", draw_say_note(draft, i), tone->assumed);
    cell[BUILT] = draw_figure(draft, tone->built);
    cell[ONLY] = draw_figure(draft, tone->in_tune);
    cell[BEST] = draw_figure(draft, tone->setback);
    cell[ADVANCE] = draw_figure(draft, tone->advance);
    if (tuner) {
        cell[column++] = signed_words(draft, cents, draw_plain_number(draft, cents, 1));
        cell[column++] = signed_words(draft, tone->move.exact, draw_figure(draft, tone->move));
    }
    if (view_saddle_in_slot(draft)) {
        cell[column] = say_place(draft, i);
    }
}

static void add_column(draw_table *t, const char *first, const char *second, draw_anchor anchor)
{
    t->head[t->columns][0] = first;
    t->head[t->columns][1] = second;
    t->anchor[t->columns++] = anchor;
}

void view_pitch(const draw_draft *draft, draw_shapes *list, double width)
{
    draw_table t = {.rows = draft->brief->strings, .row_height = draw_row_height(draft)};
    bool tuner = false;
    for (int i = 0; i < t.rows; i++) {
        tuner = tuner || sil_known(cents_read(draft, i));
    }
    add_column(&t, NULL, "string", DRAW_RIGHT);
    add_column(&t, NULL, "note", DRAW_LEFT);
    add_column(&t, NULL, "as built", DRAW_RIGHT);
    add_column(&t, NULL, "saddle only", DRAW_RIGHT);
    add_column(&t, NULL, "best", DRAW_RIGHT);
    add_column(&t, "best nut", "compensation", DRAW_RIGHT);
    if (tuner) {
        add_column(&t, "cents", "read", DRAW_RIGHT);
        add_column(&t, "move by", "the tuner", DRAW_RIGHT);
    }
    if (view_saddle_in_slot(draft)) {
        add_column(&t, "on the", "saddle", DRAW_LEFT);
    }
    t.span[0] = (draw_span){BUILT, BEST, "setback at the saddle"};
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, &t, tuner);
    }
    draw_add_table(list, 0, 0, width, &t);
}
