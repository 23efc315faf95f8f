/* SPDX-License-Identifier: MIT */
#include "out.h"

#include <string.h>

#include "within.h"

#include "../plan/plan.h"

bool brief_at_a_glance(sil_code code)
{
    return code == SIL_RELIEF_LOW || code == SIL_RELIEF_HIGH || code == SIL_SLOT_LOW ||
           code == SIL_SLOT_HIGH || code == SIL_SADDLE_LOW || code == SIL_SADDLE_HIGH ||
           code == SIL_ZERO_FRET_LOW || code == SIL_ZERO_FRET_HIGH || code == SIL_ROD_LIMIT;
}

static bool says_high(sil_code code)
{
    return code == SIL_RELIEF_HIGH || code == SIL_SLOT_HIGH || code == SIL_SADDLE_HIGH ||
           code == SIL_ZERO_FRET_HIGH;
}

static bool differ(brief_figure one, brief_figure other)
{
    return strcmp(one.shown, other.shown) != 0;
}

/* A stage is judged as it will be when those before it are done, so its figures need not be those that
 * were read. */
static const char *once_of(const brief *b, const out_of_range *out)
{
    bool neck = false, nut = false;
    for (int i = 0; i < b->strings; i++) {
        const brief_reading *reading = out->one->stage == SIL_SADDLE ? &b->action[i] : &b->first[i];
        if (!out->read.chosen[i] || !brief_known(out->read.figure[i]) ||
            !brief_known(reading->now) || out->read.figure[i].exact == 0.0) {
            continue; /* 0: the string lies on the fret, which is as it was read */
        }
        if (out->one->stage != SIL_SADDLE) {
            neck = neck || differ(out->read.figure[i], b->first[i].now);
        } else if (differ(out->read.figure[i], b->action[i].now)) {
            bool by_nut = differ(out->read.figure[i], b->saddle.string[i].action_rod);
            nut = nut || by_nut;
            neck = neck || !by_nut || differ(b->saddle.string[i].action_rod, b->action[i].now);
        }
    }
    return neck && nut ? " once neck and nut are right"
           : nut       ? " once the nut is done"
           : neck      ? " once the neck is right"
                       : "";
}

out_of_range brief_out_of_range(const brief *b, sil_stage_name stage, bool high)
{
    out_of_range out = {.read = {.count = b->strings}, .by = {.count = b->strings}, .once = ""};
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        if (f->stage != stage || f->string < 0 || !brief_at_a_glance(f->code) ||
            says_high(f->code) != high) {
            continue;
        }
        double off = high ? f->read - f->high : f->low - f->read;
        out.read.chosen[f->string] = out.by.chosen[f->string] = true;
        out.read.figure[f->string] =
            stage == SIL_SADDLE ? figure_action(b->unit, f->read) : figure_nearest(b, f->read);
        out.by.figure[f->string] = figure_nearest(b, off);
        out.one = f;
    }
    out.once = out.one ? once_of(b, &out) : "";
    return out;
}

void tell_band(telling *t, double low, double high, int string)
{
    tell(t, " (range ");
    tell_figure(t, "low", string, figure_nearest(t->b, low));
    tell(t, " to ");
    tell_figure(t, "high", string, figure_nearest(t->b, high));
    tell(t, ")");
}

static bool all_known(const tell_list *list)
{
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i] && !brief_known(list->figure[i])) {
            return false;
        }
    }
    return true;
}

void tell_marks(const tell_list *list, telling *t)
{
    const brief_figure *least = NULL, *most = NULL;
    for (int i = 0; i < list->count; i++) {
        const brief_figure *it = &list->figure[i];
        least = list->chosen[i] && (!least || it->exact < least->exact) ? it : least;
        most = list->chosen[i] && (!most || it->exact > most->exact) ? it : most;
    }
    const char *low = least ? least->marks : "", *high = most ? most->marks : "";
    if (low[0] && high[0]) {
        bool one = strcmp(low, high) == 0;
        tell(t, " (%s%s%s)", low, one ? "" : " to ", one ? "" : high);
    }
}

/* Writes which strings are out, and once which work is done. */
static void tell_who(const out_of_range *out, bool high, bool named, brevity cut, telling *t)
{
    bool unnamed = cut >= NO_NAMES && cut < NO_FIGURES && out->once[0] != '\0' &&
                   tell_chosen(&out->read) == out->read.count && out->read.count > 1;
    if (!unnamed) {
        tell_which(t, &out->read);
    }
    if (named) {
        tell(t, "%s%s", unnamed ? "" : " ", high ? "high" : "low");
    }
    if (out->one && all_known(&out->read) && cut < NO_FIGURES) {
        const char *once = cut >= NO_REASON && named && out->once[0] ? " after that" : out->once;
        tell(t, "%s: ", once + (unnamed && !named ? 1 : 0));
    }
}

void tell_out(const out_of_range *out, bool high, bool named, brevity cut, telling *t)
{
    tell_who(out, high, named, cut, t);
    if (!out->one || !all_known(&out->read) || cut >= NO_FIGURES) {
        return;
    }
    tell_span(t, "read", &out->read);
    if (out->one->stage == SIL_SADDLE && !named) {
        tell_marks(&out->read, t);
    }
    if (cut >= NO_OFFS) {
        return;
    }
    if (tell_chosen(&out->read) == 1) {
        tell_band(t, out->one->low, out->one->high, out->one->string);
    } else {
        tell(t, ", %s by ", high ? "over" : "under");
        tell_span(t, "out", &out->by);
    }
}
