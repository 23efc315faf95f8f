/* SPDX-License-Identifier: MIT */
/* What the bench page shows at a glance, held against the result of the same plan: the figures that stand
 * large are those of the step's sentence, each at its string or end, and a reading is on the side of its
 * range that it is. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cjson/cJSON.h>
#include <sillet/report.h>

#include "../src/report/glance.h"
#include "briefed.h"

static int rows_seen, ends_seen, lines_seen, spans_seen, ways_seen, off_seen[2];

static const cJSON *item(const cJSON *of, const char *key)
{
    const cJSON *found = cJSON_GetObjectItemCaseSensitive(of, key);
    assert_non_null(found);
    return found;
}

static const char *word(const cJSON *of, const char *key)
{
    const cJSON *found = cJSON_GetObjectItemCaseSensitive(of, key);
    return cJSON_IsString(found) ? found->valuestring : "";
}

static bool same_number(const cJSON *a, const cJSON *b)
{
    return a == NULL || cJSON_IsNull(a) ? b == NULL || cJSON_IsNull(b)
                                        : cJSON_IsNumber(b) && a->valueint == b->valueint;
}

/* Whether the large figures are a sentence's figures of one kind, all of them, in their order. */
static bool are_those_of(const cJSON *large, const cJSON *figures, const char *of)
{
    const cJSON *one = item(large, "figures")->child;
    for (const cJSON *said = figures->child; said != NULL; said = said->next) {
        if (strcmp(word(said, "of"), of) != 0) {
            continue;
        }
        if (one == NULL || strcmp(word(one, "shown"), word(said, "shown")) != 0 ||
            strcmp(word(one, "end"), word(said, "end")) != 0 ||
            !same_number(item(one, "string"), cJSON_GetObjectItem(said, "string"))) {
            return false;
        }
        one = one->next;
    }
    return one == NULL;
}

static const char *kind_of(const cJSON *large, const cJSON *figures)
{
    for (const cJSON *said = figures->child; said != NULL; said = said->next) {
        if (are_those_of(large, figures, word(said, "of"))) {
            return word(said, "of");
        }
    }
    fail_msg("no figures of the sentence are %s", word(large, "label"));
    return "";
}

/* "Sand the saddle's bottom until the caliper reads 7.90 / 9.00 mm": the outer strings' figures, string 1
 * first, or the least and the most of all. */
static void look_at_line(const char *line, const cJSON *figures, int strings, const char *unit)
{
    int count = cJSON_GetArraySize(figures);
    const cJSON *first = cJSON_GetArrayItem(figures, 0),
                *last = cJSON_GetArrayItem(figures, count - 1);
    const char *least = word(first, "shown"), *most = least;
    for (const cJSON *one = figures->child; one != NULL; one = one->next) {
        const char *shown = word(one, "shown");
        least = atof(shown) < atof(least) ? shown : least;
        most = atof(shown) > atof(most) ? shown : most;
    }
    bool outer = count == 2 && item(first, "string")->valueint == 1 &&
                 item(last, "string")->valueint == strings;
    char wanted[128];
    if (outer) {
        snprintf(wanted, sizeof wanted, " %s / %s %s", word(first, "shown"), word(last, "shown"),
                 unit);
    } else if (strcmp(least, most) == 0) {
        snprintf(wanted, sizeof wanted, " %s %s", least, unit);
    } else {
        snprintf(wanted, sizeof wanted, " %s to %s %s", least, most, unit);
    }
    size_t length = strlen(line), size = strlen(wanted);
    if (length < size || strcmp(line + length - size, wanted) != 0) {
        fail_msg("'%s' does not end with '%s'", line, wanted);
    }
    lines_seen++;
    spans_seen += !outer && strcmp(least, most) != 0;
}

static void look_at_step(const cJSON *shown, const cJSON *steps, const brief *b, const char *unit)
{
    int number = item(shown, "step")->valueint;
    const cJSON *step = cJSON_GetArrayItem(steps, number - 1);
    const cJSON *figures = item(step, "figures"), *rows = item(shown, "large");
    assert_string_equal(word(shown, "act"), word(step, "act"));
    assert_true(strlen(word(shown, "title")) > 2);
    for (const cJSON *row = rows->child; row != NULL; row = row->next) {
        const char *of = kind_of(row, figures);
        bool turns = strcmp(of, "turns") == 0 || strcmp(of, "tune-turns") == 0;
        assert_string_equal(word(row, "unit"), turns ? "" : unit);
        rows_seen++;
        ends_seen += strcmp(word(item(row, "figures")->child, "end"), "treble") == 0;
    }
    const char *line = word(shown, "line");
    if (rows->child != NULL &&
        (strstr(line, "until the caliper reads") || strstr(line, "feelers of"))) {
        look_at_line(line, item(rows->child, "figures"), b->strings, unit);
    }
}

/* A reading known against a range known. */
static void look_at_reading(const cJSON *row, double read, sil_band range)
{
    const char *side = word(row, "side"), *off = word(row, "off");
    near(atof(word(row, "low")), range.low, 0.0051);
    near(atof(word(row, "aim")), range.aim, 0.0051);
    near(atof(word(row, "high")), range.high, 0.0051);
    if (!sil_known(read)) {
        assert_string_equal(side, "");
    } else if (read < range.low - 0.001) {
        assert_string_equal(side, "under");
        near(atof(off), range.low - read, 0.0051);
        off_seen[0]++;
    } else if (read > range.high + 0.001) {
        assert_string_equal(side, "over");
        near(atof(off), read - range.high, 0.0051);
        off_seen[1]++;
    } else if (read > range.low + 0.001 && read < range.high - 0.001) {
        assert_string_equal(side, "in");
        assert_string_equal(off, "");
    }
}

static void look_at_readings(const cJSON *readings, const brief *b)
{
    const sil_bench *bench = &b->plan->bench;
    const cJSON *first = item(readings, "first"), *action = item(readings, "action");
    look_at_reading(item(readings, "relief"), b->relief.now.exact, bench->targets.relief);
    assert_int_equal(cJSON_GetArraySize(first), b->strings);
    assert_int_equal(cJSON_GetArraySize(action), b->strings);
    for (int i = 0; i < b->strings; i++) {
        look_at_reading(cJSON_GetArrayItem(first, i), b->first[i].now.exact,
                        bench->targets.first[i]);
        look_at_reading(cJSON_GetArrayItem(action, i), b->action[i].now.exact,
                        bench->targets.action[i]);
    }
}

/* Which way screws go is said in the few words as in the sentence. */
static void look_at_ways(const char *words, const cJSON *figures)
{
    bool up = false, down = false, turned = false;
    for (const cJSON *one = figures->child; one != NULL; one = one->next) {
        bool screw = strcmp(word(one, "of"), "screw") == 0;
        turned = turned || screw;
        up = up || (screw && strcmp(word(one, "way"), "up") == 0);
        down = down || (screw && strcmp(word(one, "way"), "down") == 0);
    }
    if (turned) {
        assert_int_equal(strstr(words, " up") != NULL, up);
        assert_int_equal(strstr(words, " down") != NULL, down);
        ways_seen += up != down;
    }
}

/* "0.06 to 0.10", of what was read. */
static void look_at_span(const char *span, const brief_reading *readings, int strings)
{
    const brief_figure *least = NULL, *most = NULL;
    char wanted[80] = "";
    for (int i = 0; i < strings; i++) {
        const brief_figure *now = &readings[i].now;
        if (brief_known(*now)) {
            least = least == NULL || now->exact < least->exact ? now : least;
            most = most == NULL || now->exact > most->exact ? now : most;
        }
    }
    if (least != NULL) {
        bool one = strcmp(least->shown, most->shown) == 0;
        snprintf(wanted, sizeof wanted, "%s%s%s", least->shown, one ? "" : " to ",
                 one ? "" : most->shown);
    }
    assert_true(strncmp(span, wanted, strlen(wanted)) == 0);
    assert_true(span[strlen(wanted)] == '\0' || strncmp(span + strlen(wanted), " (", 2) == 0);
}

static void look_at_stages(const cJSON *stages, const brief *b)
{
    static const char *const names[] = {"relief", "frets", "nut", "saddle", "tuning"};
    static const char *const states[] = {[BRIEF_RIGHT] = "right",
                                         [BRIEF_WORK] = "work",
                                         [BRIEF_WAIT] = "wait",
                                         [BRIEF_UNREAD] = "unread"};
    assert_int_equal(cJSON_GetArraySize(stages), BRIEF_STAGES);
    for (int stage = 0; stage < BRIEF_STAGES; stage++) {
        const cJSON *row = cJSON_GetArrayItem(stages, stage);
        assert_string_equal(word(row, "name"), names[stage]);
        assert_string_equal(word(row, "verdict"), b->glance[stage].verdict);
        assert_string_equal(word(row, "state"), states[b->glance[stage].state]);
        assert_string_equal(word(row, "figures"), b->glance[stage].figures.words);
    }
    look_at_span(word(cJSON_GetArrayItem(stages, BRIEF_NUT), "short"), b->first, b->strings);
    look_at_span(word(cJSON_GetArrayItem(stages, BRIEF_SADDLE), "short"), b->action, b->strings);
}

static void look_at_glance(const brief *b)
{
    char *result = report_of_brief(b), *shown = report_glance(b);
    cJSON *root = cJSON_Parse(result), *glance = cJSON_Parse(shown);
    const cJSON *steps = item(root, "steps"), *next = item(glance, "next");
    const char *unit = word(item(glance, "readings"), "unit");
    assert_string_equal(unit, b->unit == SIL_MM ? "mm" : "in");
    assert_int_equal(cJSON_IsNull(next), b->next.step < 0);
    assert_int_equal(cJSON_IsTrue(item(glance, "done")), b->plan->done);
    look_at_stages(item(glance, "stages"), b);
    assert_int_equal(cJSON_GetArraySize(item(glance, "in_short")), b->plan->step_count);
    for (int k = 0; k < b->plan->step_count; k++) {
        look_at_ways(cJSON_GetArrayItem(item(glance, "in_short"), k)->valuestring,
                     item(cJSON_GetArrayItem(steps, k), "figures"));
    }
    if (!cJSON_IsNull(next)) {
        look_at_step(next, steps, b, unit);
        for (const cJSON *row = item(next, "then")->child; row != NULL; row = row->next) {
            look_at_step(row, steps, b, unit);
        }
    }
    if (b->unit == SIL_MM) {
        look_at_readings(item(glance, "readings"), b);
    }
    cJSON_Delete(root);
    cJSON_Delete(glance);
    free(result);
    free(shown);
}

static void what_stands_large_is_in_the_sentence(void **state)
{
    (void)state;
    uint64_t seed = 91;
    for (int job = 0; job < 2 * JOBS; job++) {
        brief *b = next_brief(&seed, job);
        look_at_glance(b);
        brief_free(b);
        b = brief_make(&plan, SIL_INCH);
        look_at_glance(b);
        brief_free(b);
    }
    assert_true(rows_seen > 200 && ends_seen > 20 && lines_seen > 50);
    assert_true(spans_seen > 3 && ways_seen > 20);
    assert_true(off_seen[0] > 100 && off_seen[1] > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_stands_large_is_in_the_sentence),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
