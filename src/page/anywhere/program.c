/* SPDX-License-Identifier: MIT */
/* A module within a page stands in no folder: this is in place of src/sheet/program.c. */
#include <sillet/sheet.h>

size_t sil_program_folder(char *out, size_t size)
{
    if (size > 0) {
        out[0] = '\0';
    }
    return 0;
}
