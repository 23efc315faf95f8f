/* SPDX-License-Identifier: MIT */
/* The findings and steps of the result: each sentence, and the same as data. */
#include "result.h"

static void put_index(json_at object, const char *key, int value, int from)
{
    json_put_number(object, key, value < 0 ? SIL_UNKNOWN : value + from);
}

static const char *way_word(brief_way way)
{
    switch (way) {
    case BRIEF_NO_WAY:
        return NULL;
    case BRIEF_DOWN:
        return "down";
    case BRIEF_UP:
        return "up";
    case BRIEF_TIGHTEN:
        return "tighten";
    case BRIEF_EASE:
        return "ease";
    case BRIEF_BACK:
        return "back";
    case BRIEF_FORWARD:
        return "forward";
    }
    return NULL;
}

/* Adds a figure of a sentence. A string, fret, end or direction that it does not have is left
 * out, because a result contains many figures. */
static void add_said(const brief_said *said, json_at array)
{
    json_at row = json_add_object(array);
    json_put_lent(row, "of", said->of);
    if (said->string >= 0) {
        json_put_int(row, "string", said->string + 1);
    }
    if (said->fret >= 0) {
        json_put_int(row, "fret", said->fret);
    }
    if (said->end != BRIEF_NO_END) {
        json_put_lent(row, "end", said->end == BRIEF_TREBLE ? "treble" : "bass");
    }
    if (said->way != BRIEF_NO_WAY) {
        json_put_lent(row, "way", way_word(said->way));
    }
    json_put_number(row, "value", said->figure.exact);
    json_put_lent(row, "shown", said->figure.shown);
}

static void put_figures(const brief *b, json_at row, const char *key, const brief_sentence *told)
{
    json_at array = json_put_array(row, key);
    for (int k = 0; k < told->count; k++) {
        add_said(&b->said[told->first + k], array);
    }
}

static void put_strings(const brief *b, json_at row, const brief_sentence *told)
{
    json_at array = json_put_array(row, "strings");
    for (int i = 0; i < b->strings; i++) {
        if (told->strings & 1U << i) {
            json_add_int(array, i + 1);
        }
    }
}

void result_findings(const brief *b, json_at root)
{
    json_at array = json_put_array(root, "findings");
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *finding = &b->plan->findings[k];
        const brief_sentence *told = &b->findings[k].alone;
        json_at row = json_add_object(array);
        json_put_lent(row, "code", sil_code_word(finding->code));
        json_put_lent(row, "level", sil_level_word(finding->level));
        put_index(row, "string", finding->string, 1);
        put_index(row, "fret", finding->fret, 0);
        json_put_word(row, "text", told->words);
        put_figures(b, row, "figures", told);
    }
}

void result_steps(const brief *b, json_at root)
{
    json_at array = json_put_array(root, "steps");
    for (int k = 0; k < b->plan->step_count; k++) {
        const brief_step *step = &b->steps[k];
        json_at row = json_add_object(array);
        json_put_int(row, "step", k + 1);
        json_put_lent(row, "stage", sil_stage_word(step->stage));
        json_put_lent(row, "act", sil_act_word(step->act));
        json_put_word(row, "do", step->what.words);
        json_put_word(row, "check", step->check.words);
        json_put_word(row, "care", step->care[0] ? step->care : NULL);
        json_put_lent(row, "way", way_word(step->what.way));
        put_strings(b, row, &step->what);
        put_figures(b, row, "figures", &step->what);
        put_figures(b, row, "check_figures", &step->check);
    }
}
