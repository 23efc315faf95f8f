/* SPDX-License-Identifier: MIT */
/* Makes every allocation and every system call of the programs fail, one at a time.
 *
 * Each try is a process forked from this one, which runs the main function of a program with one
 * fault. It must end by itself, either with 0 and its complete output or with 3 and a message. The
 * file on disk must be whole, either the old one or the new one, and no memory may leak.
 *
 *   faults        the first allocation of each way to come by one (a way: the calls that led there)
 *   faults all    each allocation there is, once alone, and again with all behind it failing too
 */
#define _GNU_SOURCE /* NOLINT: memfd_create */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include "calls.h"
#include "heap.h"
#include "programs.h"

const char *__asan_default_options(void);

/* Blocks left over are counted by the heap; a report of the sanitizer's ends with this code. The
 * sanitizer does not keep who asked for each block: that would take a fifth of the time. */
enum { SANITIZER_CODE = 99, TEXT_SIZE = 1 << 20 };

const char *__asan_default_options(void)
{
    return "detect_leaks=0:exitcode=99:handle_abort=1:symbolize=0:malloc_context_size=0";
}

static const char old_bytes[] = "the old file";

/* What one try does, and what came of it. */
typedef struct fault {
    long allocation;
    bool for_good;
    int call, with; /* a system call, and its errno */
    bool old_there;
} fault;

typedef struct outcome {
    int status; /* as wait has it */
    size_t out, err, file;
    char *out_text, *err_text, *file_text;
} outcome;

static heap_tale *heap;
static calls_tale *calls;
static int out, err;
static long passed, failed;

static int count_words(const program *p)
{
    int count = 0;
    while (count < PROGRAM_WORDS && p->words[count]) {
        count++;
    }
    return count;
}

static _Noreturn void be(const program *p, const fault *f)
{
    char *words[PROGRAM_WORDS + 1] = {NULL};
    int count = count_words(p);
    for (int i = 0; i < count; i++) {
        words[i] = (char *)(uintptr_t)p->words[i]; /* main's words are not const */
    }
    dup2(out, STDOUT_FILENO);
    dup2(err, STDERR_FILENO);
    calls_arm(calls, f->call, f->with);
    heap_arm(heap, f->allocation, f->for_good);
    int code = p->run(count, words);
    heap_disarm();
    fflush(NULL);
    _exit(code);
}

static size_t read_back(int file, char **text)
{
    if (!*text) {
        *text = malloc(TEXT_SIZE);
    }
    ssize_t size = *text ? pread(file, *text, TEXT_SIZE - 1, 0) : -1;
    if (size < 0) {
        perror("reading back");
        exit(1);
    }
    (*text)[size] = '\0';
    return (size_t)size;
}

static void write_old(bool there)
{
    unlink(out_file);
    FILE *file = there ? fopen(out_file, "wb") : NULL;
    if (file) {
        fputs(old_bytes, file);
        fclose(file);
    }
}

static void attempt(const program *p, const fault *f, outcome *o)
{
    write_old(f->old_there);
    if (ftruncate(out, 0) || ftruncate(err, 0)) {
        perror("ftruncate");
        exit(1);
    }
    lseek(out, 0, SEEK_SET);
    lseek(err, 0, SEEK_SET);
    pid_t child = fork();
    if (child == 0) {
        be(p, f);
    }
    if (child < 0 || waitpid(child, &o->status, 0) < 0) {
        perror("fork");
        exit(1);
    }
    o->out = read_back(out, &o->out_text);
    o->err = read_back(err, &o->err_text);
    int file = open(out_file, O_RDONLY | O_CLOEXEC);
    o->file = file < 0 ? 0 : read_back(file, &o->file_text);
    if (file >= 0) {
        close(file);
    }
}

/* Files in the folder beside the one to write. */
static int left_beside(void)
{
    int count = 0;
    DIR *listed = opendir(out_folder);
    for (struct dirent *entry; listed && (entry = readdir(listed));) {
        if (entry->d_name[0] == '.' && strncmp(entry->d_name, ".sillet", 7) != 0) {
            continue;
        }
        count += strcmp(entry->d_name, OUT_NAME) != 0;
    }
    if (listed) {
        closedir(listed);
    }
    return count;
}

static bool holds(const outcome *o, const char *bytes, size_t size)
{
    return o->file == size && (size == 0 || memcmp(o->file_text, bytes, size) == 0);
}

/* What is wrong with an outcome, or NULL. */
static const char *judge(const program *p, const outcome *good, const outcome *o, const fault *f)
{
    if (!WIFEXITED(o->status) || WEXITSTATUS(o->status) == SANITIZER_CODE ||
        strstr(o->err_text, "runtime error:")) {
        return "crashed";
    }
    int code = WEXITSTATUS(o->status);
    bool as_good = code == WEXITSTATUS(good->status) && o->out == good->out &&
                   memcmp(o->out_text, good->out_text, o->out) == 0;
    bool told_in = p->gives == TOLD_IN && f->call > 0 && code == 0 &&
                   strstr(o->out_text, "the profile cannot be read");
    bool kept = holds(o, old_bytes, f->old_there ? strlen(old_bytes) : 0);
    bool new = p->gives == A_FILE &&holds(o, good->file_text, good->file);
    if (code == 3 && o->out > 0 && (p->gives == ONE || p->gives == TOLD_IN)) {
        return "printed half a result";
    }
    if (code == 3 && !strstr(o->err_text, "sillet: ")) {
        return "said nothing";
    }
    if (code != 3 && !as_good && !told_in) {
        return "ended as if nothing had been, but otherwise";
    }
    if (code == 3 && f->call == 0 ? !kept : !(kept || new)) {
        return "left half a file";
    }
    if (code == 0 && !(p->gives == A_FILE ? new : kept)) {
        return "did not write the file";
    }
    return left_beside() > 0 ? "left a file beside" : NULL;
}

/* The libraries whose blocks nobody freed; what the C library keeps for itself is its own affair.
 */
static int leaking_library(void)
{
    for (int i = 0; heap_library(i); i++) {
        if (heap->live[i] != 0 && strncmp(heap_library(i), "libc.", 5) != 0) {
            return i;
        }
    }
    return -1;
}

static void tell(const program *p, const fault *f, const outcome *o, const char *wrong)
{
    failed++;
    printf("%s: allocation %ld%s, call %d (%s) with %d: %s; status %#x, printed %zu\n%.4000s\n",
           p->name, f->allocation, f->for_good ? " and on" : "", f->call,
           f->call ? calls->name[f->call] : "-", f->with, wrong, (unsigned)o->status, o->out,
           o->err_text);
}

/* One try of an allocation. */
static void try_allocation(const program *p, const fault *f, const outcome *good, outcome *o)
{
    attempt(p, f, o);
    const char *wrong = judge(p, good, o, f);
    int leaking = wrong ? -1 : leaking_library();
    if (leaking >= 0) {
        wrong = heap_library(leaking);
    }
    if (leaking >= 0 && strncmp(wrong, "libz.", 5) == 0 && heap->failed_by == 0) {
        passed++; /* libharu's pressing of a page, ended in the middle: docs/trust.md */
    } else if (wrong) {
        printf("failed in %s, ", heap_library(heap->failed_by));
        tell(p, f, o, wrong);
    } else {
        passed++;
    }
}

/* Whether a way of coming by an allocation was tried before by the same. */
static bool seen_before(uint32_t path, int by)
{
    static unsigned char seen[1 << 22]; /* the last that came that way */
    unsigned char *last = &seen[(path ^ path >> 22) % sizeof seen];
    bool before = *last == by;
    *last = (unsigned char)by;
    return before;
}

static void fail_allocations(const program *p, const outcome *good, bool all)
{
    static heap_tale first;
    outcome o = {0};
    long of[HEAP_LIBRARIES] = {0}, tried = 0;
    int by = p->gives == A_FILE ? UCHAR_MAX : 1 + (int)(p - programs); /* drawing is one */
    first = *heap;
    heap->paths_wanted = false;
    for (long call = 1; call <= first.calls && call < HEAP_CALLS; call++) {
        of[first.owner[call]]++;
        if (!all && seen_before(first.path[call], by)) {
            continue;
        }
        tried++;
        bool both = all || first.owner[call] == 0; /* our own both ways, a library's in turn */
        for (int for_good = !both && tried % 2; for_good < (both || tried % 2 ? 2 : 1);
             for_good++) {
            fault f = {.allocation = call, .for_good = for_good, .old_there = call % 2};
            try_allocation(p, &f, good, &o);
        }
    }
    printf("%s: %ld allocations, %ld tried", p->name, first.calls, tried);
    for (int i = 0; heap_library(i); i++) {
        if (of[i] > 0) {
            printf(", %s %ld", heap_library(i), of[i]);
        }
    }
    puts("");
    free(o.out_text);
    free(o.err_text);
    free(o.file_text);
}

static void fail_calls(const program *p, const outcome *good)
{
    static const int faults[] = {EIO, ENOSPC, EINTR, CALLS_SHORT};
    outcome o = {0};
    int count = calls->count;
    for (int call = 1; call <= count; call++) {
        for (size_t k = 0; k < sizeof faults / sizeof *faults; k++) {
            fault f = {.call = call, .with = faults[k], .old_there = k % 2};
            attempt(p, &f, &o);
            const char *name = calls->name[call];
            const char *wrong = judge(p, good, &o, &f);
            bool moves_bytes = strcmp(name, "read") == 0 || strcmp(name, "write") == 0;
            bool passing = faults[k] == EINTR || faults[k] == CALLS_SHORT;
            if (!wrong && moves_bytes && passing && o.status != good->status) {
                wrong = "gave up on what passes";
            }
            bool must_tell = strcmp(name, "write") == 0 || strcmp(name, "fsync") == 0;
            if (!wrong && must_tell && !passing && WEXITSTATUS(o.status) == 0) {
                wrong = "did not notice";
            }
            if (!wrong && leaking_library() >= 0) {
                wrong = "left blocks behind";
            }
            if (wrong) {
                tell(p, &f, &o, wrong);
            }
            passed += wrong == NULL;
        }
    }
    printf("%s: %d system calls of our own\n", p->name, count);
    free(o.out_text);
    free(o.err_text);
    free(o.file_text);
}

static void *share(size_t size)
{
    void *shared = mmap(NULL, size, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    if (shared == MAP_FAILED) {
        perror("mmap");
        exit(1);
    }
    return shared;
}

static void begin(void)
{
    heap_begin();
    heap = share(sizeof *heap);
    calls = share(sizeof *calls);
    out = memfd_create("out", MFD_CLOEXEC);
    err = memfd_create("err", MFD_CLOEXEC);
    if (out < 0 || err < 0 || programs_begin() || setenv("SILLET_PROFILES", "profiles", 1)) {
        perror("beginning");
        exit(1);
    }
}

int main(int argc, char **argv)
{
    bool all = argc > 1 && strcmp(argv[1], "all") == 0;
    const char *only = argc > 1 + all ? argv[1 + all] : NULL;
    setvbuf(stdout, NULL, _IOLBF, 0);
    begin();
    for (int i = 0; i < program_count; i++) {
        const program *p = &programs[i];
        outcome good = {0};
        if (only && strcmp(only, p->name) != 0) {
            continue;
        }
        heap->paths_wanted = true;
        attempt(p, &(fault){0}, &good);
        heap->paths_wanted = false;
        if (judge(p, &good, &good, &(fault){0}) || leaking_library() >= 0) {
            tell(p, &(fault){0}, &good, "went wrong with no fault");
        }
        if (WEXITSTATUS(good.status) > 1) { /* 1: a sheet that is wrong on purpose */
            tell(p, &(fault){0}, &good, "did not do its work with no fault");
        }
        fail_calls(p, &good);
        heap->paths_wanted = true;
        attempt(p, &(fault){0}, &good);
        fail_allocations(p, &good, all);
        free(good.out_text);
        free(good.err_text);
        free(good.file_text);
    }
    write_old(false);
    programs_end();
    printf("%ld passed, %ld failed\n", passed, failed);
    return failed > 0;
}
