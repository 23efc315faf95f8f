/* SPDX-License-Identifier: MIT */
/* Writes a drawing in one of the file formats. */
#include <stdlib.h>

#include "../board/paper.h"
#include "writer.h"

/* A file format: its word, which is also the ending of its files, and what writes it. */
typedef struct format_row {
    const char *word, *media;
    const write_format *writer;
} format_row;

static format_row row_of(sil_format format)
{
    switch (format) {
    case SIL_PDF:
        return (format_row){"pdf", "application/pdf", &write_pdf};
    case SIL_SVG:
        return (format_row){"svg", "image/svg+xml", &write_svg};
    case SIL_DXF:
        return (format_row){"dxf", "image/vnd.dxf", &write_dxf};
    case SIL_FORMATS:
        break;
    }
    return (format_row){NULL, NULL, NULL};
}

const char *sil_format_word(sil_format format)
{
    return row_of(format).word;
}

const char *sil_format_media(sil_format format)
{
    return row_of(format).media;
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

/* Writes the shapes layer by layer, so that a plotter takes up each pen once per paper. */
static void write_paper(const write_format *writer, void *self, const draw_shapes *list)
{
    for (int layer = 0; layer < DRAW_LAYERS; layer++) {
        for (int i = 0; i < list->count; i++) {
            if (list->shapes[i].layer == (draw_layer)layer) {
                write_shape(writer, self, list, &list->shapes[i]);
            }
        }
    }
}

static bool read_digits(const char *words, int count, int *value)
{
    *value = 0;
    for (int i = 0; i < count; i++) {
        if (words[i] < '0' || words[i] > '9') {
            return false;
        }
        *value = 10 * *value + words[i] - '0';
    }
    return true;
}

/* Reads a date as the job writes it, 2026-03-14. Anything else leaves the file without a date. */
static void read_date(const char *words, write_file_about *about)
{
    int year, month, day;
    if (words != NULL && read_digits(words, 4, &year) && words[4] == '-' &&
        read_digits(words + 5, 2, &month) && words[7] == '-' && read_digits(words + 8, 2, &day) &&
        words[10] == '\0' && month >= 1 && month <= 12 && day >= 1 && day <= 31) {
        about->year = year;
        about->month = month;
        about->day = day;
    }
}

static sil_status write_papers(const sil_drawing *drawing, int first, int count, sil_format format,
                               char **bytes, size_t *size)
{
    const sil_about *job = &drawing->draft.plan->job->about;
    const write_format *writer = row_of(format).writer;
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
        about.hairlines = drawing->papers[i].hairlines;
        writer->paper(self, drawing->size);
        write_paper(writer, self, drawing->papers[i].shapes);
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
    if (format != SIL_PDF && drawing->paper_count != 1) {
        return SIL_FAULT;
    }
    return write_papers(drawing, 0, drawing->paper_count, format, bytes, size);
}

sil_status sil_drawing_write_page(const sil_drawing *drawing, int page, sil_format format,
                                  char **bytes, size_t *size)
{
    if (page < 0 || page >= drawing->paper_count) {
        return SIL_FAULT;
    }
    return write_papers(drawing, page, 1, format, bytes, size);
}
