/* SPDX-License-Identifier: MIT */
/* The file formats. The same drawing gives the same bytes in any locale. This also tests what only
 * a C program can ask for. The geometry in the files is measured by tests/drawing/. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <sillet/drawing.h>

#include "planned.h"
#include "random_job.h"

static random_job made;
static sil_plan plan;

typedef struct content {
    char *bytes;
    size_t size;
} content;

static void make_plan(uint64_t seed, const char *title)
{
    make_random_job(&made, &seed, 6);
    made.job.about.title = title;
    plan_into(&made.job, &plan);
}

static sil_drawing *make_drawing(bool outlines)
{
    const sil_draw_options order = {.part = SIL_PART_ALL, .paper = SIL_A4, .unit = SIL_MM};
    sil_drawing *drawing;
    sil_status status = outlines ? sil_outlines_make(&plan, &order, &drawing)
                                 : sil_drawing_make(&plan, &order, &drawing);
    assert_true(status >= SIL_DONE);
    return drawing;
}

/* The pack, its first sheet, or the outlines. */
static content write(sil_format format, bool outlines)
{
    content c = {NULL, 0};
    sil_drawing *drawing = make_drawing(outlines);
    int status = format == SIL_PDF || outlines
                     ? sil_drawing_write(drawing, format, &c.bytes, &c.size)
                     : sil_drawing_write_page(drawing, 0, format, &c.bytes, &c.size);
    assert_int_equal(status, 0);
    sil_drawing_free(drawing);
    return c;
}

static const struct {
    sil_format format;
    bool outlines;
} files[] = {{SIL_PDF, false}, {SIL_SVG, false}, {SIL_PDF, true},
             {SIL_SVG, true},  {SIL_DXF, true},  {SIL_STL, true}};
enum { FILES = sizeof files / sizeof *files };

static void write_all(content *all)
{
    for (int i = 0; i < FILES; i++) {
        all[i] = write(files[i].format, files[i].outlines);
    }
}

static void compare_and_free(content *a, content *b)
{
    for (int i = 0; i < FILES; i++) {
        assert_int_equal(a[i].size, b[i].size);
        assert_memory_equal(a[i].bytes, b[i].bytes, a[i].size);
        free(a[i].bytes);
        free(b[i].bytes);
    }
}

static void a_second_later_it_is_the_same(void **state)
{
    (void)state;
    content first[FILES], second[FILES];
    make_plan(2, "Nut and saddle");
    write_all(first);
    nanosleep(&(struct timespec){1, 100000000}, NULL);
    write_all(second);
    compare_and_free(first, second);
}

/* A locale whose decimal mark is a comma, made for this test alone. */
static char folder[] = "/tmp/sillet-locale-XXXXXX";

static int make_locale(void **state)
{
    char command[128];
    (void)state;
    if (!mkdtemp(folder)) {
        return -1;
    }
    snprintf(command, sizeof command, "localedef -i de_DE -f UTF-8 %s/de_DE.UTF-8", folder);
    return system(command) == 0 ? setenv("LOCPATH", folder, 1) : -1;
}

static int remove_locale(void **state)
{
    char command[128];
    (void)state;
    snprintf(command, sizeof command, "rm -r %s", folder);
    return system(command);
}

static void a_comma_locale_changes_nothing(void **state)
{
    (void)state;
    content plain[FILES], comma[FILES];
    char half[8];
    make_plan(2, "Nut and saddle");
    write_all(plain);
    assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
    snprintf(half, sizeof half, "%.1f", 0.5);
    assert_string_equal(half, "0,5");
    write_all(comma);
    setlocale(LC_ALL, "C");
    compare_and_free(plain, comma);
}

static void every_page_has_a_name_of_its_own(void **state)
{
    (void)state;
    char name[32], other[32];
    make_plan(13, NULL);
    sil_drawing *drawing = make_drawing(false);
    int pages = sil_drawing_pages(drawing);
    assert_true(sil_drawing_page_name(drawing, 0, name, sizeof name));
    assert_string_equal(name, "bench");
    for (int i = 0; i < pages; i++) {
        assert_true(sil_drawing_page_name(drawing, i, name, sizeof name));
        for (int k = 0; k < i; k++) {
            sil_drawing_page_name(drawing, k, other, sizeof other);
            assert_string_not_equal(name, other);
        }
    }
    assert_false(sil_drawing_page_name(drawing, pages, name, sizeof name));
    assert_false(sil_drawing_page_name(drawing, -1, name, sizeof name));
    sil_drawing_free(drawing);
}

static void a_format_of_one_page_takes_no_more(void **state)
{
    (void)state;
    char *bytes = NULL;
    size_t size = 0;
    make_plan(14, NULL);
    sil_drawing *drawing = make_drawing(false);
    assert_true(sil_drawing_pages(drawing) > 1);
    assert_int_equal(sil_drawing_write(drawing, SIL_SVG, &bytes, &size), SIL_FAULT);
    assert_int_equal(sil_drawing_write(drawing, SIL_DXF, &bytes, &size), SIL_FAULT);
    assert_int_equal(sil_drawing_write(drawing, SIL_STL, &bytes, &size), SIL_FAULT);
    assert_int_equal(sil_drawing_write_page(drawing, 0, SIL_STL, &bytes, &size), SIL_FAULT);
    const int none[] = {-1, sil_drawing_pages(drawing)};
    for (int i = 0; i < 2; i++) {
        assert_int_equal(sil_drawing_write_page(drawing, none[i], SIL_PDF, &bytes, &size),
                         SIL_FAULT);
    }
    assert_null(bytes);
    assert_int_equal(size, 0);
    sil_drawing_free(drawing);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_second_later_it_is_the_same),
        cmocka_unit_test_setup_teardown(a_comma_locale_changes_nothing, make_locale, remove_locale),
        cmocka_unit_test(every_page_has_a_name_of_its_own),
        cmocka_unit_test(a_format_of_one_page_takes_no_more),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
