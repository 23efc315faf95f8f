/* SPDX-License-Identifier: MIT */
/* The papers of a pack, and what takes the place of one. */
#ifndef SILLET_DRAWING_PAPERS_H
#define SILLET_DRAWING_PAPERS_H

#include "../board/paper.h"

void paper_bench(sil_drawing *drawing);
void paper_side(sil_drawing *drawing); /* its side views alone */
void paper_nut(sil_drawing *drawing);
void paper_saddle(sil_drawing *drawing);
void paper_templates(sil_drawing *drawing);
void paper_blanks(sil_drawing *drawing);
void paper_tone(sil_drawing *drawing);
void paper_measure(sil_drawing *drawing);

/* In place of a pack: the full-size outlines of the parts ordered, on one paper of their own size.
 */
void paper_outlines(sil_drawing *drawing);

/* paper_wait: in place of a part's paper while it is withheld. */
void paper_wait(sil_drawing *drawing, const char *part, const sil_withheld *withheld,
                sil_stage_name stage);

/* paper_flow_wait: in place of a template or a blank of a part that is withheld: that it waits, and
 * why. */
void paper_flow_wait(draw_flow *flow, const char *what, const sil_withheld *withheld);

/* paper_reason: why a part waits, as a sentence; "" for a code that holds nothing up. */
const char *paper_reason(const draw_draft *draft, sil_code code);

#endif
