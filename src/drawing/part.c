/* SPDX-License-Identifier: MIT */
/* What the sheets of nut and saddle share. */
#include <stddef.h>

#include "part.h"

void sil_draw_ends(const sil_draft *draft, sil_shapes *list, sil_place place, double length,
                   double from, double to)
{
    const double in = 1.2, out = 2.5, rise = 0.9, high = SIL_NOTE + 2 * rise, wide = 24;
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    bool inside = (to - from) * place.up >= high && length * fabs(place.across) >= wide;
    sil_point bass = sil_at(place, 0, inside ? from : 0);
    sil_point treble = sil_at(place, length, inside ? from : 0);
    double off = (left ? -1 : 1) * (inside ? in : -out);
    bool bass_leads = left != inside;
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){bass.x + off, bass.y + rise}, SIL_NOTE,
                  bass_leads ? SIL_LEFT : SIL_RIGHT, 0, "bass");
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){treble.x - off, treble.y + rise}, SIL_NOTE,
                  bass_leads ? SIL_RIGHT : SIL_LEFT, 0, "treble");
}

void sil_draw_length(const sil_draft *draft, sil_shapes *list, sil_place place, double length,
                     double y)
{
    sil_point a = sil_at(place, 0, 0), b = sil_at(place, length, 0);
    a.y = b.y = y + 9;
    sil_dim_across(list, a, b, y, sil_say_length(draft, length).text);
}

void sil_caption(sil_shapes *list, sil_anchor anchor, const char *text)
{
    if (list != NULL) {
        double x = anchor == SIL_LEFT ? list->box.left : (list->box.left + list->box.right) / 2;
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x, list->box.top + 4}, SIL_NOTE, anchor, 0,
                      text);
    }
}

static bool pair_fits(const sil_flow *flow, const sil_shapes *left, const sil_shapes *right)
{
    return left != NULL && right != NULL &&
           sil_box_width(left->box) + sil_box_width(right->box) + 5 <= flow->room.width;
}

static void put_pair(sil_flow *flow, sil_shapes *left, sil_shapes *right, double gap)
{
    if (!pair_fits(flow, left, right)) {
        sil_flow_put(flow, left, SIL_MIDDLE, gap, 0);
        sil_flow_put(flow, right, SIL_MIDDLE, gap, 0);
        return;
    }
    sil_shapes *both = sil_flow_list(flow);
    sil_shapes_add(both, left, -left->box.left, -left->box.top);
    sil_shapes_add(both, right, flow->room.width - right->box.right, -right->box.top);
    sil_shapes_free(left);
    sil_shapes_free(right);
    sil_flow_put(flow, both, SIL_LEFT, gap, 0);
}

void sil_flow_headline(sil_flow *flow, const char *text)
{
    sil_shapes *list = sil_flow_list(flow);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){0, 0}, SIL_HEAD, SIL_LEFT, 0, text);
    sil_shapes_strut(list, (sil_box){0, 0, 1, SIL_HEAD});
    sil_flow_put(flow, list, SIL_LEFT, 5, 0);
}

sil_words sil_say_blank(const sil_draft *draft, sil_blank blank)
{
    const char *unit = sil_unit_name(draft);
    if (!sil_known(blank.length + blank.thickness + blank.height)) {
        return sil_say("%s", "");
    }
    return sil_say(", blank %s \u00d7 %s \u00d7 %s %s", sil_say_size(draft, blank.length).text,
                   sil_say_size(draft, blank.thickness).text,
                   sil_say_size(draft, blank.height).text, unit);
}

sil_words sil_say_lean(const sil_draft *draft, double slant)
{
    double degrees = fabs(slant) * 180 / 3.14159265358979323846;
    return degrees < 0.05
               ? sil_say("%s", "")
               : sil_say("%s\u00b0, bass end toward the %s", sil_say_number(draft, degrees, 1).text,
                         slant < 0 ? "head" : "tail");
}

/* All columns of the sheet. */
static double whole_width(const sil_flow *flow)
{
    int last = sil_sheet_columns(flow->drawing) - 1;
    sil_room first_column = sil_sheet_room(flow->drawing, &flow->heading, 0);
    sil_room last_column = sil_sheet_room(flow->drawing, &flow->heading, last);
    return last_column.left + last_column.width - first_column.left;
}

static const double scales[] = {10, 5, 2}; /* ISO 5455 */
enum { SCALES = sizeof scales / sizeof *scales };

sil_shapes *sil_magnify(const sil_flow *flow, sil_view_at *view)
{
    const double tallest = 85;
    for (int i = 0; i < SCALES; i++) {
        sil_shapes *list = view(flow, scales[i]);
        if (list == NULL || (sil_box_width(list->box) <= whole_width(flow) &&
                             sil_box_height(list->box) <= tallest)) {
            return list;
        }
        sil_shapes_free(list);
    }
    return view(flow, 1);
}

sil_shapes *sil_beside(const sil_flow *flow, const sil_shapes *left, sil_view_at *view)
{
    const double tallest = 65;
    for (int i = 0; i < SCALES - 1; i++) {
        sil_shapes *list = view(flow, scales[i]);
        if (pair_fits(flow, left, list) && sil_box_height(list->box) <= tallest) {
            return list;
        }
        sil_shapes_free(list);
    }
    return view(flow, scales[SCALES - 1]);
}

void sil_flow_pair_and_large(sil_flow *flow, sil_shapes *left, sil_shapes *right, sil_shapes *large,
                             double gap)
{
    bool wide = sil_sheet_columns(flow->drawing) > 1;
    if (wide) {
        sil_flow_band(flow, large, gap);
    }
    put_pair(flow, left, right, gap);
    if (wide) {
        sil_flow_next_column(flow);
    } else {
        sil_flow_put(flow, large, SIL_MIDDLE, gap, 0);
    }
}

void sil_draw_pairs(sil_shapes *list, double tab, int count, const char *const *names,
                    const sil_words *values)
{
    double y = -SIL_NOTE;
    for (int i = 0; i < count; i++) {
        if (values[i].text[0] == '\0') {
            continue;
        }
        sil_draw_note(list, 0, y, names[i]);
        sil_draw_note(list, tab, y, values[i].text);
        y -= 4.7;
    }
}
