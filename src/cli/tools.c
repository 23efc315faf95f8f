/* SPDX-License-Identifier: MIT */
/* sillet tools: what a shop's tools prove to read to, from a folder of its jobs. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "../brief/quick.h"
#include "../json/json.h"
#include "many.h"

typedef struct survey {
    sil_reader *reader;
    brief_pairs pairs[SIL_TOOLS];
    int room[SIL_TOOLS];
    const sil_job *job; /* the one whose pairs are being told */
    int sheets, visits, worst;
    bool failed; /* out of memory */
} survey;

static double stated_of(const sil_tools *tools, sil_tool tool)
{
    switch (tool) {
    case SIL_TOOL_ACTION:
        return tools->action;
    case SIL_TOOL_FIRST:
        return tools->first;
    case SIL_TOOL_RELIEF:
        return tools->relief;
    case SIL_TOOL_CALIPER:
        return tools->caliper;
    case SIL_TOOLS:
        break;
    }
    return SIL_UNKNOWN;
}

static bool grow(survey *s, sil_tool tool)
{
    brief_pairs *pairs = &s->pairs[tool];
    int room = s->room[tool] > 0 ? 2 * s->room[tool] : 256;
    double *difference = realloc(pairs->difference, sizeof *difference * (size_t)room);
    if (!difference) {
        return false;
    }
    pairs->difference = difference;
    double *readings = realloc(pairs->readings, 2 * sizeof *readings * (size_t)room);
    if (!readings) {
        return false;
    }
    pairs->readings = readings;
    s->room[tool] = room;
    return true;
}

static void keep_pair(void *with, sil_tool tool, double before, double after)
{
    survey *s = with;
    brief_pairs *pairs = &s->pairs[tool];
    double stated = stated_of(&s->job->tools, tool);
    if (s->failed || (pairs->count == s->room[tool] && !grow(s, tool))) {
        s->failed = true;
        return;
    }
    bool first = pairs->count == 0;
    pairs->stated_low = first ? stated : fmin(stated, pairs->stated_low);
    pairs->stated_high = first ? stated : fmax(stated, pairs->stated_high);
    pairs->stated_squares += stated * stated;
    double *readings = pairs->readings + 2 * (size_t)pairs->count;
    readings[0] = before;
    readings[1] = after;
    pairs->difference[pairs->count++] = after - before;
}

/* Returned: true, to go on with the next sheet. */
static bool look_at(void *with, const char *path)
{
    survey *s = with;
    sil_sheet *sheet = NULL;
    sil_status status = sil_reader_read(s->reader, path, &sheet);
    int code = cli_tell_sheet(path, status, sheet);
    if (code == CLI_DONE) {
        s->job = sil_sheet_job(sheet);
        s->sheets++;
        s->visits += s->job->reading_count > 1 ? s->job->reading_count - 1 : 0;
        if (sil_plan_pairs(s->job, keep_pair, s) != SIL_DONE) {
            s->failed = true; /* keep_pair may have set it as well */
        }
    }
    s->worst = code > s->worst ? code : s->worst;
    sil_sheet_free(sheet);
    return !s->failed;
}

static void put_tool(json_at object, const brief_tool *tool, const brief_pairs *pairs)
{
    bool any = pairs->count > 0;
    json_put_int(object, "pairs", tool->pairs);
    json_put_int(object, "more", tool->more);
    json_put_int(object, "dropped", tool->dropped);
    json_put_number(object, "graduation", tool->graduation > 0.0 ? tool->graduation : SIL_UNKNOWN);
    json_put_number(object, "stated_low", any ? pairs->stated_low : SIL_UNKNOWN);
    json_put_number(object, "stated_high", any ? pairs->stated_high : SIL_UNKNOWN);
    json_put_number(object, "u", tool->u);
    json_put_number(object, "plus_minus", tool->half_width);
}

static int print_json(const survey *s, const brief_proof *proof)
{
    json j = {0};
    json_at root = json_object(&j);
    json_put_int(root, "sheets", s->sheets);
    json_put_int(root, "visits", s->visits);
    json_at tools = json_put_object(root, "tools");
    for (int k = 0; k < SIL_TOOLS; k++) {
        json_at tool = json_put_object(tools, sil_tool_word((sil_tool)k));
        put_tool(tool, &proof->tool[k], &s->pairs[k]);
    }
    char *line = json_end(&j);
    if (!line) {
        return cli_failed("out of memory");
    }
    printf("%s\n", line);
    free(line);
    return CLI_DONE;
}

static int print_proof(const survey *s, bool as_json, sil_unit unit)
{
    brief_proof proof;
    brief_prove(s->pairs, s->sheets, s->visits, unit, &proof);
    int code = !proof.words ? cli_failed("out of memory")
               : as_json    ? print_json(s, &proof)
                            : CLI_DONE;
    if (proof.words && !as_json) {
        cli_print(proof.words);
    }
    brief_proof_free(&proof);
    return code;
}

static int survey_folder(survey *s, const char *folder)
{
    int found;
    int code = cli_go_through(folder, look_at, s, &found);
    if (code == CLI_GO_ON && s->failed) {
        return cli_failed("out of memory");
    }
    if (code == CLI_GO_ON && found == 0) {
        return cli_misused("%s: no sheet in this folder (.yaml, .yml or .json)", folder);
    }
    return code;
}

int cli_tools(int argc, char **argv)
{
    cli_arguments a;
    survey s = {.worst = CLI_DONE};
    int code = cli_read_arguments("tools", argc, argv, &a);
    if (code != CLI_GO_ON) {
        return code;
    }
    if (sil_reader_new(NULL, &s.reader) != SIL_DONE) {
        return cli_failed("out of memory");
    }
    code = survey_folder(&s, a.operands[0]);
    if (code == CLI_GO_ON) {
        code =
            print_proof(&s, cli_given(&a, "--json"), (sil_unit)cli_choice(&a, "--units", SIL_MM));
        code = code == CLI_DONE ? s.worst : code;
    }
    for (int k = 0; k < SIL_TOOLS; k++) {
        free(s.pairs[k].difference);
        free(s.pairs[k].readings);
    }
    sil_reader_free(s.reader);
    return code;
}
