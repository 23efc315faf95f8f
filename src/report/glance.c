/* SPDX-License-Identifier: MIT */
#include "glance.h"

#include "../brief/large.h"
#include "result.h"

/* How a stage is to be marked. */
static const char *state_word(brief_state state)
{
    switch (state) {
    case BRIEF_RIGHT:
        return "right";
    case BRIEF_WORK:
        return "work";
    case BRIEF_WAIT:
        return "wait";
    case BRIEF_UNREAD:
        return "unread";
    }
    return "";
}

static void put_stages(const brief *b, json_at root)
{
    json_at array = json_put_array(root, "stages");
    for (brief_stage_of stage = 0; stage < BRIEF_STAGES; stage++) {
        json_at row = json_add_object(array);
        json_put_word(row, "name", b->glance[stage].name);
        json_put_word(row, "verdict", b->glance[stage].verdict);
        json_put_word(row, "state", state_word(b->glance[stage].state));
        json_put_word(row, "short", b->glance[stage].span);
        json_put_word(row, "figures", b->glance[stage].figures.words);
    }
}

/* Where a large figure belongs: its string, from 1, or its end. */
static void add_large(const brief_said *said, json_at array)
{
    json_at row = json_add_object(array);
    json_put_number(row, "string", said->string < 0 ? SIL_UNKNOWN : said->string + 1);
    json_put_lent(row, "end",
                  said->end == BRIEF_TREBLE ? "treble"
                  : said->end == BRIEF_BASS ? "bass"
                                            : NULL);
    json_put_word(row, "shown", said->figure.shown);
}

static void put_large(const brief *b, int step, json_at next, text_store *store)
{
    brief_large large = brief_large_of(b, step, store);
    json_put_word(next, "title", large.title);
    json_put_word(next, "line", brief_large_line(b, step, &large, store));
    json_at array = json_put_array(next, "large");
    for (int r = 0; r < large.rows; r++) {
        json_at row = json_add_object(array);
        json_put_word(row, "label", large.row[r].label);
        json_put_word(row, "unit", large.row[r].is_length ? b->unit_name : "");
        json_at figures = json_put_array(row, "figures");
        for (int i = 0; i < large.row[r].count; i++) {
            add_large(large.row[r].said[i], figures);
        }
    }
}

static void put_strips(const brief *b, json_at next)
{
    json_at array = json_put_array(next, "strips");
    for (int k = 0; k < b->next.strips; k++) {
        json_at row = json_add_object(array);
        json_put_word(row, "label", b->next.strip[k].label);
        json_at cells = json_put_array(row, "cells");
        for (int i = 0; i < b->strings; i++) {
            json_add_word(cells, b->next.strip[k].cell[i]);
        }
    }
}

/* Of each step its few words, in the order of the steps. */
static void put_short(const brief *b, json_at root)
{
    json_at array = json_put_array(root, "in_short");
    for (int k = 0; k < b->plan->step_count; k++) {
        json_add_word(array, b->next.in_short[k]);
    }
}

/* The steps that follow the next one at once, with nothing to measure between. */
static void put_then(const brief *b, int step, json_at next, text_store *store)
{
    json_at array = json_put_array(next, "then");
    for (int k = step + 1; b->steps[k - 1].goes_on; k++) {
        json_at row = json_add_object(array);
        json_put_int(row, "step", k + 1);
        json_put_word(row, "act", sil_act_word(b->steps[k].act));
        put_large(b, k, row, store);
        json_put_word(row, "do", b->steps[k].what.words);
        json_put_word(row, "check", b->steps[k].check.words);
        json_put_word(row, "care", b->steps[k].care);
    }
}

static void put_next(const brief *b, json_at root, text_store *store)
{
    int step = b->next.step;
    if (step < 0) {
        json_put_null(root, "next");
        return;
    }
    json_at next = json_put_object(root, "next");
    json_put_int(next, "step", step + 1);
    json_put_word(next, "act", sil_act_word(b->steps[step].act));
    put_large(b, step, next, store);
    json_put_word(next, "do", b->next.what.words);
    json_put_word(next, "check", b->next.check.words);
    json_put_word(next, "care", b->steps[step].care);
    json_put_word(next, "before", b->next.before);
    put_strips(b, next);
    put_then(b, step, next, store);
}

/* On which side of its range a reading is, and by how much; nothing where it is not known. */
static void put_off(brief_off off, json_at row)
{
    json_put_word(row, "side", off.side);
    json_put_word(row, "off", brief_known(off.by) ? off.by.shown : NULL);
}

/* A range of actions in inches on a rule: "1/16 to 5/64"; NULL for any other. */
static const char *marks_of(const brief_range *range, text_store *store)
{
    return range->low.marks[0] && range->high.marks[0]
               ? brief_from_to(store, range->low.marks, range->high.marks)
               : NULL;
}

static void put_reading(const brief *b, const brief_reading *reading, json_at row,
                        text_store *store)
{
    json_put_word(row, "low", reading->wanted.low.shown);
    json_put_word(row, "aim", reading->wanted.aim.shown);
    json_put_word(row, "high", reading->wanted.high.shown);
    json_put_word(row, "marks", marks_of(&reading->wanted, store));
    put_off(brief_off_range(b, reading), row);
}

static void put_humidity(const brief *b, json_at row)
{
    json_put_word(row, "low", b->humidity_wanted.low.shown);
    json_put_word(row, "high", b->humidity_wanted.high.shown);
    put_off(brief_off_humidity(b), row);
}

static void put_each(const brief *b, const brief_reading *readings, json_at object, const char *key,
                     text_store *store)
{
    json_at array = json_put_array(object, key);
    for (int i = 0; i < b->strings; i++) {
        put_reading(b, &readings[i], json_add_object(array), store);
    }
}

static void put_readings(const brief *b, json_at root, text_store *store)
{
    json_at object = json_put_object(root, "readings");
    json_put_word(object, "unit", b->unit_name);
    put_humidity(b, json_put_object(object, "humidity"));
    put_reading(b, &b->relief, json_put_object(object, "relief"), store);
    put_each(b, b->first, object, "first", store);
    put_each(b, b->action, object, "action", store);
}

char *report_glance(const brief *b)
{
    json j = {0};
    text_store store = {0};
    json_at root = json_object(&j);
    json_put_bool(root, "done", b->plan->done);
    put_stages(b, root);
    put_next(b, root, &store);
    put_short(b, root);
    put_readings(b, root, &store);
    if (store.failed) {
        j.failed = true;
    }
    char *made = json_end(&j);
    text_store_free(&store);
    return made;
}
