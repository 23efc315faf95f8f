/* SPDX-License-Identifier: MIT */
/* sillet saddle, sillet nut and sillet tune: a quick answer for one string, without a sheet. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../brief/quick.h"
#include "../json/json.h"
#include "cli.h"

typedef struct question {
    double scale, setback, now, want;
    int fraction; /* denominator, where `now` is in fractions of an inch */
    bool json;
    sil_unit unit;
} question;

typedef struct length_option {
    const char *name;
    double *value;
    double low, high; /* the usual range, mm: common practice, no source */
} length_option;

/* Warns if a length is outside its usual range. If it is far outside, it is probably a typing
 * error and refused. */
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

/* Reads the lengths, one from each option, and the form of the answer. */
static int read_question(const cli_arguments *a, const length_option *lengths, question *q)
{
    for (const length_option *option = lengths; option->name; option++) {
        const char *given = cli_given(a, option->name);
        if (given && sil_quantity_read(given, strlen(given), SIL_LENGTH, SIL_MM, option->value) !=
                         SIL_DONE) {
            return cli_misused("%s: '%s' is no length; such as 2.6mm, 12thou or 5/64in",
                               option->name, given);
        }
        if (given && option->value == &q->now) {
            q->fraction = sil_fraction_of(given, strlen(given));
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

static int print_json(const char *cut, const char *cut_u, const brief_quick *quick)
{
    json j = {0};
    json_at root = json_object(&j);
    json_put_number(root, cut, quick->change);
    json_put_number(root, cut_u, quick->u);
    if (sil_known(quick->first_pass)) {
        json_put_number(root, "first_pass", quick->first_pass);
    }
    char *line = json_end(&j);
    if (!line) {
        return cli_failed("out of memory");
    }
    cli_print(line);
    cli_print("\n");
    free(line);
    return CLI_DONE;
}

/* cut, cut_u: the JSON keys of the answer and its standard uncertainty. */
static int answer(const question *q, const char *cut, const char *cut_u, brief_quick *quick)
{
    int code = CLI_DONE;
    if (q->json) {
        code = print_json(cut, cut_u, quick);
    } else if (quick->words) {
        cli_print(quick->words);
    } else {
        code = cli_failed("out of memory");
    }
    brief_quick_free(quick);
    return code;
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
    brief_quick quick;
    brief_quick_saddle(q.scale, q.setback, q.now, q.want, q.fraction, q.unit, &quick);
    return answer(&q, "lower", "lower_u", &quick);
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
    brief_quick quick;
    brief_quick_nut(q.scale, q.now, q.want, q.fraction, held, q.unit, &quick);
    return answer(&q, "deepen", "deepen_u", &quick);
}

/* Reads how many cents a string is out; a semitone or more is another fault. */
static int read_cents(const cli_arguments *a, double *cents)
{
    const char *given = cli_given(a, "--cents");
    bool plus = given[0] == '+' && given[1] != '-';
    if (sil_quantity_read(given + plus, strlen(given + plus), SIL_RATIO, SIL_MM, cents) !=
        SIL_DONE) {
        return cli_misused("--cents: '%s' is no number of cents; such as 12 or -7", given);
    }
    if (fabs(*cents) >= 100.0) {
        return cli_misused("--cents: a semitone or more is no error of intonation; likely a wrong "
                           "string, or the tuner showed another note");
    }
    return CLI_GO_ON;
}

int cli_tune(int argc, char **argv)
{
    question q = {.scale = SIL_UNKNOWN};
    double pitch = SIL_UNKNOWN, cents = 0.0;
    const length_option lengths[] = {{"--scale", &q.scale, 300, 950},
                                     {"--setback", &q.setback, 0, 12},
                                     {"--pitch", &pitch, 0.2, 1.5},
                                     {NULL, NULL, 0, 0}};
    cli_arguments arguments;
    int code = cli_read_arguments("tune", argc, argv, &arguments);
    code = code == CLI_GO_ON ? read_question(&arguments, lengths, &q) : code;
    code = code == CLI_GO_ON ? read_cents(&arguments, &cents) : code;
    if (code != CLI_GO_ON) {
        return code;
    }
    brief_quick quick;
    brief_quick_tune(q.scale, q.setback, cents, pitch, q.unit, &quick);
    return answer(&q, "move", "move_u", &quick);
}
