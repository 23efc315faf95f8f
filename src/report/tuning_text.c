/* SPDX-License-Identifier: MIT */
/* The part of the bench plan on bringing the strings into tune. */
#include "lines.h"

static void put_cell(text *t, brief_figure figure)
{
    text_right(t, REPORT_COLUMN, figure.shown);
}

static bool any_peak(const brief *b)
{
    for (int i = 0; i < b->strings; i++) {
        if (brief_known(b->tuning.string[i].peak)) {
            return true;
        }
    }
    return false;
}

static void put_row(text *t, const brief *b, int i, bool peaks)
{
    const brief_tuned *string = &b->tuning.string[i];
    report_string(t, b, i);
    text_left(t, 13, string->verdict);
    put_cell(t, string->cents);
    put_cell(t, string->move);
    put_cell(t, string->turns);
    put_cell(t, string->left);
    if (peaks) {
        put_cell(t, string->peak);
    }
    text_put(t, "\n");
}

static void put_ends(text *t, const brief *b)
{
    static const char *const sides[BRIEF_ENDS] = {"Treble", "Bass"};
    bool moves = b->tuning.remedy == SIL_TUNE_ENDS;
    for (int end = 0; end < BRIEF_ENDS && moves; end++) {
        brief_way way = b->tuning.end_way[end];
        text_add(t, "  %s side %s %s.\n", sides[end],
                 way == BRIEF_BACK      ? "back"
                 : way == BRIEF_FORWARD ? "forward"
                                        : "stays",
                 way == BRIEF_NO_WAY ? "" : b->tuning.end[end].shown);
    }
}

static void put_heads(text *t, bool peaks)
{
    static const char *const heads[2][5] = {{"cents", "move", "screw", "cents", "peak from"},
                                            {"read", "by", "turns", "left", "front"}};
    for (int line = 0; line < 2; line++) {
        text_add(t, "  %-12s%-13s", line == 0 ? "string" : "", line == 0 ? "which way" : "");
        for (int column = 0; column < (peaks ? 5 : 4); column++) {
            text_right(t, column < 4 ? REPORT_COLUMN : REPORT_COLUMN + 2, heads[line][column]);
        }
        text_put(t, "\n");
    }
}

void report_tuning(text *t, const brief *b)
{
    const brief_tuning *tuning = &b->tuning;
    const char *why = brief_tune_waits(b->plan->tuning.waits);
    bool peaks = any_peak(b);
    text_add(t, "\nIN TUNE AT FRET 12: %s%s%s", tuning->headline, why ? ": " : "", why ? why : "");
    if (brief_known(tuning->within)) {
        text_add(t, " (range %s cents either way)", tuning->within.shown + 1);
    }
    text_put(t, "\n");
    if (!tuning->read) {
        return;
    }
    put_heads(t, peaks);
    for (int i = 0; i < b->strings; i++) {
        put_row(t, b, i, peaks);
    }
    put_ends(t, b);
    text_put(t, "  Back is away from the nut, for a string that is sharp (+).\n");
}
