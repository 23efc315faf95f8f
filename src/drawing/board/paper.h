/* SPDX-License-Identifier: MIT */
/* A paper: frame and what stands on every one; and the flow that fills them. */
#ifndef SILLET_DRAWING_PAPER_H
#define SILLET_DRAWING_PAPER_H

#include <sillet/drawing.h>

#include "draft.h"

enum { DRAW_CAUTION_LINES = 3 };

/* What a paper's title block says of it, and what to beware of where work is shown. */
typedef struct draw_heading {
    const char *part;  /* "Bench plan", "Nut", "Saddle" */
    const char *scale; /* of the main view; others stand at theirs */
    const char *caution[DRAW_CAUTION_LINES];
} draw_heading;

typedef struct draw_paper {
    draw_shapes *shapes;
    const char *name; /* and which of the papers of that name it is, from 1 */
    int number;
    draw_heading heading;
} draw_paper;

enum { DRAW_PAPERS_MAX = 64 };

struct sil_drawing {
    draw_draft draft;
    brief *brief;
    text_store store; /* of the texts set for it */
    sil_draw_options order;
    draw_box size; /* of a paper, mm */
    double widest; /* no line is drawn wider, mm; 0: as its layer has it */
    draw_paper papers[DRAW_PAPERS_MAX];
    int paper_count;
    bool unscaled; /* nothing on it is to be measured off: no rulers */
    bool unread;   /* a measuring sheet of a kind of instrument: its sizes are to be read */
    bool no_memory, no_number, too_long;
};

/* Room for content on a paper: one column of 166 mm on A4 and Letter, two on A3. */
typedef struct draw_room {
    double left, width, top, bottom;
} draw_room;

enum { DRAW_FRAME_WIDTH = 180, DRAW_INSET = 7, DRAW_COLUMN = DRAW_FRAME_WIDTH - 2 * DRAW_INSET };

draw_box draw_paper_frame(const sil_drawing *drawing);
int draw_paper_columns(const sil_drawing *drawing);
draw_room draw_paper_room(const sil_drawing *drawing, const draw_heading *heading, int column);

/* The day the papers are of: the job's, else the last reading's; NULL where neither is given. */
const char *draw_paper_date(const draw_draft *draft);

/* draw_paper_finish: frame, title block, rulers and cautions of one paper, once all are there.
 */
void draw_paper_finish(sil_drawing *drawing, int paper);

/* The flow: blocks one under another, onto a new column or paper where one does not fit. */
typedef struct draw_flow {
    sil_drawing *drawing;
    draw_heading heading;
    draw_room room;
    int column;
    double band; /* taken across all columns at the top of this paper */
    double y;    /* where the next block may begin */
} draw_flow;

/* draw_flow_begin: a flow on a new paper. */
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

/* draw_flow_next_column: on to the next column of this paper, if it has one. */
void draw_flow_next_column(draw_flow *flow);

/* draw_flow_title: a heading over a section, kept together with what follows it. */
void draw_flow_title(draw_flow *flow, const char *words, double follow);

/* draw_flow_text: a paragraph of any length, line by line. */
void draw_flow_text(draw_flow *flow, double indent, double width, const char *words, double gap);

/* draw_flow_words: a paragraph kept together. */
void draw_flow_words(draw_flow *flow, const char *words, double gap);

/* draw_flow_findings: those of a code as they tell themselves, several alike together. */
void draw_flow_findings(draw_flow *flow, sil_code code);

#endif
