/* SPDX-License-Identifier: MIT */
/* The system's calls of our own code, which fail when told to (linked with --wrap). */
#ifndef SILLET_FAULT_CALLS_H
#define SILLET_FAULT_CALLS_H

/* As an errno: half of what was asked for, and no error. */
enum { CALLS_SHORT = -1, CALLS_MAX = 256 };

/* In memory shared with the process that looks on. */
typedef struct calls_tale {
    int count;
    const char *name[CALLS_MAX]; /* by call, from 1 */
} calls_tale;

/* Counts from here on; the call of this number fails with this errno, once. 0: none. */
void calls_arm(calls_tale *tale, int fails, int with);

#endif
