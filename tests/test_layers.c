/* SPDX-License-Identifier: MIT */
/* The include list is the architecture: arrows run one way. */
#include <dirent.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "near.h"

/* A room, the public headers it may take and the rooms whose own headers it may reach into. */
typedef struct room_row {
    const char *folder;
    const char *may_take;  /* behind <sillet/, a space between two; "core/" stands for all of it */
    const char *may_reach; /* folders under src, a space between two */
} room_row;

static const room_row rooms[] = {
    {"src/core", "core/ status.h", ""},
    {"src/text", "core/units.h", ""},
    {"src/json", "core/units.h", ""},
    {"src/job", "core/ job.h fields.h", "text"},
    {"src/sheet", "core/ job.h sheet.h", "job text"},
    {"src/plan", "core/ job.h plan.h status.h", ""},
    {"src/part", "core/ job.h plan.h", "plan"},
    {"src/brief", "core/ job.h plan.h", "plan part text"},
    {"src/report", "core/ job.h plan.h report.h version.h", "brief json text"},
    {"src/drawing", "core/ job.h plan.h drawing.h",
     "plan drawing/board drawing/views drawing/papers drawing/write"},
    {"src/drawing/board", "core/ job.h plan.h drawing.h status.h", "plan"},
    {"src/drawing/views", "core/ job.h fields.h plan.h", "plan drawing/board"},
    {"src/drawing/papers", "core/ job.h fields.h plan.h drawing.h",
     "plan drawing/board drawing/views"},
    {"src/drawing/write", "core/ drawing.h status.h", "drawing/board"},
    {"src/cli", "sillet.h", "brief json text"},
    {"src/cli/draw", "sillet.h drawing.h", "cli"},
    {"src/page", "sillet.h", "brief json text"},
    {"src/page/serve", "sillet.h", "page cli"},
};

static int wrong_arrows;

/* Whether a name is in a list, or stands in a folder of it. */
static bool listed(const char *list, const char *name)
{
    for (const char *at = list; *at != '\0'; at += strspn(at, " ")) {
        size_t length = strcspn(at, " ");
        bool folder = at[length - 1] == '/';
        if (strncmp(at, name, length) == 0 && (folder || name[length] == '\0')) {
            return true;
        }
        at += length;
    }
    return false;
}

static void wrong(const char *file, const char *line)
{
    print_error("%s: an arrow the wrong way: %s", file, line);
    wrong_arrows++;
}

/* The folder of a header named by a path with "..", under src; "" for one in the same folder. */
static void reached_room(const char *folder, const char *header, char *room, size_t size)
{
    char base[256];
    snprintf(base, sizeof base, "%s", folder + strlen("src/"));
    const char *at = header;
    for (; strncmp(at, "../", 3) == 0; at += 3) {
        char *last = strrchr(base, '/');
        *(last ? last : base) = '\0';
    }
    const char *name = strrchr(at, '/');
    snprintf(room, size, "%s%s%.*s", base, base[0] && name ? "/" : "", name ? (int)(name - at) : 0,
             at);
}

static void read_line(const room_row *row, const char *path, char *line)
{
    char name[256], room[512];
    if (sscanf(line, "#include <sillet/%200[^>]", name) == 1) {
        if (!listed(row->may_take, name)) {
            wrong(path, line);
        }
    } else if (sscanf(line, "#include \"%200[^\"]", name) == 1 && strchr(name, '/')) {
        reached_room(row->folder, name, room, sizeof room);
        if (!listed(row->may_reach, room)) {
            wrong(path, line);
        }
    }
}

static int read_file(const room_row *row, const char *file)
{
    char path[512];
    char line[512];
    snprintf(path, sizeof path, "%s/%s", row->folder, file);
    FILE *source = fopen(path, "r");
    if (!source) {
        return 0;
    }
    while (fgets(line, sizeof line, source)) {
        read_line(row, path, line);
    }
    fclose(source);
    return 1;
}

static int read_room(const room_row *row)
{
    int files = 0;
    DIR *folder = opendir(row->folder);
    assert_non_null(folder);
    for (struct dirent *entry = readdir(folder); entry; entry = readdir(folder)) {
        const char *ending = strrchr(entry->d_name, '.');
        if (ending && (strcmp(ending, ".c") == 0 || strcmp(ending, ".h") == 0)) {
            files += read_file(row, entry->d_name);
        }
    }
    closedir(folder);
    return files;
}

static void arrows_run_one_way(void **state)
{
    (void)state;
    int files = 0;
    for (size_t k = 0; k < sizeof rooms / sizeof *rooms; k++) {
        int of_this_room = read_room(&rooms[k]);
        assert_true(of_this_room > 0);
        files += of_this_room;
    }
    assert_true(files > 100);
    assert_int_equal(wrong_arrows, 0);
}

/* The reading of the includes itself: what it must and must not let pass. */
static void wrong_arrows_are_seen(void **state)
{
    (void)state;
    const room_row plan = {"src/plan", "core/ plan.h", "job"};
    char right[][64] = {"#include <sillet/core/fit.h>\n", "#include <sillet/plan.h>\n",
                        "#include \"../job/fields.h\"\n", "#include \"plan.h\"\n",
                        "#include <stdio.h>\n"};
    char wrong_ones[][64] = {"#include <sillet/report.h>\n", "#include \"../sheet/tree.h\"\n",
                             "#include \"../job/in/x.h\"\n", "#include <sillet/plan.hh>\n"};
    for (size_t k = 0; k < sizeof right / sizeof *right; k++) {
        wrong_arrows = 0;
        read_line(&plan, "a test", right[k]);
        assert_int_equal(wrong_arrows, 0);
    }
    for (size_t k = 0; k < sizeof wrong_ones / sizeof *wrong_ones; k++) {
        wrong_arrows = 0;
        read_line(&plan, "a test", wrong_ones[k]);
        assert_int_equal(wrong_arrows, 1);
    }
    wrong_arrows = 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(wrong_arrows_are_seen),
                                       cmocka_unit_test(arrows_run_one_way)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
