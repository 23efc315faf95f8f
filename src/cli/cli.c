/* SPDX-License-Identifier: MIT */
#include <errno.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../text/text.h"
#include "cli.h"

__attribute__((format(printf, 1, 0))) static void tell(const char *format, va_list arguments)
{
    fputs("sillet: ", stderr);
    vfprintf(stderr, format, arguments);
    fputc('\n', stderr);
}

int cli_misused(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    tell(format, arguments);
    va_end(arguments);
    fputs("sillet: 'sillet --help' tells how it is used\n", stderr);
    return CLI_USAGE;
}

int cli_failed(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    tell(format, arguments);
    va_end(arguments);
    return CLI_SYSTEM;
}

/* Returned: false if out of memory. */
static bool tell_complaint(sil_complaint complaint)
{
    size_t size = sil_complaint_write(&complaint, NULL, 0) + 1;
    char *words = malloc(size);
    bool whole = words && sil_complaint_write(&complaint, words, size) > 0;
    if (whole) {
        fprintf(stderr, "sillet: %s\n", words);
    }
    free(words);
    return whole;
}

int cli_read_sheet(const char *path, sil_sheet **sheet)
{
    sil_status status = sil_sheet_read(path, NULL, sheet);
    return cli_tell_sheet(path, status, *sheet);
}

int cli_tell_sheet(const char *path, sil_status status, const sil_sheet *sheet)
{
    bool told = true;
    for (int k = 0; k < sil_sheet_complaint_count(sheet); k++) {
        told = tell_complaint(sil_sheet_complaint(sheet, k)) && told;
    }
    if (!told) {
        return cli_failed("%s: out of memory", path);
    }
    if (status >= SIL_DONE) {
        return CLI_DONE;
    }
    if (status == SIL_NO_MEMORY) {
        return cli_failed("%s: out of memory", path);
    }
    return status == SIL_WRONG ? CLI_WRONG : CLI_SYSTEM;
}

int cli_read_profile(const char *name, sil_sheet **sheet)
{
    text bytes = {0};
    text_add(&bytes, "sillet: 1\nprofile: \"%s\"\n", name);
    bool nameable = !strpbrk(name, "\"\\\n");
    sil_status status = bytes.failed ? SIL_NO_MEMORY : SIL_WRONG;
    if (nameable && !bytes.failed) {
        status = sil_sheet_read_bytes(text_read(&bytes), bytes.length, name, NULL, sheet);
    }
    text_free(&bytes);
    if (status >= SIL_DONE) {
        return CLI_DONE;
    }
    switch (status) {
    case SIL_NO_MEMORY:
        return cli_failed("out of memory");
    case SIL_UNREADABLE:
        return cli_failed("the profile '%s' cannot be read", name);
    default:
        return nameable ? cli_misused("%s", sil_sheet_complaint(*sheet, 0).text)
                        : cli_misused("'%s' is no profile's name", name);
    }
}

void cli_print(const char *words)
{
    fputs(words, stdout);
}

int cli_close_output(int code)
{
    bool failed = ferror(stdout) != 0;
    failed = fclose(stdout) != 0 || failed;
    return failed ? cli_failed("standard output: %s", strerror(errno)) : code;
}
