/* SPDX-License-Identifier: MIT */
/* Each folder of the source includes only the folders below it. */
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
    {"src/brief", "core/ job.h plan.h brief.h", "plan part text"},
    {"src/report", "core/ job.h plan.h report.h version.h", "brief json text"},
    {"src/drawing", "core/ job.h plan.h drawing.h", "drawing/papers"},
    {"src/drawing/board", "core/ job.h plan.h drawing.h status.h", "plan brief part text"},
    {"src/drawing/views", "core/ job.h fields.h plan.h", "drawing/board"},
    {"src/drawing/papers", "core/ job.h fields.h plan.h drawing.h", "drawing/board drawing/views"},
    {"src/drawing/write", "core/ drawing.h status.h", "drawing/board text"},
    {"src/cli", "sillet.h", "brief json text"},
    {"src/cli/draw", "sillet.h drawing.h", "cli"},
    {"src/page", "sillet.h", "brief json report text"},
    {"src/page/serve", "sillet.h", "page cli"},
    {"src/page/anywhere", "sheet.h", "page"},
};

static int wrong_arrows, wrong_figures;

/* Only the brief makes a figure that a person is shown: its maker is not taken elsewhere, and none
 * is put together by hand. */
static const char *const figure_made[] = {
    "/figure.h\"", ".shown = ", ".exact = ", "(brief_figure){", "brief_figure figure = {."};

/* Figures straight from the plan are for what stays a view of the plan, and for nothing else. */
static const char plain_figures[] = "\"../board/plain.h\"";
static const char *const views_of_the_plan[] = {
    "src/drawing/views/cents.c",   "src/drawing/views/clearance.c",
    "src/drawing/views/pitch.c",   "src/drawing/views/measure_words.c",
    "src/drawing/papers/buzz.c",   "src/drawing/papers/tune.c",
    "src/drawing/papers/measure.c"};

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

static void look_for_figures(const char *folder, const char *path, const char *line)
{
    bool wrong = false, plan_view = false;
    for (size_t k = 0; k < sizeof figure_made / sizeof *figure_made; k++) {
        wrong = wrong || strstr(line, figure_made[k]);
    }
    for (size_t k = 0; k < sizeof views_of_the_plan / sizeof *views_of_the_plan; k++) {
        plan_view = plan_view || strcmp(path, views_of_the_plan[k]) == 0;
    }
    wrong =
        (wrong && strcmp(folder, "src/brief") != 0) || (strstr(line, plain_figures) && !plan_view);
    if (wrong) {
        print_error("%s: a figure made outside the brief: %s", path, line);
        wrong_figures++;
    }
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
    look_for_figures(row->folder, path, line);
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
    assert_int_equal(wrong_figures, 0);
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

static void figures_made_elsewhere_are_seen(void **state)
{
    (void)state;
    const room_row brief = {"src/brief", "core/", ""}, views = {"src/drawing/views", "core/", ""};
    char made[][64] = {"#include \"../../brief/figure.h\"\n", "figure.shown = \"1\";\n",
                       "    return (brief_figure){.exact = mm};\n", "figure.exact = 2.0;\n",
                       "    brief_figure figure = {.rounding = SIL_UP};\n"};
    char right[][64] = {"text_put(&t, figure.shown);\n", "double mm = figure.exact;\n",
                        "#include \"../board/draft.h\"\n", "if (figure.exact == 0) {\n"};
    char plain[] = "#include \"../board/plain.h\"\n";
    for (size_t k = 0; k < sizeof made / sizeof *made; k++) {
        wrong_figures = 0;
        look_for_figures(brief.folder, "src/brief/nut.c", made[k]);
        assert_int_equal(wrong_figures, 0);
        look_for_figures(views.folder, "src/drawing/views/step.c", made[k]);
        assert_int_equal(wrong_figures, 1);
    }
    wrong_figures = 0;
    for (size_t k = 0; k < sizeof right / sizeof *right; k++) {
        look_for_figures(views.folder, "src/drawing/views/step.c", right[k]);
    }
    look_for_figures(views.folder, "src/drawing/views/pitch.c", plain);
    assert_int_equal(wrong_figures, 0);
    look_for_figures(views.folder, "src/drawing/views/step.c", plain);
    assert_int_equal(wrong_figures, 1);
    wrong_figures = 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(wrong_arrows_are_seen),
                                       cmocka_unit_test(figures_made_elsewhere_are_seen),
                                       cmocka_unit_test(arrows_run_one_way)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
