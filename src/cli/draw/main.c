/* SPDX-License-Identifier: MIT */
/* sillet-draw: full-size drawings to cut from. It is a program of its own, run by sillet draw,
 * because its libraries take longer to load than a plan takes to make. */
#include <errno.h>
#include <sillet/drawing.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "../cli.h"

typedef struct options {
    bool measure; /* draw the measuring sheet, not the pack */
    const char *job, *out;
    const char *paper_name; /* one paper of the pack; NULL for all, or for the outlines */
    sil_draw_options order;
    bool unit_given, part_given, paper_given;
    sil_format format;
} options;

/* Takes the format from --as, otherwise from the end of the file's name. */
static int read_format(const cli_arguments *a, options *o)
{
    const char *dot = strrchr(o->out, '.');
    int format = cli_choice(a, "--as", -1);
    for (int k = 0; format < 0 && dot && k < SIL_FORMATS; k++) {
        format = strcmp(dot + 1, sil_format_word((sil_format)k)) == 0 ? k : -1;
    }
    if (format < 0) {
        return dot ? cli_misused(
                         "'%s' is not named as a file draw can write: .pdf, .svg, .dxf or .stl",
                         o->out)
                   : cli_misused("what is '%s' to be? say --as pdf, svg, dxf or stl", o->out);
    }
    o->format = (sil_format)format;
    return CLI_GO_ON;
}

/* Reports options that do not go together. */
static int check_options(const options *o)
{
    if (o->paper_name && o->format != SIL_SVG) {
        return o->format == SIL_PDF
                   ? cli_misused("--sheet gives one sheet of the pack as .svg; a .pdf is the pack, "
                                 "or --part's sheets of it")
                   : cli_misused("--sheet gives one sheet of the pack as .svg; a .%s holds the "
                                 "%s of --part",
                                 sil_format_word(o->format),
                                 o->format == SIL_STL ? "solids" : "outlines");
    }
    if (o->paper_name && o->part_given) {
        return cli_misused("--sheet and --part do not go together: a sheet of the pack, or the "
                           "outlines of a part");
    }
    if (!o->paper_name && o->format != SIL_PDF && o->paper_given) {
        return cli_misused("--paper is for sheets: a .pdf, or a .svg with --sheet; outlines have "
                           "their own size");
    }
    return CLI_GO_ON;
}

static int read_measure(int argc, char **argv, options *o)
{
    cli_arguments a;
    int code = cli_read_arguments("sheet", argc, argv, &a);
    if (code != CLI_GO_ON) {
        return code;
    }
    *o = (options){.measure = true,
                   .job = a.operands[0],
                   .out = cli_given(&a, "-o"),
                   .unit_given = cli_given(&a, "--units"),
                   .format = SIL_PDF};
    o->order.paper = (sil_paper)cli_choice(&a, "--paper", SIL_A4);
    o->order.unit = (sil_unit)cli_choice(&a, "--units", SIL_MM);
    return CLI_GO_ON;
}

static int read_options(int argc, char **argv, options *o)
{
    cli_arguments a;
    int code = cli_read_arguments("draw", argc, argv, &a);
    if (code != CLI_GO_ON) {
        return code;
    }
    *o = (options){.job = a.operands[0],
                   .out = cli_given(&a, "-o"),
                   .paper_name = cli_given(&a, "--sheet"),
                   .unit_given = cli_given(&a, "--units"),
                   .part_given = cli_given(&a, "--part"),
                   .paper_given = cli_given(&a, "--paper")};
    o->order.part = (sil_part)cli_choice(&a, "--part", SIL_PART_ALL);
    o->order.paper = (sil_paper)cli_choice(&a, "--paper", SIL_A4);
    o->order.unit = (sil_unit)cli_choice(&a, "--units", SIL_MM);
    o->order.decimal_comma = cli_choice(&a, "--decimal", 0) == 1;
    code = read_format(&a, o);
    return code == CLI_GO_ON ? check_options(o) : code;
}

static int told(sil_status status)
{
    switch (status) {
    case SIL_NO_FACE:
        return cli_failed("no lettering found: install the faces of fonts-osifont or "
                          "fonts-dejavu-core, or name a TrueType file in SILLET_FACE");
    case SIL_NO_SOLID:
        return cli_failed("no part can be made today, so no solid was written");
    case SIL_NO_MEMORY:
        return cli_failed("out of memory");
    default:
        return cli_failed("the drawing came out wrong and was not written: a defect of this "
                          "program");
    }
}

/* A file of solids has no words in it, so what is not in it is said here. */
static void warn(const options *o, const sil_drawing *drawing)
{
    char words[512];
    for (int i = 0; sil_drawing_warning(drawing, i, words, sizeof words); i++) {
        fprintf(stderr, "sillet: warning: %s\n", words);
    }
    for (int i = 0; o->format == SIL_STL && sil_drawing_missing(drawing, i, words, sizeof words);
         i++) {
        fprintf(stderr, "sillet: warning: %s\n", words);
    }
}

static int no_such_paper(const sil_drawing *drawing, const char *wanted)
{
    char all[1024] = "", name[32];
    for (int index = 0; sil_drawing_page_name(drawing, index, name, sizeof name); index++) {
        size_t length = strlen(all);
        snprintf(all + length, sizeof all - length, "%s%s", index > 0 ? ", " : "", name);
    }
    return cli_misused("this pack has no sheet '%s'; it has %s", wanted, all);
}

static int save(const options *o, const sil_drawing *drawing)
{
    char *bytes = NULL;
    size_t size = 0;
    int index = o->paper_name ? sil_drawing_find(drawing, o->paper_name) : 0;
    if (index < 0) {
        return no_such_paper(drawing, o->paper_name);
    }
    sil_status status = o->paper_name
                            ? sil_drawing_write_page(drawing, index, o->format, &bytes, &size)
                            : sil_drawing_write(drawing, o->format, &bytes, &size);
    if (status < SIL_DONE) {
        return told(status);
    }
    status = sil_file_save(o->out, bytes, size);
    int error = errno;
    free(bytes);
    return status == SIL_DONE ? CLI_DONE
                              : cli_failed("%s: cannot write: %s", o->out, strerror(error));
}

static int draw(options *o, const sil_job *job, bool profile)
{
    sil_plan *plan;
    sil_drawing *drawing = NULL;
    if (!o->unit_given) {
        o->order.unit = job->units;
    }
    bool papers = o->paper_name || o->format == SIL_PDF;
    sil_status status = sil_plan_make(job, &plan);
    if (status == SIL_DONE) {
        status = o->measure ? sil_drawing_measure(plan, &o->order, profile, &drawing)
                 : papers   ? sil_drawing_make(plan, &o->order, &drawing)
                            : sil_outlines_make(plan, &o->order, &drawing);
    }
    int code;
    if (status >= SIL_DONE) {
        warn(o, drawing);
        code = save(o, drawing);
    } else {
        code = told(status);
    }
    sil_drawing_free(drawing);
    sil_plan_free(plan);
    return code;
}

/* Whether a name is that of a sheet: a file that exists, or a name written as a path. Any other
 * name is a profile's. */
static bool is_file(const char *name)
{
    struct stat about;
    size_t length = strlen(name);
    bool yaml = length > 5 && strcmp(name + length - 5, ".yaml") == 0;
    return strcmp(name, "-") == 0 || yaml || strchr(name, '/') || stat(name, &about) == 0;
}

static int run(int argc, char **argv)
{
    options o;
    int code =
        strcmp(argv[0], "sheet") == 0 ? read_measure(argc, argv, &o) : read_options(argc, argv, &o);
    if (code != CLI_GO_ON) {
        return code;
    }
    sil_sheet *sheet = NULL;
    bool profile = o.measure && !is_file(o.job);
    code = profile ? cli_read_profile(o.job, &sheet) : cli_read_sheet(o.job, &sheet);
    if (code == CLI_DONE) {
        code = draw(&o, sil_sheet_job(sheet), profile);
    }
    sil_sheet_free(sheet);
    return code;
}

int main(int argc, char **argv)
{
    return cli_close_output(run(argc, argv));
}
