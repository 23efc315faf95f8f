/* SPDX-License-Identifier: MIT */
/* The words of a plan: which strings are named, what a stage says, what is said together, and that the
 * result is of the same strings. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cjson/cJSON.h>
#include <sillet/sillet.h>

#include "briefed.h"

static void strings_are_named_as_one_says_them(void **state)
{
    (void)state;
    static const struct {
        const char *meant, *words;
    } cases[] = {{"......", ""},
                 {"x.....", "slot 1"},
                 {".....x", "slot 6"},
                 {"x.x...", "slots 1 and 3"},
                 {"xx.x..", "slots 1, 2 and 4"},
                 {"xxxxx.", "slots 1, 2, 3, 4 and 5"},
                 {"xxxxxx", "all slots"}};
    uint64_t seed = 83;
    brief *b = next_brief(&seed, 5);
    assert_int_equal(b->strings, 6);
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++) {
        bool meant[SIL_STRINGS_MAX] = {false};
        for (int i = 0; i < 6; i++) {
            meant[i] = cases[k].meant[i] == 'x';
        }
        assert_string_equal(brief_which(b, "slot", meant), cases[k].words);
    }
    brief_free(b);
}

static void a_stage_says_what_is_done_in_it(void **state)
{
    (void)state;
    uint64_t seed = 84;
    int unread = 0;
    for (int job = 0; job < JOBS; job++) {
        brief *b = next_brief(&seed, job);
        const sil_reading *reading = sil_plan_reading(&plan);
        bool looked = reading != NULL && reading->crowns_read != SIL_CROWNS_NOT_READ;
        bool look = strcmp(b->stage[BRIEF_FRETS].words, "look at them") == 0;
        assert_int_equal(look, !looked);
        assert_true(look || (strcmp(b->stage[BRIEF_FRETS].words, "leave them") == 0) ==
                                (plan.stages.fretwork == SIL_FRETS_LEAVE));
        for (int k = 0; k < BRIEF_STAGES; k++) {
            assert_true(strlen(b->stage[k].words) > 3);
        }
        unread += look;
        brief_free(b);
    }
    assert_true(unread > 10 && unread < JOBS);
}

/* Whether two findings after each other may be one sentence: of one thing on several strings; or a
 * back-bow and a neck that is too straight, from one reading. */
static bool say_the_same(const sil_finding *f)
{
    bool of_neck = f[0].code == SIL_BACK_BOW && f[1].code == SIL_RELIEF_LOW;
    return f[0].level == f[1].level && (of_neck || f[0].code == f[1].code);
}

static void what_is_said_together_is_one_matter(void **state)
{
    static const char *const reliefs[] = {"{gap: -0.02, by: straightedge}",
                                          "{gap: -0.3, by: straightedge}", "0.2"};
    (void)state;
    for (size_t k = 0; k < sizeof reliefs / sizeof *reliefs; k++) {
        char reading[256];
        snprintf(reading, sizeof reading, "  - {relief: %s, first: 0.3, action: 4, frets: sound}\n",
                 reliefs[k]);
        plan_readings("targets: {relief: {low: 0, aim: 0.1, high: 0.2}}\n", reading, &plan);
        brief *b = brief_make(&plan, SIL_MM);
        assert_non_null(b);
        for (int i = 0; i < plan.finding_count; i++) {
            for (int more = 1; more < b->findings[i].alike; more++) {
                assert_true(say_the_same(&plan.findings[i + more - 1]));
            }
        }
        brief_free(b);
    }
}

/* A sign of per cent stands behind a figure and a blank; one that follows a word is a place for a
 * figure that was not filled. */
static void assert_filled(const char *sentence)
{
    for (const char *at = strchr(sentence, '%'); at; at = strchr(at + 1, '%')) {
        assert_true(at > sentence + 1 && at[-1] == ' ' && at[-2] >= '0' && at[-2] <= '9');
        assert_true(at[1] != 'd' && at[1] != 's');
    }
}

/* A finding is of a string and a fret, or of none; the result names them as one counts them. */
static void findings_name_their_strings(void **state)
{
    (void)state;
    uint64_t seed = 85;
    int firsts = 0;
    for (int job = 0; job < JOBS; job++) {
        brief *b = next_brief(&seed, job);
        char *result = sil_report_json(&plan, SIL_MM);
        cJSON *root = cJSON_Parse(result);
        const cJSON *row = cJSON_GetObjectItem(root, "findings")->child;
        for (int k = 0; k < plan.finding_count; k++, row = row->next) {
            const sil_finding *f = &plan.findings[k];
            const cJSON *string = cJSON_GetObjectItem(row, "string");
            const cJSON *fret = cJSON_GetObjectItem(row, "fret");
            assert_true(f->string >= -1 && f->string < b->strings && f->fret >= -1);
            assert_true(f->string < 0 ? cJSON_IsNull(string) : string->valueint == f->string + 1);
            assert_true(f->fret < 0 ? cJSON_IsNull(fret) : fret->valueint == f->fret);
            assert_filled(b->findings[k].alone.words);
            assert_filled(b->findings[k].together.words);
            firsts += f->string == 0;
        }
        assert_null(row);
        cJSON_Delete(root);
        free(result);
        brief_free(b);
    }
    assert_true(firsts > 50);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(strings_are_named_as_one_says_them),
        cmocka_unit_test(a_stage_says_what_is_done_in_it),
        cmocka_unit_test(what_is_said_together_is_one_matter),
        cmocka_unit_test(findings_name_their_strings),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
