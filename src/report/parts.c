/* SPDX-License-Identifier: MIT */
/* The tables of the nut and the saddle in the bench plan. */
#include "lines.h"

/* Puts the head of a table, `lines` rows high. The first word follows the space for the string
 * and its verdict. Each other word is aligned at the right of its column. */
static void put_heads(text *t, int lines, int columns, const char *const *heads)
{
    for (int line = 0; line < lines; line++, heads += columns) {
        text_add(t, "  %-12s %-16s", line == 0 ? "string" : "", heads[0]);
        for (int column = 1; column < columns; column++) {
            text_right(t, REPORT_COLUMN, heads[column]);
        }
        text_put(t, "\n");
    }
}

static void put_cell(text *t, brief_figure figure)
{
    text_right(t, REPORT_COLUMN, figure.shown);
}

/* Says that a part waits: "WAIT: nothing is cut at the nut today", and every reason for it. */
static void put_waiting(text *t, const char *part, const brief_stage *stage)
{
    text words = {0};
    text_add(&words, "WAIT: nothing is cut at the %s today", part);
    for (int k = 0; k < stage->whys; k++) {
        text_add(&words, "%s%s", k == 0 ? ": " : "; ", stage->why[k]);
    }
    text_put(&words, ". Figures are a forecast, not to cut by.");
    text_put(t, "  ");
    report_wrap(t, &words, 2);
}

static const char *does_word(brief_does does)
{
    switch (does) {
    case BRIEF_LEAVES:
        return "leave";
    case BRIEF_FILES:
        return "deeper";
    case BRIEF_FILLS:
        return "fill";
    case BRIEF_NEW:
        return "new";
    case BRIEF_LOWERS:
        return "lower";
    case BRIEF_RAISES:
        return "raise";
    case BRIEF_WAITS:
        return "wait";
    }
    return "";
}

/* Starts a row: the string, what is done to it, how far off it is, and its measuring error. */
static void begin_row(text *t, int i, brief_does does, brief_figure off, brief_figure sure)
{
    text_add(t, "  %2d  %-8s ", i + 1, does_word(does));
    text_right(t, 6, off.shown);
    text_put(t, brief_known(sure) ? " \u00b1" : "  ");
    text_left(t, 8, brief_known(sure) ? sure.shown : "");
}

static void put_blank(text *t, const brief_blank *blank)
{
    if (blank->ordered && blank->complete) {
        text_add(t, "  A new one: a blank of %s x %s x %s, fitting allowance included.\n",
                 blank->length.shown, blank->thickness.shown, blank->height.shown);
    }
}

void report_nut(text *t, const brief *b)
{
    static const char *const heads[] = {
        "too high by", "first",   "feelers", "feelers", "floor", "depth",   "slot", "centre", "",
        "pass",        "to stop", "to stop", "above",   "below", "width",   "from", "",       "",
        "now",         "final",   "bottom",  "the top", "",      "bass end"};
    text_put(t, "\nNUT: where each slot goes, how wide and how deep\n");
    if (b->stage[BRIEF_NUT].waits) {
        put_waiting(t, "nut", &b->stage[BRIEF_NUT]);
    }
    put_heads(t, 3, 8, heads);
    for (int i = 0; i < b->strings; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        begin_row(t, i, slot->does, slot->off, slot->sure);
        put_cell(t, slot->first);
        put_cell(t, slot->stack_now);
        put_cell(t, slot->stack);
        put_cell(t, slot->floor);
        put_cell(t, slot->depth);
        put_cell(t, slot->width);
        put_cell(t, slot->along);
        text_put(t, "\n");
    }
    if (b->nut.stack_words[0]) {
        text_add(t, "  %s\n", b->nut.stack_words);
    }
    put_blank(t, &b->nut.blank);
    if (b->nut.zero_fret) {
        text_put(t, "  The zero fret sets the height here; the slots only guide, and none is filed "
                    "for height.\n");
    }
}

static const char *way_word(brief_way way)
{
    return way == BRIEF_DOWN ? "down" : way == BRIEF_UP ? "up" : "-";
}

static void put_screw_row(text *t, const brief_bearing *bearing)
{
    put_cell(t, bearing->first);
    put_cell(t, bearing->turns);
    text_right(t, REPORT_COLUMN, way_word(bearing->way));
}

static void put_sanded_row(text *t, const brief_bearing *bearing)
{
    bool none = bearing->base_first.exact < 0.01 && bearing->base_all.exact >= 0.01;
    if (none) { /* something is to come off, and nothing of it today */
        text_right(t, REPORT_COLUMN, "-");
    } else {
        put_cell(t, bearing->base_first);
    }
    put_cell(t, bearing->base_all);
    put_cell(t, bearing->dress);
    put_cell(t, bearing->present);
    put_cell(t, bearing->height);
    put_cell(t, bearing->out);
}

static void put_post_row(text *t, const brief_bearing *bearing)
{
    put_cell(t, bearing->height);
}

static void put_posts(text *t, const brief_saddle *saddle)
{
    for (brief_end end = BRIEF_TREBLE; end < BRIEF_ENDS && saddle->posts; end++) {
        const brief_post *post = &saddle->post[end];
        text_put(t, end == BRIEF_TREBLE ? "  Treble post " : "  Bass post ");
        if (post->way == BRIEF_NO_WAY) {
            text_put(t, "as it is.\n");
        } else {
            text_store store = {0};
            text_add(t, "%s %s, %s.\n", way_word(post->way), post->moves.shown,
                     brief_turns(&store, post->turns));
            text_store_free(&store);
        }
    }
}

/* A table of the saddle: its heads, the number of its columns, and the function that puts the
 * rest of a row. */
typedef struct saddle_table {
    const char *const *heads;
    int columns;
    void (*row)(text *t, const brief_bearing *bearing);
} saddle_table;

static saddle_table table_of(sil_working working)
{
    static const char *const screws[] = {"too high by", "first", "screw", "which", "",
                                         "pass",        "turns", "way"};
    static const char *const posts[] = {"too high by", "height", "", "done"};
    static const char *const sanded[] = {"too high by", "bottom,", "bottom,", "off the", "height",
                                         "height",      "out of",  "",        "first",   "in all",
                                         "top",         "now",     "done",    "bridge"};
    if (working == SIL_WORKING_SCREWS) {
        return (saddle_table){screws, 4, put_screw_row};
    }
    return sil_working_cuts(working) ? (saddle_table){sanded, 7, put_sanded_row}
                                     : (saddle_table){posts, 2, put_post_row};
}

void report_saddle(text *t, const brief *b)
{
    const brief_saddle *saddle = &b->saddle;
    saddle_table table = table_of(saddle->working);
    text_put(t, "\nSADDLE: how far each string must move\n");
    if (b->stage[BRIEF_SADDLE].waits) {
        put_waiting(t, "saddle", &b->stage[BRIEF_SADDLE]);
    }
    put_heads(t, 2, table.columns, table.heads);
    for (int i = 0; i < b->strings; i++) {
        const brief_bearing *bearing = &saddle->string[i];
        begin_row(t, i, bearing->does, bearing->off, bearing->sure);
        table.row(t, bearing);
        text_put(t, "\n");
    }
    put_posts(t, saddle);
    put_blank(t, &saddle->blank);
    text_put(t, "  Too high by: the whole way to the target; a minus is too low. \u00b1 is the "
                "measuring error\n  (two standard uncertainties).");
    /* Those in range go too: set by their screws with the others, or made anew. */
    bool along = saddle->replaced || (saddle->remedy == SIL_SADDLE_SCREW && !saddle->posts);
    text_put(t, along ? "\n" : " A string in its range is left alone.\n");
    if (brief_known(saddle->left_on) && saddle->in_slot) {
        text_put(t, "  Less off the top than a file can feel is left on.\n");
    }
}
