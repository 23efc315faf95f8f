/* SPDX-License-Identifier: MIT */
/* Writes a drawing in one of the file formats. */
#include <math.h>
#include <stdlib.h>

#include "../board/paper.h"
#include "out.h"
#include "stl.h"
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
    case SIL_STL:
        return (format_row){"stl", "model/stl", NULL};
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

enum { CHORDS = 4096 };

/* Adds the ends of the chords of an arc, each within 0.002 mm of it, but not the last one. */
static int add_chords(draw_corner corner, draw_corner next, draw_point *out, int room)
{
    const double off = 0.002;
    part_arc arc = part_arc_to(corner, next);
    int pieces = (int)fmin(room, ceil(fabs(arc.turn) * sqrt(arc.radius / (8 * off))));
    for (int i = 1; i < pieces; i++) {
        double at = arc.from + arc.turn * i / pieces;
        out[i - 1] = (draw_point){arc.x + arc.radius * cos(at), arc.y + arc.radius * sin(at)};
    }
    return pieces > 1 ? pieces - 1 : 0;
}

static void write_outline(const write_format *writer, void *self, const draw_shape *shape,
                          const draw_corner *corners)
{
    draw_point points[CHORDS];
    draw_shape path = *shape;
    if (writer->outline != NULL) {
        writer->outline(self, shape, corners);
        return;
    }
    path.kind = DRAW_SHAPE_PATH;
    path.count = 0;
    for (int i = 0; i < shape->count; i++) {
        int left = shape->count - i; /* room that the other corners need */
        points[path.count++] = (draw_point){corners[i].x, corners[i].y};
        if (corners[i].bulge != 0) {
            path.count += add_chords(corners[i], corners[(i + 1) % shape->count],
                                     points + path.count, CHORDS - path.count - left);
        }
    }
    writer->path(self, &path, points);
}

static void write_shape(const write_format *writer, void *self, const draw_shapes *list,
                        const draw_shape *s)
{
    switch (s->kind) {
    case DRAW_SHAPE_PATH:
        writer->path(self, s, list->points + s->first);
        break;
    case DRAW_SHAPE_OUTLINE:
        write_outline(writer, self, s, list->corners + s->first);
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
    if (writer == NULL) {
        return SIL_FAULT;
    }
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

/* Writes the solids of the parts that have one. */
static sil_status write_solids(const sil_drawing *drawing, char **bytes, size_t *size)
{
    const brief *b = drawing->draft.brief;
    text out = {0};
    part_solid *solid = malloc(sizeof *solid);
    bool left = draw_left_handed(&drawing->draft);
    bool nut = solid != NULL && drawing->solid[0] && part_nut_solid(&b->nut_part, solid);
    stl_file file = stl_begin(&out);
    if (nut) {
        stl_add(&file, solid, left, 0);
    }
    bool saddle = solid != NULL && drawing->solid[1] && part_saddle_solid(&b->saddle_part, solid);
    if (saddle) {
        const double apart = 10; /* mm */
        stl_add(&file, solid, left, nut ? -apart - solid->thickness : 0);
    }
    stl_end(&file);
    sil_status status = solid == NULL ? SIL_NO_MEMORY : nut || saddle ? SIL_DONE : SIL_NO_SOLID;
    free(solid);
    if (status != SIL_DONE) {
        text_free(&out);
        return status;
    }
    return write_take(&out, bytes, size);
}

sil_status sil_drawing_write(const sil_drawing *drawing, sil_format format, char **bytes,
                             size_t *size)
{
    if (format == SIL_STL) {
        return drawing->outlines ? write_solids(drawing, bytes, size) : SIL_FAULT;
    }
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
    if (format == SIL_STL) {
        return sil_drawing_write(drawing, format, bytes, size);
    }
    return write_papers(drawing, page, 1, format, bytes, size);
}
