/* SPDX-License-Identifier: MIT */
/* The text of a plan: each table has its head and its columns, and each line of notes says where the
 * first is held. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/sillet.h>

#include "planned.h"
#include "random_job.h"

enum { JOBS = 240 };

static random_job made;
static sil_plan plan;

/* The text as lines; they live as long as the text. */
static int lines_of(char *report, char **line, int most)
{
    int count = 0;
    for (char *at = strtok(report, "\n"); at != NULL && count < most; at = strtok(NULL, "\n")) {
        line[count++] = at;
    }
    return count;
}

/* The column in which a word ends in a line, or -1. */
static long end_of(const char *line, const char *word)
{
    const char *at = strstr(line, word);
    return at != NULL ? (long)(at - line) + (long)strlen(word) : -1;
}

/* How many letters a line takes. */
static int letters(const char *line)
{
    int count = 0;
    for (; *line != '\0'; line++) {
        count += ((unsigned char)*line & 0xC0) != 0x80;
    }
    return count;
}

static void look_at_tables(char **line, int count)
{
    for (int k = 0; k + 2 < count; k++) {
        if (strncmp(line[k], "NUT: ", 5) == 0 || strncmp(line[k], "SADDLE: ", 8) == 0) {
            int head = k + 1; /* under what it waits for */
            while (head + 1 < count && strncmp(line[head], "  string", 8) != 0) {
                assert_true(strncmp(line[head], "   1", 4) != 0);
                head++;
            }
            assert_true(strncmp(line[head + 1], "  string", 8) != 0);
        }
        if (strncmp(line[k], "WILL IT BUZZ", 12) == 0) { /* rows as wide as their head */
            for (int row = k + 3; row < count && line[row][0] == ' ' && line[row][3] > '0' &&
                                  line[row][3] <= '9' && line[row][2] <= '1';
                 row++) {
                assert_int_equal(letters(line[row]), letters(line[k + 1]));
            }
        }
    }
}

/* A line of notes begins with where the first is held. */
static void look_at_causes(char **line, int count, int *causes)
{
    for (int k = 0; k < count; k++) {
        int string, length = 0;
        if (sscanf(line[k], "  String %d, %n", &string, &length) == 1 && length > 0) {
            const char *held = line[k] + length;
            assert_true(strncmp(held, "open", 4) == 0 || strncmp(held, "at fret ", 8) == 0);
            (*causes)++;
        }
    }
}

static void the_text_stands_in_its_columns(void **state)
{
    (void)state;
    static sil_reading two[2];
    uint64_t seed = 86;
    int causes = 0, histories = 0;
    for (int job = 0; job < JOBS; job++) {
        make_random_job(&made, &seed, 1 + job % SIL_STRINGS_MAX);
        for (int i = 0; i < made.job.string_count; i++) {
            made.job.attack.force[i] = uniform(&seed, 0.3, 2.0);
        }
        two[0] = two[1] = made.reading;
        two[0].date = "2026-01-02";
        two[0].relief.gap = two[1].relief.gap = 0.2;
        made.job.readings = two;
        made.job.reading_count = 2;
        plan_into(&made.job, &plan);
        char *report = sil_report_text(&plan, SIL_MM, "sheet"), *line[1000];
        assert_non_null(report);
        int count = lines_of(report, line, 1000);
        look_at_tables(line, count);
        look_at_causes(line, count, &causes);
        for (int k = 0; k + 1 < count; k++) {
            if (strncmp(line[k], "VISITS SO FAR", 13) == 0) {
                assert_int_equal(end_of(line[k + 1], "0.20"), end_of(line[k], "relief"));
                histories++;
            }
        }
        free(report);
    }
    assert_true(causes > 100 && histories > 50);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_text_stands_in_its_columns)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
