/* SPDX-License-Identifier: MIT */
/* The check of a job, field by field. */
#include "check.h"

static void check_table(job_check *check, const job_table *table, const void *base,
                        const job_place *place);

/* The ends come first: if a sheet gives only those, what is wrong between them follows from
 * them. */
static int ends_first(int step, int count)
{
    return step == 0 ? 0 : step == 1 ? count - 1 : step - 1;
}

static void check_figures(job_check *check, const job_field *field, const job_place *place,
                          const double *figures, int count)
{
    for (int step = 0; step < count; step++) {
        int i = ends_first(step, count);
        job_place item = job_item(place, i);
        job_check_figure(check, field, &item, figures[i]);
    }
}

/* Two figures that a mapping names. If the sheet gives one value for both, the complaint is about
 * that value. */
static void check_pair(job_check *check, const job_field *field, const job_place *place,
                       const double *pair, const char *first, const char *second)
{
    bool alike = pair[0] == pair[1] || (!sil_known(pair[0]) && !sil_known(pair[1]));
    job_place ends[2] = {job_key(place, first), job_key(place, second)};
    job_check_figure(check, field, alike ? place : &ends[0], pair[0]);
    if (!alike) {
        job_check_figure(check, field, &ends[1], pair[1]);
    }
}

static void check_scale(job_check *check, const job_field *field, const job_place *place,
                        const sil_instrument *instrument)
{
    const double *pair = &instrument->scale;
    job_place square = job_key(place, "square");
    if (!sil_known(instrument->scale_bass)) {
        job_check_figure(check, field, place, instrument->scale);
        return;
    }
    check_pair(check, field, place, pair, "treble", "bass");
    if (instrument->square < 0 || instrument->square > SIL_FRETS_MAX) {
        job_check_say(check, SIL_ERROR, &square, "wanted a whole number from 0 to %d",
                      SIL_FRETS_MAX);
    }
}

static void check_radius(job_check *check, const job_field *field, const job_place *place,
                         const double *radius)
{
    if (!isinf(radius[0]) || !isinf(radius[1])) {
        check_pair(check, field, place, radius, "nut", "end");
    }
}

/* One figure is how far it can still go down. */
static void check_travel(job_check *check, const job_field *field, const job_place *place,
                         const double *travel)
{
    job_place down = job_key(place, "down"), up = job_key(place, "up");
    bool both = sil_known(travel[1]);
    job_check_figure(check, field, both ? &down : place, travel[0]);
    if (both) {
        job_check_figure(check, field, &up, travel[1]);
    }
}

static void check_band(job_check *check, const job_field *field, const job_place *place,
                       const sil_band *band)
{
    job_place low = job_key(place, "low"), aim = job_key(place, "aim"),
              high = job_key(place, "high");
    if (!sil_known(band->aim) || !sil_known(band->low) || !sil_known(band->high)) {
        job_check_missing(check, place);
        return;
    }
    job_check_figure(check, field, &aim, band->aim);
    if (band->low > band->aim) {
        job_check_say(check, SIL_ERROR, &low, "higher than aim");
    }
    if (band->high < band->aim) {
        job_check_say(check, SIL_ERROR, &high, "lower than aim");
    }
    if (band->low < 0.0 && field->sign != JOB_ANY_SIGN) {
        job_check_say(check, SIL_ERROR, &low, "cannot be negative");
    }
}

static void check_count(job_check *check, const job_field *field, const job_place *place, int count)
{
    bool from_nought = job_counts_from_nought(field);
    if (count == (from_nought ? -1 : 0) && (from_nought || field->low > 0.0)) {
        if (field->required) {
            job_check_missing(check, place);
        }
        return;
    }
    if (count < (int)field->low || count > (int)field->high) {
        job_check_say(check, SIL_ERROR, place, "wanted a whole number from %d to %d",
                      (int)field->low, (int)field->high);
    }
}

static bool is_word(const job_word *words, int value)
{
    while (words->text && words->value != value) {
        words++;
    }
    return words->text;
}

static void check_list(job_check *check, const job_field *field, const job_place *place,
                       const void *list, size_t size, int count)
{
    for (int i = 0; i < count; i++) {
        job_place item = job_item(place, i);
        check_table(check, field->of, (const char *)list + (size_t)i * size, &item);
    }
}

/* Lists that are kept as a pointer and a count, or as an array and a count. The count comes from
 * the job, not from the row. */
static void check_lists(job_check *check, const job_field *field, const job_place *place,
                        const void *base)
{
    const sil_job *job = check->job;
    const sil_reading *reading = base;
    switch (field->kind) {
    case JOB_AS_STRINGS:
        if (job->string_count == 0) {
            job_check_missing(check, place);
        }
        check_list(check, field, place, job->strings, sizeof job->strings[0], job->string_count);
        break;
    case JOB_AS_READINGS:
        check_list(check, field, place, job->readings, sizeof *job->readings, job->reading_count);
        break;
    case JOB_AS_CROWNS:
        check_list(check, field, place, reading->crowns, sizeof *reading->crowns,
                   reading->crown_count);
        break;
    case JOB_AS_BUZZ:
        check_list(check, field, place, reading->buzz, sizeof *reading->buzz, reading->buzz_count);
        break;
    case JOB_AS_FILES:
        check_figures(check, field, place, job->files, job->file_count);
        break;
    case JOB_AS_MATERIALS:
        for (int i = 0; job_material_words[i].text; i++) {
            job_place make = job_key(place, job_material_words[i].text);
            check_table(check, field->of, &job->materials[job_material_words[i].value], &make);
        }
        break;
    default:
        break;
    }
}

static void check_field(job_check *check, const job_field *field, const void *base,
                        const job_place *place)
{
    const void *seen = job_field_seen(field, base);
    int strings = check->job->string_count;
    switch (field->kind) {
    case JOB_AS_FIGURE:
    case JOB_AS_RELIEF_GAP:
        job_check_figure(check, field, place, *(const double *)seen);
        break;
    case JOB_AS_SCALE:
        check_scale(check, field, place, base);
        break;
    case JOB_AS_PER_STRING:
    case JOB_AS_OUTER:
    case JOB_AS_FIRST:
        check_figures(check, field, place, seen, strings);
        break;
    case JOB_AS_PAIR:
        check_pair(check, field, place, seen, "treble", "bass");
        break;
    case JOB_AS_TRAVEL:
        check_travel(check, field, place, seen);
        break;
    case JOB_AS_RADIUS:
        check_radius(check, field, place, seen);
        break;
    case JOB_AS_BAND:
        check_band(check, field, place, seen);
        break;
    case JOB_AS_BANDS:
        for (int step = 0; step < strings; step++) {
            int i = ends_first(step, strings);
            job_place item = job_item(place, i);
            check_band(check, field, &item, (const sil_band *)seen + i);
        }
        break;
    case JOB_AS_COUNT:
        check_count(check, field, place, *(const int *)seen);
        break;
    case JOB_AS_WORD:
        if (field->required && !is_word(field->words, *(const int *)seen)) {
            job_check_missing(check, place);
        }
        break;
    case JOB_AS_PART:
    case JOB_AS_RELIEF:
    case JOB_AS_ATTACK:
        check_table(check, field->of, seen, place);
        break;
    default:
        check_lists(check, field, place, base);
        break;
    }
}

static void check_table(job_check *check, const job_table *table, const void *base,
                        const job_place *place)
{
    for (int i = 0; i < table->count; i++) {
        const job_field *field = &table->fields[i];
        job_place here = job_key(place, field->key);
        check_field(check, field, base, &here);
    }
}

/* The job's own likely ranges, each with the row it belongs to. */
static void lay_ranges(job_check *check)
{
    const sil_job *job = check->job;
    for (int i = 0; i < job->plausible_count && check->range_count < JOB_RANGES_MAX; i++) {
        const sil_plausible *own = &job->plausible[i];
        const job_field *field = job_field_find(own->path);
        if (!field) {
            continue;
        }
        check->ranges[check->range_count++] = (job_range){field, own->low, own->high};
    }
}

int sil_job_check(const sil_job *job, sil_tell *tell_it, void *with)
{
    job_check check = {.job = job, .tell = tell_it, .with = with};
    lay_ranges(&check);
    check_table(&check, &job_table_all, job, NULL);
    job_check_instrument(&check);
    job_check_readings(&check);
    return check.failed ? -1 : check.errors;
}
