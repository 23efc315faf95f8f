/* SPDX-License-Identifier: MIT */
/* A plan as a row of a table: the next work, and what the parts wait for, in a few words. */
#include "acts.h"
#include "codes.h"
#include "within.h"

static void add_item(text *t, const char *words)
{
    text_add(t, "%s%s", t->length > 0 ? ", " : "", words);
}

/* New strings are work; that things are as they should be is only looked at. */
int brief_next_step(const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    bool worn = reading && reading->condition.strings == SIL_UNSOUND;
    for (int k = 0; k < plan->step_count; k++) {
        if (worn || plan->steps[k].act != SIL_ACT_PREPARE) {
            return k;
        }
    }
    return -1;
}

static const char *next_work(const sil_plan *plan, text_store *store)
{
    text t = {0};
    int k = brief_next_step(plan);
    if (k < 0) {
        return "";
    }
    if (plan->steps[k].act == SIL_ACT_PREPARE) {
        return "fit new strings";
    }
    if (plan->steps[k].act != SIL_ACT_STOP) {
        const char *words = act_called(plan, plan->steps[k].act);
        return words ? words : "";
    }
    for (int i = 0; i < plan->nut_withheld.count; i++) {
        const char *words = code_wait_of(plan->nut_withheld.by[i]).next;
        if (words) {
            add_item(&t, words);
        }
    }
    return text_keep_made(store, &t);
}

/* Whether a string waits at the nut or saddle. */
static bool any_waits(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->nut.verdict[i] == SIL_WAIT || plan->saddle.verdict[i] == SIL_WAIT) {
            return true;
        }
    }
    return false;
}

static const char *waits_for(const sil_plan *plan, text_store *store)
{
    const sil_withheld *parts[] = {&plan->nut_withheld, &plan->saddle_withheld};
    text t = {0};
    for (int part = 0; part < 2; part++) {
        for (int i = 0; i < parts[part]->count; i++) {
            sil_code code = parts[part]->by[i];
            if (part == 0 || !sil_withheld_by(parts[0], code)) {
                add_item(&t, code_wait_of(code).for_what);
            }
        }
    }
    if (t.length == 0 && any_waits(plan)) {
        add_item(&t, brief_missing_of(plan).for_what);
    }
    return text_keep_made(store, &t);
}

brief_row brief_row_of(const sil_plan *plan, text_store *store)
{
    return (brief_row){next_work(plan, store), waits_for(plan, store)};
}
