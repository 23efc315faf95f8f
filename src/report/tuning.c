/* SPDX-License-Identifier: MIT */
/* The part of the result on bringing the strings into tune. */
#include "result.h"

static const char *remedy_word(sil_tune_remedy remedy)
{
    switch (remedy) {
    case SIL_TUNE_NONE:
        return "none";
    case SIL_TUNE_SCREWS:
        return "screws";
    case SIL_TUNE_ENDS:
        return "ends";
    case SIL_TUNE_PEAKS:
        return "peaks";
    case SIL_TUNE_REPLACE:
        return "replace";
    case SIL_TUNE_NOTE:
        return "note";
    case SIL_TUNE_WAIT:
        return "wait";
    }
    return NULL;
}

static const char *wait_word(sil_tune_wait wait)
{
    switch (wait) {
    case SIL_TUNE_READY:
        return NULL;
    case SIL_TUNE_AFTER_STOP:
        return "stop";
    case SIL_TUNE_AFTER_NECK:
        return "neck";
    case SIL_TUNE_AFTER_NUT:
        return "nut";
    case SIL_TUNE_AFTER_SADDLE:
        return "saddle";
    }
    return NULL;
}

static const char *intonation_word(sil_intonation by)
{
    switch (by) {
    case SIL_INTONATION_SCREWS:
        return "screws";
    case SIL_INTONATION_ENDS:
        return "ends";
    case SIL_INTONATION_NOT_GIVEN:
    case SIL_INTONATION_NONE:
        break;
    }
    return "none";
}

static const char *verdict_word(const sil_tuning *t, int i)
{
    if (!sil_known(t->cents[i])) {
        return "unread";
    }
    if (!t->out[i] || plan_stays_out(t, i)) {
        return "leave";
    }
    return t->remedy == SIL_TUNE_WAIT ? "wait" : t->move[i] > 0.0 ? "back" : "forward";
}

void result_tuning(const brief *b, json_at root)
{
    const sil_tuning *t = &b->plan->tuning;
    json_at tune = json_put_object(root, "tune");
    json_put_word(tune, "by", intonation_word(t->by));
    json_put_word(tune, "remedy", remedy_word(t->remedy));
    json_put_word(tune, "waits_for", wait_word(t->waits));
    json_put_number(tune, "target", b->plan->job->targets.cents);
    json_at array = json_put_array(tune, "strings");
    for (int i = 0; i < b->strings; i++) {
        json_at row = result_string(array, i);
        json_put_number(row, "cents", t->cents[i]);
        json_put_word(row, "verdict", verdict_word(t, i));
        json_put_bool(row, "at_edge", t->side[i] == SIL_AT_LOW || t->side[i] == SIL_AT_HIGH);
        json_put_number(row, "move", plan_tune_move(t, i));
        json_put_number(row, "turns", t->turns[i]);
        json_put_number(row, "left", t->left[i]);
        json_put_number(row, "proposed", t->proposed[i]);
    }
    if (!sil_known(t->end[0])) {
        json_put_null(tune, "ends");
        return;
    }
    json_at ends = json_put_object(tune, "ends");
    json_put_number(ends, "treble", t->end[0]);
    json_put_number(ends, "bass", t->end[1]);
}
