/* SPDX-License-Identifier: MIT */
/* The files under a sheet with mistakes in them: a profile, the shop's file, an instrument's own.
 *
 *     under FOLDER COUNT SEED SHEET..
 *
 * For each sheet and each kind of file COUNT times: the file gets one to four mistakes, and the sheet
 * that stands on it is read and, where there is a job, planned and written as text and as JSON. Every
 * complaint must stand in one of these files, at a line and a column that this file has, and show that
 * line as it is there. FOLDER is left as the last try had it, with all that was read in it. */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <sillet/sillet.h>

#include "mutate.h"

enum { NAME = 512, SHOWN = 10 };

typedef enum under { PROFILE, SHOP, INSTRUMENT, KINDS } under;

static const char *const WORDS[KINDS] = {"profiles", "shop files", "instrument files"};
static char folder[NAME / 4], profiles[NAME / 2];
static long planned[KINDS], refused[KINDS], warned[KINDS], of_file[KINDS], failed;

/* The sheet, the file with mistakes, the kind of instrument that both stand on (which is that file
 * where a profile is tried), and where they are on the disk. */
typedef struct trial {
    content sheet, file, base;
    char sheet_path[NAME], file_path[NAME], base_path[NAME];
} trial;

static content take(const char *path)
{
    FILE *file = fopen(path, "rb");
    content c = {calloc(1, SIL_SHEET_BYTES_MAX), 0};
    if (!file || !c.bytes) {
        perror(path);
        exit(2);
    }
    c.size = fread(c.bytes, 1, SIL_SHEET_BYTES_MAX - 1, file);
    fclose(file);
    return c;
}

static content copy(const content *from)
{
    content c = {malloc(from->size + 1), from->size};
    if (!c.bytes) {
        exit(2);
    }
    memcpy(c.bytes, from->bytes, from->size + 1);
    return c;
}

static void put(const char *path, const content *c)
{
    FILE *file = fopen(path, "wb");
    if (!file || fwrite(c->bytes, 1, c->size, file) != c->size || fclose(file) != 0) {
        perror(path);
        exit(2);
    }
}

static void wrong(const char *what, const sil_complaint *c)
{
    if (failed++ < SHOWN) {
        printf("%s", what);
        if (c) {
            printf(": %s:%d:%d: %s", c->file, c->line, c->column, c->text);
        }
        printf("\n");
    }
}

static bool begins(const char *line, const char *key)
{
    return strncmp(line, key, strlen(key)) == 0;
}

/* Where a line of a file begins, and how long it is without its end; false past the last line, which
 * is the empty one behind the last line's end. Lines end where YAML ends them. */
static bool find_line(const content *c, int line, size_t *at, size_t *length)
{
    size_t from = c->size >= 3 && memcmp(c->bytes, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    for (int count = 1;; count++) {
        size_t to = from, end = 0;
        for (; to < c->size && end == 0; to += end == 0) {
            const char *b = c->bytes + to;
            bool far = begins(b, "\xE2\x80\xA8") || begins(b, "\xE2\x80\xA9");
            end = far ? 3 : begins(b, "\r\n") ? 2 : *b == '\r' || *b == '\n';
        }
        if (count == line) {
            *at = from;
            *length = to - from;
            return true;
        }
        if (end == 0) {
            return false;
        }
        from = to + end;
    }
}

/* A line is shown as it is, and a NUL in it as its picture, U+2400. */
static bool shows(const char *shown, const char *line, size_t length)
{
    for (size_t k = 0; k < length; k++) {
        const char one[2] = {line[k], '\0'};
        const char *wanted = line[k] ? one : "\xE2\x90\x80";
        if (!begins(shown, wanted)) {
            return false;
        }
        shown += strlen(wanted);
    }
    return *shown == '\0';
}

static bool stands_in(const content *c, const sil_complaint *told)
{
    size_t at, length, columns = 0;
    if (told->column < 1 || !find_line(c, told->line, &at, &length)) {
        return false;
    }
    for (size_t k = 0; k < length; k++) { /* a byte that goes on with a character is none itself */
        columns += ((unsigned char)c->bytes[at + k] & 0xC0) != 0x80;
    }
    return (size_t)told->column <= columns + 1 &&
           (!told->source || shows(told->source, c->bytes + at, length));
}

static bool judge_complaints(const trial *t, under kind, const sil_sheet *sheet)
{
    bool error = false;
    for (int k = 0; k < sil_sheet_complaint_count(sheet); k++) {
        sil_complaint told = sil_sheet_complaint(sheet, k);
        bool below = strcmp(told.file, t->file_path) == 0;
        const content *in = below                                   ? &t->file
                            : strcmp(told.file, t->sheet_path) == 0 ? &t->sheet
                            : strcmp(told.file, t->base_path) == 0  ? &t->base
                                                                    : NULL;
        char line[8192];
        if (!in || !stands_in(in, &told)) {
            wrong("a complaint has no place", &told);
        }
        if (!*told.text || strpbrk(told.text, "\n\r") ||
            sil_complaint_write(&told, line, sizeof line) >= sizeof line) {
            wrong("a complaint is not one line", &told);
        }
        error = error || told.severity == SIL_ERROR;
        of_file[kind] += below;
    }
    return error;
}

static void judge_plan(const sil_job *job)
{
    sil_plan *plan = NULL;
    if (sil_plan_make(job, &plan) != SIL_DONE) {
        wrong("no plan", NULL);
        return;
    }
    char *json = sil_report_json(plan, SIL_MM), *text = sil_report_text(plan, job->units, "sheet");
    if (!json || !text || strstr(json, ": nan") || strstr(json, ": inf") ||
        strstr(json, ": -nan")) {
        wrong("no text, or a figure that is none", NULL);
    }
    free(json);
    free(text);
    sil_plan_free(plan);
}

static void read_it(const trial *t, under kind)
{
    sil_sheet *sheet = NULL;
    sil_status status = sil_sheet_read(t->sheet_path, profiles, &sheet);
    const sil_job *job = sil_sheet_job(sheet);
    bool error = judge_complaints(t, kind, sheet);
    bool warning = sil_sheet_complaint_count(sheet) > 0 && !error;
    sil_status wanted = error ? SIL_WRONG : warning ? SIL_DOUBTFUL : SIL_DONE;
    if (status != wanted || (job != NULL) != (status >= SIL_DONE)) {
        wrong(sil_status_text(status), NULL);
    }
    if (job) {
        judge_plan(job);
    }
    planned[kind] += job != NULL;
    refused[kind] += error;
    warned[kind] += warning;
    sil_sheet_free(sheet);
}

/* Its profile's name, and the sheet without that line; false where it names none. */
static bool take_profile(content *sheet, char *name)
{
    char *line = strstr(sheet->bytes, "\nprofile: ");
    if (!line || sscanf(line, "\nprofile: %63[a-z0-9-]", name) != 1) {
        return false;
    }
    size_t at = (size_t)(line + 1 - sheet->bytes);
    put_in_place(sheet, at, strcspn(line + 1, "\n") + 1, "", 0);
    return true;
}

static void add(content *c, const char *text, size_t size)
{
    put_in_place(c, c->size, 0, text, size);
}

/* What a sheet says of the instrument goes into a file of its own, which names the profile. */
static void lay_apart(trial *t, const char *name)
{
    content whole = t->sheet;
    bool own = false;
    t->sheet = (content){calloc(1, 1), 0};
    t->file = (content){calloc(1, 1), 0};
    char head[NAME];
    snprintf(head, sizeof head, "sillet: 1\nprofile: %s\n", name);
    add(&t->file, head, strlen(head));
    for (const char *line = whole.bytes; *line;) {
        size_t length = strcspn(line, "\n");
        length += line[length] == '\n';
        if (*line != ' ' && *line != '#' && *line != '\n') {
            own = begins(line, "instrument:") || begins(line, "strings:") || begins(line, "nut:") ||
                  begins(line, "saddle:") || begins(line, "tools:") || begins(line, "targets:");
            bool both = begins(line, "units:");
            add(&t->file, line, both ? length : 0);
        }
        add(own ? &t->file : &t->sheet, line, length);
        line += length;
    }
    free(whole.bytes);
}

/* The try of a sheet that stands on a file of one kind; false where it names no profile. */
static bool prepare(trial *t, under kind, const char *path)
{
    char name[64];
    *t = (trial){.sheet = take(path)};
    if (!take_profile(&t->sheet, name)) {
        free(t->sheet.bytes);
        return false;
    }
    snprintf(t->sheet_path, NAME, "%s/sheet.yaml", folder);
    snprintf(t->base_path, NAME, "%s/%s.yaml", profiles, name);
    t->base = take(t->base_path);
    if (kind == INSTRUMENT) {
        snprintf(t->file_path, NAME, "%s/anna.yaml", folder);
        lay_apart(t, name);
        snprintf(name, sizeof name, "anna.yaml");
    } else if (kind == SHOP) {
        snprintf(t->file_path, NAME, "%s/" SIL_SHOP_FILE, folder);
        t->file = take("tests/under/shop.yaml");
    } else {
        snprintf(t->file_path, NAME, "%s", t->base_path);
        t->file = copy(&t->base);
    }
    char line[128];
    snprintf(line, sizeof line, "\nprofile: %s\n", name);
    add(&t->sheet, line, strlen(line));
    put(t->sheet_path, &t->sheet);
    return true;
}

/* Without a mistake in it every file gives a plan. */
static void try_sheet(under kind, const char *path, int count, uint64_t *state)
{
    trial t;
    if (!prepare(&t, kind, path)) {
        return;
    }
    content true_file = copy(&t.file);
    long before = planned[kind];
    put(t.file_path, &t.file);
    read_it(&t, kind);
    if (planned[kind]-- != before + 1) {
        wrong(path, NULL);
    }
    for (int k = 0; k < count; k++) {
        free(t.file.bytes);
        t.file = copy(&true_file);
        for (uint32_t more = any_below(state, 3) ? 1 : 1 + any_below(state, 4); more > 0; more--) {
            mutate(state, &t.file);
        }
        put(t.file_path, &t.file);
        read_it(&t, kind);
    }
    if (kind == PROFILE) {
        put(t.file_path, &true_file);
    } else {
        remove(t.file_path);
    }
    free(true_file.bytes);
    free(t.file.bytes);
    free(t.sheet.bytes);
    free(t.base.bytes);
}

int main(int argc, char **argv)
{
    if (argc < 5 || strlen(argv[1]) >= sizeof folder) {
        return 2;
    }
    snprintf(folder, sizeof folder, "%s", argv[1]);
    snprintf(profiles, sizeof profiles, "%s/profiles", folder);
    setenv("HOME", folder, 1);
    uint64_t state = 0x9E3779B97F4A7C15u + strtoull(argv[3], NULL, 10);
    int count = atoi(argv[2]);
    long tried = 0, idle = 0;
    for (under kind = PROFILE; kind < KINDS; kind++) {
        for (int k = 4; k < argc; k++) {
            try_sheet(kind, argv[k], count, &state);
        }
        printf("%s: %ld planned, %ld of them warned of, %ld refused, %ld complaints in them\n",
               WORDS[kind], planned[kind], warned[kind], refused[kind], of_file[kind]);
        tried += planned[kind] + refused[kind];
        idle += planned[kind] == 0 || refused[kind] == 0 || of_file[kind] == 0;
    }
    printf("%ld passed, %ld failed\n", tried - failed, failed + idle);
    return failed + idle > 0 || tried == 0;
}
