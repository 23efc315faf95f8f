/* SPDX-License-Identifier: MIT */
/* The papers of a pack, and the papers that replace them. */
#ifndef SILLET_DRAWING_PAPERS_H
#define SILLET_DRAWING_PAPERS_H

#include "../board/paper.h"

/* paper_bench_heading: of the papers for the bench: nothing on them is to scale, and every caution. */
draw_heading paper_bench_heading(const char *title);

/* paper_fill: draws papers of one name: again and denser where that saves a paper, and with more room
 * at the foot of the others where the last would be nearly empty. The filler draws them once. */
typedef void paper_filler(sil_drawing *drawing);
void paper_fill(sil_drawing *drawing, paper_filler *draw);

void paper_card(sil_drawing *drawing);
void paper_bench(sil_drawing *drawing);
void paper_side(sil_drawing *drawing); /* only its side views */
void paper_nut(sil_drawing *drawing);
void paper_saddle(sil_drawing *drawing);
void paper_templates(sil_drawing *drawing);
void paper_blanks(sil_drawing *drawing);
void paper_tone(sil_drawing *drawing);
void paper_owner(sil_drawing *drawing);
void paper_measure(sil_drawing *drawing);

/* Whether the pack needs the paper of a part, its templates, or its blank: it is worked on or waits, it
 * is worked on, or it is replaced; or its sheets are asked for. */
bool paper_needs(const sil_drawing *drawing, sil_part part);
bool paper_needs_template(const sil_drawing *drawing, sil_part part);
bool paper_needs_blank(const sil_drawing *drawing, sil_part part);

/* Whether there is a figure to show on buzz or on intonation, or all is asked for. */
bool paper_needs_tone(const sil_drawing *drawing);

/* Replaces the pack: the outlines of the ordered parts at full size, on one paper as large as
 * they need. */
void paper_outlines(sil_drawing *drawing);

/* paper_wait: replaces the paper of a part that is withheld. */
void paper_wait(sil_drawing *drawing, sil_part part);

/* paper_flow_wait: replaces a template or a blank of a part that is withheld. It says that the
 * part waits, and why. */
void paper_flow_wait(draw_flow *flow, const char *what, const brief_stage *stage);

/* paper_reason: one reason why a part waits, as a sentence. */
const char *paper_reason(const draw_draft *draft, const brief_stage *stage, int reason);

#endif
