/* SPDX-License-Identifier: MIT */
/* The paper on sound: will it buzz, will it play in tune. */
#include "tone.h"

#include <stddef.h>

static void draw_tone(sil_drawing *drawing)
{
    static const draw_heading heading = {"Buzz and intonation", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    paper_buzz(&flow);
    paper_tune(&flow);
}

bool paper_needs_tone(const sil_drawing *drawing)
{
    const draw_draft *draft = &drawing->draft;
    return drawing->order.all || paper_has_buzz(draft) || paper_has_tune(draft);
}

void paper_tone(sil_drawing *drawing)
{
    paper_fill(drawing, draw_tone);
}
