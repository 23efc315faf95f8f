/* SPDX-License-Identifier: MIT */
/* The include list is the architecture: arrows run one way. */
#include <dirent.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "near.h"

/* A room, the public headers it may take, and the one room whose own headers it may reach into. */
typedef struct room_row {
    const char *folder;
    const char *may_take;
    const char *may_reach;
} room_row;

#define CORE "units.h board.h string.h fit.h nut.h saddle.h pitch.h clearance.h "

static const room_row rooms[] = {
    {"src/core", CORE, NULL},
    {"src/job", CORE "job.h", NULL},
    {"src/sheet", CORE "job.h sheet.h", "job"},
    {"src/plan", CORE "job.h plan.h", NULL},
    {"src/report", CORE "job.h plan.h report.h version.h", NULL},
    {"src/drawing", CORE "job.h plan.h drawing.h", NULL},
    {"src/drawing/write", CORE "drawing.h", ""},
    {"src/cli", "sillet.h", NULL},
    {"src/page", "sillet.h", NULL},
};

static int wrong_arrows;

static void judge(const room_row *room, const char *file, const char *header)
{
    char name[64];
    snprintf(name, sizeof name, "%s", header);
    name[strcspn(name, ">\"\n")] = '\0';
    const char *at = strstr(room->may_take, name);
    bool whole = at && (at == room->may_take || at[-1] == ' ') &&
                 (at[strlen(name)] == ' ' || at[strlen(name)] == '\0');
    if (!whole) {
        print_error("%s/%s takes <sillet/%s>: an arrow the wrong way\n", room->folder, file, name);
        wrong_arrows++;
    }
}

static int read_file(const room_row *room, const char *file)
{
    char path[512];
    char line[512];
    snprintf(path, sizeof path, "%s/%s", room->folder, file);
    FILE *source = fopen(path, "r");
    if (!source) {
        return 0;
    }
    while (fgets(line, sizeof line, source)) {
        const char *public_header = strstr(line, "#include <sillet/");
        const char *other_room = strstr(line, "#include \"../");
        if (public_header) {
            judge(room, file, public_header + strlen("#include <sillet/"));
        }
        const char *reached = other_room ? other_room + strlen("#include \"../") : NULL;
        if (reached &&
            !(room->may_reach && strncmp(reached, room->may_reach, strlen(room->may_reach)) == 0)) {
            print_error("%s: reaches into another room: %s", path, line);
            wrong_arrows++;
        }
    }
    fclose(source);
    return 1;
}

static void arrows_run_one_way(void **state)
{
    (void)state;
    int files = 0;
    for (size_t k = 0; k < sizeof rooms / sizeof *rooms; k++) {
        DIR *folder = opendir(rooms[k].folder);
        if (!folder) {
            continue; /* a room not built yet */
        }
        for (struct dirent *entry = readdir(folder); entry; entry = readdir(folder)) {
            const char *ending = strrchr(entry->d_name, '.');
            if (ending && (strcmp(ending, ".c") == 0 || strcmp(ending, ".h") == 0)) {
                files += read_file(&rooms[k], entry->d_name);
            }
        }
        closedir(folder);
    }
    assert_true(files > 20);
    assert_int_equal(wrong_arrows, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(arrows_run_one_way)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
