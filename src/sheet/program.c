/* SPDX-License-Identifier: MIT */
/* Where the running program is. */
#include <sillet/sheet.h>
#include <stdlib.h>
#include <string.h>
#include <sys/auxv.h>

size_t sil_program_folder(char *out, size_t size)
{
    char *program = realpath("/proc/self/exe", NULL);
    if (!program) { /* without /proc: the path it was called by */
        program =
            realpath((const char *)getauxval(AT_EXECFN), NULL); /* NOLINT: the value is a pointer */
    }
    const char *slash = program ? strrchr(program, '/') : NULL;
    size_t length = slash ? (size_t)(slash - program) : 0;
    if (length + 1 > size) {
        length = 0;
    }
    if (length > 0) {
        memcpy(out, program, length);
        out[length] = '\0';
    }
    free(program);
    return length;
}
