/* SPDX-License-Identifier: MIT */
/* sillet plan: the ordered bench plan. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "many.h"

/* A printed plan is read without stderr, so it includes the warnings. name: of the sheet. */
static void print_doubts(const sil_sheet *sheet, const char *name)
{
    int count = sil_sheet_complaint_count(sheet);
    if (count > 0) {
        cli_print("\nDOUBTFUL, AS WRITTEN IN THE SHEET\n"); /* or in a file under it */
    }
    for (int k = 0; k < count; k++) {
        sil_complaint doubt = sil_sheet_complaint(sheet, k);
        bool own = strcmp(doubt.file, name) == 0;
        printf("  %s%sline %d: %s\n", own ? "" : doubt.file, own ? "" : ", ", doubt.line,
               doubt.text);
    }
}

static int print_plan(const cli_options *order, const char *name, const sil_sheet *sheet)
{
    sil_plan *plan;
    const sil_job *job = sil_sheet_job(sheet);
    sil_unit unit = cli_plan_unit(order, job);
    char *report = NULL;
    if (cli_make_plan(order, job, &plan) == SIL_DONE) {
        report = order->json ? sil_report_json(plan, unit) : sil_report_text(plan, unit, name);
        sil_plan_free(plan);
    }
    if (!report) {
        return cli_failed("out of memory");
    }
    cli_print(report);
    if (order->json) {
        cli_print("\n");
    } else {
        print_doubts(sheet, name);
    }
    free(report);
    return CLI_DONE;
}

static int plan_one(const cli_options *order, const char *path)
{
    sil_sheet *sheet = NULL;
    int code = cli_read_sheet(path, &sheet);
    if (code == CLI_DONE) {
        code = print_plan(order, path, sheet);
    }
    sil_sheet_free(sheet);
    return code;
}

int cli_plan(int argc, char **argv)
{
    cli_arguments a;
    int code = cli_read_arguments("plan", argc, argv, &a);
    if (code != CLI_GO_ON) {
        return code;
    }
    cli_options order = {.json = cli_given(&a, "--json"),
                         .unit = cli_choice(&a, "--units", -1),
                         .stage = cli_choice(&a, "--stage", -1)};
    bool many = a.operand_count > 1 || cli_is_folder(a.operands[0]);
    return many ? cli_plan_many(&order, a.operands, a.operand_count)
                : plan_one(&order, a.operands[0]);
}
