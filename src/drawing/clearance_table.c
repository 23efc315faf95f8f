/* SPDX-License-Identifier: MIT */
/* How hard each note can be plucked: a column a string as the board is seen, a row a stop, shaded
 * by what is left over the pick. The shading is lining, which a copier and a black printer keep,
 * and leaves a clear box round the figures. */
#include <stddef.h>

#include "sound.h"

static const double row_height = 5.2, widest = 15;
static const double apart = 0.7;  /* figure and the fret beside it */
static const double clear = 0.45; /* round the figures */
static const double hang = 0.6;   /* of a comma under the figures */
static const double edge = 0.5;   /* lining left at either side of a clear box, at least */
static const double head = 20.6;  /* to the first row */

/* Over the attack by less than this share, a note is near to buzzing. */
static const double near_share = 1.25;

/* Three figures, which is more than is known; a note that lies on a fret is dead at any pluck. */
static sil_words say_force(const sil_draft *draft, double newtons)
{
    int decimals = newtons < 9.995 ? 2 : newtons < 99.95 ? 1 : 0;
    return newtons < 0 ? sil_say("dead") : sil_say_number(draft, newtons, decimals);
}

static sil_words say_fret(const sil_clearance *clean, int string, int stop)
{
    int fret = clean->at_fret[string][stop];
    return fret > 0 ? sil_say("%d", fret) : sil_say("%s", "");
}

static void measure(const sil_draft *draft, const sil_shapes *list, const sil_clearance *clean,
                    sil_clearance_form *form)
{
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double attack = draft->plan->job->attack.force[i];
        form->figure =
            fmax(form->figure, sil_text_width(list, say_force(draft, attack).text, SIL_NOTE));
        for (int stop = 0; stop < draft->plan->bench.board.frets; stop++) {
            sil_words figure = say_force(draft, clean->force[i][stop]);
            sil_words fret = say_fret(clean, i, stop);
            form->figure = fmax(form->figure, sil_text_width(list, figure.text, SIL_NOTE));
            form->fret = fmax(form->fret, sil_text_width(list, fret.text, SIL_SMALL));
        }
    }
}

sil_clearance_form sil_clearance_measure(const sil_draft *draft, const sil_shapes *list,
                                         double width)
{
    const double gap = 6, caption = 50;
    sil_clearance_form form = {.label = sil_text_width(list, "open", SIL_NOTE) + 2};
    int strings = draft->plan->job->string_count;
    measure(draft, list, &draft->plan->clean_now, &form);
    measure(draft, list, &draft->plan->clean_after, &form);
    double least = form.figure + apart + form.fret + 2 * (clear + edge);
    double room = width - form.label;
    form.paired = 2 * strings * least + gap <= room;
    form.cell = fmin((form.paired ? (room - gap) / 2 : room) / strings, widest);
    form.second = fmax(form.label + strings * form.cell + gap, caption);
    return form;
}

double sil_clearance_height(int rows)
{
    return head + rows * row_height;
}

int sil_clearance_rows(double height)
{
    return (int)((height - head) / row_height);
}

sil_shade sil_clearance_shade(const sil_draft *draft, const sil_clearance *clean, int string,
                              int stop)
{
    double force = clean->force[string][stop];
    double attack = draft->plan->job->attack.force[string];
    return force < attack                ? SIL_SHADE_BUZZES
           : force < near_share * attack ? SIL_SHADE_NEAR
                                         : SIL_SHADE_NONE;
}

/* Lining in a cell, but not in its clear box: the outline goes in to the box and out again. */
static void draw_shade(sil_shapes *list, sil_box cell, const sil_box *box, sil_shade shade)
{
    static const double spacing[] = {[SIL_SHADE_NEAR] = 1.3, [SIL_SHADE_BUZZES] = 0.6};
    sil_point outline[10] = {{cell.left, cell.bottom},
                             {cell.right, cell.bottom},
                             {cell.right, cell.top},
                             {cell.left, cell.top},
                             {cell.left, cell.bottom}};
    if (shade == SIL_SHADE_NONE) {
        return;
    }
    if (box != NULL) {
        const sil_point inner[] = {{box->left, box->bottom},
                                   {box->left, box->top},
                                   {box->right, box->top},
                                   {box->right, box->bottom},
                                   {box->left, box->bottom}};
        for (int i = 0; i < 5; i++) {
            outline[5 + i] = inner[i];
        }
    }
    sil_draw_hatch(list, outline, box != NULL ? 10 : 4, spacing[shade]);
}

/* A note that was heard: a corner of its cell. */
static void draw_heard(sil_shapes *list, sil_box cell)
{
    const double arm = 1.7;
    const sil_point corner[] = {
        {cell.left, cell.top}, {cell.left + arm, cell.top}, {cell.left, cell.top - arm}};
    sil_draw_fill(list, SIL_LAYER_WARNING, corner, 3);
}

static bool is_heard(const sil_draft *draft, int string, int stop)
{
    const sil_plan *plan = draft->plan;
    bool heard = false;
    for (int k = 0; k < plan->cause_count; k++) {
        const sil_cause *note = &plan->causes[k];
        heard = heard || (note->heard && note->string == string && note->fret == stop);
    }
    return heard;
}

static void draw_note(const sil_draft *draft, sil_shapes *list, const sil_clearance_form *form,
                      const sil_clearance *clean, int string, int stop, sil_box cell)
{
    double total = form->figure + apart + form->fret;
    double middle = (cell.left + cell.right) / 2, y = (cell.bottom + cell.top) / 2 - SIL_NOTE / 2;
    double left = middle - total / 2;
    sil_shade shade = sil_clearance_shade(draft, clean, string, stop);
    double low = y - clear - (draft->decimal_comma ? hang : 0);
    const sil_box box = {left - clear, low, left + total + clear, y + SIL_NOTE + clear};
    draw_shade(list, cell, &box, shade);
    sil_draw_text(list, shade == SIL_SHADE_BUZZES ? SIL_LAYER_WARNING : SIL_LAYER_TEXT,
                  (sil_point){left + form->figure, y}, SIL_NOTE, SIL_RIGHT, 0,
                  say_force(draft, clean->force[string][stop]).text);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){left + form->figure + apart, y}, SIL_SMALL,
                  SIL_LEFT, 0, say_fret(clean, string, stop).text);
}

/* A table in the making: beside another it needs no names of stops. */
typedef struct table {
    const sil_draft *draft;
    sil_shapes *list;
    const sil_clearance_form *form;
    double left; /* of the first column */
} table;

static double column(const table *t, int place)
{
    return t->left + place * t->form->cell;
}

static void draw_label(const table *t, double y, const char *text)
{
    if (t->left > 0) {
        sil_draw_text(t->list, SIL_LAYER_TEXT, (sil_point){t->left - 2, y}, SIL_NOTE, SIL_RIGHT, 0,
                      text);
    }
}

static void draw_rule(const table *t, sil_layer layer, double y)
{
    double right = column(t, t->draft->plan->job->string_count);
    sil_draw_line(t->list, layer, (sil_point){0, y}, (sil_point){right, y});
}

/* Number, note and the pick each string is held against. */
static void draw_head(const table *t, const char *caption)
{
    const sil_clearance_form *form = t->form;
    double shift = (form->figure - apart - form->fret) / 2; /* the pick stands over the figures */
    sil_draw_note(t->list, 0, -SIL_NOTE, caption);
    for (int place = 0; place < t->draft->plan->job->string_count; place++) {
        int string = sil_string_seen(t->draft, place);
        double x = column(t, place) + form->cell / 2;
        sil_words note = sil_say_note(t->draft, string);
        note = sil_text_fit(t->list, note.text, SIL_NOTE, form->cell - 0.8);
        sil_draw_ring(t->list, (sil_point){x, -6.6}, string + 1);
        sil_draw_text(t->list, SIL_LAYER_TEXT, (sil_point){x, -12.7}, SIL_NOTE, SIL_MIDDLE, 0,
                      note.text);
        sil_draw_text(t->list, SIL_LAYER_TEXT, (sil_point){x + shift, -18.2}, SIL_NOTE, SIL_RIGHT,
                      0, say_force(t->draft, t->draft->plan->job->attack.force[string]).text);
    }
    draw_label(t, -18.2, "pick");
    draw_rule(t, SIL_LAYER_RULE, -14.4);
    draw_rule(t, SIL_LAYER_OUTLINE, -head);
}

static void draw_stop(const table *t, const sil_clearance *clean, int stop, double top)
{
    double bottom = top - row_height;
    draw_label(t, (top + bottom - SIL_NOTE) / 2, stop > 0 ? sil_say("%d", stop).text : "open");
    for (int place = 0; place < t->draft->plan->job->string_count; place++) {
        int string = sil_string_seen(t->draft, place);
        sil_box cell = {column(t, place), bottom, column(t, place + 1), top};
        draw_note(t->draft, t->list, t->form, clean, string, stop, cell);
        if (clean == &t->draft->plan->clean_now && is_heard(t->draft, string, stop)) {
            draw_heard(t->list, cell);
        }
    }
}

void sil_clearance_table(const sil_draft *draft, sil_shapes *list, const sil_clearance_form *form,
                         bool after, int first, int end)
{
    const sil_plan *plan = draft->plan;
    bool forecast = after && plan->stages.forecast[SIL_SADDLE];
    table t = {draft, list, form, after && form->paired ? 0 : form->label};
    const char *when = forecast ? "After, about" : after ? "After" : "Now";
    draw_head(&t, first > 0 ? sil_say("%s, from fret %d", when, first).text : when);
    for (int stop = first; stop < end; stop++) {
        double top = -head - (stop - first) * row_height;
        draw_stop(&t, after ? &plan->clean_after : &plan->clean_now, stop, top);
        draw_rule(&t, stop + 1 < end ? SIL_LAYER_RULE : SIL_LAYER_OUTLINE, top - row_height);
    }
}

/* A swatch and its words; the x behind them. */
static double draw_key(sil_shapes *list, double x, sil_shade shade, bool heard, const char *words)
{
    const sil_box swatch = {x, -row_height, x + 10, 0};
    draw_shade(list, swatch, NULL, shade);
    if (heard) {
        draw_heard(list, swatch);
    }
    sil_draw_box(list, SIL_LAYER_RULE, swatch);
    sil_draw_note(list, x + 12.5, -(row_height + SIL_NOTE) / 2, words);
    return x + 12.5 + sil_text_width(list, words, SIL_NOTE) + 6;
}

void sil_clearance_key(const sil_draft *draft, sil_shapes *list)
{
    bool heard = false;
    double x = 0;
    if (sil_known(draft->plan->job->attack.force[0])) {
        x = draw_key(list, x, SIL_SHADE_BUZZES, false, "buzzes");
        x = draw_key(list, x, SIL_SHADE_NEAR, false, "up to 25 % over");
        x = draw_key(list, x, SIL_SHADE_NONE, false, "clean");
    }
    for (int k = 0; k < draft->plan->cause_count; k++) {
        heard = heard || draft->plan->causes[k].heard;
    }
    if (heard) {
        draw_key(list, x, SIL_SHADE_NONE, true, "heard to buzz");
    }
}
