/* SPDX-License-Identifier: MIT */
/* sillet plan for many sheets: one line each, with what to do next and what the sheet is waiting
 * for. Each line is printed at once and nothing is kept, so the number of sheets does not
 * matter. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>

#include "../brief/brief.h"
#include "many.h"

enum { SHEET = 34, JOB = 28, NEXT = 25, WAITS_MAX = 256 };

typedef struct wall {
    const cli_options *order;
    sil_reader *reader;
    int worst;
    int sheets, idle, to_work_on, waiting, wrong;
} wall;

static void print_heads(void)
{
    cli_cell("SHEET", SHEET);
    printf("  ");
    cli_cell("JOB", JOB);
    printf("  ");
    cli_cell("NEXT", NEXT);
    printf("  WAITS FOR\n");
}

/* A name that is too long for its column gets a line of its own above, so it is never cut. */
static void print_row(const char *path, const char *job, const char *next, const char *waits)
{
    bool alone = cli_columns(path) > SHEET;
    cli_cell(path, alone ? 0 : SHEET);
    if (alone) {
        printf("\n%*s", SHEET, "");
    }
    printf("  ");
    cli_cell(job, JOB);
    printf("  ");
    cli_cell(next, NEXT);
    printf("  %s\n", waits);
}

static int print_planned(wall *w, const char *path, const sil_plan *plan)
{
    const sil_about *about = &sil_plan_job(plan)->about;
    text job = {0};
    text_store store = {0};
    brief_row row = brief_row_of(plan, &store);
    text_add(&job, "%s%s%s", about->ref ? about->ref : "", about->ref && about->title ? "  " : "",
             about->title ? about->title : "");
    bool works = row.next[0], waiting = row.waits[0];
    w->waiting += waiting;
    w->to_work_on += works && !waiting;
    w->idle += !works && !waiting;
    print_row(path, text_read(&job), works ? row.next : "nothing", waiting ? row.waits : "nothing");
    int code = job.failed || store.failed ? cli_failed("%s: out of memory", path) : CLI_DONE;
    text_free(&job);
    text_store_free(&store);
    return code;
}

static void print_wrong(wall *w, const char *path, int code, const sil_sheet *sheet)
{
    char waits[WAITS_MAX] = "the file: it cannot be read";
    if (code == CLI_WRONG) {
        sil_sheet_mistakes(sheet, waits, sizeof waits);
    }
    w->wrong++;
    print_row(path, "", code == CLI_WRONG ? "put the sheet right" : "find the sheet", waits);
}

static int print_json(const char *path, int code, const sil_plan *plan, sil_unit unit)
{
    char *line = sil_report_line(path, code, plan, unit);
    if (!line) {
        return cli_failed("%s: out of memory", path);
    }
    printf("%s\n", line);
    free(line);
    return code;
}

/* Returned: true, to go on with the next sheet. */
static bool print_sheet(void *with, const char *path)
{
    wall *w = with;
    sil_plan *plan = NULL;
    sil_sheet *sheet = NULL;
    sil_unit unit = SIL_MM;
    sil_status status = sil_reader_read(w->reader, path, &sheet);
    int code = cli_tell_sheet(path, status, sheet);
    if (code == CLI_DONE) {
        unit = cli_plan_unit(w->order, sil_sheet_job(sheet));
        if (cli_make_plan(w->order, sil_sheet_job(sheet), &plan) != SIL_DONE) {
            code = cli_failed("%s: out of memory", path);
        }
    }
    w->sheets++;
    if (w->order->json) {
        code = print_json(path, code, plan, unit);
    } else if (plan) {
        code = print_planned(w, path, plan);
    } else {
        print_wrong(w, path, code, sheet);
    }
    w->worst = code > w->worst ? code : w->worst;
    sil_plan_free(plan);
    sil_sheet_free(sheet);
    return !ferror(stdout);
}

static void print_folder(wall *w, const char *path)
{
    int found;
    int code = cli_go_through(path, print_sheet, w, &found);
    if (code == CLI_GO_ON && found == 0) {
        code = cli_misused("%s: no sheet in this folder (.yaml, .yml or .json)", path);
    }
    w->worst = code > w->worst ? code : w->worst;
}

int cli_plan_many(const cli_options *order, char **paths, int count)
{
    wall w = {.order = order, .worst = CLI_DONE};
    if (sil_reader_new(NULL, &w.reader) != SIL_DONE) {
        return cli_failed("out of memory");
    }
    setlocale(LC_CTYPE, "C.UTF-8");         /* used only for the width of letters */
    setvbuf(stderr, NULL, _IOFBF, 1 << 16); /* complaints come after the table, not within it */
    if (!order->json) {
        print_heads();
    }
    for (int k = 0; k < count && !ferror(stdout); k++) {
        if (cli_is_folder(paths[k])) {
            print_folder(&w, paths[k]);
        } else {
            print_sheet(&w, paths[k]);
        }
    }
    if (!order->json) {
        printf("\n%d sheet%s: %d with nothing to do, %d to work on, %d waiting, %d wrong.\n",
               w.sheets, w.sheets == 1 ? "" : "s", w.idle, w.to_work_on, w.waiting, w.wrong);
    }
    sil_reader_free(w.reader);
    return w.worst;
}
