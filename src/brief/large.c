/* SPDX-License-Identifier: MIT */
#include "large.h"

#include <string.h>

#include "acts.h"

static bool is_one_of(const char *of, const char *const *words)
{
    while (*words != NULL && strcmp(of, *words) != 0) {
        words++;
    }
    return *words != NULL;
}

/* Turns of a tuning screw stand under the move that they make, which has its way. */
static const char *const turned[] = {"turns", "tune-turns", NULL};
static const char *const moved[] = {"turns", "tune", "tune-end", NULL};

static void add_row(const brief *b, const brief_sentence *sentence, act_figure worked,
                    brief_large *next)
{
    brief_large_row *row = &next->row[next->rows];
    *row = (brief_large_row){.label = worked.label,
                             .until = worked.until,
                             .is_length = !is_one_of(worked.of, turned),
                             .has_way = is_one_of(worked.of, moved)};
    for (int i = sentence->first; i < sentence->first + sentence->count; i++) {
        const brief_said *said = &b->said[i];
        if (strcmp(said->of, worked.of) == 0 && brief_known(said->figure) &&
            row->count < BRIEF_LARGE_FIGURES) {
            row->said[row->count++] = said;
        }
    }
    next->rows += row->count > 0;
}

/* Filing and dressing where no pass is safe with the tools of the sheet: the step then is to measure
 * with a finer one. */
static bool measures_finer(sil_act act, const brief_large *next)
{
    bool cuts =
        act == SIL_ACT_FILE_SLOTS || act == SIL_ACT_SAND_SADDLE || act == SIL_ACT_DRESS_SADDLE;
    return cuts && next->rows == 0;
}

static const char *title_of(const brief *b, int k, const brief_large *next, text_store *store)
{
    const brief_step *step = &b->steps[k];
    const char *words = act_called(b->plan, step->act);
    if (measures_finer(step->act, next)) {
        return "Measure with a finer tool";
    }
    if (step->act == SIL_ACT_STOP) {
        return b->row.next[0] != '\0' ? text_keep(store, "Stop: %s", b->row.next) : "Stop";
    }
    if (step->act == SIL_ACT_PREPARE) {
        return k == b->next.step ? text_keep_capital(store, b->row.next) : "Get ready";
    }
    if (step->act == SIL_ACT_CHECK) {
        return b->plan->done ? "Done: play it and listen" : "Tune, and measure everything again";
    }
    if (step->act == SIL_ACT_ROD) {
        return step->what.way == BRIEF_EASE ? "Ease the truss rod" : "Tighten the truss rod";
    }
    if (step->act == SIL_ACT_FILE_SLOTS && next->row[0].count == 1) {
        return "File the nut slot";
    }
    return text_keep_capital(store, words != NULL ? words : "");
}

/* Where the tool of the sheet allows no pass at the saddle's bottom, there is no figure to work to; and
 * a top that waits for the bottom has its whole cut in the sentence. */
static act_words words_of(const brief *b, sil_act act)
{
    act_words words = act_words_of(act);
    if (act == SIL_ACT_SAND_SADDLE && !b->saddle.takes_first) {
        words.large[0].of = NULL;
    }
    if (act == SIL_ACT_DRESS_SADDLE && b->saddle.dresses_later) {
        words.large[0].label = "off the top, in all";
    }
    return words;
}

brief_large brief_large_of(const brief *b, int step, text_store *store)
{
    const brief_step *it = &b->steps[step];
    act_words words = words_of(b, it->act);
    brief_large next = {.title = ""};
    for (int r = 0; r < BRIEF_LARGE_ROWS && words.large[r].of != NULL; r++) {
        add_row(b, &it->what, words.large[r], &next);
    }
    next.title = title_of(b, step, &next, store);
    return next;
}

/* The figures of a row: of the outer strings both, string 1 first; of others the least and the most. */
static const char *span_of(const brief *b, const brief_large_row *row, text_store *store)
{
    const brief_said *least = row->said[0], *most = row->said[0];
    for (int i = 1; i < row->count; i++) {
        least = row->said[i]->figure.exact < least->figure.exact ? row->said[i] : least;
        most = row->said[i]->figure.exact > most->figure.exact ? row->said[i] : most;
    }
    if (row->count == 2 && row->said[0]->string == 0 && row->said[1]->string == b->strings - 1) {
        return text_keep(store, "%s / %s", row->said[0]->figure.shown, row->said[1]->figure.shown);
    }
    return brief_from_to(store, least->figure.shown, most->figure.shown);
}

const char *brief_large_line(const brief *b, int step, const brief_large *large, text_store *store)
{
    const brief_large_row *row = &large->row[0];
    if (large->rows == 0 || row->until == NULL) {
        return b->next.in_short[step];
    }
    return text_keep(store, "%s%s %s %s", large->title, row->until, span_of(b, row, store),
                     b->unit_name);
}
