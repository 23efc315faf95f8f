/* SPDX-License-Identifier: MIT */
/* Sheet: will it buzz, will it play in tune. */
#include <stddef.h>

#include "sound.h"

void sil_sheet_sound(sil_drawing *drawing)
{
    static const sil_heading heading = {"Buzz and intonation", "-", {NULL}};
    sil_flow flow = sil_flow_begin(drawing, heading);
    sil_flow_buzz(&flow);
    sil_flow_tune(&flow);
}
