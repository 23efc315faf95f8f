/* SPDX-License-Identifier: MIT */
/* Checks whether a figure is possible, whether it is likely, and which slip of the pen would
 * explain it. */
#include "check.h"

#include <stdio.h>
#include <string.h>

static job_figure trimmed(double value, int decimals)
{
    job_figure figure;
    if (sil_number_trimmed(figure.text, sizeof figure.text, value, decimals) >=
        sizeof figure.text) {
        strcpy(figure.text, "-");
    }
    return figure;
}

job_figure job_figure_of(double value)
{
    return trimmed(value, 4);
}

static job_figure with_unit(job_figure bare, const char *unit)
{
    job_figure figure;
    snprintf(figure.text, sizeof figure.text, "%.20s %.10s", bare.text, unit);
    return figure;
}

job_figure job_length_of(const job_check *check, double mm)
{
    bool inches = check->job->units == SIL_INCH;
    return inches ? with_unit(trimmed(mm / 25.4, 4), "in") : with_unit(trimmed(mm, 3), "mm");
}

/* What the same figure would be if another unit was meant, or if the decimal point slipped. */
typedef struct slip {
    double worth; /* mm for a figure of 1 */
    double shown; /* the figure to offer for a figure of 1 */
    const char *unit;
    bool whole; /* only a whole number can be meant this way */
} slip;

static const slip slips[] = {
    {0.0254, 0.001, "in", false}, {25.4 / 64.0, 1.0, "/64 in", true},
    {25.4, 1.0, "in", false},     {1.0, 1.0, "mm", false},
    {0.1, 0.1, "mm", false},      {10.0, 10.0, "mm", false},
    {0.01, 0.01, "mm", false},    {100.0, 100.0, "mm", false},
};

/* The first slip that would make a length likely, as text to add to the complaint; "" if there is
 * none. */
static job_figure find_slip(const job_check *check, double mm, double low, double high)
{
    double own = check->job->units == SIL_INCH ? 25.4 : 1.0;
    double figure = mm / own;
    for (size_t i = 0; i < sizeof slips / sizeof slips[0]; i++) {
        bool decimal = i > 3; /* if the point slipped, the sheet's own unit is kept */
        double worth = slips[i].worth * (decimal ? own : 1.0);
        double meant = figure * worth;
        bool fits = meant >= low && meant <= high && meant != 0.0 && worth != own;
        if (!fits || (slips[i].whole && (floor(figure) != figure || figure > 999.0))) {
            continue;
        }
        if (slips[i].whole) {
            job_figure whole = job_figure_of(figure), text;
            snprintf(text.text, sizeof text.text, "%.8s%s", whole.text, slips[i].unit);
            return text;
        }
        return with_unit(job_figure_of(figure * slips[i].shown),
                         decimal && own > 1.0 ? "in" : slips[i].unit);
    }
    return (job_figure){""};
}

/* Reports the likely range, in the unit the figure was most likely written in. */
static void say_unlikely(job_check *check, sil_severity severity, const job_field *field,
                         const job_place *place, double value, const job_range *range)
{
    bool length = field->measure == SIL_LENGTH;
    double unit = length && check->job->units == SIL_INCH ? 25.4 : 1.0;
    const char *name = unit > 1.0 ? "in" : sil_measure_unit(field->measure);
    job_figure low = job_figure_of(range->low / unit);
    job_figure high = job_figure_of(range->high / unit);
    job_figure meant = {""};
    if (length) {
        meant = find_slip(check, value, range->low, range->high);
    }
    bool offered = meant.text[0] != '\0';
    job_check_say(check, severity, place, "%s, %s to %s%s%s is usual%s%s%s",
                  severity == SIL_ERROR ? "cannot be" : "unlikely", low.text, high.text,
                  *name ? " " : "", name, offered ? "; did you mean " : "", meant.text,
                  offered ? "?" : "");
}

/* Whether a place is within a reading. */
static bool is_read(const job_place *place)
{
    while (place->up) {
        place = place->up;
    }
    return place->key && strcmp(place->key, "readings") == 0;
}

/* Past ten times of what is usual, or of a dimension under a tenth of it, it is a slip. A reading may
 * well be next to nothing: a string lies almost on a fret. */
static bool is_impossible(const job_range *range, double figure, bool read)
{
    return figure > 10.0 * range->high || (range->low < 0.0 && figure < 10.0 * range->low) ||
           (!read && range->low > 0.0 && figure < range->low / 10.0);
}

static job_range range_of(const job_check *check, const job_field *field)
{
    for (int i = 0; i < check->range_count; i++) {
        if (check->ranges[i].field == field) {
            return check->ranges[i];
        }
    }
    return (job_range){field, field->low, field->high};
}

void job_check_figure(job_check *check, const job_field *field, const job_place *place,
                      double value)
{
    if (!sil_known(value)) {
        if (field->required) {
            job_check_missing(check, place);
        }
        return;
    }
    if (isinf(value)) {
        job_check_say(check, SIL_ERROR, place, "not finite");
        return;
    }
    if (field->sign != JOB_ANY_SIGN && value < 0.0) {
        job_check_say(check, SIL_ERROR, place, "cannot be negative");
        return;
    }
    if (value == 0.0) {
        if (field->sign == JOB_OVER_ZERO) {
            job_check_say(check, SIL_ERROR, place, "must be over 0");
        }
        return; /* if 0 is a reading, it means "none" or "at or under" */
    }
    job_range range = range_of(check, field);
    double figure = value / job_field_factor(field);
    if (figure >= range.low && figure <= range.high) {
        return;
    }
    bool impossible = is_impossible(&range, figure, is_read(place));
    say_unlikely(check, impossible ? SIL_ERROR : SIL_WARNING, field, place, figure, &range);
}
