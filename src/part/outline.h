/* SPDX-License-Identifier: MIT */
/* A part's closed outline as a machine cuts it: straight lines and true arcs. */
#ifndef SILLET_PART_OUTLINE_H
#define SILLET_PART_OUTLINE_H

#include "part.h"

/* What a part looks like when: as it is, after the first pass, when all is done. */
typedef enum part_when { PART_PRESENT, PART_FIRST, PART_FINISHED } part_when;

enum { PART_CORNERS = 8 * SIL_STRINGS_MAX + 8 };

/* part_nut_corners: the nut's front face with its slots as wide as they are cut, with round floors.
 * part_saddle_corners: the saddle's face.
 * Given:    when  a nut as it is now has no outline: the height of its top is not read
 * Returned: out   at most PART_CORNERS, counter-clockwise, the bass end of the bottom first, in the
 *                 axes of the part. A saddle's are above its present bottom
 *           how many; 0 where a height is not known, or where slots run into each other or off the end
 */
int part_nut_corners(const part_nut *nut, part_when when, part_corner *out);
int part_saddle_corners(const part_saddle *saddle, part_when when, part_corner *out);

/* part_nut_slot: a slot from above, x along the nut and y from its front face back, closed, and longer
 * than the nut is thick by a little at both faces so that a tool runs out.
 * Returned: out   four corners */
void part_nut_slot(const part_nut *nut, int string, part_point out[4]);

/* A finished part as a solid: sections of as many points each, evenly spaced from the face that its
 * outline shows to the other. Every point is joined to its fellows by straight lines. */
enum { PART_SOLID_POINTS = 2048, PART_SECTIONS = 9 };
typedef struct part_solid {
    int count, sections;
    double thickness;
    part_point at[PART_SECTIONS][PART_SOLID_POINTS];
} part_solid;

/* part_nut_solid:    the finished nut, its slots and its top falling alike toward the tuners.
 * part_saddle_solid: the finished saddle from its own bottom, its top level from face to face.
 * Returned: false where the part has no outline, its thickness is not known, or a slot leaves it
 * Accuracy: chords are within 0.002 mm of their arc.
 */
bool part_nut_solid(const part_nut *nut, part_solid *solid);
bool part_saddle_solid(const part_saddle *saddle, part_solid *solid);

#endif
