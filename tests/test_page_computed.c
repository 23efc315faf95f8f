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
        web_compute(&asked, &alone);
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
        web_compute(request("GET", targets[i], ""), &reply);
        assert_int_equal(reply.status, 404);
    }
    web_reply_free(&reply);
    web_compute(request("POST", "/read", "sillet: 1\nprofile: kept.yaml\n"), &reply);
    assert_true(answer_holds("there is no folder of sheets to read a file from"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(computed_alone),
        cmocka_unit_test(no_folder_alone),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
