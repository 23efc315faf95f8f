/* SPDX-License-Identifier: MIT */
/* Sheets: paper, frame and what stands on every one; and the flow that fills them. */
#ifndef SILLET_DRAWING_SHEET_H
#define SILLET_DRAWING_SHEET_H

#include <sillet/drawing.h>

#include "draft.h"

enum { DRAW_CAUTION_LINES = 3 };

/* What a sheet's title block says of it, and what to beware of where work is shown. */
typedef struct draw_heading {
    const char *part;  /* "Bench plan", "Nut", "Saddle" */
    const char *scale; /* of the main view; others stand at theirs */
    const char *caution[DRAW_CAUTION_LINES];
} draw_heading;

typedef struct draw_paper {
    draw_shapes *shapes;
    const char *sheet; /* its name, and which of the pages of that name it is, from 1 */
    int number;
    draw_heading heading;
} draw_paper;

enum { DRAW_PAPERS_MAX = 64 };

struct sil_drawing {
    draw_draft draft;
    const sil_plan *square; /* the plan as made: what is asked for is told square across */
    sil_plan along;
    sil_job along_job;
    sil_draw_order order;
    draw_box paper; /* mm */
    double widest;  /* no line is drawn wider, mm; 0: as its layer has it */
    draw_paper pages[DRAW_PAPERS_MAX];
    int page_count;
    bool unscaled; /* nothing on it is to be measured off: no rulers */
    bool unread;   /* a measuring sheet of a kind of instrument: its sizes are to be read */
    bool no_memory, no_number, too_long;
};

/* draw_plan_along: a plan as its parts lie on the bench. Of a fan nut and saddle lean, and what is
 * told square across the board is longer along them: width, length, centres, gaps; lines and radii
 * over those places follow. Any other plan comes out as it is.
 * Returned: job, along  along points to job
 */
void draw_plan_along(const sil_plan *plan, sil_job *job, sil_plan *along);

/* draw_on_screws: whether strings are raised and lowered by screws, posts or wheels alone. */
bool draw_on_screws(const draw_draft *draft);

/* draw_moved_down: how far a string comes down at the saddle in all, mm; unknown while it waits. */
double draw_moved_down(const draw_draft *draft, int string);

/* Room for content on a sheet: one column of 166 mm on A4 and Letter, two on A3. */
typedef struct draw_room {
    double left, width, top, bottom;
} draw_room;

enum { DRAW_FRAME_WIDTH = 180, DRAW_INSET = 7, DRAW_COLUMN = DRAW_FRAME_WIDTH - 2 * DRAW_INSET };

draw_box draw_paper_frame(const sil_drawing *drawing);
int draw_paper_columns(const sil_drawing *drawing);
draw_room draw_paper_room(const sil_drawing *drawing, const draw_heading *heading, int column);

/* The day the sheets are of: the job's, else the last reading's; NULL where neither is given. */
const char *draw_paper_date(const draw_draft *draft);

/* draw_paper_finish: frame, title block, rulers and cautions of one page, once all are there. */
void draw_paper_finish(sil_drawing *drawing, int page);

/* The flow: blocks one under another, onto a new column or sheet where one does not fit. */
typedef struct draw_flow {
    sil_drawing *drawing;
    draw_heading heading;
    draw_room room;
    int column;
    double band; /* taken across all columns at the top of this sheet */
    double y;    /* where the next block may begin */
} draw_flow;

/* draw_flow_begin: a flow on a new sheet. */
draw_flow draw_flow_begin(sil_drawing *drawing, draw_heading heading);

draw_shapes *draw_flow_list(const draw_flow *flow); /* an empty list for a block */

/* draw_flow_put: places a block, frees it, and leaves a gap under it.
 * Given:    block   any origin
 *           anchor  DRAW_LEFT: its own x 0 at the room's left edge, DRAW_MIDDLE: centred
 *           follow  room that must be left under it for what it introduces, mm
 */
void draw_flow_put(draw_flow *flow, draw_shapes *block, draw_anchor anchor, double gap,
                   double follow);

/* draw_flow_band: a block across all columns, under what stands in the first of them so far. */
void draw_flow_band(draw_flow *flow, draw_shapes *block, double gap);

/* draw_flow_next_column: on to the next column of this sheet, if it has one. */
void draw_flow_next_column(draw_flow *flow);

/* draw_flow_title: a heading over a section, kept together with what follows it. */
void draw_flow_title(draw_flow *flow, const char *text, double follow);

/* draw_flow_text: a paragraph of any length, line by line. */
void draw_flow_text(draw_flow *flow, double indent, double width, const char *text, double gap);

/* draw_flow_words: a paragraph kept together. */
void draw_flow_words(draw_flow *flow, const char *text, double gap);

/* draw_flow_findings: those of a code as they tell themselves, several alike together. */
void draw_flow_findings(draw_flow *flow, sil_code code);

/* The sheets. */
void paper_bench(sil_drawing *drawing);
void paper_side(sil_drawing *drawing); /* its side views alone */
void paper_nut(sil_drawing *drawing);
void paper_saddle(sil_drawing *drawing);
void paper_templates(sil_drawing *drawing);
void paper_order(sil_drawing *drawing);
void paper_sound(sil_drawing *drawing);
void paper_measure(sil_drawing *drawing);

/* In place of a pack: the full-size outlines of the parts ordered, on one page of their own size.
 */
void paper_outlines(sil_drawing *drawing);

/* paper_wait: in place of a part's sheet while it is withheld. */
void paper_wait(sil_drawing *drawing, const char *part, const sil_withheld *withheld,
                sil_stage_name stage);

/* paper_flow_wait: in place of a template or a blank of a part that is withheld: that it waits, and
 * why. */
void paper_flow_wait(draw_flow *flow, const char *what, const sil_withheld *withheld);

#endif
