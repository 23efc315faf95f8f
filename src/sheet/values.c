/* SPDX-License-Identifier: MIT */
/* Single values: quantities, whole numbers, words. */
#include <string.h>

#include "fill.h"

/* What a measure is called in a complaint, by sil_measure. */
static const struct {
    const char *what, *such_as, *units;
} measures[] = {
    [SIL_LENGTH] = {"a length", "2.5 mm, 0.1 in or 3/32 in", "mm, cm, m, in or thou"},
    [SIL_RATIO] = {"a figure", "0.5", "no unit"},
    [SIL_ANGLE] = {"an angle", "14 deg", "deg or rad"},
    [SIL_FORCE] = {"a force", "0.6 N", "N, mN or lbf"},
    [SIL_MODULUS] = {"a modulus", "206 GPa", "GPa, MPa, Pa or psi"},
    [SIL_UNIT_MASS] = {"a mass by length", "0.374 g/m", "g/m, kg/m or lb/in"},
    [SIL_DENSITY] = {"a density", "7850 kg/m3", "kg/m3 or g/cm3"},
    [SIL_HUMIDITY] = {"a humidity", "47 %", "%"},
    [SIL_TEMPERATURE] = {"a temperature", "21 C", "C or F"},
    [SIL_FREQUENCY] = {"a frequency", "329.6 Hz", "Hz"},
};

static const char *const shapes[] = {"a value", "a mapping", "a list"};

bool sheet_expect(sheet_filler *filler, sheet_node *node, sheet_shape shape)
{
    if (node->shape == shape) {
        return true;
    }
    if (node->shape == SHEET_SCALAR) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s", shapes[shape]);
    } else {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s, found %s", shapes[shape],
                         shapes[node->shape]);
    }
    return false;
}

/* Whether a word may be given instead of a figure ("flat"). The words of a band belong to its key
 * held. */
static bool worded(const job_field *field)
{
    return field->words && field->kind != JOB_AS_BANDS;
}

static const job_word no_words[] = {{NULL, 0}};

/* "a | b | c": the words that may be given. */
static void list_words(const job_word *words, char *out, size_t size)
{
    out[0] = '\0';
    for (; words->text; words++) {
        strncat(out, out[0] ? " | " : "", size - strlen(out) - 1);
        strncat(out, words->text, size - strlen(out) - 1);
    }
}

/* Keeps the finest fraction of an inch that a key of a reading is written in. */
static void note_fraction(const sheet_filler *filler, const sheet_node *node,
                          const job_field *field)
{
    if (filler->reading && field->marked > 0) {
        int *finest = &filler->reading->marked[field->marked - 1];
        int fraction = sil_fraction_of(node->text, node->length);
        *finest = fraction > *finest ? fraction : *finest;
    }
}

bool sheet_fill_quantity(sheet_filler *filler, sheet_node *node, const job_field *field,
                         double *value)
{
    int measure = (int)field->measure;
    if (!sheet_expect(filler, node, SHEET_SCALAR)) {
        return false;
    }
    char words[64];
    double read = 0.0;
    sil_status status =
        sil_quantity_read(node->text, node->length, field->measure, node->source->units, &read);
    switch (status) {
    case SIL_DONE:
        *value = read * job_field_factor(field);
        note_fraction(filler, node, field);
        return true;
    case SIL_NO_UNIT:
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s with its unit, such as %s",
                         measures[measure].what, measures[measure].such_as);
        return false;
    case SIL_OTHER_UNIT:
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s in %s", measures[measure].what,
                         measures[measure].units);
        return false;
    default:
        list_words(worded(field) ? field->words : no_words, words, sizeof words);
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s, such as %s%s%s",
                         measures[measure].what, measures[measure].such_as, words[0] ? ", or " : "",
                         words);
        return false;
    }
}

bool sheet_fill_count(sheet_filler *filler, sheet_node *node, int *count)
{
    if (!sheet_expect(filler, node, SHEET_SCALAR)) {
        return false;
    }
    bool negative = node->text[0] == '-';
    size_t length = node->length - negative;
    int number = 0;
    bool whole = length > 0 && length < 7;
    for (const char *at = node->text + negative; whole && *at; at++) {
        whole = *at >= '0' && *at <= '9';
        number = whole ? number * 10 + (*at - '0') : 0;
    }
    if (!whole) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted a whole number");
        return false;
    }
    *count = negative ? -number : number;
    return true;
}

/* Programs that write YAML 1.1 or JSON write true for yes and false for no, and YAML has each in
 * three spellings. */
static const char *plain_word(const char *given)
{
    static const char *const same[][2] = {{"true", "yes"}, {"True", "yes"}, {"TRUE", "yes"},
                                          {"false", "no"}, {"False", "no"}, {"FALSE", "no"}};
    for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
        if (strcmp(given, same[i][0]) == 0) {
            return same[i][1];
        }
    }
    return given;
}

bool sheet_fill_word(sheet_filler *filler, sheet_node *node, const job_word *words, int *value)
{
    if (!sheet_expect(filler, node, SHEET_SCALAR)) {
        return false;
    }
    const job_word *nearest = words;
    int nearness = 99;
    for (const job_word *word = words; word->text; word++) {
        if (strcmp(word->text, plain_word(node->text)) == 0) {
            node->text = word->text; /* who reads the tree finds the sheet's own word */
            node->length = strlen(word->text);
            *value = word->value;
            return true;
        }
    }
    for (const job_word *word = words; word->text; word++) {
        int apart = sheet_nearness(node->text, node->length, word->text);
        if (apart < nearness) {
            nearest = word;
            nearness = apart;
        }
    }
    char all[192];
    list_words(words, all, sizeof all);
    bool near = nearness < (int)node->length && sheet_near(nearness, node->length);
    sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s%s%s%s", all,
                     near ? "; did you mean " : "", near ? nearest->text : "", near ? "?" : "");
    return false;
}

/* Reads a figure, or a word that means there is none ("none", "flat"). */
static bool quantity_or(sheet_filler *filler, sheet_node *node, const job_field *field,
                        double meant, double *value)
{
    const job_word *words = field->words;
    if (words && node->shape == SHEET_SCALAR && strcmp(node->text, words->text) == 0) {
        *value = meant;
        return true;
    }
    return sheet_fill_quantity(filler, node, field, value);
}

void sheet_fill_figure(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    quantity_or(filler, node, field, SIL_UNKNOWN, job_field_place(field, base));
}

/* Two values under two keys, in that order; true if both were read. ~ is an end still to come. */
static bool fill_ends(sheet_filler *filler, sheet_node *node, const job_field *field,
                      const char *const keys[2], double meant, double ends[2])
{
    bool read[2] = {false, false}, told = false, open = false, blank = node->first != NULL;
    for (sheet_node *child = node->first; child; child = child->next) {
        blank = blank && !child->given;
        open = open || !child->given;
        int which = strcmp(child->key, keys[0]) == 0 ? 0 : strcmp(child->key, keys[1]) == 0 ? 1 : 2;
        if (which == 2) {
            sheet_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                          "unknown key %s: wanted %s and %s",
                          sheet_quote_of(child->key, child->key_length).text, keys[0], keys[1]);
        } else if (child->given) {
            read[which] = quantity_or(filler, child, field, meant, &ends[which]);
            told = told || !read[which];
        }
    }
    if (!blank && !told && !(read[0] && read[1]) && !node->cut) {
        sheet_tell_value(filler->sheet, open ? SIL_WARNING : SIL_ERROR, node,
                         open ? "%s is still to come; one end alone is not used" : "%s is missing",
                         keys[read[0] ? 1 : 0]);
    }
    return read[0] && read[1];
}

static const char *const string_ends[2] = {"treble", "bass"};

void sheet_fill_pair(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    double ends[2] = {SIL_UNKNOWN, SIL_UNKNOWN}, *pair = job_field_place(field, base);
    if (node->shape == SHEET_MAPPING) {
        if (fill_ends(filler, node, field, string_ends, SIL_UNKNOWN, ends)) {
            memcpy(pair, ends, sizeof ends);
        }
    } else if (sheet_fill_quantity(filler, node, field, &ends[0])) {
        pair[0] = pair[1] = ends[0];
    }
}

/* Reads one scale, or those of the outer strings and the fret that is square to them. */
void sheet_fill_scale(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_instrument *instrument = base;
    if (node->shape != SHEET_MAPPING) {
        sheet_fill_quantity(filler, node, field, &instrument->scale);
        return;
    }
    bool square = false;
    for (sheet_node *child = node->first; child; child = child->next) {
        if (strcmp(child->key, "treble") == 0 && child->given) {
            sheet_fill_quantity(filler, child, field, &instrument->scale);
        } else if (strcmp(child->key, "bass") == 0 && child->given) {
            sheet_fill_quantity(filler, child, field, &instrument->scale_bass);
        } else if (strcmp(child->key, "square") == 0) {
            square = child->given && sheet_fill_count(filler, child, &instrument->square);
            square = square || child->told;
        } else if (child->given) {
            instrument->scale_bass = SIL_UNKNOWN;
            sheet_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                          "unknown key %s: wanted treble, bass and square",
                          sheet_quote_of(child->key, child->key_length).text);
            return;
        }
    }
    if (!square || !sil_known(instrument->scale) || !sil_known(instrument->scale_bass)) {
        instrument->scale_bass =
            SIL_UNKNOWN; /* half a fan is no fan: nothing more is reported about it */
        sheet_tell_value(filler->sheet, SIL_ERROR, node,
                         "wanted a length, or {treble: 648, bass: 686, square: 7}: the scales of "
                         "the outer strings, and the fret that is square to them");
    }
}

void sheet_fill_radius(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    static const char *const board_ends[2] = {"nut", "end"};
    double ends[2], *radius = job_field_place(field, base);
    if (node->shape == SHEET_MAPPING) {
        if (fill_ends(filler, node, field, board_ends, (double)INFINITY, ends)) {
            memcpy(radius, ends, sizeof ends);
        }
    } else if (quantity_or(filler, node, field, (double)INFINITY, &ends[0])) {
        radius[0] = radius[1] = ends[0];
    }
}

/* Checks that a list has one value per string; a value that is not given may be null. */
bool sheet_right_count(sheet_filler *filler, sheet_node *node)
{
    int strings = filler->job->string_count;
    if (strings > 0 && node->count != strings && !node->cut) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "%d value%s for %d string%s%s",
                         node->count, node->count == 1 ? "" : "s", strings, strings == 1 ? "" : "s",
                         node->count == 2 * strings ? "; decimal commas? write points" : "");
    }
    return node->count <= SIL_STRINGS_MAX;
}

/* meant: the value of the field's word. */
static void fill_strings(sheet_filler *filler, sheet_node *node, const job_field *field,
                         double meant, double *figures)
{
    double ends[2];
    int strings = filler->job->string_count;
    if (node->shape == SHEET_MAPPING) {
        bool read = fill_ends(filler, node, field, string_ends, meant, ends);
        for (int i = 0; read && i < strings; i++) {
            double share = sil_course_share(filler->course, strings, i);
            figures[i] = ends[0] + (ends[1] - ends[0]) * share;
        }
    } else if (node->shape == SHEET_SEQUENCE) {
        bool fits = sheet_right_count(filler, node);
        double *figure = figures;
        for (sheet_node *item = node->first; fits && item; item = item->next, figure++) {
            if (item->given) {
                quantity_or(filler, item, field, meant, figure);
            }
        }
    } else if (quantity_or(filler, node, field, meant, &ends[0])) {
        for (int i = 0; i < strings; i++) {
            figures[i] = ends[0];
        }
    }
}

/* The word given instead of a gap that was judged by ear; NULL if there is none. */
static const job_word *judged(const sheet_node *node, const job_field *field)
{
    for (const job_word *word = field->words; word->text; word++) {
        if (node->shape == SHEET_SCALAR && strcmp(node->text, word->text) == 0) {
            return word;
        }
    }
    return NULL;
}

/* Reads "ping" or "wide" instead of a gap, or that it was not tapped. "none" is a gap of 0. */
static sil_tap tapped(const sheet_node *node, const job_field *field)
{
    const job_word *word = judged(node, field);
    return word ? (sil_tap)word->value : SIL_NOT_TAPPED;
}

/* Figures can be given by treble and bass; gaps judged by ear cannot. */
static bool runs_by_ear(sheet_filler *filler, const sheet_node *node, const job_field *field)
{
    bool any = false;
    for (sheet_node *end = node->first; node->shape == SHEET_MAPPING && end; end = end->next) {
        if (judged(end, field)) {
            sheet_tell_value(
                filler->sheet, SIL_ERROR, end,
                "gaps judged by ear cannot be given by treble and bass; list them string "
                "by string, as in [ping, wide, ..]");
            any = true;
        }
    }
    return any;
}

void sheet_fill_relief_gap(sheet_filler *filler, sheet_node *node, const job_field *field,
                           void *base)
{
    sil_relief_reading *relief = base;
    relief->tap = tapped(node, field);
    if (!relief->tap) {
        quantity_or(filler, node, field, 0.0, &relief->gap);
    }
}

void sheet_fill_first(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_gaps *gaps = &((sil_reading *)base)->gaps;
    int strings = filler->job->string_count;
    sil_tap all = tapped(node, field);
    if (node->shape == SHEET_SEQUENCE && sheet_right_count(filler, node)) {
        int i = 0;
        for (sheet_node *item = node->first; item; item = item->next, i++) {
            gaps->first_tap[i] = tapped(item, field);
            if (item->given && !gaps->first_tap[i]) {
                quantity_or(filler, item, field, 0.0, &gaps->first[i]);
            }
        }
    } else if (node->shape != SHEET_SEQUENCE && !all && !runs_by_ear(filler, node, field)) {
        fill_strings(filler, node, field, 0.0, gaps->first);
    }
    for (int i = 0; i < strings && all; i++) {
        gaps->first_tap[i] = all;
    }
}

void sheet_fill_per_string(sheet_filler *filler, sheet_node *node, const job_field *field,
                           void *base)
{
    fill_strings(filler, node, field, SIL_UNKNOWN, job_field_place(field, base));
}

/* What lies between the outer strings does not run straight from one to the other, so two ends, or
 * one value, are of the outer strings alone. */
void sheet_fill_outer(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    double ends[2] = {SIL_UNKNOWN, SIL_UNKNOWN}, *figures = job_field_place(field, base);
    int strings = filler->job->string_count;
    if (node->shape == SHEET_SEQUENCE) {
        fill_strings(filler, node, field, SIL_UNKNOWN, figures);
        return;
    }
    bool read = node->shape == SHEET_MAPPING
                    ? fill_ends(filler, node, field, string_ends, SIL_UNKNOWN, ends)
                    : sheet_fill_quantity(filler, node, field, &ends[0]);
    ends[1] = node->shape == SHEET_MAPPING ? ends[1] : ends[0];
    if (read && strings > 0) {
        figures[strings - 1] = ends[1];
        figures[0] = ends[0];
    }
}
