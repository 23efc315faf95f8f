/* SPDX-License-Identifier: MIT */
/* The next step, large: what the bench card is for. */
#include "views.h"

static const double in = 4, label_width = 40, tick_box = 4.4;

/* The sizes of the figures, the largest that fits is taken, mm. ISO 3098. */
static const double sizes[] = {10, 7, DRAW_TITLE, DRAW_HEAD};
enum { SIZES = sizeof sizes / sizeof *sizes };

/* How a row of figures lies: so many to a band, bands one below the other. */
typedef struct lay {
    int each;
    double pitch, size;
} lay;

static double widest(const draw_draft *draft, const draw_shapes *list, const brief_large_row *row,
                     double size)
{
    double most = 0;
    for (int i = 0; i < row->count && list != NULL; i++) {
        most = fmax(most, draw_text_width(list, draw_figure(draft, row->said[i]->figure), size));
    }
    return most;
}

/* Whether a row fits in columns so wide, in letters of a size. */
static bool fits(const draw_draft *draft, const draw_shapes *list, const brief_large_row *row,
                 double size, double pitch)
{
    const double apart = 2.5;
    return row == NULL || widest(draft, list, row, size) + apart <= pitch;
}

static double largest(const draw_draft *draft, const draw_shapes *list, const brief_large_row *row,
                      double pitch)
{
    int k = 0;
    while (k + 1 < SIZES && !fits(draft, list, row, sizes[k], pitch)) {
        k++;
    }
    return sizes[k];
}

/* The largest figures that fit: in one band, or in two where they would be small or touch. Another row
 * may lie under them in the same columns. */
static lay lay_out(const draw_draft *draft, const draw_shapes *list, const brief_large_row *row,
                   const brief_large_row *under, view_room room, double width)
{
    const double most = 46; /* the widest column, mm */
    lay l = {row->count, fmin(width / row->count, most), 0};
    l.size = largest(draft, list, row, l.pitch);
    bool small = l.size < DRAW_TITLE && room != VIEW_SCARCE;
    if (row->count > 3 && (small || !fits(draft, list, row, l.size, l.pitch) ||
                           !fits(draft, list, under, DRAW_HEAD, l.pitch))) {
        l.each = (row->count + 1) / 2;
        l.pitch = fmin(width / l.each, most);
        l.size = fmin(largest(draft, list, row, l.pitch), sizes[1]);
    }
    return l;
}

/* What a figure belongs to: its string in a ring, its end, or its fret. */
static void put_mark(const draw_draft *draft, draw_shapes *list, draw_point at,
                     const brief_said *said)
{
    draw_point base = {at.x, at.y - DRAW_NOTE / 2};
    if (said->fret >= 0) {
        draw_text(list, DRAW_TEXT, base, DRAW_NOTE, DRAW_MIDDLE, 0,
                  draw_say(draft, "fret %d", said->fret));
    } else if (said->string >= 0) {
        draw_ring(list, at, said->string + 1);
    } else if (said->end != BRIEF_NO_END) {
        draw_text(list, DRAW_TEXT, base, DRAW_NOTE, DRAW_MIDDLE, 0,
                  said->end == BRIEF_TREBLE ? "treble" : "bass");
    }
}

static bool marked(const brief_large_row *row)
{
    const brief_said *first = row->said[0];
    return first->string >= 0 || first->end != BRIEF_NO_END || first->fret >= 0;
}

/* Whether the figures of two rows belong to the same strings or ends, so that one mark serves both. */
static bool share_marks(const brief_large_row *a, const brief_large_row *b)
{
    for (int i = 0; i < a->count && i < b->count; i++) {
        const brief_said *one = a->said[i], *other = b->said[i];
        if (one->string != other->string || one->end != other->end || one->fret != other->fret) {
            return false;
        }
    }
    return a->count == b->count;
}

static const char *say_label(const draw_draft *draft, const brief_large_row *row)
{
    return row->is_length ? draw_say(draft, "%s, %s", row->label, draft->brief->unit_name)
                          : row->label;
}

static const char *way_word(brief_way way)
{
    return way == BRIEF_DOWN      ? "down"
           : way == BRIEF_UP      ? "up"
           : way == BRIEF_BACK    ? "back"
           : way == BRIEF_FORWARD ? "forward"
                                  : "";
}

/* Draws one row of figures, from one of them on, and what they are at their left. Returned: the
 * bottom. */
static double put_figures(const draw_draft *draft, draw_shapes *list, const brief_large_row *row,
                          const lay *l, double size, int from, double top)
{
    const double gap = 3.5, two_lines = 10;
    const char *label = say_label(draft, row);
    bool wraps = list != NULL && draw_text_width(list, label, DRAW_NOTE) > label_width - in;
    double height = fmax(size + gap, wraps ? two_lines : 0), y = top - height / 2;
    draw_paragraph(list, in, y + (wraps ? 1.4 : 0.5) * DRAW_NOTE, label_width - in, DRAW_NOTE,
                   label);
    for (int i = from; i < from + l->each && i < row->count; i++) {
        double x = label_width + (i - from + 0.5) * l->pitch;
        draw_text(list, DRAW_TEXT, (draw_point){x, y - size / 2}, size, DRAW_MIDDLE, 0,
                  draw_figure(draft, row->said[i]->figure));
    }
    return top - height;
}

static double put_marks(const draw_draft *draft, draw_shapes *list, const brief_large_row *row,
                        const lay *l, int from, double top)
{
    const double high = 6.5, ways = row->has_way ? 4.5 : 0;
    if (!marked(row)) {
        return top;
    }
    for (int i = from; i < from + l->each && i < row->count; i++) {
        double x = label_width + (i - from + 0.5) * l->pitch;
        put_mark(draft, list, (draw_point){x, top - high / 2}, row->said[i]);
        if (ways > 0) {
            draw_text(list, DRAW_TEXT, (draw_point){x, top - high - DRAW_NOTE - 0.6}, DRAW_NOTE,
                      DRAW_MIDDLE, 0, way_word(row->said[i]->way));
        }
    }
    return top - high - ways;
}

/* Draws the figures to work to, and under each the one that goes with it. Returned: the bottom. */
static double put_rows(const draw_draft *draft, draw_shapes *list, const brief_large *next,
                       view_room room, double width, double top)
{
    double y = top;
    if (next->rows == 0) {
        return y;
    }
    const brief_large_row *first = &next->row[0], *second = next->rows > 1 ? &next->row[1] : NULL;
    bool together = second != NULL && share_marks(first, second);
    lay l = lay_out(draft, list, first, together ? second : NULL, room, width - label_width - in);
    double small = fmin(l.size, together ? largest(draft, list, second, l.pitch) : l.size);
    small = fmin(small, DRAW_TITLE);
    for (int from = 0; from < first->count; from += l.each) {
        y = put_figures(draft, list, first, &l, l.size, from,
                        put_marks(draft, list, first, &l, from, y));
        if (together) {
            y = put_figures(draft, list, second, &l, small, from, y);
        }
    }
    if (second != NULL && !together) {
        lay other = lay_out(draft, list, second, NULL, room, width - label_width - in);
        other.size = fmin(other.size, DRAW_TITLE);
        for (int from = 0; from < second->count; from += other.each) {
            y = put_figures(draft, list, second, &other, other.size, from,
                            put_marks(draft, list, second, &other, from, y - 1));
        }
    }
    return y;
}

void view_next(const draw_draft *draft, draw_shapes *list, int step, view_room room, double width)
{
    const brief_step *it = &draft->brief->steps[step];
    brief_large next = brief_large_of(draft->brief, step, draft->store);
    double y = -in - DRAW_NOTE;
    const char *which = draft->plan->done ? "LAST" : "NEXT";
    draw_note(list, in, y, draw_say(draft, "%s: step %d", which, step + 1));
    bool large = list != NULL && draw_text_width(list, next.title, 7) <= width - 2 * in;
    double size = large ? 7 : DRAW_TITLE;
    y -= 3.5 + size;
    draw_text(list, DRAW_TEXT, (draw_point){in, y}, size, DRAW_LEFT, 0, next.title);
    y = put_rows(draft, list, &next, room, width, y - 4);
    bool whole = room != VIEW_SCARCE || next.rows == 0;
    const char *words = whole ? it->what.words : it->first;
    if (words[0] != '\0') {
        y = draw_paragraph(list, in, y - 2.5, width - 2 * in, DRAW_NOTE,
                           draw_set_decimals(draft, words));
    }
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, y - in, width, 0});
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0.8, y - in + 0.8, width - 0.8, -0.8});
    draw_rectangle(list, DRAW_OUTLINE,
                   (draw_box){width - in - tick_box, -in - tick_box, width - in, -in});
}

/* Draws a step in small letters, with a box to tick and its number. */
static void put_line(draw_shapes *list, int step, double width, const char *words)
{
    const double number = 11, left = 15;
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, -tick_box, tick_box, 0});
    draw_number(list, (draw_point){number, -0.95 - DRAW_NOTE}, DRAW_NOTE, DRAW_RIGHT, step + 1);
    double y = draw_paragraph(list, left, -0.95, width - left, DRAW_NOTE, words);
    draw_shapes_strut(list, (draw_box){0, fmin(y - 1, -tick_box), 1, 0});
}

void view_before(const draw_draft *draft, draw_shapes *list, int step, double width)
{
    put_line(list, step, width, draw_set_decimals(draft, draft->brief->steps[step].what.words));
}

/* What a figure belongs to, in a line of words: "3: ", "fret 5: ", "treble ", "2: down ". */
static const char *say_mark(const draw_draft *draft, const brief_large_row *row, int i)
{
    const brief_said *said = row->said[i];
    const char *way = row->has_way ? way_word(said->way) : "", *gap = way[0] != '\0' ? " " : "";
    const char *end = said->end == BRIEF_TREBLE ? "treble "
                      : said->end == BRIEF_BASS ? "bass "
                                                : "";
    return said->fret >= 0     ? draw_say(draft, "fret %d: ", said->fret)
           : said->string >= 0 ? draw_say(draft, "%d: %s%s", said->string + 1, way, gap)
                               : draw_say(draft, "%s%s%s", end, way, gap);
}

void view_later(const draw_draft *draft, draw_shapes *list, int step, double width)
{
    brief_large next = brief_large_of(draft->brief, step, draft->store);
    const char *said = next.title;
    if (next.rows > 0) {
        said = draw_say(draft, "%s (%s):", said, say_label(draft, &next.row[0]));
    }
    for (int i = 0; next.rows > 0 && i < next.row[0].count; i++) {
        const brief_large_row *row = &next.row[0];
        said = draw_say(draft, "%s%s %s%s", said, i > 0 ? "," : "", say_mark(draft, row, i),
                        draw_figure(draft, row->said[i]->figure));
    }
    put_line(list, step, width, said);
}
