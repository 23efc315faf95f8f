/* SPDX-License-Identifier: MIT */
/* Sheet: will it buzz, will it play in tune. */
#include <stddef.h>

#include "../views/sound.h"

void paper_sound(sil_drawing *drawing)
{
    static const draw_heading heading = {"Buzz and intonation", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    paper_buzz(&flow);
    paper_tune(&flow);
}
