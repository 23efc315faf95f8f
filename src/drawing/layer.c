/* SPDX-License-Identifier: MIT */
/* One table: every layer's name and pen. Widths and dashes after ISO 128-2 for the 0.5 mm group,
 * hatching and the rules of tables one step finer. */
#include "shapes.h"

static const sil_look looks[SIL_LAYERS] = {
    [SIL_LAYER_OUTLINE] = {"outline", 0.5, {0}, 0, 0, 0},
    [SIL_LAYER_SLOT] = {"slot", 0.25, {0}, 0, 0, 0},
    [SIL_LAYER_CONTACT] = {"contact", 0.35, {0}, 0, 0, 0},
    [SIL_LAYER_CUT] = {"cut", 0.35, {2.8, 1.0}, 0.7, 0, 0},
    [SIL_LAYER_CUT_FIRST] = {"cut-first", 0.5, {0}, 0.7, 0, 0},
    [SIL_LAYER_PRESENT] = {"present", 0.25, {2.1, 0.7}, 0, 0, 0},
    [SIL_LAYER_HIDDEN] = {"hidden", 0.25, {1.4, 0.7}, 0, 0, 0},
    [SIL_LAYER_CENTRE] = {"centre", 0.25, {5.0, 0.7, 0.35, 0.7}, 0, 0, 0},
    [SIL_LAYER_DIMENSION] = {"dimension", 0.25, {0}, 0, 0, 0},
    [SIL_LAYER_STRING] = {"string", 0.25, {0}, 0, 0, 0},
    [SIL_LAYER_HATCH] = {"hatch", 0.13, {0}, 0, 0, 0},
    [SIL_LAYER_RULE] = {"rule", 0.13, {0}, 0, 0, 0},
    [SIL_LAYER_TEXT] = {"text", 0.25, {0}, 0, 0, 0},
    [SIL_LAYER_WARNING] = {"warning", 0.2, {0}, 0.7, 0, 0},
    [SIL_LAYER_FRAME] = {"frame", 0.7, {0}, 0, 0, 0},
};

const sil_look *sil_layer_look(sil_layer layer)
{
    return &looks[layer];
}
