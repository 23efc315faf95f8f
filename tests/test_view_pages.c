/* SPDX-License-Identifier: MIT */
/* A view is one page that just holds it, however long it is; and papers that were one try too many
 * are no fault of the next. */
#include "viewed.h"

enum { JOBS = 72 };

/* A page's box holds all that is drawn, and no more than a margin beside it. */
static void look_at_page(const sil_drawing *drawing)
{
    const draw_shapes *list = drawing->papers[0].shapes;
    draw_box all = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (int i = 0; i < list->count; i++) {
        draw_box box = list->shapes[i].box;
        all = (draw_box){fmin(all.left, box.left), fmin(all.bottom, box.bottom),
                         fmax(all.right, box.right), fmax(all.top, box.top)};
    }
    assert_true(list->count > 0);
    assert_true(all.left > drawing->size.left && all.left < drawing->size.left + 10);
    assert_true(all.right < drawing->size.right && all.right > drawing->size.right - 10);
    assert_true(all.bottom > drawing->size.bottom && all.bottom < drawing->size.bottom + 10);
    assert_true(all.top < drawing->size.top && all.top > drawing->size.top - 30);
}

/* On the smallest paper, of as many strings as there are. */
static void a_view_is_one_page(void **state)
{
    (void)state;
    static scene s;
    static const sil_part parts[] = {SIL_PART_ALL, SIL_PART_NUT, SIL_PART_SADDLE};
    uint64_t seed = 67;
    int tall = 0, rows = 0;
    for (int job = 0; job < JOBS; job++) {
        int strings = job % 2 == 0 ? SIL_STRINGS_MAX : 1 + job % SIL_STRINGS_MAX;
        set_up_random(&s, &seed, strings);
        for (int k = 0; k < 3; k++) {
            sil_draw_options order = {.part = parts[k],
                                      .paper = job % 3 == 0 ? SIL_LETTER : SIL_A4,
                                      .unit = job % 4 < 2 ? SIL_MM : SIL_INCH,
                                      .all = true};
            sil_drawing *view = NULL;
            assert_true(sil_view_make(&s.plan, &order, &view) >= SIL_DONE);
            assert_int_equal(view->paper_count, 1);
            if (view->papers[0].shapes->count > 0) {
                look_at_page(view);
                tall += draw_box_height(view->size) > 190;
            }
            if (parts[k] == SIL_PART_NUT && s.b->nut.remedy != SIL_NUT_WAIT) {
                assert_int_equal(count_words(view->papers[0].shapes, "deepen"), 1);
                rows++;
            }
            sil_drawing_free(view);
        }
        take_down(&s);
    }
    assert_true(tall > 5 && rows > 20);
}

static void papers_taken_back_are_no_fault(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 68;
    const draw_heading heading = {"tried", "1:1", {"", ""}};
    set_up_random(&s, &seed, 6);
    int before = s.drawing->paper_count;
    while (!s.drawing->too_long) {
        draw_flow_begin(s.drawing, heading);
    }
    assert_int_equal(s.drawing->paper_count, DRAW_PAPERS_MAX);
    draw_flow_drop(s.drawing, before);
    assert_int_equal(s.drawing->paper_count, before);
    assert_false(s.drawing->too_long);
    draw_flow_begin(s.drawing, heading);
    assert_false(s.drawing->too_long);
    take_down(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_view_is_one_page),
        cmocka_unit_test(papers_taken_back_are_no_fault),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
