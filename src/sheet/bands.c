/* SPDX-License-Identifier: MIT */
/* Targets: the target itself and the range around it. */
#include <string.h>

#include "fill.h"

/* How far the range of a target given as one value reaches each way. */
static double reach(const sil_allowances *allowances, const job_field *field)
{
    switch (field->key[0]) {
    case 'a':
        return allowances->band_action;
    case 'f':
        return allowances->band_first;
    default:
        return allowances->band_relief;
    }
}

/* Fills in the ends of a band that were not given. A gap has no target under 0; relief can have
 * one. */
static void complete(sheet_filler *filler, const job_field *field, sil_band *band)
{
    double each_way = reach(&filler->job->allowances, field);
    if (!sil_known(band->aim)) {
        band->aim = (band->low + band->high) / 2.0;
    }
    if (!sil_known(band->low)) {
        band->low = band->aim - each_way;
        if (band->low < 0.0 && field->sign != JOB_ANY_SIGN) {
            band->low = 0.0;
        }
    }
    if (!sil_known(band->high)) {
        band->high = band->aim + each_way;
    }
}

/* Reads low, aim and high of a mapping; true for a key that is one of them. */
static bool fill_edge(sheet_filler *filler, sheet_node *child, const job_field *field,
                      sil_band *band)
{
    double *edge = strcmp(child->key, "low") == 0    ? &band->low
                   : strcmp(child->key, "aim") == 0  ? &band->aim
                   : strcmp(child->key, "high") == 0 ? &band->high
                                                     : NULL;
    if (edge && child->given) {
        sheet_fill_quantity(filler, child, field, edge);
    }
    return edge;
}

static void unknown_key(sheet_filler *filler, sheet_node *child, const char *wanted)
{
    sheet_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                  "unknown key %s: wanted %s", sheet_quote_of(child->key, child->key_length).text,
                  wanted);
}

static sil_band fill_one(sheet_filler *filler, sheet_node *node, const job_field *field)
{
    sil_band band = {SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN};
    if (node->shape == SHEET_MAPPING) {
        for (sheet_node *child = node->first; child; child = child->next) {
            if (!fill_edge(filler, child, field, &band)) {
                unknown_key(filler, child, "low, aim and high");
            }
        }
    } else if (node->given) {
        sheet_fill_quantity(filler, node, field, &band.aim);
    }
    complete(filler, field, &band);
    return band;
}

void sheet_fill_band(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_band *band = job_field_place(field, base);
    *band = fill_one(filler, node, field);
}

static double between(double treble, double bass, double share)
{
    return treble + (bass - treble) * share;
}

static void spread(const sheet_filler *filler, sil_band *bands, const sil_band *treble,
                   const sil_band *bass)
{
    int strings = filler->job->string_count;
    for (int i = 0; i < strings; i++) {
        double share = sil_course_share(filler->course, strings, i);
        bands[i] = (sil_band){between(treble->low, bass->low, share),
                              between(treble->aim, bass->aim, share),
                              between(treble->high, bass->high, share)};
    }
}

/* A mapping: either low, aim and high for all strings, or treble and bass. Either may have held as
 * well. */
static void fill_mapping(sheet_filler *filler, sheet_node *node, const job_field *field,
                         sil_targets *targets)
{
    sil_band *bands = job_field_place(field, targets);
    sil_band all = {SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN};
    sheet_node *ends[2] = {NULL, NULL};
    bool edges = false;
    for (sheet_node *child = node->first; child; child = child->next) {
        if (fill_edge(filler, child, field, &all)) {
            edges = true;
        } else if (strcmp(child->key, "treble") == 0) {
            ends[0] = child;
        } else if (strcmp(child->key, "bass") == 0) {
            ends[1] = child;
        } else if (field->words && strcmp(child->key, "held") == 0) {
            int held = SIL_HOLD_3;
            if (child->given && sheet_fill_word(filler, child, field->words, &held)) {
                targets->first_held = (sil_hold)held;
            }
        } else {
            unknown_key(filler, child, "low, aim and high, or treble and bass");
        }
    }
    if (edges && (ends[0] || ends[1])) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node,
                         "wanted low, aim and high, or treble and bass, not both");
    } else if (ends[0] && ends[1]) {
        sil_band treble = fill_one(filler, ends[0], field), bass = fill_one(filler, ends[1], field);
        spread(filler, bands, &treble, &bass);
    } else if (ends[0] || ends[1]) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "%s is missing",
                         ends[0] ? "bass" : "treble");
    } else {
        complete(filler, field, &all);
        spread(filler, bands, &all, &all);
    }
}

void sheet_fill_bands(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_band *bands = job_field_place(field, base);
    if (node->shape == SHEET_MAPPING) {
        fill_mapping(filler, node, field, base);
    } else if (node->shape == SHEET_SEQUENCE) {
        bool fits = sheet_right_count(filler, node);
        for (sheet_node *item = node->first; fits && item; item = item->next) {
            *bands++ = fill_one(filler, item, field);
        }
    } else {
        sil_band all = fill_one(filler, node, field);
        spread(filler, bands, &all, &all);
    }
}
