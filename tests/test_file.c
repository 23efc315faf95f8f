/* SPDX-License-Identifier: MIT */
/* A file is saved either whole or not at all. */
#include <dirent.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <sillet/drawing.h>

#include "near.h"

static char folder[] = "/tmp/sillet-test-XXXXXX";

static int make_folder(void **state)
{
    (void)state;
    strcpy(folder + strlen(folder) - 6, "XXXXXX");
    return mkdtemp(folder) ? 0 : -1;
}

static int remove_folder(void **state)
{
    (void)state;
    return rmdir(folder);
}

static bool file_holds(const char *path, char with, size_t size)
{
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    size_t count = 0;
    int byte;
    while ((byte = fgetc(file)) == with) {
        count++;
    }
    fclose(file);
    return byte == EOF && count == size;
}

/* Killed after it got a name of its own and before it took the old one's, the new file stays,
 * whole, beside it: a row of names that begin so. */
static void clear_beside(char with, size_t size)
{
    DIR *listed = opendir(folder);
    assert_non_null(listed);
    for (struct dirent *entry; (entry = readdir(listed));) {
        char path[512];
        snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
        if (strncmp(entry->d_name, ".sillet-", 8) == 0) {
            assert_true(file_holds(path, with, size));
            unlink(path);
        }
    }
    closedir(listed);
}

/* Killed while megabytes are under way: the old file is whole, or the new one is, and the folder
 * holds nothing else (it can be removed after). */
static void a_kill_leaves_a_whole_file(void **state)
{
    (void)state;
    enum { SIZE = 1 << 24 };
    char path[64];
    snprintf(path, sizeof path, "%s/out", folder);
    char *bytes = malloc(SIZE);
    assert_non_null(bytes);
    memset(bytes, 'o', 100);
    assert_int_equal(sil_file_save(path, bytes, 100), 0);
    memset(bytes, 'n', SIZE);
    int cut_short = 0;
    for (int k = 0; k < 50; k++) {
        pid_t child = fork();
        assert_true(child >= 0);
        if (child == 0) {
            sil_file_save(path, bytes, SIZE);
            _exit(0);
        }
        struct timespec pause = {0, 200000L * k};
        nanosleep(&pause, NULL);
        kill(child, SIGKILL);
        waitpid(child, NULL, 0);
        struct stat about;
        assert_int_equal(stat(path, &about), 0);
        bool old = about.st_size == 100;
        cut_short += old;
        assert_true(file_holds(path, old ? 'o' : 'n', old ? 100 : SIZE));
        clear_beside('n', SIZE);
        memset(bytes, 'o', 100);
        assert_int_equal(sil_file_save(path, bytes, 100), 0);
        memset(bytes, 'n', 100);
    }
    assert_true(cut_short > 0);
    unlink(path);
    free(bytes);
}

/* A new file is there whole or not at all, and leaves nothing beside it. */
static void a_kill_leaves_a_whole_new_file(void **state)
{
    (void)state;
    enum { SIZE = 1 << 22 };
    char path[64];
    snprintf(path, sizeof path, "%s/out", folder);
    char *bytes = malloc(SIZE);
    assert_non_null(bytes);
    memset(bytes, 'n', SIZE);
    int cut_short = 0;
    for (int k = 0; k < 30; k++) {
        pid_t child = fork();
        assert_true(child >= 0);
        if (child == 0) {
            sil_file_save(path, bytes, SIZE);
            _exit(0);
        }
        struct timespec pause = {0, 100000L * k};
        nanosleep(&pause, NULL);
        kill(child, SIGKILL);
        waitpid(child, NULL, 0);
        bool there = access(path, F_OK) == 0;
        cut_short += !there;
        assert_true(!there || file_holds(path, 'n', SIZE));
        unlink(path);
    }
    assert_true(cut_short > 0);
    free(bytes);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_kill_leaves_a_whole_file, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(a_kill_leaves_a_whole_new_file, make_folder, remove_folder),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
