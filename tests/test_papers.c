/* SPDX-License-Identifier: MIT */
/* The papers of the parts, read back: dimensions and arrows at their scale, and what is said where
 * something is not known or not done. */
#include "../src/drawing/papers/papers.h"
#include <ctype.h>

#include "../src/drawing/papers/part.h"
#include "dimensions.h"

enum { JOBS = 90 };

/* --- the papers of the parts ------------------------------------------------------------------ */

/* A dimension on a paper is drawn at one of the scales of ISO 5455 that views have. */
static void every_dimension_is_to_scale(void **state)
{
    (void)state;
    static const double scales[] = {1, 2, 5, 10};
    static scene s = {.pack = true};
    uint64_t seed = 61;
    int count = 0;
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        for (int page = 0; page < s.drawing->paper_count; page++) {
            const draw_shapes *list = s.drawing->papers[page].shapes;
            for (int i = 0; i < list->count; i++) {
                dimension d;
                if (!read_dimension(list, i, &d) || strcmp(d.words, "-") == 0) {
                    continue;
                }
                bool any = false;
                for (int k = 0; k < 4; k++) {
                    any = any || fabs((d.tip[1] - d.tip[0]) / scales[k] - d.value) <= d.last + 1e-9;
                }
                assert_true(any);
                count++;
            }
        }
        take_down(&s);
    }
    assert_true(count > 300);
}

/* The row of centres that begins with 0 at the bass end: one line for each string beside it, all
 * from one edge, each as far along as its figure says. Returned: whether there is one. */
static bool look_at_centres(const draw_shapes *list, int strings)
{
    double x[SIL_STRINGS_MAX + 2], value[SIL_STRINGS_MAX + 2], zero = SIL_UNKNOWN, scale = 0;
    double edge = SIL_UNKNOWN, reach = SIL_UNKNOWN;
    int count = 0;
    for (int pass = 0; pass < 2; pass++) {
        for (int i = 0; i + 1 < list->count; i++) {
            const draw_point *p = points_of(list, i);
            if (!is_path(list, i, DRAW_DIMENSION, 4) ||
                list->shapes[i + 1].kind != DRAW_SHAPE_TEXT) {
                continue;
            }
            bool origin = strcmp(words_of(list, i + 1), "0") == 0;
            if (pass == 0 && origin) {
                zero = p[0].x;
                edge = p[0].y;
                reach = p[3].y;
            } else if (pass == 1 && !origin && fabs(p[3].y - reach) < 1e-6) {
                assert_true(count < SIL_STRINGS_MAX);
                near(p[0].y, edge, 1e-9);
                value[count] = atof(words_of(list, i + 1));
                x[count++] = p[0].x;
            }
        }
    }
    if (!sil_known(zero)) {
        return false;
    }
    assert_int_equal(count, strings);
    bool under_figures = false; /* of what is beyond the saddle */
    for (int i = 0; i < list->count; i++) {
        under_figures = under_figures || (list->shapes[i].kind == DRAW_SHAPE_TEXT &&
                                          fabs(list->shapes[i].box.bottom - edge - 0.8) < 1e-6);
    }
    assert_true((has_edge(list, true, edge + 0.8) || under_figures) && has_edge(list, false, zero));
    for (int k = 0; k < count; k++) {
        scale = k == 0 ? round(fabs(x[k] - zero) / value[k]) : scale;
        near(fabs(x[k] - zero), value[k] * scale, 0.006 * scale);
    }
    return true;
}

static void centres_are_told_from_the_bass_end(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 68;
    int rows[2] = {0, 0};
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        bool waits[] = {s.b->nut.remedy == SIL_NUT_WAIT,
                        s.b->saddle.remedy == SIL_SADDLE_WAIT ||
                            sil_working_turns(s.b->saddle.working)};
        for (int k = 0; k < 2; k++) {
            int page = sil_drawing_find(s.drawing, k == 0 ? "nut" : "saddle");
            int second = sil_drawing_find(s.drawing, k == 0 ? "nut-2" : "saddle-2");
            bool any =
                look_at_centres(s.drawing->papers[page].shapes, s.b->strings) ||
                (second >= 0 && look_at_centres(s.drawing->papers[second].shapes, s.b->strings));
            /* A nut too long for 2:1 has no magnified view: its table has the centres. */
            bool tabled = k == 0 && 2.0 * s.b->nut_part.length > DRAW_COLUMN - 30.0;
            assert_true(any != waits[k] || tabled);
            rows[k] += any;
        }
        take_down(&s);
    }
    assert_true(rows[0] > 20 && rows[1] > 20);
}

/* The key explains just those lines that are drawn. */
static void keys_explain_what_is_drawn(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 69;
    int keys = 0;
    for (int job = 0; job < 2 * JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        const brief_saddle *saddle = &s.b->saddle;
        if (saddle->remedy != SIL_SADDLE_WAIT && !sil_working_turns(saddle->working)) {
            const draw_shapes *list =
                s.drawing->papers[sil_drawing_find(s.drawing, "saddle")].shapes;
            bool worked = saddle->remedy != SIL_SADDLE_NONE;
            bool old = worked && s.b->saddle_part.present_top.count > 0;
            int now = count_words(list, saddle->replaced ? "the old saddle" : "as it is now");
            int whole = count_words(list, "whole cut, by today's reading");
            assert_int_equal(now, saddle->base || old);
            assert_int_equal(whole, saddle->base && !saddle->one_pass);
            assert_int_equal(count_words(list, "sand to here: all of it in one pass"),
                             saddle->takes_first && saddle->one_pass);
            assert_int_equal(count_words(list, "sand to here, then measure"),
                             saddle->takes_first && !saddle->one_pass);
            keys += now + whole;
        }
        take_down(&s);
    }
    assert_true(keys > 20);
}

/* Bass and treble at their own ends: within the part where there is room, else beside it. */
static void the_ends_are_named(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 62;
    for (int job = 0; job < 30; job++) {
        set_up_random(&s, &seed, 6);
        for (int k = 0; k < 4; k++) {
            double length = k % 2 == 0 ? 45 : 12, high = k < 2 ? 6 : 2;
            bool inside = k == 0;
            draw_shapes *list = empty_list(&s);
            paper_ends(s.draft, list, draw_place_part(s.draft, length, 2), length, 1, 1 + high);
            inside = inside || (k == 1 && 2 * length >= 24);
            assert_int_equal(list->count, 2);
            for (int i = 0; i < 2; i++) {
                bool low = (strcmp(words_of(list, i), "bass") == 0) != s.left;
                draw_box box = list->shapes[i].box;
                double end = low ? 0 : 2 * length, near_end = low ? box.left : box.right;
                double far_end = low ? box.right : box.left;
                assert_true(strcmp(words_of(list, i), i == 0 ? "bass" : "treble") == 0);
                assert_true(inside ? fabs(near_end - end) < 2 : fabs(far_end - end) < 3.5);
                assert_true(inside || (low ? box.right < 0 : box.left > end));
                assert_true(!inside || (box.left > 0 && box.right < 2 * length));
                assert_true(box.bottom > (inside ? 2 : 0) && box.top < (inside ? 2 + 2 * high : 5));
            }
            draw_shapes_free(list);
        }
        take_down(&s);
    }
}

/* --- templates and blanks --------------------------------------------------------------------- */

static void templates_say_what_they_leave_out(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 64;
    int looked = 0, faces[2] = {0}; /* of saddles, of bridges on feet */
    for (int job = 0; job < 2 * JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        part_saddle *part = &s.drawing->brief->saddle_part;
        bool off[SIL_STRINGS_MAX] = {false};
        for (int i = 0; i < part->strings; i++) {
            double reach = part->thickness / 2 + 3;
            part->filed[i] = job % 4 < 2 ? part->filed[i] : (i + job) % 3 == 0;
            part->peak[i] = (i + job) % 5 == 1 && job % 2 == 0 ? -reach - 0.1 : part->peak[i];
            off[i] = !sil_known(part->peak[i]) || fabs(part->peak[i]) > reach;
        }
        int from = s.drawing->paper_count;
        paper_templates(s.drawing);
        const draw_shapes *list = s.drawing->papers[from].shapes;
        const char *piece = s.b->saddle.working == SIL_WORKING_FEET ? "Bridge" : "Saddle";
        bool none = text_with(list, draw_say(s.draft, "%s face: no template", piece)) != NULL;
        if (text_with(list, draw_say(s.draft, "%s, face toward", piece)) != NULL || none) {
            assert_true(none == (part->finished_top.count == 0));
            faces[piece[0] == 'B']++;
        }
        const char *crosses =
            text_with(list, "On the top. Cross: where the string leaves the finished top");
        if (crosses != NULL) {
            const char *filed = draw_say_which(s.draft, "string", part->filed);
            const char *far = draw_say_which(s.draft, "string", off);
            const char *wanted = draw_say(
                s.draft, "On the top. Cross: where the string leaves the finished top%s%s%s%s.",
                *filed ? "; to be filed: " : "", filed, *far ? "; off the paper: " : "", far);
            bool cut = strcmp(crosses + strlen(crosses) - 3, "...") == 0; /* too long for it */
            assert_int_equal(strncmp(crosses, wanted, cut ? strlen(crosses) - 3 : strlen(wanted)),
                             0);
            const char *after = crosses + (cut ? 0 : strlen(wanted));
            assert_true(cut || *after == '\0' ||
                        (strcmp(after, " Arrow: toward its place in tune.") == 0 &&
                         paper_any_beyond(s.draft)));
            assert_true(!cut || strlen(wanted) > 80);
            looked++;
        }
        take_down(&s);
    }
    assert_true(looked > 40 && faces[0] > 20 && faces[1] > 3);
}

/* Why a part waits, with a capital and a full stop. */
static void reasons_are_sentences(void **state)
{
    (void)state;
    for (int code = 0; code < SIL_CODES; code++) {
        const char *words = brief_waits((sil_code)code);
        if (words == NULL) {
            continue;
        }
        const brief_stage waiting = {.waits = true, .why = {"another", words}, .whys = 2};
        const char *reason = paper_reason(drawn.draft, &waiting, 1);
        size_t length = strlen(reason);
        assert_int_equal(length, strlen(words) + 1);
        assert_int_equal(tolower((unsigned char)reason[0]), tolower((unsigned char)words[0]));
        assert_false(islower((unsigned char)reason[0]));
        assert_int_equal(strncmp(reason + 1, words + 1, length - 2), 0);
        assert_int_equal(reason[length - 1], '.');
    }
}

static void a_blank_is_ordered_with_its_facts(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 65;
    int orders = 0;
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        const brief_blank *blanks[] = {&s.b->nut.blank, &s.b->saddle.blank};
        bool ordered[] = {s.b->nut.remedy != SIL_NUT_WAIT && blanks[0]->ordered,
                          s.b->saddle.remedy != SIL_SADDLE_WAIT && blanks[1]->ordered};
        const char *part = "Blank order";
        assert_int_equal(rows_on(&s, 0, part, "quantity|1|string slots|none, we cut them"),
                         ordered[0]);
        assert_int_equal(rows_on(&s, 0, part, "quantity|1|string slots|none"), ordered[1]);
        int flat = 0;
        for (int k = 0; k < 2; k++) {
            flat += ordered[k] && !brief_known(blanks[k]->radius);
            orders += ordered[k];
            if (!ordered[k]) {
                continue;
            }
            const char *size =
                draw_say(s.draft, "height|%s|%s|%s", blanks[k]->height.shown,
                         blanks[k]->done_height.shown, blanks[k]->spare_height.shown);
            assert_true(!brief_known(blanks[k]->height) || rows_on(&s, 0, part, size) > 0);
        }
        assert_int_equal(
            rows_on(&s, 0, part, s.left ? "hand|left|top|flat" : "hand|right|top|flat"), flat);
        take_down(&s);
    }
    assert_true(orders > 40);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_dimension_is_to_scale),
        cmocka_unit_test(the_ends_are_named),
        cmocka_unit_test(templates_say_what_they_leave_out),
        cmocka_unit_test(centres_are_told_from_the_bass_end),
        cmocka_unit_test(keys_explain_what_is_drawn),
        cmocka_unit_test(reasons_are_sentences),
        cmocka_unit_test(a_blank_is_ordered_with_its_facts),
    };
    return cmocka_run_group_tests(tests, set_up_letters, take_down_letters);
}
