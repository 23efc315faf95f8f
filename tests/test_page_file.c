/* SPDX-License-Identifier: MIT */
/* The page as one file: offered beside the page, and handed out alone on a local network. Private
 * networks: RFC 1918, 3; one link: RFC 3927, 2.1; this machine: RFC 1122, 3.2.1.3. */
#define _GNU_SOURCE /* NOLINT: memmem */
#include "asked.h"

static const char file[] = "<!doctype html><title>one file</title>";

static const char *policy(void)
{
    assert_string_equal(web_headers[0].name, "Content-Security-Policy");
    return web_header_value(&web_headers[0], &reply);
}

static void offered_where_it_is(void **state)
{
    (void)state;
    assert_int_equal(ask("GET", "/sillet.html", ""), 404);
    assert_int_equal(ask("GET", "/sheets", ""), 200);
    assert_true(answer_holds("\"file\":null"));
    site.file = file;
    site.file_size = strlen(file);
    assert_int_equal(ask("GET", "/sheets", ""), 200);
    assert_true(answer_holds("\"file\":\"/sillet.html\""));
    assert_non_null(strstr(policy(), "default-src 'none'"));
    assert_int_equal(ask("GET", "/sillet.html", ""), 200);
    assert_true(reply.size == strlen(file) && answer_holds(file));
    /* A header's policy would hold beside the file's own, and forbid the script within. */
    assert_null(strstr(policy(), "script-src"));
    assert_null(strstr(policy(), "default-src"));
    assert_non_null(strstr(policy(), "frame-ancestors 'none'"));
    char tag[WEB_TAG_MAX];
    memcpy(tag, reply.tag, sizeof tag);
    web_request again = *request("GET", "/sillet.html", "");
    again.if_none_match = tag;
    ask_as(&again);
    assert_int_equal(reply.status, 304);
    assert_int_equal(ask("POST", "/sillet.html", ""), 405);
    again.host = "evil.example";
    ask_as(&again);
    assert_int_equal(reply.status, 403);
}

/* On the network there is the file, and nothing else in any way. */
static void alone_on_the_network(void **state)
{
    static const struct {
        const char *method, *target;
        int status;
    } rows[] = {
        {"GET", "/", 200},        {"HEAD", "/", 200},          {"POST", "/", 404},
        {"PUT", "/", 404},        {"GET", "/main.js", 404},    {"GET", "/profiles", 404},
        {"POST", "/plan", 404},   {"POST", "/read", 404},      {"POST", "/draw?as=pdf", 404},
        {"GET", "/sheets", 404},  {"GET", "//", 404},          {"GET", "/sillet.html", 404},
        {"GET", "/%2e%2e/", 404}, {"GET", "/%", 404},          {"GET", "", 404},
        {"OPTIONS", "*", 404},    {"GET", "/index.html", 404}, {"GET", "/sheets/seen.yaml", 404},
    };
    char address[64];
    (void)state;
    assert_int_equal(put("/sheets/seen.yaml", LEAST, NULL, "*"), 201);
    site.file = file;
    site.file_size = strlen(file);
    site.lan = "192.168.1.20";
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        web_request asked = *request(rows[i].method, rows[i].target, LEAST);
        asked.host = "bench.example";
        ask_as(&asked);
        if (reply.status != rows[i].status) {
            fail_msg("%s %s: %d", rows[i].method, rows[i].target, reply.status);
        }
        assert_true(reply.status == 200 ? answer_holds(file) : !answer_holds(file));
    }
    assert_int_equal(put("/sheets/stranger.yaml", LEAST, NULL, "*"), 404);
    assert_int_equal(faccessat(site.folder, "stranger.yaml", F_OK, 0), -1);
    web_address(&site, address, sizeof address);
    assert_string_equal(address, "http://192.168.1.20:7340/");
    site.lan = NULL;
}

static void only_private_networks(void **state)
{
    static const struct {
        const char *text;
        bool good;
    } rows[] = {
        {"10.0.0.1", true},
        {"10.255.255.255", true},
        {"9.255.255.255", false},
        {"11.0.0.0", false},
        {"172.16.0.1", true},
        {"172.31.255.255", true},
        {"172.15.255.255", false},
        {"172.32.0.0", false},
        {"192.168.0.1", true},
        {"192.168.255.255", true},
        {"192.167.255.255", false},
        {"192.169.0.0", false},
        {"169.254.7.7", true},
        {"169.253.7.7", false},
        {"169.255.0.0", false},
        {"127.0.0.1", true},
        {"128.0.0.1", false},
        {"0.0.0.0", false},
        {"255.255.255.255", false},
        {"100.64.0.1", false},
        {"8.8.8.8", false},
        {"192.0.2.1", false},
        {"", false},
        {"192.168.1", false},
        {"192.168.1.20:80", false},
        {" 192.168.1.20", false},
        {"192.168.1.256", false},
        {"fd00::1", false},
        {"bench.local", false},
        {"0300.0250.1.20", false},
    };
    uint32_t address = 0;
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (web_lan_read(rows[i].text, &address) != rows[i].good) {
            fail_msg("%s", rows[i].text);
        }
    }
    assert_true(web_lan_read("192.168.1.20", &address) && address == 0xC0A80114);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(offered_where_it_is),
        cmocka_unit_test(alone_on_the_network),
        cmocka_unit_test(only_private_networks),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
