/* SPDX-License-Identifier: MIT */
/* The library and the page's answers used by several threads at once, each on jobs of its own and
 * all on the files of one folder: under the thread sanitizer, and against what one thread alone
 * makes of the same sheets. */
#include <fcntl.h>
#include <pthread.h>
#include <sillet/sillet.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../../src/page/web.h"

enum { THREADS = 4, ROUNDS = 2, OF_LIBRARY = 5, OF_PAGE = 6, WORKS = OF_LIBRARY + OF_PAGE };

static const char *const sheets[] = {"examples/low-first-slot.yaml", "examples/high-saddle.yaml",
                                     "examples/bass-nut.yaml", "examples/electric-screws.yaml",
                                     "tests/sheets/bad-everything.yaml"};
enum { SHEETS = sizeof sheets / sizeof *sheets };

typedef struct made {
    char *bytes;
    size_t size;
} made;

static made alone[SHEETS][WORKS];

static made of_text(char *text)
{
    return (made){text, text ? strlen(text) : 0};
}

static made drawn(const sil_plan *plan, sil_format format)
{
    made m = {NULL, 0};
    sil_drawing *drawing = NULL;
    sil_draw_options order = {.part = SIL_PART_ALL, .paper = SIL_A4, .unit = SIL_MM};
    sil_status status = format == SIL_PDF ? sil_drawing_make(plan, &order, &drawing)
                                          : sil_outlines_make(plan, &order, &drawing);
    if (status >= SIL_DONE) {
        sil_drawing_write(drawing, format, &m.bytes, &m.size);
    }
    sil_drawing_free(drawing);
    return m;
}

/* All that is complained of, one under the other. */
static made complaints(const sil_sheet *sheet)
{
    enum { SIZE = 1 << 16 };
    made m = {calloc(1, SIZE), 0};
    for (int k = 0; m.bytes && k < sil_sheet_complaint_count(sheet) && m.size < SIZE / 2; k++) {
        sil_complaint complaint = sil_sheet_complaint(sheet, k);
        m.size += sil_complaint_write(&complaint, m.bytes + m.size, SIZE - m.size);
    }
    return m;
}

/* The page's folder, in which each sheet that is right is saved again and again, as it is. */
static web_site site = {.port = 7340, .folder = -1, .folder_name = "race"};
static char folder[] = "/tmp/sillet-race-XXXXXX";
static char bytes_of[SHEETS][1 << 16];

static int save(int sheet_at, const char *version, web_reply *reply)
{
    char name[32];
    snprintf(name, sizeof name, "/sheets/%d.yaml", sheet_at);
    web_request request = {.method = "PUT", .target = name, .host = "localhost:7340"};
    request.body = bytes_of[sheet_at];
    request.size = strlen(request.body);
    request.if_match = version;
    request.if_none_match = version ? NULL : "*";
    web_answer(&site, &request, reply);
    return reply->status;
}

/* The file is always there and always the same, so that every save and every list ends alike. */
static void ask(int sheet_at, int work, web_reply *reply)
{
    static const struct {
        const char *method, *target;
    } rows[OF_PAGE - 1] = {{"POST", "/read"},
                           {"POST", "/plan"},
                           {"POST", "/draw?as=svg&sheet=nut"},
                           {"GET", "/sheets"},
                           {"GET", "/profiles"}};
    if (work == OF_PAGE - 1) {
        web_request now = {.method = "GET", .host = "localhost:7340"};
        char name[32];
        snprintf(name, sizeof name, "/sheets/%d.yaml", sheet_at);
        now.target = name;
        web_answer(&site, &now, reply);
        char tag[WEB_TAG_MAX];
        memcpy(tag, reply->tag, sizeof tag);
        web_reply_free(reply);
        save(sheet_at, tag, reply);
        return;
    }
    web_request request = {
        .method = rows[work].method, .target = rows[work].target, .host = "localhost:7340"};
    request.body = bytes_of[sheet_at];
    request.size = strlen(request.body);
    web_answer(&site, &request, reply);
}

static made answered(int sheet_at, int work)
{
    web_reply reply;
    ask(sheet_at, work, &reply);
    made m = {malloc(reply.size + 4), reply.size + 3};
    if (m.bytes) {
        snprintf(m.bytes, 4, "%3d", reply.status);
        memcpy(m.bytes + 3, reply.bytes, reply.size);
    }
    web_reply_free(&reply);
    return m;
}

/* How many sheets could not be laid out. */
static int begin(void)
{
    int failed = 0;
    if (!mkdtemp(folder) || setenv("SILLET_PROFILES", "profiles", 1) != 0) {
        perror(folder);
        return 1;
    }
    site.folder = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    for (int i = 0; i < SHEETS; i++) {
        web_reply reply;
        FILE *file = fopen(sheets[i], "rb");
        size_t size = file ? fread(bytes_of[i], 1, sizeof bytes_of[i] - 1, file) : 0;
        bool wrong = strstr(sheets[i], "bad-");
        failed += size == 0 || fclose(file) != 0 || save(i, NULL, &reply) != (wrong ? 422 : 201);
        web_reply_free(&reply);
    }
    return failed;
}

static void end(void)
{
    char name[32];
    for (int i = 0; i < SHEETS; i++) {
        snprintf(name, sizeof name, "%d.yaml", i);
        unlinkat(site.folder, name, 0);
    }
    close(site.folder);
    rmdir(folder);
}

/* One sheet from its file to one of the works. */
static made make(int sheet_at, int work)
{
    if (work >= OF_LIBRARY) {
        return answered(sheet_at, work - OF_LIBRARY);
    }
    made m = {NULL, 0};
    sil_sheet *sheet = NULL;
    sil_plan *plan = NULL;
    sil_status status = sil_sheet_read(sheets[sheet_at], "profiles", &sheet);
    if (status >= SIL_DONE && sil_plan_make(sil_sheet_job(sheet), &plan) == SIL_DONE) {
        m = work == 0   ? of_text(sil_report_text(plan, SIL_MM, sheets[sheet_at]))
            : work == 1 ? of_text(sil_report_json(plan, SIL_INCH))
            : work == 2 ? drawn(plan, SIL_PDF)
            : work == 3 ? drawn(plan, SIL_SVG)
                        : drawn(plan, SIL_DXF);
    } else if (status == SIL_WRONG) {
        m = complaints(sheet);
    }
    sil_plan_free(plan);
    sil_sheet_free(sheet);
    return m;
}

/* Each thread begins elsewhere, so that different work meets. */
typedef struct worker {
    pthread_t thread;
    int begin, wrong;
} worker;

static void *work_through(void *with)
{
    worker *self = with;
    for (int k = 0; k < ROUNDS * SHEETS * WORKS; k++) {
        int at = (self->begin + k) % (SHEETS * WORKS);
        const made *want = &alone[at / WORKS][at % WORKS];
        made got = make(at / WORKS, at % WORKS);
        self->wrong += got.size != want->size || memcmp(got.bytes, want->bytes, got.size) != 0;
        free(got.bytes);
    }
    return NULL;
}

/* How many works give nothing. */
static int make_alone(void)
{
    int failed = 0;
    for (int k = 0; k < SHEETS * WORKS; k++) {
        made *m = &alone[k / WORKS][k % WORKS];
        *m = make(k / WORKS, k % WORKS);
        if (m->size == 0) {
            printf("%s: work %d gives nothing\n", sheets[k / WORKS], k % WORKS);
            failed++;
        }
    }
    return failed;
}

int main(void)
{
    worker workers[THREADS];
    int failed = begin() + make_alone();
    for (int i = 0; i < THREADS; i++) {
        workers[i] = (worker){.begin = 7 * i};
        if (pthread_create(&workers[i].thread, NULL, work_through, &workers[i]) != 0) {
            perror("pthread_create");
            return 1;
        }
    }
    for (int i = 0; i < THREADS; i++) {
        pthread_join(workers[i].thread, NULL);
        if (workers[i].wrong > 0) {
            printf("thread %d: %d works are not as made alone\n", i, workers[i].wrong);
        }
        failed += workers[i].wrong;
    }
    for (int k = 0; k < SHEETS * WORKS; k++) {
        free(alone[k / WORKS][k % WORKS].bytes);
    }
    end();
    printf("%d passed, %d failed\n", THREADS * ROUNDS * SHEETS * WORKS - failed, failed);
    return failed > 0;
}
