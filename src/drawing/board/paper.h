/* SPDX-License-Identifier: MIT */
/* A drawn paper: its frame, what every paper has in common, and the flow that fills the papers. */
#ifndef SILLET_DRAWING_PAPER_H
#define SILLET_DRAWING_PAPER_H

#include <sillet/drawing.h>

#include "draft.h"

enum { DRAW_CAUTION_LINES = 3 };

/* What a paper's title block says, and the cautions printed on a paper that shows work to do. */
typedef struct draw_heading {
    const char *part;  /* "Bench plan", "Nut", "Saddle" */
    const char *scale; /* of the main view; other views show their own */
    const char *caution[DRAW_CAUTION_LINES];
} draw_heading;

typedef struct draw_paper {
    draw_shapes *shapes;
    const char *name; /* number counts the papers of one name, from 1 */
    int number;
    bool hairlines; /* its lines are edges to cut to */
    draw_heading heading;
} draw_paper;

enum { DRAW_PAPERS_MAX = 64 };

struct sil_drawing {
    draw_draft draft;
    brief *brief;
    text_store store; /* holds its texts */
    sil_draw_options order;
    draw_box size; /* the size of a paper, mm */
    double lift;   /* mm kept free at the foot of each column, so that more goes on to the next */
    double widest; /* the widest line allowed, mm; 0: each layer's own width */
    draw_paper papers[DRAW_PAPERS_MAX];
    int paper_count;
    bool outlines; /* bare outlines of the parts, from which a file of their solids can be made */
    bool solid[2]; /* of the nut and the saddle: it has one */
    const char *missing[2]; /* which part has no solid, and why */
    int missing_count;
    bool letter;    /* a letter: without frame and title block */
    bool measuring; /* a measuring sheet, which is about the customer's instrument */
    bool unread;    /* a measuring sheet made from a profile: its sizes are still to be read */
    bool no_memory, no_number, too_long;
};

/* The room for content on a paper: one column 166 mm wide on A4 and Letter, two on A3. */
typedef struct draw_room {
    double left, width, top, bottom;
} draw_room;

enum { DRAW_FRAME_WIDTH = 180, DRAW_INSET = 7, DRAW_COLUMN = DRAW_FRAME_WIDTH - 2 * DRAW_INSET };

draw_box draw_paper_frame(const sil_drawing *drawing);
int draw_paper_columns(const sil_drawing *drawing);
draw_room draw_paper_room(const sil_drawing *drawing, const draw_heading *heading, int column);

/* The date of the papers: the job's, or else the last reading's; NULL if neither has one. */
const char *draw_paper_date(const draw_draft *draft);

/* draw_paper_finish: draws the frame, title block, rulers and cautions of one paper. Call it
 * when all the papers of the drawing have been made. */
void draw_paper_finish(sil_drawing *drawing, int paper);

/* The flow: it places blocks one under another, and starts a new column or paper when the next
 * block does not fit. */
typedef struct draw_flow {
    sil_drawing *drawing;
    draw_heading heading;
    draw_room room;
    int column;
    double band; /* the height taken across all columns at the top of this paper */
    double y;    /* the top of the next block */
} draw_flow;

/* draw_flow_begin: starts a flow on a new paper. */
draw_flow draw_flow_begin(sil_drawing *drawing, draw_heading heading);

/* draw_flow_drop: takes back the last papers and leaves so many, so that they can be drawn again in
 * another way. If memory ran out on one of them, the drawing is none. That they were too many is
 * forgotten. */
void draw_flow_drop(sil_drawing *drawing, int papers);

draw_shapes *draw_flow_list(const draw_flow *flow); /* an empty list for a block */

/* draw_flow_put: places a block, frees it, and leaves a gap under it.
 * Given:    block   around any origin
 *           anchor  DRAW_LEFT puts its x 0 at the left edge of the room, DRAW_MIDDLE centres it
 *           follow  the room to keep free under it, mm, so that it stays with what follows
 */
void draw_flow_put(draw_flow *flow, draw_shapes *block, draw_anchor anchor, double gap,
                   double follow);

/* draw_flow_band: places a block across all columns, under what the first column holds so far. */
void draw_flow_band(draw_flow *flow, draw_shapes *block, double gap);

/* draw_flow_next_column: goes to the next column of this paper, if there is one. */
void draw_flow_next_column(draw_flow *flow);

/* draw_flow_title: puts the heading of a section and keeps it together with what follows. */
void draw_flow_title(draw_flow *flow, const char *words, double follow);

/* draw_flow_text: puts a paragraph of any length, line by line, so that it can run on to the
 * next column. */
void draw_flow_text(draw_flow *flow, double indent, double width, const char *words, double gap);

/* draw_flow_words: puts a paragraph that is kept together. */
void draw_flow_words(draw_flow *flow, const char *words, double gap);

/* draw_flow_findings: puts the sentences of all findings with this code. Findings that are alike
 * share one sentence. */
void draw_flow_findings(draw_flow *flow, sil_code code);

#endif
