/* SPDX-License-Identifier: MIT */
/* The files a sheet stands on: an instrument's own, the shop's, and which of them counts. */
#include <dirent.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "told.h"

static char top[] = "/tmp/sillet-shop-XXXXXX", all[TEXT];
static char home[64], sheet_path[128], shop_path[128], above_path[128];

static void put(const char *path, const char *text)
{
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

/* TOP/home/jobs/one.yaml, and where a shop file may be: beside it, or in home. */
static int make_folders(void **state)
{
    (void)state;
    assert_non_null(mkdtemp(top));
    snprintf(home, sizeof home, "%s/home", top);
    snprintf(sheet_path, sizeof sheet_path, "%s/jobs", home);
    assert_int_equal(mkdir(home, 0755), 0);
    assert_int_equal(mkdir(sheet_path, 0755), 0);
    snprintf(sheet_path, sizeof sheet_path, "%s/jobs/one.yaml", home);
    snprintf(shop_path, sizeof shop_path, "%s/jobs/shop.yaml", home);
    snprintf(above_path, sizeof above_path, "%s/shop.yaml", home);
    return setenv("HOME", home, 1);
}

static int remove_folders(void **state)
{
    (void)state;
    char command[128];
    snprintf(command, sizeof command, "rm -r '%s'", top);
    return system(command);
}

static int clear(void **state)
{
    (void)state;
    char path[128];
    unlink(shop_path);
    unlink(above_path);
    snprintf(path, sizeof path, "%s/shop.yaml", top);
    unlink(path);
    put(sheet_path, HEAD);
    return 0;
}

/* The sheet, with all complaints in `all`; to be freed. */
static sil_sheet *read_sheet(sil_status wanted)
{
    sil_sheet *sheet;
    sil_status status = sil_sheet_read(sheet_path, "profiles", &sheet);
    told(sheet, all);
    if (status != wanted) {
        fail_msg("status %d: %s", status, all);
    }
    return sheet;
}

/* What the plan would take for the ruler's tolerance; 0.1 is the profile's. */
static double ruler(sil_status wanted)
{
    sil_sheet *sheet = read_sheet(wanted);
    double found = sil_sheet_job(sheet)->tools.action;
    sil_sheet_free(sheet);
    return found;
}

static void a_shop_file_is_found_beside_the_sheet_or_above(void **state)
{
    (void)state;
    near(ruler(SIL_DONE), 0.1, 0.0);
    put(above_path, "sillet: 1\ntools: {action: 0.06}\n");
    near(ruler(SIL_DONE), 0.06, 0.0);
    put(shop_path, "sillet: 1\nunits: in\ntools: {action: 0.003}\n");
    near(ruler(SIL_DONE), 0.0762, 1e-15);
}

static void it_is_named_as_it_was_found(void **state)
{
    (void)state;
    char from[512];
    assert_non_null(getcwd(from, sizeof from));
    put(above_path, "sillet: 1\nname: Corner Guitars\ncontact: High Street 12\n");
    sil_sheet *sheet = read_sheet(SIL_DONE);
    const sil_shop *shop = &sil_sheet_job(sheet)->shop;
    assert_string_equal(shop->name, "Corner Guitars");
    assert_string_equal(shop->contact, "High Street 12");
    assert_string_equal(shop->file, above_path);
    sil_sheet_free(sheet);
    static const char *const rows[][3] = {{"home", "jobs/one.yaml", "shop.yaml"},
                                          {"home/jobs", "one.yaml", "../shop.yaml"},
                                          {"", "home/jobs/one.yaml", "home/shop.yaml"},
                                          {"home/jobs", "../jobs/one.yaml", "../shop.yaml"},
                                          {"home", "./jobs/one.yaml", "shop.yaml"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char profiles[600], folder[128];
        snprintf(profiles, sizeof profiles, "%s/profiles", from);
        snprintf(folder, sizeof folder, "%s/%s", top, rows[i][0]);
        assert_int_equal(chdir(folder), 0);
        assert_int_equal(sil_sheet_read(rows[i][1], profiles, &sheet), SIL_DONE);
        assert_string_equal(sil_sheet_job(sheet)->shop.file, rows[i][2]);
        sil_sheet_free(sheet);
    }
    assert_int_equal(chdir(from), 0);
}

static void none_is_sought_past_home(void **state)
{
    (void)state;
    char past[128];
    snprintf(past, sizeof past, "%s/shop.yaml", top);
    put(past, "sillet: 1\ntools: {action: 0.06}\n");
    near(ruler(SIL_DONE), 0.1, 0.0);
    setenv("HOME", "/nowhere", 1); /* then as far up as the sheet's owner owns the folders */
    near(ruler(SIL_DONE), 0.06, 0.0);
    setenv("HOME", home, 1);
}

/* Only who runs the tests as root can give a file away. */
static void none_is_sought_in_folders_of_others(void **state)
{
    (void)state;
    if (geteuid() != 0) {
        skip();
    }
    put(above_path, "sillet: 1\ntools: {action: 0.06}\n");
    assert_int_equal(chown(sheet_path, 1, 1), 0);
    near(ruler(SIL_DONE), 0.1, 0.0);
    char folder[128];
    snprintf(folder, sizeof folder, "%s/jobs", home);
    assert_int_equal(chown(folder, 1, 1), 0); /* its own folder, but not the one above */
    near(ruler(SIL_DONE), 0.1, 0.0);
    assert_int_equal(chown(home, 1, 1), 0); /* now both, but the file is still somebody else's */
    near(ruler(SIL_DOUBTFUL), 0.1, 0.0);
    assert_non_null(strstr(all, "it belongs to somebody else than the sheet does"));
    assert_int_equal(chown(above_path, 1, 1), 0);
    near(ruler(SIL_DONE), 0.06, 0.0);
    assert_int_equal(chown(folder, 0, 0) | chown(home, 0, 0) | chown(sheet_path, 0, 0), 0);
}

/* The sheet over the instrument's own file, that over the shop's, that over the profile. */
static void what_stands_nearer_to_the_visit_counts(void **state)
{
    (void)state;
    char own[128];
    snprintf(own, sizeof own, "%s/anna.yaml", home);
    put(above_path, "sillet: 1\ntools: {action: 0.01, first: 0.01, relief: 0.01}\nfiles: [0.3]\n"
                    "allowances: {slot_plain: 0.01, shim_step: 0.01}\n");
    put(own, "sillet: 1\nprofile: steel-string-acoustic\ntools: {first: 0.02, action: 0.02}\n"
             "allowances: {slot_plain: 0.02}\nnut: {width: 44}\n");
    put(sheet_path, "sillet: 1\nprofile: ../anna.yaml\ntools: {action: 0.03}\n");
    sil_sheet *sheet = read_sheet(SIL_DONE);
    const sil_job *job = sil_sheet_job(sheet);
    near(job->tools.action, 0.03, 0.0);
    near(job->tools.first, 0.02, 0.0);
    near(job->tools.relief, 0.01, 0.0);
    near(job->tools.caliper, 0.05, 0.0);
    near(job->allowances.slot_plain, 0.02, 0.0);
    near(job->allowances.shim_step, 0.01, 0.0);
    near(job->allowances.slot_wound, 0.08, 0.0);
    near(job->nut.width, 44.0, 0.0);
    near(job->nut.thickness, 6.0, 0.0);
    assert_int_equal(job->file_count, 1);
    sil_sheet_free(sheet);
}

static void what_a_shop_file_may_not_have_is_told_there_and_at_the_sheet(void **state)
{
    (void)state;
    char wanted[1024];
    put(above_path, "sillet: 1\nname: [a, b]\nreadings: []\ntools: {action: high, frist: 1}\n");
    sil_sheet_free(read_sheet(SIL_WRONG));
    snprintf(
        wanted, sizeof wanted,
        "%s:1:1: error: the shop file %.40s... has 4 mistakes, the first in line 2\n"
        "sillet: 1\n^\n"
        "%s:2:7: error: name: wanted a value, found a list\nname: [a, b]\n      ^\n"
        "%s:3:1: error: a shop file has no readings: wanted name, contact, units, files, tools "
        "or allowances\nreadings: []\n^\n",
        sheet_path, above_path, above_path, above_path);
    if (strlen(above_path) <= 40) {
        char *dots = strstr(wanted, "...");
        memmove(dots, dots + 3, strlen(dots + 3) + 1);
    }
    assert_memory_equal(all, wanted, strlen(wanted));
    assert_non_null(strstr(all, ":4:17: error: action high: wanted a length"));
    assert_non_null(strstr(all, ":4:23: error: unknown key frist; did you mean first?"));
}

static void a_file_that_is_none_of_ours_is_passed_over_in_silence_about_it(void **state)
{
    (void)state;
    static const char *const texts[] = {"door: 4711\n", "4711\n", "a: [4711\n", "\x01 4711\n", ""};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        put(above_path, texts[i]);
        near(ruler(SIL_DOUBTFUL), 0.1, 0.0);
        assert_non_null(strstr(all, ":1:1: warning: this shop file is not used: it is not YAML"));
        assert_null(strstr(all, "4711"));
    }
    unlink(above_path);
    assert_int_equal(symlink("/etc/passwd", above_path), 0);
    near(ruler(SIL_DOUBTFUL), 0.1, 0.0);
    assert_non_null(strstr(all, "it is a link, or no plain file"));
    sil_sheet *sheet = read_sheet(SIL_DOUBTFUL);
    assert_null(sil_sheet_job(sheet)->shop.file);
    sil_sheet_free(sheet);
}

static void a_sheet_from_memory_has_no_shop_and_one_within_a_folder_that_folder_s(void **state)
{
    (void)state;
    sil_sheet *sheet;
    char folder[128];
    put(above_path, "sillet: 1\nname: Above\n");
    assert_int_equal(sil_sheet_read_bytes(HEAD, strlen(HEAD), sheet_path, "profiles", &sheet), 0);
    assert_null(sil_sheet_job(sheet)->shop.file);
    sil_sheet_free(sheet);
    setenv("SILLET_PROFILES", "profiles", 1);
    snprintf(folder, sizeof folder, "%s/jobs", home);
    int within = open(folder, O_RDONLY | O_DIRECTORY);
    assert_int_equal(sil_sheet_read_within(HEAD, strlen(HEAD), "sheet", within, &sheet), 0);
    assert_null(sil_sheet_job(sheet)->shop.name);
    sil_sheet_free(sheet);
    put(shop_path, "sillet: 1\nname: Here\n");
    assert_int_equal(sil_sheet_read_within(HEAD, strlen(HEAD), "sheet", within, &sheet), 0);
    assert_string_equal(sil_sheet_job(sheet)->shop.name, "Here");
    assert_string_equal(sil_sheet_job(sheet)->shop.file, "shop.yaml");
    sil_sheet_free(sheet);
    close(within);
    unsetenv("SILLET_PROFILES");
}

static void a_reader_keeps_the_shop_file_and_gives_it_to_each_sheet_whole(void **state)
{
    (void)state;
    sil_reader *reader;
    put(above_path, "sillet: 1\nname: Above\nfiles: [0.3, 0.4]\ntools: {action: 0.06}\n");
    assert_int_equal(sil_reader_new("profiles", &reader), SIL_DONE);
    for (int k = 0; k < 3; k++) {
        sil_sheet *sheet;
        assert_int_equal(sil_reader_read(reader, sheet_path, &sheet), SIL_DONE);
        const sil_job *job = sil_sheet_job(sheet);
        near(job->tools.action, 0.06, 0.0);
        assert_int_equal(job->file_count, 2);
        assert_string_equal(job->shop.name, "Above");
        assert_string_equal(job->shop.file, above_path);
        sil_sheet_free(sheet);
    }
    sil_reader_free(reader);
}

/* The ruler's tolerance of a sheet that a reader reads. */
static double ruler_by(sil_reader *reader, const char *path)
{
    sil_sheet *sheet;
    assert_int_equal(sil_reader_read(reader, path, &sheet), SIL_DONE);
    double found = sil_sheet_job(sheet)->tools.action;
    sil_sheet_free(sheet);
    return found;
}

/* What it knows of one folder it does not take for another's. */
static void a_reader_knows_a_folder_that_no_shop_file_is_found_from(void **state)
{
    (void)state;
    sil_reader *reader;
    char other[64], path[80];
    snprintf(other, sizeof other, "%s/other", top);
    snprintf(path, sizeof path, "%s/two.yaml", other);
    assert_int_equal(mkdir(other, 0755), 0);
    put(path, HEAD);
    put(shop_path, "sillet: 1\ntools: {action: 0.06}\n");
    assert_int_equal(sil_reader_new("profiles", &reader), SIL_DONE);
    for (int k = 0; k < 3; k++) {
        near(ruler_by(reader, path), 0.1, 0.0);
        near(ruler_by(reader, sheet_path), 0.06, 0.0);
    }
    near(ruler_by(reader, path), 0.1, 0.0);
    snprintf(path, sizeof path, "%s/shop.yaml", other);
    put(path, "sillet: 1\ntools: {action: 0.02}\n");
    snprintf(path, sizeof path, "%s/two.yaml", other);
    near(ruler_by(reader, path), 0.1, 0.0); /* kept, as a profile is */
    sil_reader_free(reader);
}

/* A sheet that is the shop file itself stands on none, which says nothing of the next. */
static void a_shop_file_read_as_a_sheet_is_not_hidden_from_the_next(void **state)
{
    (void)state;
    sil_reader *reader;
    put(shop_path, "sillet: 1\ntools: {action: 0.06}\n");
    assert_int_equal(sil_reader_new("profiles", &reader), SIL_DONE);
    sil_sheet *shop;
    assert_int_equal(sil_reader_read(reader, shop_path, &shop), SIL_WRONG);
    sil_sheet_free(shop);
    near(ruler_by(reader, sheet_path), 0.06, 0.0);
    sil_reader_free(reader);
}

/* It says so itself, and does not stand on itself. */
static void a_shop_file_is_no_sheet(void **state)
{
    (void)state;
    sil_sheet *sheet;
    put(shop_path, "sillet: 1\ntools: {action: 0.06}\n");
    assert_int_equal(sil_sheet_read(shop_path, "profiles", &sheet), SIL_WRONG);
    for (int k = 0; k < sil_sheet_complaint_count(sheet); k++) {
        assert_null(strstr(sil_sheet_complaint(sheet, k).text, "the shop file"));
    }
    sil_sheet_free(sheet);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup(a_shop_file_is_found_beside_the_sheet_or_above, clear),
        cmocka_unit_test_setup(it_is_named_as_it_was_found, clear),
        cmocka_unit_test_setup(none_is_sought_past_home, clear),
        cmocka_unit_test_setup(none_is_sought_in_folders_of_others, clear),
        cmocka_unit_test_setup(what_stands_nearer_to_the_visit_counts, clear),
        cmocka_unit_test_setup(what_a_shop_file_may_not_have_is_told_there_and_at_the_sheet, clear),
        cmocka_unit_test_setup(a_file_that_is_none_of_ours_is_passed_over_in_silence_about_it,
                               clear),
        cmocka_unit_test_setup(
            a_sheet_from_memory_has_no_shop_and_one_within_a_folder_that_folder_s, clear),
        cmocka_unit_test_setup(a_reader_keeps_the_shop_file_and_gives_it_to_each_sheet_whole,
                               clear),
        cmocka_unit_test_setup(a_reader_knows_a_folder_that_no_shop_file_is_found_from, clear),
        cmocka_unit_test_setup(a_shop_file_read_as_a_sheet_is_not_hidden_from_the_next, clear),
        cmocka_unit_test_setup(a_shop_file_is_no_sheet, clear),
    };
    return cmocka_run_group_tests(tests, make_folders, remove_folders);
}
