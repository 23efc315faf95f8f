/* SPDX-License-Identifier: MIT */
/* A drawing through a writer. */
#include <math.h>
#include <stdlib.h>

#include "../board/paper.h"
#include "writer.h"

static const write_format *const writers[] = {
    [SIL_PDF] = &write_pdf, [SIL_SVG] = &write_svg, [SIL_DXF] = &write_dxf};

double write_pen_width(const write_file_about *about, const draw_look *look)
{
    return about->widest > 0 ? fmin(about->widest, look->width) : look->width;
}

static void write_shape(const write_format *writer, void *self, const draw_shapes *list,
                        const draw_shape *s)
{
    switch (s->kind) {
    case DRAW_SHAPE_PATH:
        writer->path(self, s, list->points + s->first);
        break;
    case DRAW_SHAPE_ARC:
        writer->arc(self, s);
        break;
    case DRAW_SHAPE_TEXT:
        writer->text(self, s, list->bytes + s->first);
        break;
    }
}

/* Layer by layer, so that a pen is taken up once a page. */
static void write_page(const write_format *writer, void *self, const draw_shapes *list)
{
    for (int layer = 0; layer < DRAW_LAYERS; layer++) {
        for (int i = 0; i < list->count; i++) {
            if (list->shapes[i].layer == (draw_layer)layer) {
                write_shape(writer, self, list, &list->shapes[i]);
            }
        }
    }
}

static bool read_digits(const char *text, int count, int *value)
{
    *value = 0;
    for (int i = 0; i < count; i++) {
        if (text[i] < '0' || text[i] > '9') {
            return false;
        }
        *value = 10 * *value + text[i] - '0';
    }
    return true;
}

/* A date as the job writes it, 2026-03-14; anything else is no date to a file. */
static void read_date(const char *text, write_file_about *about)
{
    int year, month, day;
    if (text != NULL && read_digits(text, 4, &year) && text[4] == '-' &&
        read_digits(text + 5, 2, &month) && text[7] == '-' && read_digits(text + 8, 2, &day) &&
        text[10] == '\0' && month >= 1 && month <= 12 && day >= 1 && day <= 31) {
        about->year = year;
        about->month = month;
        about->day = day;
    }
}

static sil_status write_pages(const sil_drawing *drawing, int first, int count, sil_format format,
                              char **bytes, size_t *size)
{
    const sil_about *job = &drawing->draft.plan->job->about;
    const write_format *writer = writers[format];
    write_file_about about = {.title = job->title != NULL ? job->title : "Setup",
                              .author = job->by,
                              .subject = "Working drawing: what to do at the bench, and full-size "
                                         "views to cut by",
                              .widest = drawing->widest};
    read_date(draw_paper_date(&drawing->draft), &about);
    void *self = writer->open(drawing->draft.letters, &about);
    if (self == NULL) {
        return SIL_NO_MEMORY;
    }
    for (int i = first; i < first + count; i++) {
        writer->page(self, drawing->paper);
        write_page(writer, self, drawing->pages[i].shapes);
    }
    sil_status status = writer->close(self, bytes, size);
    if (status == SIL_DONE && draw_letters_fault(drawing->draft.letters) != SIL_DONE) {
        free(*bytes);
        *bytes = NULL;
        status = SIL_NO_MEMORY;
    }
    return status;
}

sil_status sil_drawing_write(const sil_drawing *drawing, sil_format format, char **bytes,
                             size_t *size)
{
    if (format != SIL_PDF && drawing->page_count != 1) {
        return SIL_FAULT;
    }
    return write_pages(drawing, 0, drawing->page_count, format, bytes, size);
}

sil_status sil_drawing_write_page(const sil_drawing *drawing, int page, sil_format format,
                                  char **bytes, size_t *size)
{
    if (page < 0 || page >= drawing->page_count) {
        return SIL_FAULT;
    }
    return write_pages(drawing, page, 1, format, bytes, size);
}
