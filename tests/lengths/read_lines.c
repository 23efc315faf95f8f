/* SPDX-License-Identifier: MIT */
/* Reads the lines of standard input as lengths, bare ones in the unit of the first argument, and
 * says of each what was read, in mm and in full, or its status. */
#include <stdio.h>
#include <string.h>

#include <sillet/core/units.h>

int main(int argc, char **argv)
{
    sil_unit bare = argc > 1 && strcmp(argv[1], "in") == 0 ? SIL_INCH : SIL_MM;
    char line[1024];
    while (fgets(line, sizeof line, stdin)) {
        double value = SIL_UNKNOWN;
        sil_status status = sil_quantity_read(line, strcspn(line, "\n"), SIL_LENGTH, bare, &value);
        printf("%d %.17g\n", status, value);
    }
    return 0;
}
