/* SPDX-License-Identifier: MIT */
/* The drawing: a plan on paper, full size, to cut by.
 *
 * A drawing is made of a plan once and can then be written. Its lettering is an ISO 3098 face found
 * on this machine: the file $SILLET_FACE names, else osifont in the folders the XDG base
 * directories give, and DejaVu Sans for letters that one lacks.
 */
#ifndef SILLET_DRAWING_H
#define SILLET_DRAWING_H

#include "plan.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_paper { SIL_A4, SIL_A3, SIL_LETTER } sil_paper;

/* What is drawn: every sheet, or those of one part. */
typedef enum sil_part { SIL_PART_ALL, SIL_PART_NUT, SIL_PART_SADDLE } sil_part;

/* A PDF holds all pages of a drawing, SVG and DXF one. */
typedef enum sil_format { SIL_PDF, SIL_SVG, SIL_DXF, SIL_FORMATS } sil_format;

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
    sil_unit unit;      /* of the figures; the geometry is the same */
    bool decimal_comma; /* figures with a comma, as ISO 129-1 writes them, else with a point */
} sil_draw_options;

/* A drawing made: owns its pages; refers to the plan and its job, which must outlive it. */
typedef struct sil_drawing sil_drawing;

/* sil_drawing_make: draws a plan.
 * Given:    plan   made; what it withholds is not drawn: that part's sheet says to wait, and why
 *           order  what and on which paper
 * Returned: drawing  to be freed with sil_drawing_free, before the plan; NULL on error
 * Status:   SIL_DONE; SIL_DOUBTFUL: made, and sil_drawing_warning says of what to be aware;
 *           SIL_NO_FACE, SIL_FAULT, SIL_NO_MEMORY
 * Accuracy: full-size views are to 0.01 mm in the file
 * Notes:    the same plan and order give the same bytes: nothing asks a clock or the locale.
 * Reference: ISO 5457 and 7200 (frame and title block), ISO 128 and 129-1 (lines and dimensions),
 *           ISO 3098 (lettering), ISO 5455 (scales), ISO 5456-2 (first-angle projection)
 */
sil_status sil_drawing_make(const sil_plan *plan, const sil_draw_options *order,
                            sil_drawing **drawing);

/* sil_outlines_make: the outlines of a part at full size, for a mill or a laser, and no sheet round
 * them: nut and saddle face, and from above where each string leaves the saddle in tune.
 * Given:    plan   made; of a part it withholds there is a text that says so and no line
 *           order  which part; all: the nut, the saddle below it. The paper counts for nothing
 * Returned: drawing  of one page a little larger than what is on it. The origin is at the bass end
 *                    of the first part's seat, x to the treble end, y up, mm; on a left-handed
 *                    instrument mirrored: x is then negative
 * Status:   as sil_drawing_make
 * Accuracy: 0.0001 mm in the file
 * Notes:    layers: outline (closed, as the piece stands, its top as finished), slot (a line a
 *           string from floor to top), contact (a cross a string), cut, cut-first, present, text
 */
sil_status sil_outlines_make(const sil_plan *plan, const sil_draw_options *order,
                             sil_drawing **drawing);

/* sil_drawing_measure: draws a measuring sheet to fill in at the bench, with room for two visits.
 * Given:    plan    of a job; its last reading stands in the first visit's place
 *           order   on which paper, in which unit; its part counts for nothing
 *           unread  the job is a kind of instrument, not one: its sizes are left blank too
 * Returned: as sil_drawing_make
 * Status:   as sil_drawing_make
 */
sil_status sil_drawing_measure(const sil_plan *plan, const sil_draw_options *order, bool unread,
                               sil_drawing **drawing);

/* sil_view_make: what a sheet of the pack shows, to be looked at on a screen: no frame, no title
 * block, on a page as large as it is.
 * Given:    plan     made
 *           order    part: nut or saddle, what stands on that part's sheet; all: the outer strings
 *                    from the side, over the crowns, heights magnified
 * Returned: drawing  as sil_drawing_make; its first page is the view
 * Status:   as sil_drawing_make
 */
sil_status sil_view_make(const sil_plan *plan, const sil_draw_options *order,
                         sil_drawing **drawing);

/* sil_drawing_pages: how many pages a drawing has.
 * Returned: 1 or more
 */
int sil_drawing_pages(const sil_drawing *drawing);

/* sil_drawing_page_name: what a page is called: bench, nut, saddle, templates, blanks, clearance;
 * where a sheet goes on to further pages these are nut-2, nut-3.
 * Given:    page  from 0
 *           size  of out; 32 bytes are enough
 * Returned: out   NUL-terminated; untouched where there is no such page
 * Status:   false where there is no such page
 */
bool sil_drawing_page_name(const sil_drawing *drawing, int page, char *out, size_t size);

/* sil_drawing_find: the page called so.
 * Given:    sheet  a name as sil_drawing_page_name gives it
 * Returned: from 0; -1 where there is none
 */
int sil_drawing_find(const sil_drawing *drawing, const char *sheet);

/* sil_drawing_warning: what to be aware of, such as letters no face has.
 * Given:    index  from 0
 *           size   of out, 1 or more
 * Returned: out    one line, NUL-terminated; cut where it is too long
 * Status:   false where there are no more
 */
bool sil_drawing_warning(const sil_drawing *drawing, int index, char *out, size_t size);

/* sil_drawing_write: a drawing as the bytes of a file.
 * sil_drawing_write_page: one page of it.
 * Given:    page         from 0
 *           format       a PDF holds all pages, SVG and DXF one
 * Returned: bytes, size  a new block to be freed with free(); not to be used on error
 * Status:   SIL_DONE; SIL_FAULT: a page that is not there, more pages than the format holds, or a
 *           defect; SIL_NO_MEMORY
 * Notes:    the same drawing gives the same bytes. SVG and DXF: mm, a layer a kind of line, by the
 *           same words; SVG has its true size, and data-string on what is of one string. DXF is
 *           AC1021 (text in UTF-8).
 * Reference: SVG 1.1 second edition; DXF reference, release AC1021
 */
sil_status sil_drawing_write(const sil_drawing *drawing, sil_format format, char **bytes,
                             size_t *size);
sil_status sil_drawing_write_page(const sil_drawing *drawing, int page, sil_format format,
                                  char **bytes, size_t *size);

/* sil_drawing_free: frees a drawing; NULL is no matter. */
void sil_drawing_free(sil_drawing *drawing);

/* sil_file_save: bytes to a file, whole or not at all.
 * Given:    path         "-" or /dev/stdout: standard output. A link is followed to what it names.
 *                        A device or a pipe is written straight; a regular file is replaced in one
 *                        step by a new one of the same permissions, on the disk before its name is
 *           bytes, size  what is to stand in it
 * Status:   SIL_DONE, or SIL_NOT_SAVED with errno: the old file is then as it was, or, where only
 *           the folder could not be put on the disk, the new one is whole in its place
 */
sil_status sil_file_save(const char *path, const void *bytes, size_t size);

#ifdef __cplusplus
}
#endif
#endif
