/* SPDX-License-Identifier: MIT */
/* Sheets: paper, frame and what stands on every one; and the flow that fills them. */
#ifndef SILLET_DRAWING_SHEET_H
#define SILLET_DRAWING_SHEET_H

#include <sillet/drawing.h>

#include "draft.h"

enum { SIL_CAUTION_LINES = 3 };

/* What a sheet's title block says of it, and what to beware of where work is shown. */
typedef struct sil_heading {
    const char *part;  /* "Bench plan", "Nut", "Saddle" */
    const char *scale; /* of the main view; others stand at theirs */
    const char *caution[SIL_CAUTION_LINES];
} sil_heading;

typedef struct sil_page {
    sil_shapes *shapes;
    const char *sheet; /* its name, and which of the pages of that name it is, from 1 */
    int number;
    sil_heading heading;
} sil_page;

enum { SIL_PAGES_MAX = 64 };

struct sil_drawing {
    sil_draft draft;
    const sil_plan *square; /* the plan as made: what is asked for is told square across */
    sil_plan along;
    sil_job along_job;
    sil_draw_order order;
    sil_box paper; /* mm */
    double widest; /* no line is drawn wider, mm; 0: as its layer has it */
    sil_page pages[SIL_PAGES_MAX];
    int page_count;
    bool unscaled; /* nothing on it is to be measured off: no rulers */
    bool unread;   /* a measuring sheet of a kind of instrument: its sizes are to be read */
    bool no_memory, no_number, too_long;
};

/* sil_plan_along: a plan as its parts lie on the bench. Of a fan nut and saddle lean, and what is
 * told square across the board is longer along them: width, length, centres, gaps; lines and radii
 * over those places follow. Any other plan comes out as it is.
 * Returned: job, along  along points to job; heights still point into plan
 */
void sil_plan_along(const sil_plan *plan, sil_job *job, sil_plan *along);

/* sil_on_screws: whether strings are raised and lowered by screws, posts or wheels alone. */
bool sil_on_screws(const sil_draft *draft);

/* sil_moved_down: how far a string comes down at the saddle in all, mm; unknown while it waits. */
double sil_moved_down(const sil_draft *draft, int string);

/* Room for content on a sheet: one column of 166 mm on A4 and Letter, two on A3. */
typedef struct sil_room {
    double left, width, top, bottom;
} sil_room;

enum { SIL_FRAME_WIDTH = 180, SIL_INSET = 7, SIL_COLUMN = SIL_FRAME_WIDTH - 2 * SIL_INSET };

sil_box sil_sheet_frame(const sil_drawing *drawing);
int sil_sheet_columns(const sil_drawing *drawing);
sil_room sil_sheet_room(const sil_drawing *drawing, const sil_heading *heading, int column);

/* The day the sheets are of: the job's, else the last reading's; NULL where neither is given. */
const char *sil_sheet_date(const sil_draft *draft);

/* sil_sheet_finish: frame, title block, rulers and cautions of one page, once all are there. */
void sil_sheet_finish(sil_drawing *drawing, int page);

/* The flow: blocks one under another, onto a new column or sheet where one does not fit. */
typedef struct sil_flow {
    sil_drawing *drawing;
    sil_heading heading;
    sil_room room;
    int column;
    double band; /* taken across all columns at the top of this sheet */
    double y;    /* where the next block may begin */
} sil_flow;

/* sil_flow_begin: a flow on a new sheet. */
sil_flow sil_flow_begin(sil_drawing *drawing, sil_heading heading);

sil_shapes *sil_flow_list(const sil_flow *flow); /* an empty list for a block */

/* sil_flow_put: places a block, frees it, and leaves a gap under it.
 * Given:    block   any origin; SIL_LEFT: its own x 0 at the room's left edge, SIL_MIDDLE: centred
 *           follow  room that must be left under it for what it introduces, mm
 */
void sil_flow_put(sil_flow *flow, sil_shapes *block, sil_anchor anchor, double gap, double follow);

/* sil_flow_band: a block across all columns, under what stands in the first of them so far. */
void sil_flow_band(sil_flow *flow, sil_shapes *block, double gap);

/* sil_flow_next_column: on to the next column of this sheet, if it has one. */
void sil_flow_next_column(sil_flow *flow);

/* sil_flow_title: a heading over a section, kept together with what follows it. */
void sil_flow_title(sil_flow *flow, const char *text, double follow);

/* sil_flow_text: a paragraph of any length, line by line. */
void sil_flow_text(sil_flow *flow, double indent, double width, const char *text, double gap);

/* sil_flow_words: a paragraph kept together. */
void sil_flow_words(sil_flow *flow, const char *text, double gap);

/* sil_flow_findings: those of a code as they tell themselves, several alike together. */
void sil_flow_findings(sil_flow *flow, sil_code code);

/* The sheets. */
void sil_sheet_bench(sil_drawing *drawing);
void sil_sheet_side(sil_drawing *drawing); /* its side views alone */
void sil_sheet_nut(sil_drawing *drawing);
void sil_sheet_saddle(sil_drawing *drawing);
void sil_sheet_templates(sil_drawing *drawing);
void sil_sheet_order(sil_drawing *drawing);
void sil_sheet_sound(sil_drawing *drawing);
void sil_sheet_measure(sil_drawing *drawing);

/* In place of a pack: the full-size outlines of the parts ordered, on one page of their own size.
 */
void sil_draw_outlines(sil_drawing *drawing);

/* sil_sheet_wait: in place of a part's sheet while it is withheld. */
void sil_sheet_wait(sil_drawing *drawing, const char *part, const sil_withheld *withheld,
                    sil_stage_name stage);

/* sil_flow_wait: in place of a template or a blank of a part that is withheld: that it waits, and
 * why. */
void sil_flow_wait(sil_flow *flow, const char *what, const sil_withheld *withheld);

#endif
