/* SPDX-License-Identifier: MIT */
/* The answers of the page, without a server. Plans, drawings and complaints are compared with those
 * of the library, and the rules for requests with RFC 9110 (Host and Origin 7.2, Allow 10.2.1). */
#define _GNU_SOURCE /* NOLINT: memmem */
#include "asked.h"
#include "planned.h"

/* --- who may ask, and what ------------------------------------------------------------------- */

/* Who asks, and what the page answers. */
typedef struct asker {
    const char *host, *origin;
    int status;
} asker;

static void answers(const asker *rows, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        web_request asked = *request("GET", "/", "");
        asked.host = rows[i].host;
        asked.origin = rows[i].origin;
        ask_as(&asked);
        if (reply.status != rows[i].status) {
            fail_msg("port %d, host %s, origin %s: %d", site.port, rows[i].host, rows[i].origin,
                     reply.status);
        }
    }
}

static void only_its_own_host_and_origin(void **state)
{
    static const asker rows[] = {
        {HOST, NULL, 200},
        {"localhost:7340", NULL, 200},
        {HOST, "http://" HOST, 200},
        {"localhost:7340", "http://localhost:7340", 200},
        {NULL, NULL, 403}, /* none came, or several */
        {"", NULL, 403},
        {"127.0.0.1", NULL, 403},
        {"127.0.0.1:7341", NULL, 403},
        {"127.0.0.1:73400", NULL, 403},
        {"evil.example:7340", NULL, 403},
        {"127.0.0.1:7340.evil.example", NULL, 403},
        {"127.0.0.1:7340 ", NULL, 403},
        {HOST, "null", 403},
        {HOST, "", 403},
        {HOST, "https://" HOST, 403},
        {HOST, "http://localhost:7340", 403}, /* ours, but not where this page was opened */
        {HOST, "http://evil.example", 403},
        {HOST, "http://" HOST ".evil.example", 403},
    };
    (void)state;
    answers(rows, sizeof rows / sizeof *rows);
    web_request stranger = *request("PUT", "/sheets/stranger.yaml", LEAST);
    stranger.if_none_match = "*";
    stranger.origin = "http://evil.example";
    ask_as(&stranger);
    assert_int_equal(reply.status, 403);
    assert_int_equal(faccessat(site.folder, "stranger.yaml", F_OK, 0), -1);
}

/* A browser names no port where it is HTTP's own (RFC 9110, 4.2.1). */
static void the_port_of_http(void **state)
{
    static const asker rows[] = {
        {"127.0.0.1", "http://127.0.0.1", 200},
        {"127.0.0.1:80", NULL, 200},
        {"localhost", "http://localhost", 200},
        {"127.0.0.1", "http://localhost", 403},
        {"127.0.0.1:7340", NULL, 403},
        {"127.0.0.1.evil.example", NULL, 403},
        {"evil.example", NULL, 403},
        {"", NULL, 403},
    };
    char address[64];
    (void)state;
    web_address(&site, address, sizeof address);
    assert_string_equal(address, "http://" HOST "/");
    const int port = site.port;
    site.port = 80;
    web_address(&site, address, sizeof address);
    assert_string_equal(address, "http://127.0.0.1/");
    answers(rows, sizeof rows / sizeof *rows);
    site.port = port;
}

static void routes_and_methods(void **state)
{
    static const struct {
        const char *method, *target;
        int status;
        const char *allow;
    } rows[] = {
        {"GET", "/", 200, NULL},
        {"HEAD", "/style.css", 200, NULL},
        {"POST", "/main.js", 405, "GET, HEAD"},
        {"GET", "/plan", 405, "POST"},
        {"PUT", "/profiles", 405, "GET, HEAD"},
        {"HEAD", "/fields", 200, NULL},
        {"POST", "/fields", 405, "GET, HEAD"},
        {"DELETE", "/sheets/a.yaml", 405, "GET, HEAD, PUT"},
        {"GET", "/nothing", 404, NULL},
        {"GET", "/plan/", 404, NULL},
        {"GET", "/../etc/passwd", 404, NULL},
        {"GET", "nowhere", 400, NULL},
        {"GET", "", 400, NULL},
        {"GET", "/%", 400, NULL},
        {"GET", "/%4", 400, NULL},
        {"GET", "/%4g", 400, NULL},
        {"GET", "/%00", 400, NULL},
        {"GET", "/%0a", 400, NULL},
        {"GET", "/%ff", 400, NULL}, /* not UTF-8 */
        {"GET", "/%73tyle.css", 200, NULL},
        {"GET", "/style.css?x=%ff", 200, NULL},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int status = ask(rows[i].method, rows[i].target, "");
        bool allows = rows[i].allow ? reply.allow && strcmp(reply.allow, rows[i].allow) == 0
                                    : reply.allow == NULL;
        if (status != rows[i].status || !allows) {
            fail_msg("%s %s: %d, %s", rows[i].method, rows[i].target, status, reply.allow);
        }
    }
}

static void every_answer_is_strict(void **state)
{
    bool strict = false, nosniff = false;
    (void)state;
    for (int i = 0; i < web_header_count; i++) {
        const web_header *header = &web_headers[i];
        if (strcmp(header->name, "Content-Security-Policy") == 0) {
            strict = strncmp(header->value, "default-src 'none'; ", 20) == 0 &&
                     !strstr(header->value, "unsafe") && !strstr(header->value, "http") &&
                     strstr(header->value, "frame-ancestors 'none'");
        }
        nosniff = nosniff || (strcmp(header->name, "X-Content-Type-Options") == 0 &&
                              strcmp(header->value, "nosniff") == 0);
    }
    assert_true(strict && nosniff);
}

static void no_more_than_a_sheet(void **state)
{
    char *long_one = malloc(WEB_BODY_MAX + 2);
    (void)state;
    memset(long_one, ' ', WEB_BODY_MAX + 1);
    long_one[WEB_BODY_MAX + 1] = '\0';
    assert_int_equal(ask("POST", "/plan", long_one), 413);
    assert_int_equal(put("/sheets/long.yaml", long_one, NULL, "*"), 413);
    long_one[WEB_BODY_MAX] = '\0';
    assert_int_equal(ask("POST", "/plan", long_one), 422); /* empty, but not too long */
    free(long_one);
}

/* --- a sheet's plan, its drawings, what is wrong with it ------------------------------------- */

static const char *const examples[] = {
    "examples/low-first-slot.yaml",  "examples/high-saddle.yaml", "examples/worn-first-frets.yaml",
    "examples/electric-screws.yaml", "examples/bass-nut.yaml",    "tests/sheets/good-twelve.yaml"};

static void plans_are_the_librarys(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++) {
        sil_sheet *sheet;
        sil_plan plan;
        char *text = read_whole(examples[i]);
        assert_true(sil_sheet_read(examples[i], "profiles", &sheet) >= SIL_DONE);
        plan_into(sil_sheet_job(sheet), &plan);
        char *mm = sil_report_json(&plan, sil_sheet_job(sheet)->units);
        char *in = sil_report_json(&plan, SIL_INCH);
        assert_int_equal(ask("POST", "/plan", text), 200);
        assert_int_equal(reply.size, strlen(mm));
        assert_memory_equal(reply.bytes, mm, reply.size);
        assert_int_equal(ask("POST", "/plan?units=in", text), 200);
        assert_memory_equal(reply.bytes, in, reply.size);
        free(mm);
        free(in);
        free(text);
        sil_sheet_free(sheet);
    }
    assert_int_equal(ask("POST", "/plan?units=cm", LEAST), 400);
    assert_int_equal(ask("POST", "/plan?units=%zz", LEAST), 400);
}

static void a_wrong_sheet_is_told_by_place_and_path(void **state)
{
    static const struct {
        const char *sheet, *path, *text;
        int line, column;
    } rows[] = {
        {LEAST "instrument: {crown: x}\n", "instrument.crown", "crown x: ", 3, 21},
        {LEAST "readings:\n  - action: [2, 2, 2, 2, 2, -1]\n", "readings.0.action.5",
         "action -1: ", 4, 29},
        {LEAST "readings:\n  - action: [2, 2]\n", "readings.0.action", "action: 2 values for 6", 4,
         13},
        {LEAST "colour: red\n", "colour", "unknown key colour", 3, 1},
        {LEAST "readings:\n  - relief: {gap: 0.2, at: 99}\n", "readings.0.relief.at", "at 99: ", 4,
         28},
        {"units: mm\n", "", "sillet is missing", 1, 1},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_int_equal(ask("POST", "/plan", rows[i].sheet), 422);
        cJSON *root = cJSON_ParseWithLength(reply.bytes, reply.size);
        cJSON *first = cJSON_GetArrayItem(cJSON_GetObjectItem(root, "complaints"), 0);
        assert_non_null(first);
        assert_string_equal(cJSON_GetObjectItem(first, "severity")->valuestring, "error");
        assert_int_equal(cJSON_GetObjectItem(first, "line")->valueint, rows[i].line);
        assert_int_equal(cJSON_GetObjectItem(first, "column")->valueint, rows[i].column);
        assert_string_equal(cJSON_GetObjectItem(first, "path")->valuestring, rows[i].path);
        assert_ptr_equal(strstr(cJSON_GetObjectItem(first, "text")->valuestring, rows[i].text),
                         cJSON_GetObjectItem(first, "text")->valuestring);
        cJSON_Delete(root);
    }
}

static void a_sheet_is_read_value_by_value(void **state)
{
    (void)state;
    assert_int_equal(ask("POST", "/read",
                         "sillet: 1\nprofile: steel-string-acoustic\nreadings:\n"
                         "  - {action: [2.1, ~], relief: 0.2, condition: {tuned: false}}\n"),
                     200);
    assert_true(answer_holds("[\"readings.0.condition.tuned\",\"no\"]"));
    assert_true(answer_holds("[\"readings.0.action.0\",\"2.1\"]"));
    assert_true(answer_holds("[\"readings.0.action.1\",\"\"]"));
    assert_true(answer_holds("[\"readings.0.relief\",\"0.2\"]"));
    assert_true(answer_holds("[\"instrument.scale\",\"645\",\"mm\"]")); /* the profile's */
    assert_true(answer_holds("\"path\":\"readings.0.action\"")); /* two values for six strings */
    assert_int_equal(ask("POST", "/read", "sillet: [1"), 200);
    assert_true(answer_holds("\"severity\":\"error\""));
}

/* The fields in words, row by row the library's. */
static void the_fields_are_told_in_words(void **state)
{
    (void)state;
    assert_int_equal(ask("GET", "/fields", ""), 200);
    cJSON *rows = cJSON_ParseWithLength(reply.bytes, reply.size), *row;
    assert_int_equal(cJSON_GetArraySize(rows), sil_field_count());
    int order = 0;
    cJSON_ArrayForEach(row, rows)
    {
        sil_field field = sil_field_at(order);
        cJSON *choices = cJSON_GetObjectItem(row, "choices"), *pair;
        assert_string_equal(cJSON_GetObjectItem(row, "path")->valuestring, field.path);
        assert_string_equal(cJSON_GetObjectItem(row, "label")->valuestring, field.label);
        assert_string_equal(cJSON_GetObjectItem(row, "hint")->valuestring, field.hint);
        assert_string_equal(cJSON_GetObjectItem(row, "unit")->valuestring, field.unit);
        assert_int_equal(cJSON_IsTrue(cJSON_GetObjectItem(row, "asked")), field.asked);
        assert_int_equal(cJSON_GetObjectItem(row, "order")->valueint, order++);
        assert_int_equal(cJSON_GetArraySize(choices), field.choice_count);
        const sil_choice *choice = field.choices;
        cJSON_ArrayForEach(pair, choices)
        {
            assert_string_equal(cJSON_GetArrayItem(pair, 0)->valuestring, choice->word);
            assert_string_equal(cJSON_GetArrayItem(pair, 1)->valuestring, choice->shown);
            choice++;
        }
    }
    cJSON_Delete(rows);
    assert_true(answer_holds("\"path\":\"instrument.head_angle\""));
    assert_true(answer_holds("\"kind\":\"choice\",\"unit\":\"\",\"choices\":[[\"none\","));
    assert_true(answer_holds("\"kind\":\"figure\",\"unit\":\"deg\",\"choices\":[]"));
}

static bool applies(const cJSON *root, const char *path)
{
    const cJSON *item;
    cJSON_ArrayForEach(item, cJSON_GetObjectItem(root, "applies"))
    {
        if (strcmp(item->valuestring, path) == 0) {
            return true;
        }
    }
    return false;
}

static void a_sheet_says_which_fields_it_has(void **state)
{
    (void)state;
    assert_int_equal(ask("POST", "/read", LEAST), 200);
    cJSON *acoustic = cJSON_ParseWithLength(reply.bytes, reply.size);
    assert_int_equal(ask("POST", "/read", "sillet: 1\nprofile: electric-guitar\n"), 200);
    cJSON *electric = cJSON_ParseWithLength(reply.bytes, reply.size);
    assert_true(applies(acoustic, "saddle.slot_depth") && applies(electric, "saddle.pitch"));
    assert_false(applies(acoustic, "saddle.pitch") || applies(electric, "saddle.slot_depth"));
    assert_true(applies(acoustic, "readings.first") && applies(electric, "readings.first"));
    cJSON_Delete(acoustic);
    cJSON_Delete(electric);
    assert_int_equal(ask("POST", "/read", LEAST "instrument: {crown: x}\n"), 200);
    assert_true(answer_holds("\"applies\":null"));
}

static void drawings_are_the_librarys(void **state)
{
    static const struct {
        const char *target, *type, *begins;
        int status;
    } rows[] = {
        {"/draw", "application/pdf", "%PDF-", 200},
        {"/draw?as=pdf&part=nut&paper=A3", "application/pdf", "%PDF-", 200},
        {"/draw?as=svg", "image/svg+xml", "<?xml", 200},
        {"/draw?as=svg&sheet=saddle", "image/svg+xml", "<?xml", 200},
        {"/draw?as=svg&view=side", "image/svg+xml", "<?xml", 200},
        {"/draw?as=dxf&part=saddle", "image/vnd.dxf", "0\nSECTION", 200},
        {"/draw?as=stl", "model/stl", "sillet: millimetres", 200},
        {"/draw?as=svg&sheet=cover", "text/plain; charset=utf-8", "", 404},
        {"/draw?as=png", "text/plain; charset=utf-8", "", 400},
        {"/draw?part=bridge", "text/plain; charset=utf-8", "", 400},
        {"/draw?as=pdf&part=nut&paper=letter", "application/pdf", "%PDF-", 200},
        {"/draw?paper=A5", "text/plain; charset=utf-8", "", 400},
        {"/draw?view=top&as=svg", "text/plain; charset=utf-8", "", 400},
        {"/draw?as=pdf&sheet=nut", "application/pdf", "%PDF", 200},
        {"/draw?as=svg&sheet=owner", "image/svg+xml", "<?xml", 200},
        {"/draw?as=pdf&view=nut", "text/plain; charset=utf-8", "", 400},
        {"/draw?as=stl&sheet=nut", "text/plain; charset=utf-8", "", 400},
        {"/draw?as=dxf&view=nut", "text/plain; charset=utf-8", "", 400},
    };
    char *text = read_whole("examples/high-saddle.yaml");
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int status = ask("POST", rows[i].target, text);
        if (status != rows[i].status || strcmp(reply.type, rows[i].type) != 0 ||
            strncmp(reply.bytes, rows[i].begins, strlen(rows[i].begins)) != 0) {
            fail_msg("%s: %d %s %.20s", rows[i].target, status, reply.type, reply.bytes);
        }
    }
    assert_int_equal(ask("POST", "/draw", "sillet: 2\n"), 422);
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_its_own_host_and_origin),
        cmocka_unit_test(the_port_of_http),
        cmocka_unit_test(routes_and_methods),
        cmocka_unit_test(every_answer_is_strict),
        cmocka_unit_test(no_more_than_a_sheet),
        cmocka_unit_test(plans_are_the_librarys),
        cmocka_unit_test(a_wrong_sheet_is_told_by_place_and_path),
        cmocka_unit_test(a_sheet_is_read_value_by_value),
        cmocka_unit_test(the_fields_are_told_in_words),
        cmocka_unit_test(a_sheet_says_which_fields_it_has),
        cmocka_unit_test(drawings_are_the_librarys),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
