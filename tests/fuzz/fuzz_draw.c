/* SPDX-License-Identifier: MIT */
/* Feeds random bytes to the drawings and their writers. A sheet that is read without error is drawn
 * as a measuring sheet, as a pack and as outlines, in every format, with options chosen by its
 * bytes. The sheet may have warnings, but no drawing may fail. */
#include <stdint.h>
#include <stdlib.h>

#include <sillet/sillet.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

static void write_all(sil_status status, sil_drawing *drawing, bool paged)
{
    if (status == SIL_FAULT) {
        abort();
    }
    for (int format = SIL_PDF; drawing && format < SIL_FORMATS; format++) {
        char *file = NULL;
        size_t length = 0;
        int page = paged ? sil_drawing_pages(drawing) - 1 : 0;
        sil_status wrong =
            format == SIL_PDF || !paged
                ? sil_drawing_write(drawing, (sil_format)format, &file, &length)
                : sil_drawing_write_page(drawing, page, (sil_format)format, &file, &length);
        bool may_not = wrong == SIL_NO_MEMORY || wrong == SIL_NO_SOLID || format == SIL_DXF ||
                       (format == SIL_STL && paged);
        if (wrong < 0 && !may_not) {
            abort();
        }
        free(file);
    }
    sil_drawing_free(drawing);
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    sil_plan *plan;
    sil_sheet *sheet;
    sil_drawing *drawing = NULL;
    setenv("SILLET_PROFILES", "profiles", 0);
    sil_sheet_read_bytes((const char *)bytes, size, "sheet", NULL, &sheet);
    const sil_job *job = sil_sheet_job(sheet);
    if (job) {
        unsigned chosen = size ? bytes[size / 2] : 0;
        sil_draw_options order = {.part = (sil_part)(chosen % 3),
                                  .paper = (sil_paper)(chosen / 3 % 3),
                                  .unit = (sil_unit)(chosen / 9 % 2),
                                  .decimal_comma = chosen / 18 % 2};
        if (sil_plan_make(job, &plan) != SIL_DONE) {
            abort();
        }
        sil_status status = sil_drawing_make(plan, &order, &drawing);
        write_all(status, drawing, true);
        drawing = NULL;
        status = sil_outlines_make(plan, &order, &drawing);
        write_all(status, drawing, false);
        drawing = NULL;
        status = sil_drawing_measure(plan, &order, false, &drawing);
        write_all(status, drawing, true);
        sil_plan_free(plan);
    }
    sil_sheet_free(sheet);
    return 0;
}
