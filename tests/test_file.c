/* SPDX-License-Identifier: MIT */
/* Saving a file: whole or not at all. */
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
        memset(bytes, 'o', 100);
        assert_int_equal(sil_file_save(path, bytes, 100), 0);
        memset(bytes, 'n', 100);
    }
    assert_true(cut_short > 0);
    unlink(path);
    free(bytes);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_kill_leaves_a_whole_file, make_folder, remove_folder),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
