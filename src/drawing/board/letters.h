/* SPDX-License-Identifier: MIT */
/* The lettering: which face sets a letter, how wide a text is and how far its ink reaches. */
#ifndef SILLET_DRAWING_LETTERS_H
#define SILLET_DRAWING_LETTERS_H

#include <sillet/status.h>
#include <stddef.h>
#include <stdint.h>

/* ISO 3098 capital heights used on a paper, mm. */
#define DRAW_SMALL 1.8
#define DRAW_NOTE 2.5
#define DRAW_HEAD 3.5
#define DRAW_TITLE 5.0

/* The faces of a drawing: 0 the lettering, 1 the face that stands in for its missing letters. */
typedef struct draw_letters draw_letters;

typedef struct draw_ink {
    double advance;                  /* mm, to where the next letter would stand */
    double left, bottom, right, top; /* of the ink, from the start on the base line, mm */
} draw_ink;

/* draw_letters_open: finds the lettering at $SILLET_FACE, then in the system's font folders.
 * Returned: NULL out of memory; where no face at all is found, letters that are only to be closed
 */
draw_letters *draw_letters_open(void);
void draw_letters_close(draw_letters *letters);

/* draw_letters_fault: SIL_NO_FACE where none was found, SIL_NO_MEMORY where it ran out at any time
 * since they were opened, else SIL_DONE. */
sil_status draw_letters_fault(const draw_letters *letters);

/* draw_letters_face: 0 or 1 for the face that has a character, -1 where neither has. */
int draw_letters_face(draw_letters *letters, uint32_t code);

/* draw_letters_path: the file of a face; NULL where it is not there.
 * draw_letters_name: what its family is called; "" where the face is not there.
 * draw_letters_scale: capital height over the size of the em.
 */
const char *draw_letters_name(const draw_letters *letters, int face);
const char *draw_letters_path(const draw_letters *letters, int face);
double draw_letters_scale(const draw_letters *letters, int face);

/* draw_letters_advance: how far a character moves the next one on, mm; one that no face has is
 * counted as it will be spelled. */
double draw_letters_advance(draw_letters *letters, uint32_t code, double height);

/* draw_letters_ink: what a text takes up, set at a capital height in mm. */
draw_ink draw_letters_ink(draw_letters *letters, const char *words, double height);

/* draw_letters_spell: a text as it will be set: letters no face has as U+XXXX, control characters
 * as spaces, broken UTF-8 as U+FFFD. Remembers what was missing, for a warning.
 * Returned: the length written or needed; out is NUL-terminated and cut at a character
 */
size_t draw_letters_spell(draw_letters *letters, const char *words, char *out, size_t size);

/* What the drawing should be warned of: faces not found, letters missing. */
int draw_letters_warnings(const draw_letters *letters);
void draw_letters_warning(const draw_letters *letters, int index, char *out, size_t size);

#endif
