/* SPDX-License-Identifier: MIT */
/* The caption over the saddle's magnified view: where it would be wider than the paper it takes two
 * lines, and the view keeps its scale. */
#include <sillet/drawing.h>
#include <sillet/sheet.h>

#include "viewed.h"

#define STRINGED                                                                                   \
    "sillet: 1\nprofile: steel-string-acoustic\ninstrument: {crown: 1.1, rod: two-way}\n"
#define READ                                                                                       \
    "readings:\n  - relief: 0.2\n    first: 0.06\n    action: {treble: 2.3, bass: 2.9}\n"          \
    "    frets: sound\n    stands_out: {treble: 4, bass: 6}\n    condition: {saddle: firm}\n"

/* Draws the saddle's paper of a sheet and returns it; the drawing is the caller's. */
static const draw_shapes *draw_saddle(const char *saddle, sil_unit unit, sil_drawing **drawing)
{
    static char bytes[2048];
    static sil_plan plan;
    static sil_sheet *sheet;
    sil_draw_options order = {.part = SIL_PART_ALL, .paper = SIL_A4, .unit = unit};
    snprintf(bytes, sizeof bytes, STRINGED "saddle: {%s}\n" READ, saddle);
    sil_sheet_free(sheet);
    assert_int_equal(sil_sheet_read_bytes(bytes, strlen(bytes), "a sheet", "profiles", &sheet),
                     SIL_DONE);
    plan_into(sil_sheet_job(sheet), &plan);
    assert_int_equal(sil_drawing_make(&plan, &order, drawing), SIL_DONE);
    int page = sil_drawing_find(*drawing, "saddle");
    assert_true(page >= 0);
    return (*drawing)->papers[page].shapes;
}

/* A glued saddle 1.5 thick, with arrows to places in tune that are off it. Its limits in inches are the
 * longest. */
static void a_long_caption_leaves_the_view_its_scale(void **state)
{
    (void)state;
    static const char *const glued =
        "kind: glued, slot_depth: 5, thickness: 1.5, setback: {treble: 2.0, bass: 4.5}";
    static const char *const marks =
        "cross: where the string leaves the finished top; arrow: toward "
        "where it would play in tune";
    sil_drawing *drawing = NULL;
    const draw_shapes *list = draw_saddle(glued, SIL_INCH, &drawing);
    assert_int_equal(count_words(list, "Face and plan 2:1 from the tail: finished heights over the "
                                       "bridge +0.002/0"),
                     1);
    assert_int_equal(count_words(list, marks), 1);
    sil_drawing_free(drawing);
    list = draw_saddle(glued, SIL_MM, &drawing);
    assert_int_equal(count_words(list, "Face and plan 2:1 from the tail: finished heights over the "
                                       "bridge +0.05/0"),
                     1);
    assert_int_equal(count_words(list, marks), 1);
    sil_drawing_free(drawing);
}

/* A random job whose saddle has a first pass off its bottom. */
static void set_up_first_pass(scene *s, uint64_t *seed, int strings)
{
    set_up_random(s, seed, strings);
    while (!s->b->saddle.takes_first) {
        take_down(s);
        set_up_random(s, seed, strings);
    }
}

/* The caliper's two stops stand at the strings they belong to; of one string there is one. */
static void the_first_pass_names_both_outer_strings(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 51;
    for (int strings = 1; strings <= 12; strings++) {
        set_up_first_pass(&s, &seed, strings);
        const brief_figure *caliper = s.b->saddle.caliper;
        char words[100];
        int length = snprintf(words, sizeof words, "%s", caliper[BRIEF_TREBLE].shown);
        if (strings > 1) {
            snprintf(words + length, sizeof words - (size_t)length,
                     " at string 1,  %s at string %d", caliper[BRIEF_BASS].shown, strings);
        }
        int page = sil_drawing_find(s.drawing, "saddle");
        /* That of one string stands in the table, too. */
        int there = count_words(s.drawing->papers[page].shapes, words);
        assert_int_equal(there > 0,
                         brief_known(caliper[BRIEF_TREBLE]) && brief_known(caliper[BRIEF_BASS]));
        take_down(&s);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_long_caption_leaves_the_view_its_scale),
        cmocka_unit_test(the_first_pass_names_both_outer_strings),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
