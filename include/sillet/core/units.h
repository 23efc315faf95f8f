/* SPDX-License-Identifier: MIT */
/* Reading lengths as a workshop writes them, and writing figures.
 *
 * Inside the library every length is in millimetres and every force in newtons. A value that was
 * not read is SIL_UNKNOWN. Whatever is computed from an unknown value is unknown too, and is
 * printed as null in JSON or as "-", never as a made-up figure.
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

/* The unit of a length written without one, and the unit in which lengths are shown. */
typedef enum sil_unit { SIL_MM, SIL_INCH } sil_unit;

/* What a quantity measures. Each has the unit its values are kept in, then the units it may be
 * written in. */
typedef enum sil_measure {
    SIL_LENGTH,    /* mm:   mm cm m; in in. inch inches " '', in small letters or capitals; thou mil
                    mils thousandths; fractions of an inch: 5/64 5/64ths 1 3/16 1-3/16 */
    SIL_RATIO,     /* none */
    SIL_ANGLE,     /* deg:  deg, the degree sign, rad */
    SIL_FORCE,     /* N:    N mN lbf */
    SIL_MODULUS,   /* GPa:  GPa MPa Pa psi */
    SIL_UNIT_MASS, /* g/m:  g/m kg/m lb/in; everywhere else the library uses kg/m */
    SIL_DENSITY,   /* kg/m3: kg/m3 g/cm3 */
    SIL_HUMIDITY,  /* %:    % */
    SIL_TEMPERATURE, /* C:    C F, with or without the degree sign */
    SIL_FREQUENCY    /* Hz:   may be written without a unit */
} sil_measure;

/* sil_quantity_read: reads one quantity as a workshop writes it.
 * Given:    text, size  UTF-8, need not end in NUL; spaces at either end are skipped
 *           measure     what it measures
 *           bare        the unit of a length written without one; not used for other measures
 * Returned: value       in the unit of the measure, as in sil_measure; untouched on error
 * Status:   SIL_DONE, SIL_NOT_A_NUMBER, SIL_NO_UNIT or SIL_OTHER_UNIT
 * Accuracy: correctly rounded for up to 15 significant digits, then one unit in the last place
 * Notes:    the decimal mark is a point or, where there is no point, a single comma; the locale is
 *           not used. It reads "5/64 in", "1 3/16 in", ".012\"" and "12 thou". The Unicode minus
 *           sign, no-break space and fraction slash read as their plain forms. Fractions are of an
 *           inch. A fraction after a whole number must be less than 1, since "1 19/16" is probably
 *           a slip.
 */
sil_status sil_quantity_read(const char *text, size_t size, sil_measure measure, sil_unit bare,
                             double *value);

/* sil_fraction_of: the denominator of the fraction of an inch that a length is written with.
 * Given:    text, size  a length that sil_quantity_read takes
 * Returned: 64 of "5/64 in", 8 of a one-letter eighth; 0 where it has no fraction, and where its
 *           fraction is of a thousandth
 */
int sil_fraction_of(const char *text, size_t size);

/* sil_graduation: how closely a scale marked in fractions of an inch is read.
 * Given:    denominator  of the finest fraction read on it; 0: it is not marked so
 * Returned: plus or minus, mm: half a step, 1/(2 d) in with d at least 32; 0 for 0
 * Notes:    a reading of 1/8 comes from a rule with finer marks, so it counts as 4/32: common
 *           practice, no source
 */
double sil_graduation(int denominator);

/* sil_measure_unit: the unit in which values of a measure are kept, as written after a figure
 * ("mm", "deg", ..).
 * Given:    measure  one of sil_measure
 * Returned: fixed text, not to be freed; "" for a ratio
 */
const char *sil_measure_unit(sil_measure measure);

/* sil_number_write: writes a number with a fixed count of decimals. All figures in text are written
 * through it.
 * Given:    value     any double
 *           decimals  0..9 digits after the point; halves are rounded away from zero
 * Returned: out       NUL-terminated, at most size bytes; "-" for a value that is not finite;
 *                     never "-0", and a point in any locale
 * Status:   the length written, or the length needed where size is too small (out then empty)
 */
size_t sil_number_write(char *out, size_t size, double value, int decimals);

/* sil_number_shown: a number as sil_number_write shows it, so that two figures that read alike compare
 * alike.
 * Given:    as sil_number_write
 * Returned: the number rounded so; one that is not finite, or too large to have decimals, as it is
 */
double sil_number_shown(double value, int decimals);

/* sil_number_trimmed: as sil_number_write, without zeros at the end of the decimals ("2.5", "3").
 * Given:    as sil_number_write
 * Returned: as sil_number_write
 * Status:   as sil_number_write
 */
size_t sil_number_trimmed(char *out, size_t size, double value, int decimals);

/* sil_number_write_full: writes a double with all its digits, as for JSON.
 * Given:    value  finite
 *           out    at least SIL_NUMBER_FULL_MAX bytes
 * Returned: out    NUL-terminated; reads back as the same double; fifteen significant digits where
 *                  these are enough, otherwise seventeen; a point in any locale, never "-0"
 * Status:   the length written
 */
#define SIL_NUMBER_FULL_MAX 48
size_t sil_number_write_full(char *out, double value);

/* sil_number_write_measured: writes a double as sil_number_write_full does, without what is only the
 * noise of floating point: 2.3 for 2.3000000000000003. No tool reads a millionth of that.
 * Given:    as sil_number_write_full
 * Returned: as sil_number_write_full, of the value rounded to ten decimals; under a thousandth to
 *           twelve; from 100000 on as it is
 * Status:   the length written
 */
size_t sil_number_write_measured(char *out, double value);

/* sil_length_write: writes a length in mm or inches, without the unit.
 * Given:    mm        length
 *           unit      SIL_MM: with decimals as given; SIL_INCH: with one more, because a hundredth
 *                     of a millimetre is about half a thousandth of an inch
 *           decimals  for millimetres, 0..8
 * Returned: as sil_number_write
 */
size_t sil_length_write(char *out, size_t size, double mm, sil_unit unit, int decimals);

/* Which way a figure is rounded when it is shown. A cut is rounded down, and a height to stop at is
 * rounded up, because wood cannot be put back. Everything else is rounded to the nearest. */
typedef enum sil_rounding { SIL_NEAREST, SIL_DOWN, SIL_UP } sil_rounding;

/* sil_figure_write: writes a length as it is read at the bench, without the unit.
 * Given:    mm    length; unknown: "-" is written
 *           unit  SIL_MM: to a hundredth; SIL_INCH: to a thousandth; under ten of them to half of
 *                 one (0.0015, 0.002), under half of one to a tenth (0.0004)
 *           way   which way to round; a rounding error does not move a figure to the next one, and
 *                 half a step to the nearest goes away from zero
 * Returned: as sil_number_write
 */
size_t sil_figure_write(char *out, size_t size, double mm, sil_unit unit, sil_rounding way);

/* sil_character: reads the UTF-8 character at the start of a text.
 * Given:    text  at least one byte
 *           size  of the text; any number over 3 where the text ends in a NUL
 * Returned: code  its Unicode code point
 * Status:   its length, 1..4; 0 where it is not well-formed UTF-8
 * Reference: Unicode Standard, table 3-7
 */
size_t sil_character(const char *text, size_t size, unsigned long *code);

#ifdef __cplusplus
}
#endif
#endif
