/* SPDX-License-Identifier: MIT */
/* The views. Each draws into a list at a place, in millimetres of the part, y up, and does not
 * depend on the paper. The origin of a part is the bass end of its bottom, and x goes to the
 * treble end. */
#ifndef SILLET_DRAWING_VIEWS_H
#define SILLET_DRAWING_VIEWS_H

#include "../board/draft.h"

/* Draws the front face of the nut. If whole, it has its slots as cut and the strings in them.
 * Otherwise it is a closed outline with one line per slot, from the floor to the top. If no
 * floor is known, it is just the bottom and a mark for each slot. */
void view_nut_face(const draw_draft *draft, draw_shapes *list, draw_place place, bool whole);
/* Draws the nut from above, with its front edge at y 0 and its back above that. */
void view_nut_top(const draw_draft *draft, draw_shapes *list, draw_place place);
/* Draws a section along one nut slot: the board at the left, the headstock at the right, and the
 * front face at x 0. */
void view_nut_section(const draw_draft *draft, draw_shapes *list, draw_place place, int string);

/* Draws the front face of the saddle: as it is now, what comes off its bottom and top, and a
 * shim under it. */
void view_saddle_face(const draw_draft *draft, draw_shapes *list, draw_place place);
/* The faces to cut from, each state of the piece a closed outline on a layer of its own: finished,
 * cut-first if there is more to take off after the first pass, present if a saddle loses something.
 * Returned: false, and nothing is drawn, if the part has no outline. */
bool view_nut_outline(const draw_draft *draft, draw_shapes *list, draw_place place);
bool view_saddle_outline(const draw_draft *draft, draw_shapes *list, draw_place place);
/* The same parts from above: the nut with each slot closed, from its front face at y 0; the saddle with
 * its middle at y 0, the nut at the top, and a cross where each string leaves it. */
void view_nut_plan(const draw_draft *draft, draw_shapes *list, draw_place place);
void view_saddle_plan(const draw_draft *draft, draw_shapes *list, draw_place place);
/* Draws the saddle from above, with the nut at the top and the middle of the saddle at y 0. A
 * cross marks where each string leaves its top when the work is done; one farther from its middle
 * than reach is left out. Where the place that plays in tune is off the piece, an arrow points there
 * from the nearer edge, and a figure beyond it says how far from that edge it is. */
void view_saddle_top(const draw_draft *draft, draw_shapes *list, draw_place place, double reach);
void view_cross(draw_shapes *list, draw_point at);
/* A place so far behind the middle of the saddle, along a string, and therefore also to the side if
 * the saddle is slanted. */
draw_point view_behind_saddle(const draw_draft *draft, draw_place place, int string, double off);
/* Draws the saddle end on, in its slot, with one string over it: its middle is at x 0 and its
 * bottom at y 0. */
void view_saddle_end(const draw_draft *draft, draw_shapes *list, draw_place place, int string);

/* Draws a string over the crowns from the side, now and after the work, with the heights
 * magnified. Draws nothing if no height is known. */
void view_side(const draw_draft *draft, draw_shapes *list, int string, double width);
/* Whether such a view has a string to show, now or after the work, or a fret out of line. */
bool view_side_shows(const draw_draft *draft, int string);
/* Draws two strings so beside each other, their captions level and the scales of both told once. */
void view_sides(const draw_draft *draft, draw_shapes *list, const int strings[2], double width);

/* Draws whose instrument it is and what it is, in two lines. */
void view_who(const draw_draft *draft, draw_shapes *list, double width);

/* Draws the facts of the job: owner, instrument, strings. Returned: the bottom, mm. */
double view_facts(const draw_draft *draft, draw_shapes *list, double width);

/* Draws the result of each stage, one cell each, in letters that can be read at arm's length. */
void view_outlook(const draw_draft *draft, draw_shapes *list, double width);

/* Draws a table of the readings now, their targets and what is predicted, one row per string. */
void view_readings(const draw_draft *draft, draw_shapes *list, double width);

/* Draws the last visits: what was expected at each, and below it what was read. */
void view_visits(const draw_draft *draft, draw_shapes *list, double width);

/* What a step has blanks for: the relief, the gaps at fret 1, the actions, the crowns of frets 1 to 3,
 * or another single reading of this name. */
typedef struct view_reads {
    bool relief, first, action, crowns;
    const char *other;
} view_reads;
view_reads view_reads_of(const brief *b, sil_act act);

/* view_blank: draws a line to write on behind its name. view_crowns_form: draws blanks for the crowns of
 * frets 1 to 3. Returned: the bottom, mm. */
double view_blank(draw_shapes *list, double x, double y, const char *label);
double view_crowns_form(const draw_draft *draft, draw_shapes *list, double x, double top,
                        double width);

/* How much room the bench card has for what is also on the bench plan. */
typedef enum view_room {
    VIEW_AMPLE,
    VIEW_SPARE, /* no ranges, and one row of blanks */
    VIEW_SCARCE /* nor the sentence of the next step, but for what comes before it */
} view_room;

/* Draws the next step as the bench card shows it: its name and its figures large, and what to do. */
void view_next(const draw_draft *draft, draw_shapes *list, int step, view_room room, double width);

/* Draws the readings that a step is to change, or all where it changes none: now, their ranges, what
 * they will be, and blanks. */
void view_next_form(const draw_draft *draft, draw_shapes *list, int step, view_room room,
                    double width);

/* Draws what comes before the next step: a box to tick, and its sentence. */
void view_before(const draw_draft *draft, draw_shapes *list, int step, double width);

/* Draws a step in one line: a box to tick, its name and its figures. */
void view_later(const draw_draft *draft, draw_shapes *list, int step, double width);

/* Draws a step: a box to tick, what to do, what to check, and blanks to write in. */
void view_step(const draw_draft *draft, draw_shapes *list, int step, double width);

/* A dimension that stands on the same paper with its limits already: here in brackets, since a part has
 * each dimension once (ISO 129-1). */
static inline brief_figure view_again(brief_figure figure)
{
    figure.limits[0] = '\0';
    figure.reference = true;
    return figure;
}

#endif
