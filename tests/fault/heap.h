/* SPDX-License-Identifier: MIT */
/* A heap that runs out when told to. It stands before the sanitizer's, so that every allocation of
 * the process goes through it, whichever library asks. */
#ifndef SILLET_FAULT_HEAP_H
#define SILLET_FAULT_HEAP_H

#include <stdbool.h>
#include <stdint.h>

enum { HEAP_LIBRARIES = 32, HEAP_CALLS = 1 << 17 };

/* What a process tells of its heap; lies in memory shared with the one that looks on. */
typedef struct heap_tale {
    long calls;                      /* allocations asked for since armed */
    int failed_by;                   /* the library whose call was failed, or -1 */
    long live[HEAP_LIBRARIES];       /* blocks a library has asked for and nobody has freed */
    bool paths_wanted;               /* whether to tell how each call was come by */
    uint32_t path[HEAP_CALLS];       /* by call: one number for one way of coming there */
    unsigned char owner[HEAP_CALLS]; /* by call: the library */
} heap_tale;

/* Looks up the libraries in memory; the first is the program itself. */
void heap_begin(void);
const char *heap_library(int index); /* the file's name; NULL past the last */

/* Counts from here on. The call of this number fails, and, for good, all behind it; 0: none. */
void heap_arm(heap_tale *tale, long fails, bool for_good);
void heap_disarm(void);

#endif
