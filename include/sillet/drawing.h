/* SPDX-License-Identifier: MIT */
/* The drawing: a plan as full-size drawings to cut by.
 *
 * A drawing is made from a plan once, and can then be written to files. Its lettering is an ISO
 * 3098 typeface found on this machine: the file named by $SILLET_FACE, or else osifont in the XDG
 * base directories. Letters that it does not have are taken from DejaVu Sans.
 */
#ifndef SILLET_DRAWING_H
#define SILLET_DRAWING_H

#include "plan.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_paper { SIL_A4, SIL_A3, SIL_LETTER } sil_paper;

/* What is drawn: every sheet, or the sheets of one part. */
typedef enum sil_part { SIL_PART_ALL, SIL_PART_NUT, SIL_PART_SADDLE } sil_part;

/* File formats. A PDF has all pages of a drawing; an SVG or DXF file has one page. An STL file has the
 * finished parts of a drawing of outlines as solids. */
typedef enum sil_format { SIL_PDF, SIL_SVG, SIL_DXF, SIL_STL, SIL_FORMATS } sil_format;

/* sil_format_word:  the word of a format, which is also the ending of its files: "pdf".
 * sil_format_media: its media type: "application/pdf".
 * Given:    format  one of the formats
 * Returned: fixed text; NULL for SIL_FORMATS
 */
const char *sil_format_word(sil_format format);
const char *sil_format_media(sil_format format);

typedef struct sil_draw_options {
    sil_part part;
    sil_paper paper;
    sil_unit unit;      /* of the figures; the shapes are the same in either unit */
    bool decimal_comma; /* figures with a decimal comma, as in ISO 129-1; otherwise with a point */
    bool all; /* also the sheets of parts that are left alone, and the blanks nobody needs */
} sil_draw_options;

/* A drawing. It owns its pages, and refers to the plan and its job, which must outlive it. */
typedef struct sil_drawing sil_drawing;

/* sil_drawing_make: draws a plan.
 * Given:    plan     made; a part it withholds is not drawn, and that part's sheet says to wait and
 *                    why
 *           order    what to draw, the paper and the unit
 * Returned: drawing  to be freed with sil_drawing_free, before the plan; NULL on error
 * Status:   SIL_DONE; SIL_DOUBTFUL: made, with warnings to read by sil_drawing_warning;
 *           SIL_NO_FACE, SIL_FAULT, SIL_NO_MEMORY
 * Accuracy: full-size views are within 0.01 mm in the file
 * Notes:    the same plan and order always give the same bytes; the clock and the locale are not
 *           used
 * Reference: ISO 5457 and 7200 (frame and title block), ISO 128 and 129-1 (lines and dimensions),
 *           ISO 3098 (lettering), ISO 5455 (scales), ISO 5456-2 (first-angle projection)
 */
sil_status sil_drawing_make(const sil_plan *plan, const sil_draw_options *order,
                            sil_drawing **drawing);

/* sil_outlines_make: draws the outlines of a part at full size for a mill or a laser, without a
 * frame. It shows the nut and the saddle from the player's end and from above, with the places
 * where the strings leave the finished saddle.
 * Given:    plan     made; for a part it withholds there is only a text that says so
 *           order    which part; with SIL_PART_ALL the saddle is below the nut; the paper is not
 *                    used
 * Returned: drawing  one page, a little larger than the outlines. The origin is at the left end of
 *                    the first part's bottom, which is the bass end, or the treble end on a
 *                    left-handed instrument; x runs to the right and y up, mm
 * Status:   as sil_drawing_make
 * Accuracy: 0.0001 mm in the file
 * Notes:    layers: finished, cut-first and present (the piece in that state, each a closed outline
 *           with true arcs, where it differs from the one before), slot (each from above, closed),
 *           contact (a cross for each string), centre, text
 */
sil_status sil_outlines_make(const sil_plan *plan, const sil_draw_options *order,
                             sil_drawing **drawing);

/* sil_drawing_measure: draws a measuring sheet to fill in at the bench, with room for two visits.
 * Given:    plan     made; its last reading is printed as the first visit
 *           order    the paper and the unit; its part is not used
 *           unread   the job describes a kind of instrument, not a particular one, so the
 *                    dimensions are left blank too
 * Returned: drawing  as sil_drawing_make
 * Status:   as sil_drawing_make
 */
sil_status sil_drawing_measure(const sil_plan *plan, const sil_draw_options *order, bool unread,
                               sil_drawing **drawing);

/* sil_drawing_owner: draws a page for the owner of the instrument, in everyday words: what was found,
 * what was done, the readings before and after, and what to look after.
 * Given:    plan     made
 *           order    the paper and the unit; its part is not used
 * Returned: drawing  as sil_drawing_make; its one page is called owner
 * Status:   as sil_drawing_make
 */
sil_status sil_drawing_owner(const sil_plan *plan, const sil_draw_options *order,
                             sil_drawing **drawing);

/* sil_view_make: draws a view for the screen, without frame and title block, on a page that just
 * fits it.
 * Given:    plan     made
 *           order    with a part, the view on that part's sheet; with SIL_PART_ALL, the outer
 *                    strings above the crowns from the side, with heights magnified
 * Returned: drawing  as sil_drawing_make; its first page is the view
 * Status:   as sil_drawing_make
 */
sil_status sil_view_make(const sil_plan *plan, const sil_draw_options *order,
                         sil_drawing **drawing);

/* sil_drawing_pages: how many pages a drawing has.
 * Returned: 1 or more
 */
int sil_drawing_pages(const sil_drawing *drawing);

/* sil_drawing_page_name: the name of a page: card, bench, nut, saddle, templates, blanks or clearance.
 * Where a sheet needs more pages, they are called nut-2, nut-3 and so on.
 * Given:    page  from 0
 *           size  of out; 32 bytes are enough
 * Returned: out   NUL-terminated; untouched where there is no such page
 * Status:   false where there is no such page
 */
bool sil_drawing_page_name(const sil_drawing *drawing, int page, char *out, size_t size);

/* sil_drawing_find: finds a page by its name.
 * Given:    sheet  a name as sil_drawing_page_name gives it
 * Returned: the page, from 0; -1 where there is none
 */
int sil_drawing_find(const sil_drawing *drawing, const char *sheet);

/* sil_drawing_warning: one of the warnings, such as letters that no typeface has.
 * Given:    index  from 0
 *           size   of out, 1 or more
 * Returned: out    one line, NUL-terminated; cut short where it is too long
 * Status:   false where there are no more
 */
bool sil_drawing_warning(const sil_drawing *drawing, int index, char *out, size_t size);

/* sil_drawing_missing: one of the parts of which a drawing of outlines has no solid, and why.
 * Given:    index  from 0
 *           size   of out, 1 or more
 * Returned: out    one line, NUL-terminated; cut short where it is too long
 * Status:   false where there are no more
 */
bool sil_drawing_missing(const sil_drawing *drawing, int index, char *out, size_t size);

/* sil_drawing_write: writes a drawing as the bytes of a file.
 * sil_drawing_write_page: the same for one page of it.
 * Given:    page         from 0
 *           format       a PDF has all pages, SVG and DXF one; STL is for a drawing of outlines
 * Returned: bytes, size  a new block to be freed with free(); not to be used on error
 * Status:   SIL_DONE; SIL_FAULT: there is no such page, the drawing has more pages than the format
 *           can hold, it is STL and the drawing has no outlines, or there is a defect;
 *           SIL_NO_SOLID: no part of it has a solid; SIL_NO_MEMORY
 * Notes:    the same drawing always gives the same bytes. SVG and DXF are in mm, with a layer for
 *           each kind of line, named alike in both. SVG is full size, and marks what belongs to one
 *           string with data-string. DXF is version AC1021, with text in UTF-8. STL is binary, in
 *           mm: each part is closed, x along it as in its outline, y from the face shown there toward
 *           the headstock, z up from its own bottom; with both parts the saddle is before the nut.
 *           Its chords are within 0.002 mm of their arcs
 * Reference: SVG 1.1 second edition; DXF reference, release AC1021
 */
sil_status sil_drawing_write(const sil_drawing *drawing, sil_format format, char **bytes,
                             size_t *size);
sil_status sil_drawing_write_page(const sil_drawing *drawing, int page, sil_format format,
                                  char **bytes, size_t *size);

/* sil_drawing_free: frees a drawing; NULL is allowed. */
void sil_drawing_free(sil_drawing *drawing);

/* sil_file_save: saves a file, either whole or not at all.
 * Given:    path         "-" or /dev/stdout: standard output. Links are followed
 *           bytes, size  what to write
 * Status:   SIL_DONE, or SIL_NOT_SAVED with errno. The old file is then unchanged; if only the
 *           folder could not be flushed to the disk, the new file has replaced it whole
 * Notes:    a device or a pipe is written directly. A regular file is replaced in one step by a new
 *           one with the same permissions, which is flushed to the disk first.
 */
sil_status sil_file_save(const char *path, const void *bytes, size_t size);

#ifdef __cplusplus
}
#endif
#endif
