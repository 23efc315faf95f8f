/* SPDX-License-Identifier: MIT */
/* The lettering: which face has a letter, how wide a text is, and how far its ink reaches. */
#ifndef SILLET_DRAWING_LETTERS_H
#define SILLET_DRAWING_LETTERS_H

#include <sillet/status.h>
#include <stddef.h>
#include <stdint.h>

/* ISO 3098 capital heights used on a paper, mm. */
#define DRAW_NOTE 2.5
#define DRAW_HEAD 3.5
#define DRAW_TITLE 5.0

/* The faces of a drawing: 0 is the lettering, 1 is used for letters that it lacks. */
typedef struct draw_letters draw_letters;

typedef struct draw_ink {
    double advance;                  /* mm, to the start of the next letter */
    double left, bottom, right, top; /* of the ink, from the start of the base line, mm */
} draw_ink;

/* draw_letters_open: looks for the lettering at $SILLET_FACE, then in the system's font folders.
 * Returned: NULL if out of memory. If there is no face at all, letters that can only be closed.
 */
draw_letters *draw_letters_open(void);
void draw_letters_close(draw_letters *letters);

/* draw_letters_fault: SIL_NO_FACE if no face was found, SIL_NO_MEMORY if memory ran out at any
 * time since they were opened, otherwise SIL_DONE. */
sil_status draw_letters_fault(const draw_letters *letters);

/* draw_letters_face: the face that has a character, 0 or 1; -1 if neither has it. */
int draw_letters_face(draw_letters *letters, uint32_t code);

/* draw_letters_path: the file of a face; NULL if there is no such face.
 * draw_letters_name: the name of its family; "" if there is no such face.
 * draw_letters_scale: the height of its capitals divided by the size of the em.
 */
const char *draw_letters_name(const draw_letters *letters, int face);
const char *draw_letters_path(const draw_letters *letters, int face);
double draw_letters_scale(const draw_letters *letters, int face);

/* draw_letters_advance: the distance from a character to the next one, mm. A character that no
 * face has is measured as it will be spelled out. */
double draw_letters_advance(draw_letters *letters, uint32_t code, double height);

/* draw_letters_ink: the extent of a text whose capitals have the given height, mm. */
draw_ink draw_letters_ink(draw_letters *letters, const char *words, double height);

/* draw_letters_spell: a text as it will be drawn: characters that no face has become U+XXXX,
 * control characters become spaces, and broken UTF-8 becomes U+FFFD. Remembers the missing ones for
 * a warning.
 * Returned: the length written or needed; out ends with NUL and is cut after a whole character
 */
size_t draw_letters_spell(draw_letters *letters, const char *words, char *out, size_t size);

/* The warnings about the lettering: faces that were not found and characters that are missing. */
int draw_letters_warnings(const draw_letters *letters);
void draw_letters_warning(const draw_letters *letters, int index, char *out, size_t size);

#endif
