/* SPDX-License-Identifier: MIT */
#include "programs.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

int sillet_main(int argc, char **argv);
int sillet_draw_main(int argc, char **argv);

char out_folder[32];
char out_file[64];

const program programs[] = {
    {"plan", sillet_main, {"sillet", "plan", "examples/low-saddle.yaml"}, ONE},
    {"plan --json",
     sillet_main,
     {"sillet", "plan", "examples/worn-first-frets.yaml", "--json"},
     ONE},
    {"plan, wrong sheet", sillet_main, {"sillet", "plan", "tests/sheets/bad-everything.yaml"}, ONE},
    {"plan, wrong profile",
     sillet_main,
     {"sillet", "plan", "tests/sheets/bad-in-profile.yaml"},
     ONE},
    {"plan, no such profile",
     sillet_main,
     {"sillet", "plan", "tests/sheets/bad-profile.yaml"},
     ONE},
    {"plan, on files",
     sillet_main,
     {"sillet", "plan", "tests/sheets/shop/jobs/one.yaml", "--json"},
     ONE},
    {"tools", sillet_main, {"sillet", "tools", "tests/sheets/shop/jobs"}, LINES},
    {"start", sillet_main, {"sillet", "start", "electric-bass"}, ONE},
    {"plan, many",
     sillet_main,
     {"sillet", "plan", "examples/low-saddle.yaml", "tests/sheets/bad-word.yaml"},
     LINES},
    {"plan, many --json",
     sillet_main,
     {"sillet", "plan", "examples/low-saddle.yaml", "examples/high-saddle.yaml", "--json"},
     LINES},
    {"profiles", sillet_main, {"sillet", "profiles"}, ONE},
    {"draw pdf",
     sillet_draw_main,
     {"draw", "examples/high-saddle.yaml", "-o", out_file, "--as", "pdf"},
     A_FILE},
    {"draw sheet svg",
     sillet_draw_main,
     {"draw", "examples/bass-nut.yaml", "-o", out_file, "--as", "svg", "--sheet", "bench"},
     A_FILE},
    {"draw dxf",
     sillet_draw_main,
     {"draw", "examples/high-saddle.yaml", "-o", out_file, "--as", "dxf"},
     A_FILE},
    {"draw stl",
     sillet_draw_main,
     {"draw", "examples/high-saddle.yaml", "-o", out_file, "--as", "stl"},
     A_FILE},
    {"sheet", sillet_draw_main, {"sheet", "electric-guitar", "-o", out_file}, A_FILE},
    {"page profiles", web_main, {"page", "GET", "/profiles", ""}, ONE},
    {"page fields", web_main, {"page", "GET", "/fields", ""}, ONE},
    {"page read", web_main, {"page", "POST", "/read", "tests/sheets/good-by-ear.yaml"}, TOLD_IN},
    {"page plan", web_main, {"page", "POST", "/plan", "examples/low-saddle.yaml"}, ONE},
    {"page bench", web_main, {"page", "POST", "/bench", "examples/low-saddle.yaml"}, TOLD_IN},
    {"page plan, wrong sheet",
     web_main,
     {"page", "POST", "/plan", "tests/sheets/bad-everything.yaml"},
     ONE},
    {"page draw",
     web_main,
     {"page", "POST", "/draw?as=svg&sheet=nut", "examples/bass-nut.yaml"},
     ONE},
    {"page list", web_main, {"page", "GET", "/sheets", ""}, TOLD_IN},
    {"page sheet", web_main, {"page", "GET", "/sheets/right.yaml", ""}, ONE},
    {"page save",
     web_main,
     {"page", "PUT", "/sheets/" OUT_NAME, "tests/sheets/good-least.yaml"},
     A_FILE},
};
const int program_count = sizeof programs / sizeof *programs;

int programs_begin(void)
{
    /* In memory where there is such a folder: thousands of files would each wait for the disk. */
    const char *shared = access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp";
    snprintf(out_folder, sizeof out_folder, "%s/sillet-faults-XXXXXX", shared);
    if (!mkdtemp(out_folder)) {
        return -1;
    }
    snprintf(out_file, sizeof out_file, "%s/%s", out_folder, OUT_NAME);
    return web_begin(out_folder);
}

void programs_end(void)
{
    web_end();
    rmdir(out_folder);
}
