/* SPDX-License-Identifier: MIT */
/* The library used by several threads at once, each on jobs of its own: under the thread sanitizer,
 * and against what one thread alone makes of the same sheets. */
#include <pthread.h>
#include <sillet/sillet.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { THREADS = 4, ROUNDS = 2, WORKS = 5 };

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
    sil_draw_order order = {.part = SIL_PART_ALL, .paper = SIL_A4, .unit = SIL_MM};
    int status = format == SIL_PDF ? sil_drawing_make(plan, &order, &drawing)
                                   : sil_outlines_make(plan, &order, &drawing);
    if (status >= SIL_DRAWING_DONE) {
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

/* One sheet from its file to one of the works. */
static made make(int sheet_at, int work)
{
    made m = {NULL, 0};
    sil_sheet *sheet = NULL;
    sil_plan *plan = calloc(1, sizeof *plan);
    int status = sil_sheet_read(sheets[sheet_at], "profiles", &sheet);
    if (plan && status >= SIL_SHEET_DONE) {
        sil_plan_make(sil_sheet_job(sheet), plan);
        m = work == 0   ? of_text(sil_report_text(plan, SIL_MM, sheets[sheet_at]))
            : work == 1 ? of_text(sil_report_json(plan, SIL_INCH))
            : work == 2 ? drawn(plan, SIL_PDF)
            : work == 3 ? drawn(plan, SIL_SVG)
                        : drawn(plan, SIL_DXF);
    } else if (plan && status == SIL_SHEET_WRONG) {
        m = complaints(sheet);
    }
    free(plan);
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
    int failed = make_alone();
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
    printf("%d passed, %d failed\n", THREADS * ROUNDS * SHEETS * WORKS - failed, failed);
    return failed > 0;
}
