/* SPDX-License-Identifier: MIT */
/* The two parts of the paper on buzz and intonation. */
#ifndef SILLET_DRAWING_PAPER_SOUND_H
#define SILLET_DRAWING_PAPER_SOUND_H

#include "papers.h"

void paper_buzz(draw_flow *flow);
void paper_tune(draw_flow *flow);

#endif
