/* SPDX-License-Identifier: MIT */
/* A plan as a row of a table: the words for the next work, and for what the parts wait for. */
#include "instrument.h"
#include "planned.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../src/brief/within.h"

enum { ROOM = 64, COLUMNS = 25 }; /* the column of what is next, in the table of many sheets */

/* The words of every row; freed at the end. */
static text_store store;

static brief_row row_of(const sil_plan *plan)
{
    brief_row row = brief_row_of(plan, &store);
    assert_false(store.failed);
    return row;
}

static void every_work_has_its_words(void **state)
{
    (void)state;
    static sil_job job = {.string_count = 6};
    const char *words[SIL_ACTS];
    for (int act = 0; act < SIL_ACTS; act++) {
        static sil_plan plan;
        plan = (sil_plan){.job = &job, .step_count = 2};
        plan.steps[0].act = SIL_ACT_PREPARE;
        plan.steps[1].act = (sil_act)act;
        plan.nut_withheld = (sil_withheld){{SIL_CLIMATE}, 1};
        words[act] = row_of(&plan).next;
        bool idle = act == SIL_ACT_PREPARE || act == SIL_ACT_CHECK;
        assert_int_equal(strlen(words[act]) > 0, !idle);
        assert_true(strlen(words[act]) <= COLUMNS && !strstr(words[act], "(null)"));
        for (int other = 0; other < act; other++) { /* each says which it is, but the repairer's */
            assert_true(idle || strcmp(words[other], words[act]) != 0 ||
                        strstr(words[act], "repairer"));
        }
    }
    text_store_free(&store);
}

/* A code no one wrote words for would be told as nothing. */
static void every_code_has_its_word_and_is_in_the_docs(void **state)
{
    (void)state;
    static char docs[65536];
    FILE *file = fopen("docs/result.md", "r");
    assert_non_null(file);
    docs[fread(docs, 1, sizeof docs - 1, file)] = '\0';
    fclose(file);
    for (int code = 0; code < SIL_CODES; code++) {
        const char *word = sil_code_word((sil_code)code);
        char told[ROOM];
        assert_non_null(word);
        snprintf(told, sizeof told, "`%s`", word);
        if (!strstr(docs, told)) {
            fail_msg("docs/result.md does not tell of %s", told);
        }
        for (int other = 0; other < code; other++) {
            assert_string_not_equal(word, sil_code_word((sil_code)other));
        }
    }
}

static void all_that_withholds_is_waited_for_by_name(void **state)
{
    (void)state;
    static sil_job job = {.string_count = 6};
    int held_up = 0;
    for (int code = 0; code < SIL_CODES; code++) {
        static sil_plan plan;
        if (!brief_waits((sil_code)code)) {
            continue;
        }
        held_up++;
        plan = (sil_plan){.job = &job, .nut_withheld = {{(sil_code)code}, 1}};
        brief_row one = row_of(&plan);
        assert_true(strlen(one.waits) > 0 && strlen(one.waits) < 40);
        assert_false(strstr(one.waits, "(null)"));
        plan.saddle_withheld = plan.nut_withheld; /* told once */
        brief_row both = row_of(&plan);
        assert_string_equal(one.waits, both.waits);
    }
    text_store_free(&store);
    assert_true(held_up > 10);
}

static void a_reading_missing_is_waited_for(void **state)
{
    (void)state;
    static sil_job job = {.string_count = 6};
    static sil_plan plan;
    plan = (sil_plan){.job = &job};
    brief_row row = row_of(&plan);
    assert_string_equal(row.waits, "");
    plan.nut.verdict[5] = SIL_WAIT;
    row = row_of(&plan);
    assert_string_equal(row.waits, "a string off a fret");
    plan.bench.gaps.action[5] = SIL_UNKNOWN;
    row = row_of(&plan);
    assert_string_equal(row.waits, "the action");
    plan.bench.gaps.first[5] = plan.bench.gaps.first_open[5] = SIL_UNKNOWN;
    row = row_of(&plan);
    assert_string_equal(row.waits, "gaps at the 1st fret");
    text_store_free(&store);
}

/* RFC 8259, section 7, and Unicode's substitute for what is no character. */
static void a_name_is_told_in_json_whatever_it_is(void **state)
{
    (void)state;
    char *line = sil_report_line("a\"b\\c\n\x01\xC3\xA9\xFF.yaml", 3, NULL, SIL_MM);
    assert_string_equal(line, "{\"sheet\":\"a\\\"b\\\\c\\n\\u0001\xC3\xA9\xEF\xBF\xBD.yaml\","
                              "\"exit\":3,\"result\":null}");
    free(line);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_work_has_its_words),
        cmocka_unit_test(every_code_has_its_word_and_is_in_the_docs),
        cmocka_unit_test(all_that_withholds_is_waited_for_by_name),
        cmocka_unit_test(a_reading_missing_is_waited_for),
        cmocka_unit_test(a_name_is_told_in_json_whatever_it_is),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
