/* SPDX-License-Identifier: MIT */
/* What is tried with faults: the programs, and the page's answers as one more. */
#ifndef SILLET_FAULT_PROGRAMS_H
#define SILLET_FAULT_PROGRAMS_H

#include <stddef.h>

enum { PROGRAM_WORDS = 8 };

typedef struct program {
    const char *name;
    int (*run)(int argc, char **argv);
    const char *words[PROGRAM_WORDS];
    /* One result; a line for each sheet as it comes; out_file; one result, in which a profile that
     * cannot be read is told of. */
    enum { ONE, LINES, A_FILE, TOLD_IN } gives;
} program;

extern const program programs[];
extern const int program_count;

/* The file to be written, the only one in a folder of its own. */
#define OUT_NAME "out.yaml"
extern char out_folder[], out_file[];

/* Makes the folder; 0, or -1 with errno. */
int programs_begin(void);
void programs_end(void);

/* As a program: METHOD TARGET SHEET (none: ""). Ends with 0 for an answer, 1 where the answer is
 * that something is wrong with the request, 3 where it is that the system failed. */
int web_main(int argc, char **argv);

/* Reads and lays out beforehand what the page works on, so that no fault strikes the test. */
int web_begin(const char *folder);
void web_end(void);

#endif
