/* SPDX-License-Identifier: MIT */
/* sillet plan: the ordered bench plan. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../text/text.h"
#include "many.h"

enum { SCREEN_COLUMNS = 80, FULL_COLUMNS = 96 };

/* A printed plan is read without stderr, so it includes the warnings. name: of the sheet. */
static void print_doubts(const sil_sheet *sheet, const char *name, int columns)
{
    int count = sil_sheet_complaint_count(sheet);
    if (count > 0) {
        cli_print("\nDOUBTFUL, AS WRITTEN IN THE SHEET\n"); /* or in a file under it */
    }
    for (int k = 0; k < count; k++) {
        sil_complaint doubt = sil_sheet_complaint(sheet, k);
        bool own = strcmp(doubt.file, name) == 0;
        text words = {0}, lines = {0};
        text_add(&words, "%s%sline %d: %s", own ? "" : doubt.file, own ? "" : ", ", doubt.line,
                 doubt.text);
        text_wrap(&lines, text_read(&words), 4, columns);
        printf("  %s", text_read(&lines));
        text_free(&words);
        text_free(&lines);
    }
}

/* Whether there is somebody to see colours, who did not ask for none (no-color.org). */
static bool is_coloured(void)
{
    const char *none = getenv("NO_COLOR"), *terminal = getenv("TERM");
    return isatty(STDOUT_FILENO) && !(none && none[0]) && terminal && strcmp(terminal, "dumb") != 0;
}

static char *report_of(const cli_options *order, const sil_plan *plan, sil_unit unit,
                       const char *name)
{
    return order->json   ? sil_report_json(plan, unit)
           : order->full ? sil_report_text(plan, unit, name)
                         : sil_report_screen(plan, unit, name, is_coloured());
}

static int print_plan(const cli_options *order, const char *name, const sil_sheet *sheet)
{
    sil_plan *plan;
    const sil_job *job = sil_sheet_job(sheet);
    sil_unit unit = cli_plan_unit(order, job);
    char *report = NULL;
    if (cli_make_plan(order, job, &plan) == SIL_DONE) {
        report = report_of(order, plan, unit, name);
        sil_plan_free(plan);
    }
    if (!report) {
        return cli_failed("out of memory");
    }
    cli_print(report);
    if (order->json) {
        cli_print("\n");
    } else {
        print_doubts(sheet, name, order->full ? FULL_COLUMNS : SCREEN_COLUMNS);
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
                         .full = cli_given(&a, "--full"),
                         .by_waits = cli_choice(&a, "--sort", 0) == 1,
                         .unit = cli_choice(&a, "--units", -1),
                         .stage = cli_choice(&a, "--stage", -1)};
    if (cli_given(&a, "--sort") && order.json) {
        return cli_misused("--sort is for the table, not for --json");
    }
    bool many = cli_given(&a, "--sort") || a.operand_count > 1 || cli_is_folder(a.operands[0]);
    return many ? cli_plan_many(&order, a.operands, a.operand_count)
                : plan_one(&order, a.operands[0]);
}
