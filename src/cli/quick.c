/* SPDX-License-Identifier: MIT */
/* sillet saddle, sillet nut: one string, one question, an answer to act on. No sheet. */
#include <stdio.h>
#include <string.h>

#include "cli.h"

/* What a tool reads to unless a sheet says otherwise, mm: a ruler at the 12th fret, feelers at the
 * 1st. Common practice, no source. */
static const double ruler = 0.1;
static const double feelers = 0.02;

typedef struct question {
    double scale, setback, now, want;
    sil_hold held;
    bool json;
    sil_unit unit;
} question;

typedef struct length_option {
    const char *name;
    double *value;
} length_option;

static int read_length(const char *name, const char *text, double *value)
{
    if (!text) {
        return cli_misused("%s wants a length behind it, such as 2.6mm or 5/64in", name);
    }
    int status = sil_quantity_read(text, strlen(text), SIL_LENGTH, SIL_MM, value);
    return status == SIL_QUANTITY_READ
               ? CLI_DONE
               : cli_misused("%s: '%s' is no length; such as 2.6mm, 12thou or 5/64in", name, text);
}

static int read_held(const char *text, sil_hold *held)
{
    static const struct {
        const char *word;
        sil_hold hold;
    } holds[] = {{"3", SIL_HOLD_3}, {"2", SIL_HOLD_2}, {"open", SIL_HOLD_OPEN}};
    for (size_t k = 0; text && k < sizeof holds / sizeof *holds; k++) {
        if (strcmp(text, holds[k].word) == 0) {
            *held = holds[k].hold;
            return CLI_DONE;
        }
    }
    return cli_misused("--held takes 3, 2 or open: where the string lies while it is read");
}

static int read_question(int argc, char **argv, const length_option *lengths, bool asks_held,
                         question *q)
{
    for (int i = 1; i < argc; i++) {
        const length_option *option = lengths;
        while (option->name && strcmp(argv[i], option->name) != 0) {
            option++;
        }
        int code = CLI_DONE;
        if (option->name) {
            code = read_length(option->name, cli_value(argc, argv, &i), option->value);
        } else if (strcmp(argv[i], "--json") == 0) {
            q->json = true;
        } else if (strcmp(argv[i], "--units") == 0) {
            const char *word = cli_value(argc, argv, &i);
            code =
                word && cli_unit(word, &q->unit) ? CLI_DONE : cli_misused("--units takes mm or in");
        } else if (asks_held && strcmp(argv[i], "--held") == 0) {
            code = read_held(cli_value(argc, argv, &i), &q->held);
        } else {
            code = cli_misused("%s knows no option '%s'", argv[0], argv[i]);
        }
        if (code != CLI_DONE) {
            return code;
        }
    }
    for (const length_option *option = lengths; option->name; option++) {
        if (!sil_known(*option->value)) {
            return cli_misused("%s also wants %s", argv[0], option->name);
        }
        if (*option->value < 0.0) {
            return cli_misused("%s cannot be negative", option->name);
        }
    }
    return q->scale > 0.0 ? CLI_DONE : cli_misused("--scale must be over 0");
}

static void print_json(const char *cut, double value, double u)
{
    char figure[SIL_NUMBER_FULL_MAX];
    char spread[SIL_NUMBER_FULL_MAX];
    sil_number_write_full(figure, value);
    sil_number_write_full(spread, u);
    char line[256];
    snprintf(line, sizeof line, "{\"%s\":%s,\"%s_u\":%s}\n", cut, figure, cut, spread);
    cli_print(line);
}

/* "0.80 mm" */
static const char *length(const question *q, double mm, sil_rounding way, char cell[64])
{
    size_t used = sil_figure_write(cell, 64, mm, q->unit, way);
    snprintf(cell + used, 64 - used, q->unit == SIL_MM ? " mm" : " in");
    return cell;
}

int cli_saddle(int argc, char **argv)
{
    question q = {.scale = SIL_UNKNOWN, .now = SIL_UNKNOWN, .want = SIL_UNKNOWN};
    const length_option lengths[] = {{"--scale", &q.scale},
                                     {"--action", &q.now},
                                     {"--want", &q.want},
                                     {"--setback", &q.setback},
                                     {NULL, NULL}};
    int code = read_question(argc, argv, lengths, false, &q);
    if (code != CLI_DONE) {
        return code;
    }
    double leverage = sil_fret_place(q.scale, 12) / (q.scale + q.setback);
    double lower = (q.now - q.want) / leverage;
    double u = ruler / sqrt(3.0) / leverage;
    if (q.json) {
        print_json("lower", lower, u);
        return CLI_DONE;
    }
    char cell[3][64];
    char line[512];
    snprintf(line, sizeof line,
             "%s the saddle by %s at that string, twice the change at the 12th fret.\n"
             "Read by a ruler to %s, that is sure to %s: take less first, tune, and read again.\n",
             lower < 0.0 ? "Raise" : "Lower", length(&q, fabs(lower), SIL_DOWN, cell[0]),
             length(&q, ruler, SIL_NEAREST, cell[1]), length(&q, 2.0 * u, SIL_UP, cell[2]));
    cli_print(line);
    return CLI_DONE;
}

int cli_nut(int argc, char **argv)
{
    question q = {
        .scale = SIL_UNKNOWN, .now = SIL_UNKNOWN, .want = SIL_UNKNOWN, .held = SIL_HOLD_3};
    const length_option lengths[] = {
        {"--scale", &q.scale}, {"--first", &q.now}, {"--want", &q.want}, {NULL, NULL}};
    int code = read_question(argc, argv, lengths, true, &q);
    if (code != CLI_DONE) {
        return code;
    }
    double first = sil_fret_place(q.scale, 1);
    double bearing = q.held == SIL_HOLD_OPEN ? q.scale : sil_fret_place(q.scale, (int)q.held);
    double share = 1.0 - first / bearing;
    double deepen = (q.now - q.want) / share;
    double u = feelers / sqrt(3.0) / share;
    if (q.json) {
        print_json("deepen", deepen, u);
        return CLI_DONE;
    }
    char cell[3][64];
    char line[512];
    snprintf(line, sizeof line,
             "%s the slot by %s (the gap at the 1st fret was read %s).\n"
             "Read by feelers to %s, that is sure to %s: take less first, and read again.\n",
             deepen < 0.0 ? "Raise" : "File down", length(&q, fabs(deepen), SIL_DOWN, cell[0]),
             sil_hold_words(q.held), length(&q, feelers, SIL_NEAREST, cell[1]),
             length(&q, 2.0 * u, SIL_UP, cell[2]));
    cli_print(line);
    return CLI_DONE;
}
