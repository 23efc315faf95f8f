/* SPDX-License-Identifier: MIT */
/* What the papers of the nut and the saddle share. */
#include <stddef.h>

#include "part.h"

void paper_ends(const draw_draft *draft, draw_shapes *list, draw_place place, double length,
                double from, double to)
{
    const double in = 1.2, out = 2.5, rise = 0.9, high = DRAW_NOTE + 2 * rise, wide = 24;
    bool left = draw_left_handed(draft);
    bool inside = (to - from) * place.up >= high && length * fabs(place.across) >= wide;
    draw_point bass = draw_at(place, 0, inside ? from : 0);
    draw_point treble = draw_at(place, length, inside ? from : 0);
    double off = (left ? -1 : 1) * (inside ? in : -out);
    bool bass_leads = left != inside;
    draw_text(list, DRAW_TEXT, (draw_point){bass.x + off, bass.y + rise}, DRAW_NOTE,
              bass_leads ? DRAW_LEFT : DRAW_RIGHT, 0, "bass");
    draw_text(list, DRAW_TEXT, (draw_point){treble.x - off, treble.y + rise}, DRAW_NOTE,
              bass_leads ? DRAW_RIGHT : DRAW_LEFT, 0, "treble");
}

void paper_length(const draw_draft *draft, draw_shapes *list, draw_place place, brief_figure length,
                  double y)
{
    draw_point a = draw_at(place, 0, 0), b = draw_at(place, length.exact, 0);
    a.y = b.y = y + 9;
    draw_dim_across(draft, list, a, b, y, length);
}

void paper_caption(draw_shapes *list, draw_anchor anchor, const char *words)
{
    if (list != NULL) {
        double x = anchor == DRAW_LEFT ? list->box.left : (list->box.left + list->box.right) / 2;
        draw_text(list, DRAW_TEXT, (draw_point){x, list->box.top + 4}, DRAW_NOTE, anchor, 0, words);
    }
}

/* Frees a view that is not put on the paper. If memory ran out while it was drawn, the choice made
 * by its size may be another than it should be, so the drawing is none. */
static void drop(const draw_flow *flow, draw_shapes *list)
{
    if (list == NULL || list->no_memory) {
        flow->drawing->no_memory = true;
    }
    draw_shapes_free(list);
}

static bool pair_fits(const draw_flow *flow, const draw_shapes *left, const draw_shapes *right)
{
    return left != NULL && right != NULL &&
           draw_box_width(left->box) + draw_box_width(right->box) + 5 <= flow->room.width;
}

static void put_pair(draw_flow *flow, draw_shapes *left, draw_shapes *right, double gap,
                     double follow)
{
    if (!pair_fits(flow, left, right)) {
        draw_flow_put(flow, left, DRAW_MIDDLE, gap, 0);
        draw_flow_put(flow, right, DRAW_MIDDLE, gap, follow);
        return;
    }
    draw_shapes *both = draw_flow_list(flow);
    draw_shapes_add(both, left, -left->box.left, -left->box.top);
    draw_shapes_add(both, right, flow->room.width - right->box.right, -right->box.top);
    draw_shapes_free(left);
    draw_shapes_free(right);
    draw_flow_put(flow, both, DRAW_LEFT, gap, follow);
}

void paper_headline(draw_flow *flow, const char *words)
{
    draw_shapes *list = draw_flow_list(flow);
    draw_text(list, DRAW_TEXT, (draw_point){0, 0}, DRAW_HEAD, DRAW_LEFT, 0, words);
    draw_shapes_strut(list, (draw_box){0, 0, 1, DRAW_HEAD});
    draw_flow_put(flow, list, DRAW_LEFT, flow->drawing->draft.dense ? 3 : 5, 0);
}

const char *paper_say_crest(const draw_draft *draft, brief_figure crest_at)
{
    return brief_known(crest_at)
               ? draw_say(draft, "%s from the bass end", draw_figure(draft, crest_at))
               : "";
}

const char *paper_say_ends(const draw_draft *draft, const brief_figure *ends)
{
    return brief_known(ends[BRIEF_BASS])
               ? draw_say(draft, "bass %s, treble %s", draw_figure(draft, ends[BRIEF_BASS]),
                          draw_figure(draft, ends[BRIEF_TREBLE]))
               : "";
}

const char *paper_say_lean(const draw_draft *draft, brief_figure lean, bool bass_to_head)
{
    return brief_known(lean)
               ? draw_say(draft, "%s\u00b0, bass end to the %s", draw_figure(draft, lean),
                          bass_to_head ? "headstock" : "tail")
               : "";
}

/* The width of all columns of the paper together. */
static double whole_width(const draw_flow *flow)
{
    int last = draw_paper_columns(flow->drawing) - 1;
    draw_room first_column = draw_paper_room(flow->drawing, &flow->heading, 0);
    draw_room last_column = draw_paper_room(flow->drawing, &flow->heading, last);
    return last_column.left + last_column.width - first_column.left;
}

static const double scales[] = {10, 5, 2}; /* ISO 5455 */
enum { SCALES = sizeof scales / sizeof *scales };

void paper_caption_within(const draw_flow *flow, draw_shapes *list, const char *view,
                          const char *shows)
{
    const draw_draft *draft = &flow->drawing->draft;
    const char *words = draw_say(draft, "%s: %s", view, shows);
    if (list == NULL || draw_text_width(list, words, DRAW_NOTE) <= whole_width(flow)) {
        paper_caption(list, DRAW_MIDDLE, words);
        return;
    }
    paper_caption(list, DRAW_MIDDLE, shows);
    paper_caption(list, DRAW_MIDDLE, draw_say(draft, "%s:", view));
}

double paper_full_size(double length)
{
    static const double reductions[] = {1, 0.5, 0.2, 0.1, 0.05, 0.02}; /* ISO 5455 */
    const double words = 14; /* bass and treble: in a piece at 1:1, beside a smaller one */
    int k = 0, last = sizeof reductions / sizeof *reductions - 1;
    while (k < last && length * reductions[k] + (k > 0 ? 2 * words : 0) > DRAW_COLUMN) {
        k++;
    }
    return reductions[k];
}

draw_shapes *paper_magnify(const draw_flow *flow, paper_view_at *view, double smallest,
                           double *scale)
{
    const double tallest = 84;
    for (int i = 0; i < SCALES; i++) {
        draw_shapes *list = view(flow, *scale = scales[i]);
        if (list == NULL || list->no_memory ||
            (draw_box_width(list->box) <= whole_width(flow) &&
             (draw_box_height(list->box) <= tallest || i == SCALES - 1))) {
            return list;
        }
        drop(flow, list);
    }
    *scale = smallest;
    return smallest > 0 ? view(flow, smallest) : NULL;
}

static draw_shapes *paper_beside(const draw_flow *flow, const draw_shapes *left,
                                 paper_view_at *view)
{
    const double tallest = 70;
    for (int i = 0; i < SCALES - 1; i++) {
        draw_shapes *list = view(flow, scales[i]);
        if (pair_fits(flow, left, list) && draw_box_height(list->box) <= tallest) {
            return list;
        }
        drop(flow, list);
    }
    return view(flow, scales[SCALES - 1]);
}

/* Puts the small views side by side, and the facts under the left one where that leaves the other as
 * large as it was, otherwise under both. Where the left one is too wide for that, the facts stand in
 * its place beside the other. */
static void put_views(draw_flow *flow, draw_shapes *left, paper_view_at *beside,
                      paper_facts_in *facts, double gap)
{
    draw_shapes *both = draw_flow_list(flow), *slim = facts(flow, 1);
    draw_shapes *alone = paper_beside(flow, left, beside);
    if (both != NULL && left != NULL && slim != NULL) {
        draw_shapes_add(both, left, 0, 0);
        if (slim->count > 0) {
            draw_shapes_add(both, slim, left->box.left, left->box.bottom - 5);
        }
    }
    if (!pair_fits(flow, left, alone)) {
        drop(flow, both);
        draw_flow_put(flow, left, DRAW_MIDDLE, gap, 0);
        put_pair(flow, slim, alone, gap, 0);
        return;
    }
    drop(flow, slim);
    draw_shapes *narrow = paper_beside(flow, both, beside);
    bool as_large = narrow != NULL && alone != NULL && pair_fits(flow, both, narrow) &&
                    draw_box_width(narrow->box) >= draw_box_width(alone->box);
    drop(flow, as_large ? left : both);
    drop(flow, as_large ? alone : narrow);
    put_pair(flow, as_large ? both : left, as_large ? narrow : alone, gap, 0);
    if (!as_large) {
        draw_flow_put(flow, facts(flow, 2), DRAW_LEFT, gap, 0);
    }
}

static double height_of(const draw_shapes *list)
{
    return list != NULL && list->box.left <= list->box.right ? draw_box_height(list->box) : 0;
}

/* Sets the caption of a view of this height clear of the facts above it, where all that follows leaves
 * room. Returned: how far it then is from them, at least the gap. */
static double give_air(draw_flow *flow, double height, double gap, double follow)
{
    const double clear = 5, exact = 0.01;
    double spare = flow->y - flow->room.bottom - height - follow - exact;
    double air = fmin(fmax(clear - gap, 0), fmax(spare, 0));
    if (height > 0 && flow->y < flow->room.top) {
        flow->y -= air;
    }
    return gap + air;
}

/* Puts all views with as little height as they need: the small one beside the large one, at the least
 * magnification, and the facts beside the left one; or else the two small ones side by side. */
static void put_close(draw_flow *flow, draw_shapes *left, paper_view_at *beside, draw_shapes *large,
                      paper_facts_in *facts, double gap, double follow)
{
    draw_shapes *small = beside(flow, scales[SCALES - 1]), *slim = facts(flow, 1);
    if (pair_fits(flow, large, small) && pair_fits(flow, left, slim)) {
        put_pair(flow, left, slim, gap, 0);
        give_air(flow, fmax(height_of(large), height_of(small)), gap, follow);
        put_pair(flow, large, small, gap, follow);
        return;
    }
    drop(flow, slim);
    put_pair(flow, left, small, gap, 0);
    draw_flow_put(flow, facts(flow, 2), DRAW_LEFT, gap, 0);
    give_air(flow, height_of(large), gap, follow);
    draw_flow_put(flow, large, DRAW_MIDDLE, gap, follow);
}

/* Puts the large view and what comes last. They stay together on one paper; where both do not go on this
 * one, and the last alone does, it stays with the views that are here and the large view goes on. */
static void put_large(draw_flow *flow, draw_shapes *large, draw_shapes *last, double gap,
                      double follow)
{
    double rest = flow->y - flow->room.bottom, table = follow - gap;
    double view = large != NULL ? draw_box_height(draw_shapes_box(large)) : 0;
    if (last != NULL && view > 0 && view + follow > rest && table <= rest) {
        draw_flow_put(flow, last, DRAW_LEFT, gap, 0);
        draw_flow_put(flow, large, DRAW_MIDDLE, gap, 0);
    } else {
        const double least =
            3.5; /* with less it goes on, so that all is set close, if that saves a sheet */
        double clear = give_air(flow, height_of(large), gap, follow);
        draw_flow_put(flow, large, DRAW_MIDDLE, gap, follow + fmax(least - clear, 0));
        draw_flow_put(flow, last, DRAW_LEFT, gap, 0);
    }
}

void paper_views(draw_flow *flow, draw_shapes *left, paper_view_at *beside, draw_shapes *large,
                 paper_facts_in *facts, draw_shapes *last, double gap)
{
    bool wide = draw_paper_columns(flow->drawing) > 1;
    double follow = last != NULL ? draw_box_height(draw_shapes_box(last)) + gap : 0;
    if (flow->drawing->draft.dense && !wide) {
        put_close(flow, left, beside, large, facts, gap, follow);
    } else if (wide) {
        draw_flow_band(flow, large, gap);
        put_views(flow, left, beside, facts, gap);
        draw_flow_next_column(flow);
    } else {
        put_views(flow, left, beside, facts, gap);
        put_large(flow, large, last, gap, follow);
        return;
    }
    draw_flow_put(flow, last, DRAW_LEFT, gap, 0);
}

void paper_pairs(draw_shapes *list, int columns, double tab, int count, const char *const *names,
                 const char *const *values)
{
    const double pitch = 4.7, second = DRAW_COLUMN / 2.0;
    int known = 0, put = 0;
    for (int i = 0; i < count; i++) {
        known += values[i][0] != '\0';
    }
    for (int i = 0; i < count; i++) {
        if (values[i][0] == '\0') {
            continue;
        }
        int rows = (known + columns - 1) / columns;
        double x = put >= rows ? second : 0, y = -DRAW_NOTE - put % rows * pitch;
        draw_note(list, x, y, names[i]);
        draw_note(list, x + tab, y, values[i]);
        put++;
    }
}
