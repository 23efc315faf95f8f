/* SPDX-License-Identifier: MIT */
/* sillet plan for many sheets: one line each, with what to do next and what the sheet is waiting
 * for. Each line is printed at once and nothing is kept, so the number of sheets does not matter;
 * only to sort them are the lines kept. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../brief/brief.h"
#include "many.h"

enum { SHEET = 22, JOB = 8, NEXT = 25, WAITS = 19, WAITS_MAX = 256 };

/* A line of the table. */
typedef struct row {
    const char *sheet, *job, *next, *waits;
    int place; /* in the order given */
} row;

typedef struct wall {
    const cli_options *order;
    sil_reader *reader;
    int worst;
    int sheets, idle, to_work_on, waiting, wrong;
    size_t skipped; /* letters of the folder, which the table has above it */
    row *lines;     /* kept to be sorted */
    int count, room;
    text_store store;
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
static void print_line(const row *l)
{
    bool alone = cli_columns(l->sheet) > SHEET;
    cli_cell(l->sheet, alone ? 0 : SHEET);
    if (alone) {
        printf("\n%*s", SHEET, "");
    }
    printf("  ");
    cli_cell(l->job, JOB);
    printf("  ");
    cli_cell(l->next, NEXT);
    printf("  ");
    cli_cell(l->waits, cli_columns(l->waits) > WAITS ? WAITS : 0);
    printf("\n");
}

static bool keep_line(wall *w, const row *l)
{
    if (w->count == w->room) {
        int room = w->room > 0 ? 2 * w->room : 256;
        row *longer = realloc(w->lines, (size_t)room * sizeof *longer);
        if (!longer) {
            return false;
        }
        w->lines = longer;
        w->room = room;
    }
    w->lines[w->count] =
        (row){text_keep(&w->store, "%s", l->sheet), text_keep(&w->store, "%s", l->job),
              text_keep(&w->store, "%s", l->next), text_keep(&w->store, "%s", l->waits), w->count};
    w->count++;
    return !w->store.failed;
}

/* Prints a line, or keeps it to be sorted. Returned: false if there is no memory. */
static bool put_line(wall *w, const char *path, const char *job, const char *next,
                     const char *waits)
{
    row l = {path + w->skipped, job, next, waits, 0};
    if (w->order->by_waits) {
        return keep_line(w, &l);
    }
    print_line(&l);
    return true;
}

static const char nothing[] = "nothing";

/* What waits comes first, by what it waits for; the rest by what is next, what is done last. */
static int by_waits(const void *a, const void *b)
{
    const row *one = a, *other = b;
    bool idle = strcmp(one->waits, nothing) == 0, other_idle = strcmp(other->waits, nothing) == 0;
    bool done = strcmp(one->next, nothing) == 0, other_done = strcmp(other->next, nothing) == 0;
    int order = idle - other_idle;
    order = order ? order : strcmp(one->waits, other->waits);
    order = order ? order : done - other_done;
    order = order ? order : strcmp(one->next, other->next);
    return order ? order : one->place - other->place;
}

static void print_sorted(wall *w)
{
    if (w->count > 0) {
        qsort(w->lines, (size_t)w->count, sizeof *w->lines, by_waits);
    }
    for (int k = 0; k < w->count; k++) {
        print_line(&w->lines[k]);
    }
    free(w->lines);
    text_store_free(&w->store);
}

static int print_planned(wall *w, const char *path, const sil_plan *plan)
{
    const sil_about *about = &sil_plan_job(plan)->about;
    text job = {0};
    text_store store = {0};
    brief_row told = brief_row_of(plan, &store);
    text_add(&job, "%s", about->ref ? about->ref : about->title ? about->title : "");
    bool works = told.next[0], waiting = told.waits[0];
    w->waiting += waiting;
    w->to_work_on += works && !waiting;
    w->idle += !works && !waiting;
    bool put = put_line(w, path, text_read(&job), works ? told.next : nothing,
                        waiting ? told.waits : nothing);
    int code =
        !put || job.failed || store.failed ? cli_failed("%s: out of memory", path) : CLI_DONE;
    text_free(&job);
    text_store_free(&store);
    return code;
}

static int print_wrong(wall *w, const char *path, int code, const sil_sheet *sheet)
{
    char waits[WAITS_MAX] = "it cannot be read";
    if (code == CLI_WRONG) {
        sil_sheet_mistakes(sheet, waits, sizeof waits);
    }
    w->wrong++;
    bool put =
        put_line(w, path, "", code == CLI_WRONG ? "put the sheet right" : "find the sheet", waits);
    return put ? code : cli_failed("%s: out of memory", path);
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
        code = print_wrong(w, path, code, sheet);
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

/* A folder alone is named above its table, and not in every line. */
static void begin_table(wall *w, const char *folder)
{
    if (folder) {
        size_t length = strlen(folder);
        bool ends = length > 0 && folder[length - 1] == '/';
        printf("In ");
        cli_cell(folder, 0);
        printf("%s:\n", ends ? "" : "/");
        w->skipped = length + (ends ? 0 : 1);
    }
    print_heads();
}

static void end_table(wall *w)
{
    print_sorted(w);
    printf("\n%d sheet%s: %d with nothing to do, %d to work on, %d waiting, %d wrong.\n", w->sheets,
           w->sheets == 1 ? "" : "s", w->idle, w->to_work_on, w->waiting, w->wrong);
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
        begin_table(&w, count == 1 && cli_is_folder(paths[0]) ? paths[0] : NULL);
    }
    for (int k = 0; k < count && !ferror(stdout); k++) {
        if (cli_is_folder(paths[k])) {
            print_folder(&w, paths[k]);
        } else {
            print_sheet(&w, paths[k]);
        }
    }
    if (!order->json) {
        end_table(&w);
    }
    sil_reader_free(w.reader);
    return w.worst;
}
