/* SPDX-License-Identifier: MIT */
/* The page's folder: which files may be read from it and written to it. Versions follow RFC
 * 9110 (If-Match 13.1.1, If-None-Match 13.1.2) and RFC 6585, 3 (428). */
#define _GNU_SOURCE /* NOLINT: memmem */
#include "asked.h"

static void a_sheet_is_never_written_over_blindly(void **state)
{
    char tag[WEB_TAG_MAX], newer[WEB_TAG_MAX];
    (void)state;
    assert_int_equal(put("/sheets/one.yaml", LEAST, NULL, NULL), 428);
    assert_int_equal(ask("GET", "/sheets/one.yaml", ""), 404);
    assert_int_equal(put("/sheets/one.yaml", LEAST, "\"0\"", NULL), 412); /* is not there */
    assert_int_equal(put("/sheets/one.yaml", LEAST, NULL, "*"), 201);
    memcpy(tag, reply.tag, sizeof tag);
    assert_int_equal(ask("GET", "/sheets/one.yaml", ""), 200);
    assert_string_equal(reply.tag, tag);
    assert_int_equal(reply.size, strlen(LEAST));
    assert_memory_equal(reply.bytes, LEAST, reply.size);
    web_request again = *request("GET", "/sheets/one.yaml", "");
    again.if_none_match = tag;
    ask_as(&again);
    assert_int_equal(reply.status, 304);
    assert_int_equal(reply.size, 0);
    assert_int_equal(put("/sheets/one.yaml", LEAST "units: in\n", NULL, "*"), 412);
    assert_int_equal(put("/sheets/one.yaml", LEAST "units: in\n", NULL, NULL), 428);
    assert_int_equal(put("/sheets/one.yaml", LEAST "units: in\n", tag, NULL), 200);
    memcpy(newer, reply.tag, sizeof newer);
    assert_string_not_equal(newer, tag);
    assert_int_equal(put("/sheets/one.yaml", LEAST, tag, NULL), 412); /* read before the change */
    write_in("one.yaml", LEAST "# by another hand\n");
    assert_int_equal(put("/sheets/one.yaml", LEAST, newer, NULL), 412);
    assert_int_equal(ask("GET", "/sheets/one.yaml", ""), 200);
    assert_true(answer_holds("# by another hand"));
    assert_int_equal(put("/sheets/one.yaml", "sillet: 1\ncolour: red\n", reply.tag, NULL), 422);
}

static void nothing_outside_the_folder(void **state)
{
    static const char *const names[] = {"..%2fout.yaml",
                                        "%2fetc%2fpasswd",
                                        "a%2fb.yaml",
                                        ".hidden.yaml",
                                        "out.txt",
                                        ".yaml",
                                        "",
                                        "a%5cb.yaml",
                                        "..",
                                        "%2e%2e%2fout.yaml",
                                        "a.yaml%00",
                                        "a.yaml.txt",
                                        "%ffbroken.yaml",
                                        "./a.yaml"};
    char target[128];
    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        snprintf(target, sizeof target, "/sheets/%s", names[i]);
        assert_int_equal(ask("GET", target, ""), 400);
        assert_int_equal(put(target, LEAST, NULL, "*"), 400);
    }
    assert_int_equal(ask("GET", "/sheets/link.yaml", ""), 404);
    assert_int_equal(put("/sheets/link.yaml", LEAST, NULL, "*"), 403);
    assert_int_equal(ask("GET", "/sheets/pipe.yaml", ""), 404);
    assert_int_equal(ask("GET", "/sheets/room.yaml", ""), 404);
    /* Nor by way of a profile's path. */
    static const struct {
        const char *path, *told;
    } paths[] = {
        {"../out.yaml", "only from the folder of sheets itself; put it there and write profile: "
                        "out.yaml\""},
        {"./mine.yaml", "put it there and write profile: mine.yaml\""},
        {"/etc/passwd", "only from the folder of sheets itself, and its name ends in .yaml"},
        {"link.yaml", "only a plain file is read from the folder of sheets, no link"},
        {"pipe.yaml", "only a plain file is read"},
        {"room.yaml", "only a plain file is read"},
        {"none.yaml", "no such profile there"},
    };
    for (size_t i = 0; i < sizeof paths / sizeof *paths; i++) {
        char sheet[128];
        snprintf(sheet, sizeof sheet, "sillet: 1\nprofile: %s\n", paths[i].path);
        assert_int_equal(ask("POST", "/plan", sheet), 422);
        assert_false(answer_holds("kept"));
        assert_false(answer_holds("denied"));
        assert_true(answer_holds(paths[i].told));
    }
    const int folder = site.folder;
    site.folder = -1;
    assert_int_equal(ask("POST", "/plan", "sillet: 1\nprofile: mine.yaml\n"), 422);
    assert_true(answer_holds("there is no folder of sheets to read a file from"));
    site.folder = folder;
    write_in("mine.yaml", "sillet: 1\ninstrument: {scale: 600}\n");
    assert_int_equal(ask("POST", "/read", "sillet: 1\nprofile: mine.yaml\n"), 200);
    assert_true(answer_holds("[\"instrument.scale\",\"600\",\"mm\"]"));
}

static void the_folder_says_what_each_waits_for(void **state)
{
    char *high = read_whole("examples/high-saddle.yaml");
    (void)state;
    write_in("high.yaml", high);
    write_in("wrong.yaml", LEAST "colour: red\n");
    free(high);
    assert_int_equal(ask("GET", "/sheets", ""), 200);
    assert_true(
        answer_holds("{\"name\":\"high.yaml\",\"ref\":\"26-044\",\"title\":\"Lower the saddle\","
                     "\"owner\":\"Tomas Weber\",\"kind\":\"steel-string-acoustic\","
                     "\"date\":\"2026-04-09\",\"state\":\"work\","
                     "\"next\":\"sand the saddle's bottom\",\"waits\":\"nothing\"}"));
    assert_true(answer_holds("{\"name\":\"wrong.yaml\",\"state\":\"wrong\","
                             "\"next\":\"put the sheet right\","
                             "\"waits\":\"1 mistake, line 3\"}"));
    assert_false(answer_holds("link.yaml"));
    assert_false(answer_holds("pipe.yaml"));
    const int folder = site.folder;
    site.folder = -1;
    assert_int_equal(ask("GET", "/sheets", ""), 200);
    assert_true(answer_holds(
        "{\"folder\":null,\"file\":null,\"sheets\":[],\"count\":0,\"more_after\":null}"));
    assert_int_equal(ask("GET", "/sheets/high.yaml", ""), 409);
    site.folder = folder;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sheet_is_never_written_over_blindly),
        cmocka_unit_test(nothing_outside_the_folder),
        cmocka_unit_test(the_folder_says_what_each_waits_for),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
