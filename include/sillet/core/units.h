/* SPDX-License-Identifier: MIT */
/* Lengths as a workshop writes them, and figures as a program prints them.
 *
 * Inside the library every length is in millimetres, every force in newtons, and a value that
 * nobody has read is SIL_UNKNOWN: it spreads through the arithmetic by itself, and comes out as
 * null, never as a made-up figure.
 */
#ifndef SILLET_UNITS_H
#define SILLET_UNITS_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "../status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define SIL_STRINGS_MAX 12
#define SIL_FRETS_MAX 36

/* A value not read, not given or withheld. Test for it with sil_known, not with ==. */
#define SIL_UNKNOWN ((double)NAN)

/* sil_known: whether a value was read, given or could be computed.
 * Given:    value  any double
 * Returned: false for SIL_UNKNOWN
 */
static inline bool sil_known(double value)
{
    return value == value;
}

/* The unit a bare length is in, and the unit a person is shown. */
typedef enum sil_unit { SIL_MM, SIL_INCH } sil_unit;

/* What a quantity measures. Only SIL_LENGTH and SIL_RATIO may be written without a unit. */
typedef enum sil_measure {
    SIL_LENGTH,  /* mm:   mm cm m; in in. inch inches " '', small letters or capitals; thou mil mils
                    thousandths; fractions of an inch: 5/64 5/64ths 1 3/16 1-3/16 */
    SIL_RATIO,   /* none */
    SIL_ANGLE,   /* deg:  deg, the degree sign, rad */
    SIL_FORCE,   /* N:    N mN lbf */
    SIL_MODULUS, /* GPa:  GPa MPa Pa psi */
    SIL_UNIT_MASS,   /* g/m:  g/m kg/m lb/in; all else of the library has kg/m */
    SIL_DENSITY,     /* kg/m3: kg/m3 g/cm3 */
    SIL_HUMIDITY,    /* %:    % */
    SIL_TEMPERATURE, /* C:    C F, with or without the degree sign */
    SIL_FREQUENCY    /* Hz:   may be bare */
} sil_measure;

/* sil_quantity_read: reads one quantity as a workshop writes it.
 * Given:    text, size  UTF-8, need not end in NUL; spaces at either end are passed over
 *           measure     what it measures
 *           bare        the unit of a bare length; no matter for other measures
 * Returned: value       in the unit named beside the measure in sil_measure; untouched on error
 * Status:   SIL_DONE, SIL_NOT_A_NUMBER, SIL_NO_UNIT or SIL_OTHER_UNIT
 * Accuracy: correctly rounded for up to 15 significant digits, then one unit in the last place
 * Notes:    the decimal mark is a point or, where no point is present, a single comma; the
 *           process locale is never asked. "5/64 in", "1 3/16 in", ".012\"", "12 thou". A true
 *           minus sign, no-break spaces and the fraction slash read as what they look like. A
 *           fraction is of an inch, and less than 1 behind a whole number: "1 19/16" is a slip.
 */
sil_status sil_quantity_read(const char *text, size_t size, sil_measure measure, sil_unit bare,
                             double *value);

/* sil_measure_unit: the unit a measure is kept in, as written beside a figure ("mm", "deg", ..).
 * Given:    measure  one of sil_measure
 * Returned: fixed text, not to be freed; "" for a ratio
 */
const char *sil_measure_unit(sil_measure measure);

/* sil_number_write: the one place where a figure becomes text.
 * Given:    value     any double
 *           decimals  0..9 digits after the point, rounded half away from zero as printed
 * Returned: out       NUL-terminated, at most size bytes; "-" for a value that is not finite;
 *                     never "-0", never a comma whatever the locale
 * Status:   the length written, or the length needed where size is too small (out then empty)
 */
size_t sil_number_write(char *out, size_t size, double value, int decimals);

/* sil_number_trimmed: the same without noughts at the end of its decimals ("2.5", "3").
 * Given:    as sil_number_write
 * Returned: as sil_number_write
 * Status:   as sil_number_write
 */
size_t sil_number_trimmed(char *out, size_t size, double value, int decimals);

/* sil_number_write_full: a finite double in full, as JSON has it.
 * Given:    value  finite
 *           out    at least SIL_NUMBER_FULL_MAX bytes
 * Returned: out  NUL-terminated; fifteen significant digits where they are enough, else seventeen;
 *                  it reads back as the same double; a point whatever the locale, never "-0"
 * Status:   the length written
 */
#define SIL_NUMBER_FULL_MAX 48
size_t sil_number_write_full(char *out, double value);

/* sil_length_write: a length for a person, with no unit behind it.
 * Given:    mm        length
 *           unit      SIL_MM: decimals as given; SIL_INCH: inches, decimals + 1 (a hundredth of a
 *                     millimetre and half a thousandth of an inch are of a size)
 *           decimals  for millimetres, 0..8
 * Returned: as sil_number_write
 */
size_t sil_length_write(char *out, size_t size, double mm, sil_unit unit, int decimals);

/* Which way a figure is rounded for a person: a cut down and a place to stop at up, since wood does
 * not go back on; everything else to the nearest. */
typedef enum sil_rounding { SIL_NEAREST, SIL_DOWN, SIL_UP } sil_rounding;

/* sil_figure_write: a length as a bench reads it, no unit behind it.
 * Given:    mm    length; unknown: "-"
 *           unit  SIL_MM: hundredths. SIL_INCH: thousandths, and tenths of them for what is under
 *                 1.3 mm (gaps, feelers, slots)
 *           way   a figure that is whole but for rounding stays what it is
 * Returned: as sil_number_write
 */
size_t sil_figure_write(char *out, size_t size, double mm, sil_unit unit, sil_rounding way);

/* sil_character: the UTF-8 character at the front of a text.
 * Given:    text  at least one byte
 *           size  of the text; where it ends in a NUL, anything over 3 will do
 * Returned: code  its number in Unicode
 * Status:   its length, 1..4; 0 where it is not well formed
 * Reference: Unicode Standard, table 3-7
 */
size_t sil_character(const char *text, size_t size, unsigned long *code);

#ifdef __cplusplus
}
#endif
#endif
