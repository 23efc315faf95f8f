/* SPDX-License-Identifier: MIT */
/* The two parts of the paper on buzz and intonation. */
#ifndef SILLET_DRAWING_PAPER_SOUND_H
#define SILLET_DRAWING_PAPER_SOUND_H

#include "papers.h"

/* Whether there is a figure to show in either. */
bool paper_has_buzz(const draw_draft *draft);
bool paper_has_tune(const draw_draft *draft);

void paper_buzz(draw_flow *flow);
void paper_tune(draw_flow *flow);

#endif
