/* SPDX-License-Identifier: MIT */
/* Where each string is to leave nut and saddle, in figures. */
#include <string.h>

#include "sound.h"

/* The last three only where there is something to say. */
enum { STRING, NOTE, BUILT, ONLY, BEST, ADVANCE, OPTIONAL, COLUMNS = OPTIONAL + 3 };

bool sil_saddle_in_slot(const sil_draft *draft)
{
    const sil_job_saddle *saddle = &draft->plan->job->saddle;
    return sil_saddle_slotted(saddle->kind) && sil_known(saddle->thickness);
}

double sil_saddle_outside(const sil_draft *draft, int string)
{
    double off = draft->plan->compensation[string].off_slot;
    /* Along the string, which crosses a saddle that leans aslant. */
    double half = draft->plan->job->saddle.thickness / 2 / cos(draft->board->saddle_slant);
    double past = sil_above(off, half) ? off - half : sil_below(off, -half) ? off + half : 0;
    return sil_known(off) ? past : off;
}

bool sil_saddle_any_outside(const sil_draft *draft)
{
    bool any = false;
    for (int i = 0; i < draft->plan->job->string_count && sil_saddle_in_slot(draft); i++) {
        double outside = sil_saddle_outside(draft, i);
        any = any || fabs(outside) > 0;
    }
    return any;
}

static double cents_read(const sil_draft *draft, int string)
{
    const sil_reading *reading = sil_plan_reading(draft->plan);
    return reading != NULL ? reading->cents[string] : SIL_UNKNOWN;
}

static sil_words signed_words(double value, sil_words words)
{
    bool nothing = strpbrk(words.text, "123456789") == NULL; /* once rounded */
    return sil_say(value > 0 && !nothing ? "+%s" : "%s", words.text);
}

static sil_words say_place(const sil_draft *draft, int string)
{
    double outside = sil_saddle_outside(draft, string);
    sil_words much = sil_say_length(draft, fabs(outside));
    return outside < 0   ? sil_say("%s in front", much.text)
           : outside > 0 ? sil_say("%s behind", much.text)
                         : sil_say("%s", sil_known(outside) ? "inside" : "-");
}

static void fill_row(const sil_draft *draft, int i, sil_table *t, bool tuner)
{
    const sil_compensation *told = &draft->plan->compensation[i];
    sil_words *cell = t->cell[i];
    double cents = cents_read(draft, i);
    int column = OPTIONAL;
    cell[STRING] = sil_say("%d", i + 1);
    cell[NOTE] = sil_say_note(draft, i);
    cell[BUILT] = sil_say_length(draft, draft->plan->job->saddle.setback[i]);
    cell[ONLY] = sil_say_length(draft, told->saddle_only);
    cell[BEST] = sil_say_length(draft, told->best.setback);
    cell[ADVANCE] = sil_say_length(draft, told->best.advance);
    if (tuner) {
        cell[column++] = signed_words(cents, sil_say_number(draft, cents, 1));
        cell[column++] = signed_words(told->move, sil_say_length(draft, told->move));
    }
    if (sil_saddle_in_slot(draft)) {
        cell[column] = say_place(draft, i);
    }
}

static void add_column(sil_table *t, const char *first, const char *second, sil_anchor anchor)
{
    t->head[t->columns][0] = first;
    t->head[t->columns][1] = second;
    t->anchor[t->columns++] = anchor;
}

void sil_pitch_table(const sil_draft *draft, sil_shapes *list, double width)
{
    sil_table t = {.rows = draft->plan->job->string_count, .row_height = 5};
    bool tuner = false;
    for (int i = 0; i < t.rows; i++) {
        tuner = tuner || sil_known(cents_read(draft, i));
    }
    add_column(&t, NULL, "string", SIL_RIGHT);
    add_column(&t, NULL, "note", SIL_LEFT);
    add_column(&t, NULL, "as built", SIL_RIGHT);
    add_column(&t, NULL, "saddle only", SIL_RIGHT);
    add_column(&t, NULL, "best", SIL_RIGHT);
    add_column(&t, "nut, best", "advance", SIL_RIGHT);
    if (tuner) {
        add_column(&t, "cents", "read", SIL_RIGHT);
        add_column(&t, "move by", "the tuner", SIL_RIGHT);
    }
    if (sil_saddle_in_slot(draft)) {
        add_column(&t, "on the", "saddle", SIL_LEFT);
    }
    t.span[0] = (sil_span){BUILT, BEST, "setback at the saddle"};
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, &t, tuner);
    }
    sil_draw_table(list, 0, 0, width, &t);
}
