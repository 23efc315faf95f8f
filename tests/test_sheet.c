/* SPDX-License-Identifier: MIT */
/* Reading sheets: what is refused, the messages, and their places. */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

#include "told.h"

static void read_file(const char *path, char *text)
{
    FILE *file = fopen(path, "rb");
    size_t length = file ? fread(text, 1, TEXT - 1, file) : 0;
    text[length] = '\0';
    if (file) {
        fclose(file);
    }
}

/* --- every sheet of tests/sheets against what is beside it ----------------------------------- */

static bool replay(const char *name)
{
    static char got[TEXT], wanted[TEXT];
    char path[512], expected[512];
    bool good = strncmp(name, "good-", 5) == 0;
    sil_sheet *sheet;
    snprintf(path, sizeof path, "tests/sheets/%s", name);
    snprintf(expected, sizeof expected, "tests/sheets/%.*s.expect", (int)strlen(name) - 5, name);
    sil_status status = sil_sheet_read(path, "profiles", &sheet);
    told(sheet, got);
    read_file(expected, wanted);
    bool right = strcmp(got, wanted) == 0 && (good || wanted[0] != '\0') &&
                 (sil_sheet_job(sheet) != NULL) == good &&
                 status == (good ? wanted[0] ? SIL_DOUBTFUL : SIL_DONE : SIL_WRONG);
    if (!right) {
        print_error("%s: status %d\n--- told\n%s--- wanted\n%s", path, status, got, wanted);
    }
    sil_sheet_free(sheet);
    return right;
}

static void sheets_are_told_of_as_expected(void **state)
{
    (void)state;
    DIR *folder = opendir("tests/sheets");
    assert_non_null(folder);
    int good = 0, bad = 0, wrong = 0;
    for (struct dirent *entry; (entry = readdir(folder));) {
        const char *name = entry->d_name;
        bool yaml = strlen(name) > 5 && strcmp(name + strlen(name) - 5, ".yaml") == 0;
        bool is_good = strncmp(name, "good-", 5) == 0, is_bad = strncmp(name, "bad-", 4) == 0;
        if (yaml && (is_good || is_bad)) {
            good += is_good;
            bad += is_bad;
            wrong += !replay(name);
        }
    }
    closedir(folder);
    assert_int_equal(wrong, 0);
    assert_true(good >= 7 && bad >= 50);
}

/* --- bytes that no file of the tree should hold ---------------------------------------------- */

/* Reads bytes and gives the first complaint; a second is ample for any sheet. */
static void expect_bytes(const char *bytes, size_t size, const char *first, int count)
{
    static char all[TEXT];
    sil_sheet *sheet;
    clock_t start = clock();
    sil_status status = sil_sheet_read_bytes(bytes, size, "s.yaml", "profiles", &sheet);
    double seconds = (double)(clock() - start) / CLOCKS_PER_SEC;
    told(sheet, all);
    char *end = strchr(all, '\n');
    if (end) {
        *end = '\0';
    }
    assert_string_equal(all, first);
    assert_int_equal(status, first[0] ? SIL_WRONG : SIL_DONE);
    if (count > 0) {
        assert_int_equal(sil_sheet_complaint_count(sheet), count);
    }
    assert_true(seconds < 1.0);
    sil_sheet_free(sheet);
}

static void expect(const char *text, const char *first, int count)
{
    expect_bytes(text, strlen(text), first, count);
}

static void bytes_that_are_no_text_are_refused(void **state)
{
    (void)state;
    const char nul[] = HEAD "units: in\nnut: \0\nunits: mm\n";
    expect_bytes(nul, sizeof nul - 1, "s.yaml:4:6: error: a NUL byte: this is not a text file", 1);
    expect_bytes("\x7F"
                 "ELF\x02\x01\x01\0\0",
                 9, "s.yaml:1:1: error: a control character", 1);
    expect("sillet: 1\n\x1B[2J\n", "s.yaml:2:1: error: a control character", 1);
    expect("sillet: 1\njob: {notes: \"\xC2\x85\"}\n", "s.yaml:2:15: error: a control character", 1);
    expect("sillet: 1\njob: {notes: \xC3\x28}\n", "s.yaml:2:14: error: not UTF-8", 1);
    expect("sillet: 1\n\xC0\xAF\n", "s.yaml:2:1: error: not UTF-8", 1);         /* overlong */
    expect("sillet: 1\n\xED\xA0\x80\n", "s.yaml:2:1: error: not UTF-8", 1);     /* surrogate */
    expect("sillet: 1\n\xF4\x90\x80\x80\n", "s.yaml:2:1: error: not UTF-8", 1); /* past the last */
    expect("sillet: 1\n\xE2\x82", "s.yaml:2:1: error: not UTF-8", 1);           /* cut short */
    expect("sillet: 1\n\xFF\xFE", "s.yaml:2:1: error: not UTF-8", 1);
    expect("\xEF\xBB\xBF" HEAD, "", 0);
    expect(HEAD "\xEF\xBB\xBFunits: mm\n", "s.yaml:3:1: error: a byte order mark within the text",
           1);
    expect("", "s.yaml:1:1: error: empty: a sheet begins with sillet: 1", 1);
}

/* What stands before the place is read and told all the same. */
static void what_stands_before_a_bad_byte_is_told(void **state)
{
    (void)state;
    expect("sillet: 2\nunits: mm\nnut: {widht: 3}\njob: \xFF\n",
           "s.yaml:1:9: error: sillet 2: this version reads sheets of format 1", 3);
}

static void sheets_too_large_are_refused_by_size(void **state)
{
    (void)state;
    char path[] = "/tmp/sillet-test-XXXXXX";
    int file = mkstemp(path);
    assert_true(file >= 0);
    assert_int_equal(ftruncate(file, 1L << 30), 0);
    close(file);
    sil_sheet *sheet;
    clock_t start = clock();
    assert_int_equal(sil_sheet_read(path, "profiles", &sheet), SIL_WRONG);
    assert_true((double)(clock() - start) / CLOCKS_PER_SEC < 1.0);
    assert_int_equal(sil_sheet_complaint_count(sheet), 1);
    assert_string_equal(sil_sheet_complaint(sheet, 0).text,
                        "over 256 KiB: this is not a measuring sheet");
    sil_sheet_free(sheet);
    unlink(path);
}

static void files_that_cannot_be_read_are_told(void **state)
{
    (void)state;
    const char *const paths[] = {"tests/sheets/not-there.yaml", "tests/sheets"};
    for (int i = 0; i < 2; i++) {
        sil_sheet *sheet;
        assert_int_equal(sil_sheet_read(paths[i], "profiles", &sheet), SIL_UNREADABLE);
        assert_int_equal(sil_sheet_complaint_count(sheet), 1);
        assert_non_null(strstr(sil_sheet_complaint(sheet, 0).text, "cannot be read: "));
        assert_null(sil_sheet_job(sheet));
        sil_sheet_free(sheet);
    }
}

/* A text made of the same piece over and over, behind a beginning. */
static char *repeated(const char *begin, const char *piece, int times)
{
    size_t length = strlen(begin), step = strlen(piece);
    char *text = malloc(length + step * (size_t)times + 1);
    assert_non_null(text);
    memcpy(text, begin, length);
    for (int i = 0; i < times; i++) {
        memcpy(text + length + step * (size_t)i, piece, step);
    }
    text[length + step * (size_t)times] = '\0';
    return text;
}

static void sheets_made_to_choke_a_reader_do_not(void **state)
{
    (void)state;
    static const struct {
        const char *begin, *piece;
        int times;
        const char *among;
    } rows[] = {
        {HEAD "job: ", "[", 100000, "s.yaml:3:21: error: more than 16 deep"},
        {HEAD "job: ", "{a: ", 60000, "s.yaml:3:66: error: more than 16 deep"},
        {HEAD "job:\n", "- ", 100000, "s.yaml:4:31: error: more than 16 deep"},
        {HEAD "files: [", "1,", 120000, "s.yaml:3:8: error: files: at most 64 files"},
        {HEAD "strings: [", "a,", 120000, "s.yaml:3:10: error: strings: at most 12 strings"},
        {HEAD "readings: [", "{},", 80000, "s.yaml:3:11: error: readings: at most 1000 readings"},
        {HEAD "readings: [{action: [", "9,", 120000, "s.yaml:3:21: error: not YAML"},
        {HEAD "readings:\n- action:\n", "  - 9\n", 40000,
         "s.yaml:5:3: error: action: 40000 values for 6 strings"},
        {HEAD "readings:\n- buzz:\n", "  - {}\n", 36000,
         "s.yaml:5:5: error: readings 1, buzz 1, string is missing"},
        {HEAD "readings: [{buzz: [", "{},", 80000, "s.yaml:3:19: error: not YAML"},
        {HEAD "readings:\n- frets:\n", "  - {string: 1, fret: 1, off: 0}\n", 7000,
         "s.yaml:6:5: error: frets: this crown is given twice"},
        {HEAD "nut:\n", "  a:\n", 50000, "s.yaml:5:3: error: a is given twice, first on line 4"},
        {HEAD "job: {title: \"", "a ", 120000,
         "s.yaml:3:14: error: not YAML: found unexpected end of stream; what begins here is "},
        {HEAD "job: ", "? ", 100000, "s.yaml:3:6: error: not YAML"},
        {HEAD "job: ", "&a ", 80000, "s.yaml:3:9: error: not YAML"},
        {HEAD, "#\n", 120000, ""},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        static char all[TEXT];
        char *text = repeated(rows[i].begin, rows[i].piece, rows[i].times);
        sil_sheet *sheet;
        clock_t start = clock();
        sil_sheet_read_bytes(text, strlen(text), "s.yaml", "profiles", &sheet);
        double seconds = (double)(clock() - start) / CLOCKS_PER_SEC;
        told(sheet, all);
        if (!strstr(all, rows[i].among) || seconds >= 1.0) {
            fail_msg("row %d, %.2f s: %.400s", (int)i, seconds, all);
        }
        sil_sheet_free(sheet);
        free(text);
    }
}

static void keys_without_end_are_not_read(void **state)
{
    (void)state;
    static char text[TEXT] = HEAD "nut:\n";
    size_t used = strlen(text);
    for (int i = 0; i < 20000; i++) {
        used += (size_t)snprintf(text + used, sizeof text - used, "  k%d:\n", i);
    }
    expect(text, "s.yaml:4:3: error: unknown key k0", 1000);
}

static void an_alias_bomb_is_not_followed(void **state)
{
    (void)state;
    char bomb[4096] = HEAD "job: &a0 {notes: x}\n";
    for (int i = 1; i < 30; i++) {
        char line[64];
        snprintf(line, sizeof line, "k%d: &a%d [*a%d, *a%d, *a%d]\n", i, i, i - 1, i - 1, i - 1);
        strcat(bomb, line);
    }
    expect(bomb, "s.yaml:3:6: error: anchors (&) are not read", 1 + 29 * 5);
}

static void complaints_past_a_thousand_are_counted_as_one(void **state)
{
    (void)state;
    char *text = repeated(HEAD "readings:\n", "- {action: -1, first: -1}\n", 800);
    expect(text, "s.yaml:4:12: error: action -1: cannot be negative", 1000);
    free(text);
    text = repeated(HEAD "nut: {", "a: 1, a: 1, ", 15000);
    expect(text, "s.yaml:3:13: error: a is given twice, first on line 3", 1000);
    free(text);
}

/* --- complaints as they are shown ------------------------------------------------------------ */

static void a_complaint_shows_its_place(void **state)
{
    (void)state;
    char text[512];
    sil_complaint complaint = {SIL_WARNING,
                               "s\x1B.yaml",
                               3,
                               5,
                               "odd",
                               "\ta\x07"
                               "b\xFF"
                               "c"};
    size_t length = sil_complaint_write(&complaint, text, sizeof text);
    assert_string_equal(text, "s\xE2\x90\x9B.yaml:3:5: warning: odd\n"
                              " a\xE2\x90\x87"
                              "b\xEF\xBF\xBD"
                              "c\n"
                              "    ^");
    assert_int_equal(length, strlen(text));
    char small[24];
    assert_int_equal(sil_complaint_write(&complaint, small, sizeof small), length);
    assert_string_equal(small, "s\xE2\x90\x9B.yaml:3:5: warning:");
    assert_int_equal(sil_complaint_write(&complaint, small, 4), length);
    assert_string_equal(small, "s"); /* never cut within a letter */
    assert_int_equal(sil_complaint_write(&complaint, NULL, 0), length);
    complaint.source = NULL;
    sil_complaint_write(&complaint, text, sizeof text);
    assert_string_equal(text, "s\xE2\x90\x9B.yaml:3:5: warning: odd");
}

static void complaints_come_in_the_order_of_their_places(void **state)
{
    (void)state;
    sil_sheet *sheet;
    sil_sheet_read("tests/sheets/bad-in-profile.yaml", "profiles", &sheet);
    int count = sil_sheet_complaint_count(sheet);
    assert_true(count > 5);
    for (int k = 1; k < count; k++) {
        sil_complaint a = sil_sheet_complaint(sheet, k - 1), b = sil_sheet_complaint(sheet, k);
        bool same = strcmp(a.file, b.file) == 0;
        assert_true(same || strstr(b.file, "part-profile.yaml"));
        assert_true(!same || a.line < b.line || (a.line == b.line && a.column <= b.column));
    }
    sil_sheet_free(sheet);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sheets_are_told_of_as_expected),
        cmocka_unit_test(bytes_that_are_no_text_are_refused),
        cmocka_unit_test(what_stands_before_a_bad_byte_is_told),
        cmocka_unit_test(sheets_too_large_are_refused_by_size),
        cmocka_unit_test(files_that_cannot_be_read_are_told),
        cmocka_unit_test(sheets_made_to_choke_a_reader_do_not),
        cmocka_unit_test(keys_without_end_are_not_read),
        cmocka_unit_test(an_alias_bomb_is_not_followed),
        cmocka_unit_test(complaints_past_a_thousand_are_counted_as_one),
        cmocka_unit_test(a_complaint_shows_its_place),
        cmocka_unit_test(complaints_come_in_the_order_of_their_places),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
