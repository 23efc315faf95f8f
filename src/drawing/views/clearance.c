/* SPDX-License-Identifier: MIT */
/* How hard each note can be plucked before it buzzes: a table with one column per string, as you
 * look at the board, and one row for each place where the string is held. A note is shaded if
 * its clean force is below the force of the pick or close to it. The shading is made of lines,
 * which copiers and black printers keep, and leaves a clear box around the figures. */
#include <stddef.h>

#include "../board/plain.h"
#include "tone.h"

static const double widest = 15;
static const double apart = 0.6; /* between a figure and the fret after it */
static const double lowered =
    1.0; /* how far the fret stands below the figure, to tell them apart */
static const double clear =
    0.35;                        /* around the figures, which leaves room for the tail of a comma */
static const double edge = 0.3;  /* the least lining at either side of a clear box */
static const double head = 20.6; /* from the top to the first row */

/* The height of a row. */
static double row_height(const draw_draft *draft)
{
    return draft->dense ? 4.6 : 5.2;
}

/* A note is close to buzzing if its clean force is less than this many times the force of the
 * pick. */
static const double near_share = 1.25;

/* A force with three digits, which is already more than is known. A negative force means that
 * the string touches a fret, so the note is dead. */
static const char *say_force(const draw_draft *draft, double newtons)
{
    int decimals = newtons < 9.995 ? 2 : newtons < 99.95 ? 1 : 0;
    return newtons < 0 ? "dead" : draw_plain_number(draft, newtons, decimals);
}

static const char *say_fret(const draw_draft *draft, const sil_clearance *clean, int string,
                            int stop)
{
    int fret = clean->at_fret[string][stop];
    return fret > 0 ? draw_say(draft, "%d", fret) : "";
}

static void measure(const draw_draft *draft, const draw_shapes *list, const sil_clearance *clean,
                    view_clearance_form *form)
{
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double attack = draft->plan->job->attack.force[i];
        form->figure =
            fmax(form->figure, draw_text_width(list, say_force(draft, attack), DRAW_NOTE));
        for (int stop = 0; stop < draft->plan->bench.board.frets; stop++) {
            const char *figure = say_force(draft, clean->force[i][stop]);
            const char *fret = say_fret(draft, clean, i, stop);
            form->figure = fmax(form->figure, draw_text_width(list, figure, DRAW_NOTE));
            form->fret = fmax(form->fret, draw_text_width(list, fret, DRAW_NOTE));
        }
    }
}

view_clearance_form view_clearance_measure(const draw_draft *draft, const draw_shapes *list,
                                           double width)
{
    const double gap = 3, caption = 50;
    view_clearance_form form = {.label = draw_text_width(list, "open", DRAW_NOTE) + 2};
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

double view_clearance_height(const draw_draft *draft, int rows)
{
    return head + rows * row_height(draft);
}

int view_clearance_rows(const draw_draft *draft, double height)
{
    return (int)((height - head) / row_height(draft));
}

view_shade view_clearance_shade(const draw_draft *draft, const sil_clearance *clean, int string,
                                int stop)
{
    double force = clean->force[string][stop];
    double attack = draft->plan->job->attack.force[string];
    return sil_buzzes_under(force, attack) ? VIEW_SHADE_BUZZES
           : force < near_share * attack   ? VIEW_SHADE_NEAR
                                           : VIEW_SHADE_NONE;
}

/* Fills a cell with lining except for its clear box. The outline goes to the box, around it and
 * back. */
static void draw_shade(draw_shapes *list, draw_box cell, const draw_box *box, view_shade shade)
{
    static const double spacing[] = {[VIEW_SHADE_NEAR] = 1.3, [VIEW_SHADE_BUZZES] = 0.6};
    draw_point outline[10] = {{cell.left, cell.bottom},
                              {cell.right, cell.bottom},
                              {cell.right, cell.top},
                              {cell.left, cell.top},
                              {cell.left, cell.bottom}};
    if (shade == VIEW_SHADE_NONE) {
        return;
    }
    if (box != NULL) {
        const draw_point inner[] = {{box->left, box->bottom},
                                    {box->left, box->top},
                                    {box->right, box->top},
                                    {box->right, box->bottom},
                                    {box->left, box->bottom}};
        for (int i = 0; i < 5; i++) {
            outline[5 + i] = inner[i];
        }
    }
    draw_hatch(list, outline, box != NULL ? 10 : 4, spacing[shade]);
}

/* Marks a note that was heard to buzz with a corner of its cell. */
static void draw_heard(draw_shapes *list, draw_box cell)
{
    const double arm = 1.7;
    const draw_point corner[] = {
        {cell.left, cell.top}, {cell.left + arm, cell.top}, {cell.left, cell.top - arm}};
    draw_fill(list, DRAW_WARNING, corner, 3);
}

static bool is_heard(const draw_draft *draft, int string, int stop)
{
    const sil_plan *plan = draft->plan;
    bool heard = false;
    for (int k = 0; k < plan->cause_count; k++) {
        const sil_cause *note = &plan->causes[k];
        heard = heard || (note->heard && note->string == string && note->fret == stop);
    }
    return heard;
}

static void put_note(const draw_draft *draft, draw_shapes *list, const view_clearance_form *form,
                     const sil_clearance *clean, int string, int stop, draw_box cell)
{
    double total = form->figure + apart + form->fret;
    double middle = (cell.left + cell.right) / 2,
           y = (cell.bottom + cell.top - DRAW_NOTE + lowered) / 2;
    double left = middle - total / 2;
    view_shade shade = view_clearance_shade(draft, clean, string, stop);
    const draw_box box = {left - clear, y - lowered - clear, left + total + clear,
                          y + DRAW_NOTE + clear};
    draw_shade(list, cell, &box, shade);
    draw_text(list, shade == VIEW_SHADE_BUZZES ? DRAW_WARNING : DRAW_TEXT,
              (draw_point){left + form->figure, y}, DRAW_NOTE, DRAW_RIGHT, 0,
              say_force(draft, clean->force[string][stop]));
    draw_text(list, DRAW_TEXT, (draw_point){left + total, y - lowered}, DRAW_NOTE, DRAW_RIGHT, 0,
              say_fret(draft, clean, string, stop));
}

/* A table being drawn. The second of two tables side by side does not repeat the names of its
 * rows. */
typedef struct table {
    const draw_draft *draft;
    draw_shapes *list;
    const view_clearance_form *form;
    double left; /* the left edge of the first column */
} table;

static double column(const table *t, int place)
{
    return t->left + place * t->form->cell;
}

static void draw_label(const table *t, double y, const char *words)
{
    if (t->left > 0) {
        draw_text(t->list, DRAW_TEXT, (draw_point){t->left - 2, y}, DRAW_NOTE, DRAW_RIGHT, 0,
                  words);
    }
}

static void draw_rule(const table *t, draw_layer layer, double y)
{
    double right = column(t, t->draft->plan->job->string_count);
    draw_line(t->list, layer, (draw_point){0, y}, (draw_point){right, y});
}

/* Writes the number and note of each string, and the force of the pick its notes are compared
 * with. */
static void draw_head(const table *t, const char *caption)
{
    const view_clearance_form *form = t->form;
    double shift = (form->figure - apart - form->fret) / 2; /* the pick is above the figures */
    draw_note(t->list, 0, -DRAW_NOTE, caption);
    for (int place = 0; place < t->draft->plan->job->string_count; place++) {
        int string = draw_string_seen(t->draft, place);
        double x = column(t, place) + form->cell / 2;
        const char *named = draw_say(t->draft, "%s%s", draw_say_note(t->draft, string),
                                     t->draft->brief->tone[string].assumed);
        const char *note = draw_text_fit(t->draft, t->list, named, DRAW_NOTE, form->cell - 0.8);
        draw_ring(t->list, (draw_point){x, -6.6}, string + 1);
        draw_text(t->list, DRAW_TEXT, (draw_point){x, -12.7}, DRAW_NOTE, DRAW_MIDDLE, 0, note);
        draw_text(t->list, DRAW_TEXT, (draw_point){x + shift, -18.2}, DRAW_NOTE, DRAW_RIGHT, 0,
                  say_force(t->draft, t->draft->plan->job->attack.force[string]));
    }
    draw_label(t, -18.2, "pick");
    draw_rule(t, DRAW_RULE, -14.4);
    draw_rule(t, DRAW_OUTLINE, -head);
}

static void draw_stop(const table *t, const sil_clearance *clean, int stop, double top)
{
    double bottom = top - row_height(t->draft);
    draw_label(t, (top + bottom - DRAW_NOTE) / 2,
               stop > 0 ? draw_say(t->draft, "%d", stop) : "open");
    for (int place = 0; place < t->draft->plan->job->string_count; place++) {
        int string = draw_string_seen(t->draft, place);
        draw_box cell = {column(t, place), bottom, column(t, place + 1), top};
        put_note(t->draft, t->list, t->form, clean, string, stop, cell);
        if (clean == &t->draft->plan->clean_now && is_heard(t->draft, string, stop)) {
            draw_heard(t->list, cell);
        }
    }
}

void view_clearance_table(const draw_draft *draft, draw_shapes *list,
                          const view_clearance_form *form, bool after, int first, int end)
{
    const sil_plan *plan = draft->plan;
    bool forecast = after && draft->brief->forecast;
    table t = {draft, list, form, after && form->paired ? 0 : form->label};
    const char *when = forecast ? "After, about" : after ? "After" : "Now";
    draw_head(&t, first > 0 ? draw_say(draft, "%s, from fret %d", when, first) : when);
    for (int stop = first; stop < end; stop++) {
        double top = -head - (stop - first) * row_height(draft);
        draw_stop(&t, after ? &plan->clean_after : &plan->clean_now, stop, top);
        draw_rule(&t, stop + 1 < end ? DRAW_RULE : DRAW_OUTLINE, top - row_height(draft));
    }
}

/* Draws a sample of shading and its words. Returned: the x after them. */
static double put_key(const draw_draft *draft, draw_shapes *list, double x, view_shade shade,
                      bool heard, const char *words)
{
    const draw_box swatch = {x, -row_height(draft), x + 10, 0};
    draw_shade(list, swatch, NULL, shade);
    if (heard) {
        draw_heard(list, swatch);
    }
    draw_rectangle(list, DRAW_RULE, swatch);
    draw_note(list, x + 12.5, -(row_height(draft) + DRAW_NOTE) / 2, words);
    return x + 12.5 + draw_text_width(list, words, DRAW_NOTE) + 6;
}

void view_clearance_key(const draw_draft *draft, draw_shapes *list)
{
    bool heard = false;
    double x = 0;
    if (sil_known(draft->plan->job->attack.force[0])) {
        x = put_key(draft, list, x, VIEW_SHADE_BUZZES, false, "buzzes");
        x = put_key(draft, list, x, VIEW_SHADE_NEAR, false, "up to 25 % over");
        x = put_key(draft, list, x, VIEW_SHADE_NONE, false, "clean");
    }
    for (int k = 0; k < draft->plan->cause_count; k++) {
        heard = heard || draft->plan->causes[k].heard;
    }
    if (heard) {
        put_key(draft, list, x, VIEW_SHADE_NONE, true, "heard to buzz");
    }
}
