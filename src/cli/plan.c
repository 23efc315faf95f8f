/* SPDX-License-Identifier: MIT */
/* sillet plan: the ordered bench plan. */
#include <stdlib.h>
#include <string.h>

#include "cli.h"

typedef struct options {
    const char *sheet;
    bool json;
    bool unit_given;
    sil_unit unit;
} options;

static int read_options(int argc, char **argv, options *o)
{
    for (int i = 1; i < argc; i++) {
        const char *word = argv[i];
        if (strcmp(word, "--json") == 0) {
            o->json = true;
        } else if (strcmp(word, "--units") == 0) {
            const char *value = cli_value(argc, argv, &i);
            if (!value || !cli_unit(value, &o->unit)) {
                return cli_misused("--units takes mm or in");
            }
            o->unit_given = true;
        } else if (word[0] == '-' && word[1] != '\0') {
            return cli_misused("plan knows no option '%s'", word);
        } else if (o->sheet) {
            return cli_misused("plan takes one sheet; '%s' is one more", word);
        } else {
            o->sheet = word;
        }
    }
    return o->sheet ? CLI_DONE : cli_misused("plan wants a sheet: sillet plan SHEET");
}

static int print_plan(const options *o, const sil_sheet *sheet)
{
    const sil_job *job = sil_sheet_job(sheet);
    sil_unit unit = o->unit_given ? o->unit : job->units;
    sil_plan plan;
    sil_plan_make(job, &plan);
    char *report = o->json ? sil_report_json(&plan, unit) : sil_report_text(&plan, unit, o->sheet);
    if (!report) {
        return cli_failed("out of memory");
    }
    cli_print(report);
    if (o->json) {
        cli_print("\n");
    }
    free(report);
    return CLI_DONE;
}

int cli_plan(int argc, char **argv)
{
    options o = {0};
    int code = read_options(argc, argv, &o);
    if (code != CLI_DONE) {
        return code;
    }
    sil_sheet *sheet = NULL;
    code = cli_read_sheet(o.sheet, &sheet);
    if (code == CLI_DONE) {
        code = print_plan(&o, sheet);
    }
    sil_sheet_free(sheet);
    return code;
}
