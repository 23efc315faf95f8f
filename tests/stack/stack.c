/* SPDX-License-Identifier: MIT */
/* Reads and plans each sheet named, in a thread of 64 KiB of stack, and says how much of it was
 * used. The stack is filled with a pattern first: what lies under the lowest byte changed was never
 * touched. Below it is a page nobody may touch, so that an overflow ends the program. Where a system
 * gives no thread so little, as on aarch64, it is the least it gives. */
#include <pthread.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

#include <sillet/sillet.h>

enum { STACK = 64 * 1024, MOST = 32 * 1024, PATTERN = 0xA5 };

typedef struct task {
    const char *path;
    sil_status read, planned;
    uintptr_t top; /* where the thread's own part of the stack begins */
} task;

static void *read_and_plan(void *with)
{
    task *t = with;
    sil_sheet *sheet = NULL;
    sil_plan *plan = NULL;
    t->top = (uintptr_t)__builtin_frame_address(0);
    t->read = sil_sheet_read(t->path, NULL, &sheet);
    if (t->read >= SIL_DONE) {
        t->planned = sil_plan_make(sil_sheet_job(sheet), &plan);
    }
    sil_plan_free(plan);
    sil_sheet_free(sheet);
    return NULL;
}

/* Bytes of a stack of some size that were used; 0 where the thread could not be started. */
static size_t used_by(task *t, unsigned char *stack, size_t size)
{
    pthread_t thread;
    pthread_attr_t about;
    memset(stack, PATTERN, size);
    pthread_attr_init(&about);
    bool run = pthread_attr_setstack(&about, stack, size) == 0 &&
               pthread_create(&thread, &about, read_and_plan, t) == 0 &&
               pthread_join(thread, NULL) == 0;
    pthread_attr_destroy(&about);
    size_t untouched = 0;
    while (untouched < size && stack[untouched] == PATTERN) {
        untouched++;
    }
    return run ? (size_t)(t->top - (uintptr_t)stack) - untouched : 0;
}

int main(int argc, char **argv)
{
    long page = sysconf(_SC_PAGESIZE), least = sysconf(_SC_THREAD_STACK_MIN);
    size_t size = least > STACK ? (size_t)least : STACK;
    unsigned char *block =
        mmap(NULL, size + (size_t)page, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    if (block == MAP_FAILED || mprotect(block, (size_t)page, PROT_NONE) != 0) {
        return 2;
    }
    int failed = 0, planned = 0;
    size_t most = 0;
    for (int k = 1; k < argc; k++) {
        task t = {.path = argv[k], .planned = SIL_FAULT};
        size_t used = used_by(&t, block + page, size);
        bool done = t.read >= SIL_DONE ? t.planned == SIL_DONE : t.read == SIL_WRONG;
        bool good = used > 0 && used < MOST && done;
        planned += t.planned == SIL_DONE;
        if (!good) {
            printf("%s: %zu bytes of stack; read: %s; planned: %s\n", argv[k], used,
                   sil_status_text(t.read), sil_status_text(t.planned));
        }
        failed += !good;
        most = used > most ? used : most;
    }
    printf("%d sheets planned, %zu bytes of stack at most\n", planned, most);
    printf("%d passed, %d failed\n", argc - 1 - failed, failed);
    return failed > 0 || planned == 0;
}
