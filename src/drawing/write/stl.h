/* SPDX-License-Identifier: MIT */
/* Binary STL: little-endian triangles without names, in millimetres by custom. */
#ifndef SILLET_DRAWING_STL_H
#define SILLET_DRAWING_STL_H

#include <stdint.h>

#include "../../text/text.h"
#include "../board/draft.h"

typedef struct stl_file {
    text *out;
    uint32_t triangles;
} stl_file;

/* stl_begin, stl_end: begin a file in a new text, and finish it.
 * stl_add:   adds a solid: x along it, z up, y from its front face back.
 * Given:     mirrored  x runs from the treble end to the bass end
 *            from      y of its front face
 */
stl_file stl_begin(text *out);
void stl_add(stl_file *file, const part_solid *solid, bool mirrored, double from);
void stl_end(stl_file *file);

#endif
