/* SPDX-License-Identifier: MIT */
#define _GNU_SOURCE /* NOLINT: dl_iterate_phdr */
#include "heap.h"

#include <errno.h>
#include <link.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>
#include <unwind.h>

/* The sanitizer's own, under the names it keeps for those who stand before it. */
void *__interceptor_malloc(size_t size);
void *__interceptor_calloc(size_t count, size_t size);
void *__interceptor_realloc(void *block, size_t size);
void __interceptor_free(void *block);

typedef struct library {
    char name[64];
    uintptr_t start, end;
} library;

typedef struct entry {
    uintptr_t block; /* 0 free, 1 freed */
    int owner;
} entry;

enum { ENTRIES = 1 << 14, FRAMES = 24 };

static library libraries[HEAP_LIBRARIES];
static int library_count;
static entry entries[ENTRIES];
static heap_tale *told; /* NULL while not armed */
static long fails_at;
static bool fails_for_good;

static int add_library(struct dl_phdr_info *info, size_t size, void *with)
{
    (void)size;
    (void)with;
    if (library_count == HEAP_LIBRARIES) {
        return 1;
    }
    library *l = &libraries[library_count++];
    const char *slash = strrchr(info->dlpi_name, '/');
    strncpy(l->name,
            slash                ? slash + 1
            : library_count == 1 ? "sillet"
                                 : info->dlpi_name,
            sizeof l->name - 1);
    l->start = UINTPTR_MAX;
    for (int i = 0; i < info->dlpi_phnum; i++) {
        const ElfW(Phdr) *part = &info->dlpi_phdr[i];
        uintptr_t start = info->dlpi_addr + part->p_vaddr;
        if (part->p_type == PT_LOAD) {
            l->start = start < l->start ? start : l->start;
            l->end = start + part->p_memsz > l->end ? start + part->p_memsz : l->end;
        }
    }
    return 0;
}

static int owner_of(const void *caller)
{
    for (int i = 0; i < library_count; i++) {
        if ((uintptr_t)caller >= libraries[i].start && (uintptr_t)caller < libraries[i].end) {
            return i;
        }
    }
    return library_count - 1;
}

void heap_begin(void)
{
    dl_iterate_phdr(add_library, NULL);
}

const char *heap_library(int index)
{
    return index >= 0 && index < library_count ? libraries[index].name : NULL;
}

void heap_arm(heap_tale *tale, long fails, bool for_good)
{
    tale->calls = 0;
    tale->failed_by = -1;
    memset(tale->live, 0, sizeof tale->live);
    memset(entries, 0, sizeof entries);
    fails_at = fails;
    fails_for_good = for_good;
    told = tale;
}

void heap_disarm(void)
{
    told = NULL;
}

/* The entry of a block, or a free one for it. */
static entry *find(uintptr_t block, bool adding)
{
    size_t at = (block >> 4) * 2654435761u % ENTRIES;
    while (entries[at].block != block && entries[at].block > (adding ? 1 : 0)) {
        at = (at + 1) % ENTRIES;
    }
    return &entries[at];
}

static void remember(void *block, int owner)
{
    if (told && block) {
        *find((uintptr_t)block, true) = (entry){(uintptr_t)block, owner};
        told->live[owner]++;
    }
}

static void forget(const void *block)
{
    if (told && block) {
        entry *e = find((uintptr_t)block, false);
        if (e->block == (uintptr_t)block) {
            told->live[e->owner]--;
            e->block = 1;
        }
    }
}

typedef struct path {
    uint32_t hash;
    int frames;
} path;

static _Unwind_Reason_Code add_frame(struct _Unwind_Context *context, void *with)
{
    path *p = with;
    p->hash = (p->hash ^ (uint32_t)_Unwind_GetIP(context)) * 16777619u;
    return ++p->frames == FRAMES ? _URC_END_OF_STACK : _URC_NO_REASON;
}

/* Whether this call is one that fails. */
static bool fails(int owner)
{
    if (!told) {
        return false;
    }
    long call = ++told->calls;
    if (told->paths_wanted && call < HEAP_CALLS) {
        heap_tale *tale = told;
        path p = {2166136261u, 0};
        told = NULL; /* looking about may itself allocate */
        _Unwind_Backtrace(add_frame, &p);
        told = tale;
        told->path[call] = p.hash;
        told->owner[call] = (unsigned char)owner;
    }
    if (fails_at == 0 || call < fails_at || (call > fails_at && !fails_for_good)) {
        return false;
    }
    if (call == fails_at) {
        told->failed_by = owner;
    }
    errno = ENOMEM;
    return true;
}

void *malloc(size_t size)
{
    int owner = told ? owner_of(__builtin_return_address(0)) : 0;
    void *block = fails(owner) ? NULL : __interceptor_malloc(size);
    remember(block, owner);
    return block;
}

void *calloc(size_t count, size_t size)
{
    int owner = told ? owner_of(__builtin_return_address(0)) : 0;
    void *block = fails(owner) ? NULL : __interceptor_calloc(count, size);
    remember(block, owner);
    return block;
}

void *realloc(void *block, size_t size)
{
    int owner = told ? owner_of(__builtin_return_address(0)) : 0;
    if (fails(owner)) {
        return NULL;
    }
    forget(block);
    void *moved = __interceptor_realloc(block, size);
    remember(moved, owner);
    return moved;
}

void free(void *block)
{
    forget(block);
    __interceptor_free(block);
}
