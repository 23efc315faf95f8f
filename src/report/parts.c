/* SPDX-License-Identifier: MIT */
/* The tables of the nut and the saddle in the bench plan. */
#include "table.h"

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

/* The head of a table of a part; the first column is how far each string is off. */
static report_table begin_table(int lines, int columns, const char *const *heads)
{
    report_table table = {.lines = lines, .start = 15, .columns = columns};
    for (int c = 0; c < columns; c++) {
        report_column *column = &table.column[c];
        column->wide = c == 0 ? 16 : REPORT_COLUMN;
        column->left = c == 0;
        for (int line = 0; line < lines; line++) {
            column->head[line] = heads[line * columns + c];
        }
    }
    return table;
}

/* Starts a row: the string, what is done to it, how far off it is, and its measuring error. */
static void begin_row(report_table *table, int i, brief_does does, const brief_figure *off,
                      const brief_figure *sure)
{
    text words = {0};
    table->begin[i] = text_keep(&table->kept, "  %2d  %-8s ", i + 1, does_word(does));
    text_right(&words, 6, off->shown);
    if (brief_known(*sure)) {
        text_add(&words, " \u00b1%s", sure->shown);
    }
    report_made(table, i, 0, brief_known(*off), &words);
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
    report_table table = begin_table(3, 8, heads);
    for (int i = 0; i < b->strings; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        const brief_figure *cells[] = {&slot->first, &slot->stack_now, &slot->stack, &slot->floor,
                                       &slot->depth, &slot->width,     &slot->along};
        begin_row(&table, i, slot->does, &slot->off, &slot->sure);
        for (int c = 1; c < table.columns; c++) {
            report_cell(&table, i, c, cells[c - 1]->shown);
        }
    }
    report_put_table(t, &table, b->strings);
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

static void fill_screw_row(report_table *table, int i, const brief_saddle *saddle)
{
    const brief_bearing *bearing = &saddle->string[i];
    report_cell(table, i, 1, bearing->first.shown);
    report_cell(table, i, 2, bearing->turns.shown);
    report_cell(table, i, 3, way_word(bearing->way));
}

static void fill_sanded_row(report_table *table, int i, const brief_saddle *saddle)
{
    const brief_bearing *bearing = &saddle->string[i];
    report_cell(table, i, 1, bearing->base_first.shown);
    report_cell(table, i, 2, bearing->base_all.shown);
    report_cell(table, i, 3, saddle->dresses_later ? "-" : bearing->dress_now.shown);
    report_cell(table, i, 4, bearing->dress.shown);
    report_cell(table, i, 5, bearing->present.shown);
    report_cell(table, i, 6, bearing->height.shown);
    report_cell(table, i, 7, bearing->out.shown);
}

static void fill_post_row(report_table *table, int i, const brief_saddle *saddle)
{
    report_cell(table, i, 1, saddle->string[i].height.shown);
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

/* A table of the saddle: its heads, the number of its columns, and the function that fills the
 * rest of a row. */
typedef struct saddle_table {
    const char *const *heads;
    int columns;
    void (*row)(report_table *table, int i, const brief_saddle *saddle);
} saddle_table;

static saddle_table table_of(sil_working working)
{
    static const char *const screws[] = {"too high by", "first", "screw", "which", "",
                                         "pass",        "turns", "way"};
    static const char *const posts[] = {"too high by", "height", "", "done"};
    static const char *const sanded[] = {
        "too high by", "bottom,", "bottom,", "top,",   "top,", "height", "height", "out of", "",
        "first",       "in all",  "first",   "in all", "now",  "done",   "bridge"};
    if (working == SIL_WORKING_SCREWS) {
        return (saddle_table){screws, 4, fill_screw_row};
    }
    return sil_working_cuts(working) ? (saddle_table){sanded, 8, fill_sanded_row}
                                     : (saddle_table){posts, 2, fill_post_row};
}

/* Says what the first column means. */
static void put_off_words(text *t, const brief_saddle *saddle)
{
    /* Those in range go too: set by their screws with the others, or made anew. */
    bool along = saddle->replaced || (saddle->remedy == SIL_SADDLE_SCREW && !saddle->posts);
    text_put(t, "  Too high by: the whole way to the target; a minus is too low. \u00b1 is the "
                "measuring error\n  (two standard uncertainties).");
    text_put(t, along ? "\n" : " A string in its range is left alone.\n");
}

void report_saddle(text *t, const brief *b)
{
    const brief_saddle *saddle = &b->saddle;
    saddle_table kind = table_of(saddle->working);
    report_table table = begin_table(2, kind.columns, kind.heads);
    text_put(t, "\nSADDLE: how far each string must move\n");
    if (b->stage[BRIEF_SADDLE].waits) {
        put_waiting(t, "saddle", &b->stage[BRIEF_SADDLE]);
    }
    for (int i = 0; i < b->strings; i++) {
        const brief_bearing *bearing = &saddle->string[i];
        begin_row(&table, i, bearing->does, &bearing->off, &bearing->sure);
        kind.row(&table, i, saddle);
    }
    bool off = table.column[0].told;
    report_put_table(t, &table, b->strings);
    put_posts(t, saddle);
    put_blank(t, &saddle->blank);
    if (off) {
        put_off_words(t, saddle);
    }
    if (brief_known(saddle->left_on) && saddle->in_slot) {
        text_put(t, "  Less off the top than a file can feel is left on.\n");
    }
}
