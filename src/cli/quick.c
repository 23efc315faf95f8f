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
    char missing[128] = "";
    for (const length_option *option = lengths; option->name; option++) {
        if (!sil_known(*option->value)) {
            size_t used = strlen(missing);
            snprintf(missing + used, sizeof missing - used, "%s%s", used ? ", " : "", option->name);
        }
        if (*option->value < 0.0) {
            return cli_misused("%s cannot be negative", option->name);
        }
    }
    if (missing[0]) {
        return cli_misused("%s also wants %s", argv[0], missing);
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

/* What to do about how sure a cut is: how much of it to take so that the aim is not passed. */
static void print_advice(const question *q, double value, double tool, double u)
{
    char read[64], sure[64], take[64], line[256];
    double first = sil_first_pass(value, value, u, SIL_GUARD_ONE);
    snprintf(line, sizeof line,
             "Read to \xC2\xB1%s, it is sure to %s: ", length(q, tool, SIL_NEAREST, read),
             length(q, 2.0 * u, SIL_UP, sure));
    cli_print(line);
    if (first >= 0.02) { /* less is inside the feel of a file */
        snprintf(line, sizeof line, "take %s first, tune, and read again.\n",
                 length(q, first, SIL_DOWN, take));
        cli_print(line);
    } else {
        cli_print(value > 0.0 ? "too coarse for so small a cut; read it finer first.\n"
                              : "read again before anything is cut.\n");
    }
}

/* before, after: the sentence around the amount. */
static int answer(const question *q, const char *cut, double value, double tool, double share,
                  const char *before, const char *after)
{
    double u = tool / sqrt(3.0) / share;
    char amount[64], line[256];
    if (q->json) {
        print_json(cut, value, u);
        return CLI_DONE;
    }
    snprintf(line, sizeof line, "%s by %s%s\n", before, length(q, fabs(value), SIL_DOWN, amount),
             after);
    cli_print(line);
    print_advice(q, value, tool, u);
    return CLI_DONE;
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
    return answer(&q, "lower", (q.now - q.want) / leverage, ruler, leverage,
                  q.now < q.want ? "Raise the saddle" : "Lower the saddle",
                  " at that string, twice the change at the 12th fret.");
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
    char form[96];
    snprintf(form, sizeof form, " (the gap at the 1st fret was read %s).", sil_hold_words(q.held));
    return answer(&q, "deepen", (q.now - q.want) / share, feelers, share,
                  q.now < q.want ? "Raise the slot" : "File down the slot", form);
}
