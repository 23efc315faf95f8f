/* SPDX-License-Identifier: MIT */
/* sillet plan: the ordered bench plan. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli.h"

typedef struct options {
    const char *sheet;
    bool json;
    bool unit_given;
    sil_unit unit;
    int stage; /* or -1: all of them */
} options;

static int find_stage(const char *word)
{
    for (int stage = 0; stage < SIL_STAGES; stage++) {
        if (strcmp(word, sil_stage_word((sil_stage_name)stage)) == 0) {
            return stage;
        }
    }
    return -1;
}

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
        } else if (strcmp(word, "--stage") == 0) {
            const char *value = cli_value(argc, argv, &i);
            o->stage = value ? find_stage(value) : -1;
            if (o->stage < 0) {
                return cli_misused("--stage takes now, rod, frets, nut or saddle");
            }
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

/* A plan on paper is read without what stood on stderr: what was doubtful goes with it. */
static void print_doubts(const sil_sheet *sheet)
{
    char words[512];
    int count = sil_sheet_complaint_count(sheet);
    if (count > 0) {
        cli_print("\nDOUBTFUL, AS WRITTEN IN THE SHEET\n");
    }
    for (int k = 0; k < count; k++) {
        sil_complaint doubt = sil_sheet_complaint(sheet, k);
        snprintf(words, sizeof words, "  line %d: %s\n", doubt.line, doubt.text);
        cli_print(words);
    }
}

static int print_plan(const options *o, const sil_sheet *sheet)
{
    const sil_job *job = sil_sheet_job(sheet);
    sil_unit unit = o->unit_given ? o->unit : job->units;
    sil_plan plan;
    sil_plan_make(job, &plan);
    if (o->stage >= 0) {
        sil_plan_keep(&plan, (sil_stage_name)o->stage);
    }
    char *report = o->json ? sil_report_json(&plan, unit) : sil_report_text(&plan, unit, o->sheet);
    if (!report) {
        return cli_failed("out of memory");
    }
    cli_print(report);
    if (o->json) {
        cli_print("\n");
    } else {
        print_doubts(sheet);
    }
    free(report);
    return CLI_DONE;
}

int cli_plan(int argc, char **argv)
{
    options o = {.stage = -1};
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
