/* SPDX-License-Identifier: MIT */
/* sillet-draw: the full-size drawings to cut by. A program of its own, run by sillet draw: its
 * libraries cost more to load than a plan costs to make. */
#include <sillet/drawing.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../cli.h"

typedef struct options {
    const char *sheet, *out, *as;
    sil_draw_order order;
    bool unit_given;
} options;

typedef struct word_row {
    const char *word;
    int value;
} word_row;

static const word_row parts[] = {
    {"all", SIL_PART_ALL}, {"nut", SIL_PART_NUT}, {"saddle", SIL_PART_SADDLE}, {NULL, 0}};
static const word_row papers[] = {
    {"A4", SIL_A4}, {"A3", SIL_A3}, {"Letter", SIL_LETTER}, {NULL, 0}};
static const word_row formats[] = {{"pdf", SIL_PDF}, {NULL, 0}};

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
    if (strcmp(name, "-o") == 0 || strcmp(name, "--as") == 0) {
        *(name[1] == 'o' ? &o->out : &o->as) = value;
        return value ? CLI_DONE : cli_misused("%s wants a value", name);
    }
    if (strcmp(name, "--part") == 0) {
        if (!read_word(parts, value, &choice)) {
            return cli_misused("--part takes nut, saddle or all");
        }
        o->order.part = (sil_part)choice;
    } else if (strcmp(name, "--paper") == 0) {
        if (!read_word(papers, value, &choice)) {
            return cli_misused("--paper takes A4, A3 or Letter");
        }
        o->order.paper = (sil_paper)choice;
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
static int read_format(const options *o, sil_format *format)
{
    const char *dot = strrchr(o->out, '.');
    const char *word = o->as ? o->as : dot ? dot + 1 : NULL;
    int choice;
    if (!read_word(formats, word, &choice)) {
        return o->as ? cli_misused("--as takes pdf")
               : dot ? cli_misused("'%s' is not named as a file draw can write: .pdf", o->out)
                     : cli_misused("what is '%s' to be? say --as pdf", o->out);
    }
    *format = (sil_format)choice;
    return CLI_DONE;
}

static int read_options(int argc, char **argv, options *o, sil_format *format)
{
    for (int i = 1; i < argc; i++) {
        const char *word = argv[i];
        if (word[0] == '-' && word[1] != '\0') {
            int code = read_option(o, word, cli_value(argc, argv, &i));
            if (code != CLI_DONE) {
                return code;
            }
        } else if (o->sheet) {
            return cli_misused("draw takes one sheet; '%s' is one more", word);
        } else {
            o->sheet = word;
        }
    }
    if (!o->sheet || !o->out) {
        return cli_misused("draw wants a sheet and a file: sillet draw SHEET -o OUT.pdf");
    }
    return read_format(o, format);
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

static int save(const options *o, sil_format format, const sil_drawing *drawing)
{
    char *bytes = NULL;
    size_t size = 0;
    int status = sil_drawing_write(drawing, format, &bytes, &size);
    if (status < SIL_DRAWING_DONE) {
        return told(status);
    }
    int error = sil_file_save(o->out, bytes, size);
    free(bytes);
    return error == 0 ? CLI_DONE : cli_failed("%s: cannot write: %s", o->out, strerror(error));
}

static int draw(options *o, sil_format format, const sil_job *job)
{
    sil_plan plan;
    sil_drawing *drawing;
    sil_plan_make(job, &plan);
    if (!o->unit_given) {
        o->order.unit = job->units;
    }
    int status = sil_drawing_make(&plan, &o->order, &drawing);
    if (status < SIL_DRAWING_DONE) {
        return told(status);
    }
    warn(drawing);
    int code = save(o, format, drawing);
    sil_drawing_free(drawing);
    return code;
}

static int run(int argc, char **argv)
{
    options o = {0};
    sil_format format = SIL_PDF;
    int code = read_options(argc, argv, &o, &format);
    if (code != CLI_DONE) {
        return code;
    }
    sil_sheet *sheet = NULL;
    code = cli_read_sheet(o.sheet, &sheet);
    if (code == CLI_DONE) {
        code = draw(&o, format, sil_sheet_job(sheet));
    }
    sil_sheet_free(sheet);
    return code;
}

int main(int argc, char **argv)
{
    return cli_close_output(run(argc, argv));
}
