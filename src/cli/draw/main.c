/* SPDX-License-Identifier: MIT */
/* sillet-draw: the full-size drawings to cut by. A program of its own, run by sillet draw: its
 * libraries cost more to load than a plan costs to make. */
#include <sillet/drawing.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../cli.h"

typedef struct options {
    const char *job, *out, *as;
    const char *sheet; /* one of the pack; NULL for all, or for the outlines */
    sil_draw_order order;
    bool unit_given, part_given, paper_given;
    sil_format format;
} options;

typedef struct word_row {
    const char *word;
    int value;
} word_row;

static const word_row parts[] = {
    {"all", SIL_PART_ALL}, {"nut", SIL_PART_NUT}, {"saddle", SIL_PART_SADDLE}, {NULL, 0}};
static const word_row papers[] = {
    {"A4", SIL_A4}, {"A3", SIL_A3}, {"Letter", SIL_LETTER}, {NULL, 0}};
static const word_row formats[] = {{"pdf", SIL_PDF}, {"svg", SIL_SVG}, {"dxf", SIL_DXF}, {NULL, 0}};

static bool read_word(const word_row *rows, const char *word, int *value)
{
    for (; word && rows->word; rows++) {
        if (strcmp(word, rows->word) == 0) {
            *value = rows->value;
            return true;
        }
    }
    return false;
}

static int read_option(options *o, const char *name, const char *value)
{
    int choice;
    const char **text = strcmp(name, "-o") == 0        ? &o->out
                        : strcmp(name, "--as") == 0    ? &o->as
                        : strcmp(name, "--sheet") == 0 ? &o->sheet
                                                       : NULL;
    if (text) {
        *text = value;
        return value ? CLI_DONE : cli_misused("%s wants a value", name);
    }
    if (strcmp(name, "--part") == 0) {
        if (!read_word(parts, value, &choice)) {
            return cli_misused("--part takes nut, saddle or all");
        }
        o->order.part = (sil_part)choice;
        o->part_given = true;
    } else if (strcmp(name, "--paper") == 0) {
        if (!read_word(papers, value, &choice)) {
            return cli_misused("--paper takes A4, A3 or Letter");
        }
        o->order.paper = (sil_paper)choice;
        o->paper_given = true;
    } else if (strcmp(name, "--units") == 0) {
        if (!value || !cli_unit(value, &o->order.unit)) {
            return cli_misused("--units takes mm or in");
        }
        o->unit_given = true;
    } else {
        return cli_misused("draw knows no option '%s'", name);
    }
    return CLI_DONE;
}

/* The format follows from --as, else from the end of the file's name. */
static int read_format(options *o)
{
    const char *dot = strrchr(o->out, '.');
    const char *word = o->as ? o->as : dot ? dot + 1 : NULL;
    int choice;
    if (!read_word(formats, word, &choice)) {
        return o->as ? cli_misused("--as takes pdf, svg or dxf")
               : dot ? cli_misused("'%s' is not named as a file draw can write: .pdf, .svg or .dxf",
                                   o->out)
                     : cli_misused("what is '%s' to be? say --as pdf, svg or dxf", o->out);
    }
    o->format = (sil_format)choice;
    return CLI_DONE;
}

/* What does not go together. */
static int check_options(const options *o)
{
    if (o->sheet && o->format != SIL_SVG) {
        return cli_misused("--sheet gives one sheet of the pack as .svg; %s",
                           o->format == SIL_PDF ? "a .pdf is the pack, or --part's sheets of it"
                                                : "a .dxf holds the outlines of --part");
    }
    if (o->sheet && o->part_given) {
        return cli_misused("--sheet and --part do not go together: a sheet of the pack, or the "
                           "outlines of a part");
    }
    if (!o->sheet && o->format != SIL_PDF && o->paper_given) {
        return cli_misused("--paper is for sheets: a .pdf, or a .svg with --sheet; outlines have "
                           "their own size");
    }
    return CLI_DONE;
}

static int read_options(int argc, char **argv, options *o)
{
    for (int i = 1; i < argc; i++) {
        const char *word = argv[i];
        if (word[0] == '-' && word[1] != '\0') {
            int code = read_option(o, word, cli_value(argc, argv, &i));
            if (code != CLI_DONE) {
                return code;
            }
        } else if (o->job) {
            return cli_misused("draw takes one sheet; '%s' is one more", word);
        } else {
            o->job = word;
        }
    }
    if (!o->job || !o->out) {
        return cli_misused("draw wants a sheet and a file: sillet draw SHEET -o OUT.pdf");
    }
    int code = read_format(o);
    return code == CLI_DONE ? check_options(o) : code;
}

static int told(int status)
{
    switch (status) {
    case SIL_DRAWING_NO_FACE:
        return cli_failed("no lettering found: install the faces of fonts-osifont or "
                          "fonts-dejavu-core, or name a TrueType file in SILLET_FACE");
    case SIL_DRAWING_NO_MEMORY:
        return cli_failed("out of memory");
    default:
        return cli_failed("the drawing came out wrong and was not written: a defect of this "
                          "program");
    }
}

static void warn(const sil_drawing *drawing)
{
    char words[512];
    for (int i = 0; sil_drawing_warning(drawing, i, words, sizeof words); i++) {
        fprintf(stderr, "sillet: warning: %s\n", words);
    }
}

/* The page of a name; -1 where there is none. */
static int find_page(const sil_drawing *drawing, const char *sheet)
{
    char name[32];
    for (int page = 0; sil_drawing_sheet(drawing, page, name, sizeof name); page++) {
        if (strcmp(name, sheet) == 0) {
            return page;
        }
    }
    return -1;
}

static int no_such_sheet(const sil_drawing *drawing, const char *sheet)
{
    char all[1024] = "", name[32];
    for (int page = 0; sil_drawing_sheet(drawing, page, name, sizeof name); page++) {
        size_t length = strlen(all);
        snprintf(all + length, sizeof all - length, "%s%s", page > 0 ? ", " : "", name);
    }
    return cli_misused("this pack has no sheet '%s'; it has %s", sheet, all);
}

static int save(const options *o, const sil_drawing *drawing)
{
    char *bytes = NULL;
    size_t size = 0;
    int page = o->sheet ? find_page(drawing, o->sheet) : 0;
    if (page < 0) {
        return no_such_sheet(drawing, o->sheet);
    }
    int status = o->sheet ? sil_drawing_write_page(drawing, page, o->format, &bytes, &size)
                          : sil_drawing_write(drawing, o->format, &bytes, &size);
    if (status < SIL_DRAWING_DONE) {
        return told(status);
    }
    int error = sil_file_save(o->out, bytes, size);
    free(bytes);
    return error == 0 ? CLI_DONE : cli_failed("%s: cannot write: %s", o->out, strerror(error));
}

static int draw(options *o, const sil_job *job)
{
    sil_plan plan;
    sil_drawing *drawing;
    sil_plan_make(job, &plan);
    if (!o->unit_given) {
        o->order.unit = job->units;
    }
    bool sheets = o->sheet || o->format == SIL_PDF;
    int status = sheets ? sil_drawing_make(&plan, &o->order, &drawing)
                        : sil_outlines_make(&plan, &o->order, &drawing);
    if (status < SIL_DRAWING_DONE) {
        return told(status);
    }
    warn(drawing);
    int code = save(o, drawing);
    sil_drawing_free(drawing);
    return code;
}

static int run(int argc, char **argv)
{
    options o = {0};
    int code = read_options(argc, argv, &o);
    if (code != CLI_DONE) {
        return code;
    }
    sil_sheet *sheet = NULL;
    code = cli_read_sheet(o.job, &sheet);
    if (code == CLI_DONE) {
        code = draw(&o, sil_sheet_job(sheet));
    }
    sil_sheet_free(sheet);
    return code;
}

int main(int argc, char **argv)
{
    return cli_close_output(run(argc, argv));
}
