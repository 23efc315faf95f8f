/* SPDX-License-Identifier: MIT */
/* The part of the bench plan on bringing the strings into tune. */
#include "table.h"

static void put_ends(text *t, const brief *b)
{
    static const char *const sides[BRIEF_ENDS] = {"Treble", "Bass"};
    bool moves = b->tuning.remedy == SIL_TUNE_ENDS;
    for (int end = 0; end < BRIEF_ENDS && moves; end++) {
        brief_way way = b->tuning.end_way[end];
        text_add(t, "  %s side %s%s.\n", sides[end],
                 way == BRIEF_BACK      ? "back "
                 : way == BRIEF_FORWARD ? "forward "
                                        : "stays",
                 way == BRIEF_NO_WAY ? "" : b->tuning.end[end].shown);
    }
}

static void put_rows(text *t, const brief *b)
{
    report_table table = {.lines = 2,
                          .start = 14,
                          .columns = 6,
                          .column = {{.head = {"which way"}, .wide = 13, .left = true},
                                     {.head = {"cents", "read"}, .wide = REPORT_COLUMN},
                                     {.head = {"move", "by"}, .wide = REPORT_COLUMN},
                                     {.head = {"screw", "turns"}, .wide = REPORT_COLUMN},
                                     {.head = {"cents", "left"}, .wide = REPORT_COLUMN},
                                     {.head = {"peak from", "front"}, .wide = REPORT_COLUMN + 2}}};
    for (int i = 0; i < b->strings; i++) {
        const brief_tuned *string = &b->tuning.string[i];
        const char *cells[] = {string->verdict,     string->cents.shown, string->move.shown,
                               string->turns.shown, string->left.shown,  string->peak.shown};
        table.begin[i] = report_string(&table.kept, b, i, "");
        for (int c = 0; c < table.columns; c++) {
            report_cell(&table, i, c, cells[c]);
        }
    }
    report_put_table(t, &table, b->strings);
}

void report_tuning(text *t, const brief *b)
{
    const brief_tuning *tuning = &b->tuning;
    const char *why = brief_tune_waits(b->plan->tuning.waits);
    text_add(t, "\nIN TUNE AT FRET 12: %s%s%s", tuning->headline, why ? ": " : "", why ? why : "");
    if (brief_known(tuning->within)) {
        text_add(t, " (range %s cents either way)", tuning->within.shown + 1);
    }
    text_put(t, "\n");
    if (!tuning->read) {
        return;
    }
    put_rows(t, b);
    put_ends(t, b);
    text_put(t, "  Back is away from the nut, for a string that is sharp (+).\n");
}
