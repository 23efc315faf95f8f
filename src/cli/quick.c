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
    bool json;
    sil_unit unit;
} question;

typedef struct length_option {
    const char *name;
    double *value;
    double low, high; /* what is usual, mm: common practice, no source */
} length_option;

/* Past what is usual it is told; past twice that it is a slip, and no cut is told by it. */
static int check_usual(const char *command, const length_option *option)
{
    double value = *option->value;
    char low[32], high[32];
    if (!(value > option->high || value < option->low)) {
        return CLI_GO_ON;
    }
    sil_number_trimmed(low, sizeof low, option->low, 2);
    sil_number_trimmed(high, sizeof high, option->high, 2);
    double least = option->low > 0.0 ? option->low / 2.0 : 2.0 * option->low;
    if (value > 2.0 * option->high || value < least) {
        return cli_misused("%s: %s to %s mm is usual; a unit or a point astray?", option->name, low,
                           high);
    }
    fprintf(stderr, "sillet: warning: %s %s: %s to %s mm is usual\n", command, option->name, low,
            high);
    return CLI_GO_ON;
}

/* Reads the lengths an option each, and how the answer is to be told. */
static int read_question(const cli_arguments *a, const length_option *lengths, question *q)
{
    for (const length_option *option = lengths; option->name; option++) {
        const char *text = cli_given(a, option->name);
        if (text &&
            sil_quantity_read(text, strlen(text), SIL_LENGTH, SIL_MM, option->value) != SIL_DONE) {
            return cli_misused("%s: '%s' is no length; such as 2.6mm, 12thou or 5/64in",
                               option->name, text);
        }
        if (*option->value < 0.0) {
            return cli_misused("%s cannot be negative", option->name);
        }
    }
    for (const length_option *option = lengths; option->name; option++) {
        int code = check_usual(a->command->name, option);
        if (code != CLI_GO_ON) {
            return code;
        }
    }
    q->json = cli_given(a, "--json");
    q->unit = (sil_unit)cli_choice(a, "--units", SIL_MM);
    return CLI_GO_ON;
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
    double u = sil_rectangular(tool) / share;
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
    const length_option lengths[] = {{"--scale", &q.scale, 300, 950},
                                     {"--action", &q.now, 0.4, 4.5},
                                     {"--want", &q.want, 0.4, 4.5},
                                     {"--setback", &q.setback, 0, 12},
                                     {NULL, NULL, 0, 0}};
    cli_arguments arguments;
    int code = cli_read_arguments("saddle", argc, argv, &arguments);
    code = code == CLI_GO_ON ? read_question(&arguments, lengths, &q) : code;
    if (code != CLI_GO_ON) {
        return code;
    }
    double leverage = sil_fret_place(q.scale, 12) / (q.scale + q.setback);
    return answer(&q, "lower", (q.now - q.want) / leverage, ruler, leverage,
                  q.now < q.want ? "Raise the saddle" : "Lower the saddle",
                  " at that string, twice the change at the 12th fret.");
}

int cli_nut(int argc, char **argv)
{
    question q = {.scale = SIL_UNKNOWN, .now = SIL_UNKNOWN, .want = SIL_UNKNOWN};
    const length_option lengths[] = {{"--scale", &q.scale, 300, 950},
                                     {"--first", &q.now, 0, 1.5},
                                     {"--want", &q.want, 0.02, 1.5},
                                     {NULL, NULL, 0, 0}};
    static const sil_hold holds[] = {SIL_HOLD_3, SIL_HOLD_2, SIL_HOLD_OPEN};
    cli_arguments arguments;
    int code = cli_read_arguments("nut", argc, argv, &arguments);
    code = code == CLI_GO_ON ? read_question(&arguments, lengths, &q) : code;
    if (code != CLI_GO_ON) {
        return code;
    }
    sil_hold held = holds[cli_choice(&arguments, "--held", 0)];
    double first = sil_fret_place(q.scale, 1);
    double bearing = held == SIL_HOLD_OPEN ? q.scale : sil_fret_place(q.scale, (int)held);
    double share = 1.0 - first / bearing;
    char form[96];
    snprintf(form, sizeof form, " (the gap at the 1st fret was read %s).", sil_hold_words(held));
    return answer(&q, "deepen", (q.now - q.want) / share, feelers, share,
                  q.now < q.want ? "Raise the slot" : "File down the slot", form);
}
