/* SPDX-License-Identifier: MIT */
/* Feeds random bytes to the reader of quantities (clang -fsanitize=fuzzer). The first byte chooses
 * the measure and the unit of a figure without one. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/core/units.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

static const double untouched = -77.25;

static int read_as(const char *text, size_t size, int kind, double *value)
{
    sil_measure measure = (sil_measure)(kind / 2 % (SIL_FREQUENCY + 1));
    *value = untouched;
    return sil_quantity_read(text, size, measure, kind % 2 ? SIL_INCH : SIL_MM, value);
}

static void must(bool holds)
{
    if (!holds) {
        abort();
    }
}

/* What is read is the same with spaces about it, and again when written in full. */
static void read_again(const char *text, size_t size, int kind, int status, double value)
{
    double again;
    char *spaced = malloc(size + 3);
    spaced[0] = spaced[size + 1] = ' ';
    spaced[size + 2] = '\t';
    memcpy(spaced + 1, text, size);
    must(read_as(spaced, size + 3, kind, &again) == status && again == value);
    free(spaced);
    if (status == SIL_DONE) {
        char written[SIL_NUMBER_FULL_MAX];
        size_t length = sil_number_write_full(written, value);
        must(read_as(written, length, 2 * SIL_RATIO, &again) == SIL_DONE);
        must(again == value);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    if (size < 1) {
        return 0;
    }
    char *text = malloc(size); /* of its own, so that a byte read past it shows */
    memcpy(text, bytes + 1, size - 1);
    double value;
    int status = read_as(text, size - 1, bytes[0], &value);
    must(status <= SIL_DONE && status >= SIL_OTHER_UNIT);
    must(status == SIL_DONE ? isfinite(value) : value == untouched);
    read_again(text, size - 1, bytes[0], status, value);
    free(text);
    return 0;
}
