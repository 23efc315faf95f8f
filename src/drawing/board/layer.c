/* SPDX-License-Identifier: MIT */
/* The name and pen of every layer. Widths and dashes follow ISO 128-2 for the 0.5 mm line group;
 * hatching and the rules of tables are one step finer. The second width is that of a paper to cut by,
 * where a line is an edge: it is as fine as a printer makes it. */
#include "shapes.h"

static const draw_look looks[DRAW_LAYERS] = {
    [DRAW_FINISHED] = {"finished", 0.5, 0.18, {0}, 0, 0, 0},
    [DRAW_OUTLINE] = {"outline", 0.5, 0.18, {0}, 0, 0, 0},
    [DRAW_SLOT] = {"slot", 0.25, 0.18, {0}, 0, 0, 0},
    [DRAW_CONTACT] = {"contact", 0.35, 0.15, {0}, 0, 0, 0},
    [DRAW_CUT] = {"cut", 0.35, 0.18, {4.2, 0.7, 1.4, 0.7}, 0.7, 0, 0},
    [DRAW_CUT_FIRST] = {"cut-first", 0.5, 0.18, {0}, 0.7, 0, 0},
    [DRAW_PRESENT] = {"present", 0.25, 0.18, {2.1, 0.7}, 0, 0, 0},
    [DRAW_HIDDEN] = {"hidden", 0.25, 0.13, {1.4, 0.7}, 0, 0, 0},
    [DRAW_CENTRE] = {"centre", 0.25, 0.13, {5.0, 0.7, 0.35, 0.7}, 0, 0, 0},
    [DRAW_DIMENSION] = {"dimension", 0.25, 0.13, {0}, 0, 0, 0},
    [DRAW_STRING] = {"string", 0.25, 0.13, {0}, 0, 0, 0},
    [DRAW_HATCH] = {"hatch", 0.13, 0.13, {0}, 0, 0, 0},
    [DRAW_RULE] = {"rule", 0.13, 0.13, {0}, 0, 0, 0},
    [DRAW_TEXT] = {"text", 0.25, 0.25, {0}, 0, 0, 0},
    [DRAW_WARNING] = {"warning", 0.2, 0.2, {0}, 0.7, 0, 0},
    [DRAW_FRAME] = {"frame", 0.7, 0.7, {0}, 0, 0, 0},
};

const draw_look *draw_layer_look(draw_layer layer)
{
    return &looks[layer];
}
