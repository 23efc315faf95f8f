/* SPDX-License-Identifier: MIT */
/* The page's program where there is no server and no folder. */
#define _GNU_SOURCE /* NOLINT: memmem */
#include "asked.h"

/* What is computed is the same through either door; through this one there is no folder, and no
 * Host is asked for. */
static void computed_alone(void **state)
{
    static const struct {
        const char *method, *target, *body;
        int status;
    } rows[] = {
        {"GET", "/profiles", "", 200},
        {"GET", "/fields", "", 200},
        {"POST", "/plan", LEAST, 200},
        {"POST", "/plan?units=in", LEAST, 200},
        {"POST", "/plan?units=furlongs", LEAST, 400},
        {"POST", "/bench", LEAST, 200},
        {"POST", "/bench?units=furlongs", LEAST, 400},
        {"POST", "/bench", "sillet: 1\nunits: ells\n", 200},
        {"POST", "/read", "sillet: 1\nunits: ells\n", 200},
        {"POST", "/plan", "sillet: 1\nunits: ells\n", 422},
        {"POST", "/draw?as=svg&view=nut", LEAST, 200},
        {"GET", "/plan", "", 405},
        {"GET", "nowhere", "", 400},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        web_request asked = *request(rows[i].method, rows[i].target, rows[i].body);
        web_reply alone;
        ask_as(&asked);
        asked.host = NULL;
        web_compute(-1, &asked, &alone);
        assert_int_equal(alone.status, rows[i].status);
        assert_int_equal(alone.status, reply.status);
        assert_int_equal(alone.size, reply.size);
        assert_memory_equal(alone.bytes, reply.bytes, alone.size);
        web_reply_free(&alone);
    }
}

static void no_folder_alone(void **state)
{
    static const char *const targets[] = {"/sheets", "/sheets/kept.yaml", "/", "/main.js"};
    (void)state;
    for (size_t i = 0; i < sizeof targets / sizeof *targets; i++) {
        web_reply_free(&reply);
        web_compute(-1, request("GET", targets[i], ""), &reply);
        assert_int_equal(reply.status, 404);
    }
    web_reply_free(&reply);
    web_compute(-1, request("POST", "/read", "sillet: 1\nprofile: kept.yaml\n"), &reply);
    assert_true(answer_holds("there is no folder of sheets to read a file from"));
    web_reply_free(&reply);
    web_compute(site.folder, request("POST", "/read", "sillet: 1\nprofile: kept.yaml\n"), &reply);
    assert_false(answer_holds("there is no folder of sheets to read a file from"));
    assert_int_equal(reply.status, 200);
}

static const cJSON *under(const cJSON *at, const char *key)
{
    const cJSON *found = cJSON_GetObjectItemCaseSensitive(at, key);
    assert_non_null(found);
    return found;
}

static void is_word(const cJSON *at, const char *key, const char *wanted)
{
    assert_string_equal(cJSON_GetStringValue(under(at, key)), wanted);
}

/* The strings' own ranges as the profile has them, and on which side of them each action is. */
static void bench_tells_sides(void **state)
{
    static const char sheet[] =
        LEAST "targets: {action: {low: 1.5, aim: 1.8, high: 2.0}}\n"
              "readings: [{relief: 0.2, action: [1.38, 1.5, 1.8, 2.0, 2.25, ~]}]\n";
    static const char *const sides[] = {"under", "in", "in", "in", "over"};
    (void)state;
    assert_int_equal(ask("POST", "/bench", sheet), 200);
    cJSON *whole = cJSON_ParseWithLength(reply.bytes, reply.size);
    const cJSON *glance = under(whole, "glance"),
                *action = under(under(glance, "readings"), "action");
    assert_int_equal(cJSON_GetArraySize(action), 6);
    for (int i = 0; i < 5; i++) {
        is_word(cJSON_GetArrayItem(action, i), "side", sides[i]);
        is_word(cJSON_GetArrayItem(action, i), "high", "2.00");
    }
    is_word(cJSON_GetArrayItem(action, 0), "off", "0.12");
    is_word(cJSON_GetArrayItem(action, 4), "off", "0.25");
    assert_true(cJSON_IsNull(under(cJSON_GetArrayItem(action, 2), "off")));
    assert_true(cJSON_IsNull(under(cJSON_GetArrayItem(action, 5), "side")));
    assert_int_equal(cJSON_GetArraySize(under(glance, "stages")), 5);
    cJSON_Delete(whole);
}

/* The plan in it is that of /plan; a sheet with errors has its complaints and nothing else. */
static void bench_is_the_plan(void **state)
{
    (void)state;
    assert_int_equal(ask("POST", "/plan?units=in", LEAST), 200);
    char *plan = strndup(reply.bytes, reply.size);
    assert_int_equal(ask("POST", "/bench?units=in", LEAST), 200);
    assert_true(answer_holds(plan));
    free(plan);
    assert_int_equal(ask("POST", "/bench", "sillet: 1\nunits: ells\n"), 200);
    assert_true(answer_holds("\"line\":2"));
    assert_false(answer_holds("\"glance\""));
    assert_false(answer_holds("\"result\""));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(computed_alone),
        cmocka_unit_test(no_folder_alone),
        cmocka_unit_test(bench_tells_sides),
        cmocka_unit_test(bench_is_the_plan),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
