/* SPDX-License-Identifier: MIT */
/* Strings, readings and the other lists of a sheet. */
#include <string.h>

#include "fill.h"

void sheet_fill_strings(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    (void)base;
    if (!sheet_expect(filler, node, SHEET_SEQUENCE)) {
        return;
    }
    if (node->count > SIL_STRINGS_MAX) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "at most %d strings", SIL_STRINGS_MAX);
        return;
    }
    sil_string *string = filler->job->strings;
    for (sheet_node *item = node->first; item; item = item->next) {
        if (item->given) {
            sheet_fill_table(filler, item, field->of, string);
        }
        string++;
    }
    sil_job_courses(filler->job, filler->course);
}

/* Memory for one struct per item; NULL if there is no item, or no memory. */
static void *room_for(sheet_filler *filler, const sheet_node *list, size_t size)
{
    return list->count > 0 ? sheet_take(filler->sheet, size * (size_t)list->count) : NULL;
}

void sheet_fill_readings(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    (void)base;
    if (!sheet_expect(filler, node, SHEET_SEQUENCE)) {
        return;
    }
    if (node->count > SIL_READINGS_MAX) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "at most %d readings", SIL_READINGS_MAX);
        return;
    }
    sil_reading *readings = room_for(filler, node, sizeof *readings), *reading = readings;
    for (sheet_node *item = node->first; readings && item; item = item->next, reading++) {
        sil_reading_clear(reading);
        if (item->given) {
            filler->reading = reading;
            sheet_fill_table(filler, item, field->of, reading);
        }
    }
    filler->reading = NULL;
    filler->job->readings = readings;
    filler->job->reading_count = readings ? node->count : 0;
}

/* Reads a list of small structs, each a mapping; returns how many are now at *list. */
static int fill_items(sheet_filler *filler, sheet_node *node, const job_field *field, size_t size,
                      void **list)
{
    *list = room_for(filler, node, size);
    char *item = *list;
    for (sheet_node *child = node->first; item && child; child = child->next, item += size) {
        job_table_clear(field->of, item);
        if (child->given) {
            sheet_fill_table(filler, child, field->of, item);
        }
    }
    return *list ? node->count : 0;
}

void sheet_fill_crowns(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_reading *reading = base;
    if (node->shape == SHEET_SCALAR && strcmp(node->text, "sound") == 0) {
        reading->crowns_read = SIL_CROWNS_SOUND;
    } else if (node->shape == SHEET_SEQUENCE) {
        void *list;
        reading->crowns_read = SIL_CROWNS_LISTED;
        reading->crown_count = fill_items(filler, node, field, sizeof *reading->crowns, &list);
        reading->crowns = list;
    } else {
        sheet_tell_value(filler->sheet, SIL_ERROR, node,
                         "wanted sound, or a list such as [{string: 2, fret: 1, off: -0.08}]");
    }
}

void sheet_fill_buzz(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_reading *reading = base;
    if (sheet_expect(filler, node, SHEET_SEQUENCE)) {
        void *list;
        reading->buzz_count = fill_items(filler, node, field, sizeof *reading->buzz, &list);
        reading->buzz = list;
    }
}

void sheet_fill_marked(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    bool *marked = job_field_place(field, base);
    if (node->shape == SHEET_SCALAR) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted a list of strings, such as [3]");
        return;
    }
    if (!sheet_expect(filler, node, SHEET_SEQUENCE)) {
        return;
    }
    for (sheet_node *item = node->first; item; item = item->next) {
        int string = 0, given = filler->job->string_count;
        int strings = given > 0 ? given : SIL_STRINGS_MAX;
        if (!sheet_fill_count(filler, item, &string)) {
            continue;
        }
        if (string < 1 || string > strings) {
            sheet_tell_value(filler->sheet, SIL_ERROR, item, "wanted a string from 1 to %d",
                             strings);
            continue;
        }
        marked[string - 1] = true;
    }
}

/* A part, or a list of parts. */
void sheet_fill_make(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_make *make = job_field_place(field, base);
    bool list = node->shape == SHEET_SEQUENCE;
    for (sheet_node *item = list ? node->first : node; item; item = list ? item->next : NULL) {
        int part;
        if (!sheet_fill_word(filler, item, field->words, &part)) {
            continue;
        }
        make->nut = make->nut || part == JOB_MAKES_NUT;
        make->saddle = make->saddle || part == JOB_MAKES_SADDLE;
    }
}

static const job_word *find_word(const job_word *words, const char *word)
{
    while (words->text && strcmp(words->text, word) != 0) {
        words++;
    }
    return words->text ? words : NULL;
}

/* Reports a key that is not in a list of words. */
static void unknown_word(sheet_filler *filler, sheet_node *node, const job_word *words)
{
    const job_word *nearest = NULL;
    int nearness = 99;
    for (const job_word *word = words; word->text; word++) {
        int apart = sheet_nearness(node->key, node->key_length, word->text);
        if (apart < nearness) {
            nearest = word;
            nearness = apart;
        }
    }
    bool near = nearest && sheet_near(nearness, node->key_length);
    sheet_tell_at(filler->sheet, SIL_ERROR, node->source, node->key_at, "unknown key %s%s%s%s",
                  sheet_quote_of(node->key, node->key_length).text, near ? "; did you mean " : "",
                  near ? nearest->text : "", near ? "?" : "");
}

/* Any pick strength: it is told from where it is plucked, and held to none. */
static const char any_attack[] = "any";

/* An attack by name: its figures are in the profile or in the sheet. */
void sheet_fill_attack(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_attack *attack = job_field_place(field, base);
    attack->chosen = true;
    if (node->shape == SHEET_MAPPING) {
        sheet_fill_table(filler, node, field->of, attack);
        return;
    }
    int word = 0;
    if (!sheet_fill_word(filler, node, job_attack_words, &word)) {
        return;
    }
    if (strcmp(node->text, any_attack) == 0) {
        attack->name = node->text;
        return;
    }
    const sheet_node *all = sheet_node_find(filler->root, "attacks", strlen("attacks"));
    sheet_node *named = all ? sheet_node_find(all, node->text, node->length) : NULL;
    if (!named) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node,
                         "no attacks give its force: name a profile, or give {force: 0.6 N, "
                         "at: 110}");
    }
}

void sheet_fill_attacks(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    (void)base;
    if (!sheet_expect(filler, node, SHEET_MAPPING)) {
        return;
    }
    const sheet_node *chosen = sheet_node_find(filler->root, "attack", strlen("attack"));
    bool named = chosen && chosen->given && chosen->shape == SHEET_SCALAR;
    const char *name = named ? chosen->text : !chosen || !chosen->given ? "medium" : "";
    bool any = strcmp(name, any_attack) == 0;
    for (sheet_node *child = node->first; child; child = child->next) {
        sil_attack worth = {.at = SIL_UNKNOWN};
        job_table_clear(field->of, &worth);
        if (!find_word(job_attack_words, child->key) || strcmp(child->key, any_attack) == 0) {
            unknown_word(filler, child, job_attack_words);
        } else if (child->given) {
            sheet_fill_table(filler, child, field->of, &worth);
            if (any && strcmp(child->key, "medium") == 0) {
                filler->job->attack.at = worth.at;
            } else if (strcmp(child->key, name) == 0) {
                worth.name = child->key;
                worth.chosen = named;
                filler->job->attack = worth;
            }
        }
    }
}

void sheet_fill_materials(sheet_filler *filler, sheet_node *node, const job_field *field,
                          void *base)
{
    (void)base;
    if (!sheet_expect(filler, node, SHEET_MAPPING)) {
        return;
    }
    for (sheet_node *child = node->first; child; child = child->next) {
        const job_word *make = find_word(job_material_words, child->key);
        if (!make) {
            unknown_word(filler, child, job_material_words);
        } else if (child->given) {
            sheet_fill_table(filler, child, field->of, &filler->job->materials[make->value]);
        }
    }
}

/* Reads low and high of one field's likely range; true if both can be used. */
static bool fill_range(sheet_filler *filler, sheet_node *node, const job_field *field,
                       sil_plausible *range)
{
    bool low = false, high = false;
    if (!sheet_expect(filler, node, SHEET_MAPPING)) {
        return false;
    }
    for (sheet_node *child = node->first; child; child = child->next) {
        if (strcmp(child->key, "low") == 0 && child->given) {
            low = sheet_fill_quantity(filler, child, field, &range->low);
        } else if (strcmp(child->key, "high") == 0 && child->given) {
            high = sheet_fill_quantity(filler, child, field, &range->high);
        } else {
            sheet_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                          "unknown key %s: wanted low and high",
                          sheet_quote_of(child->key, child->key_length).text);
        }
    }
    if (!(low && high) || range->low > range->high) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted {low: .., high: ..}, low first");
        return false;
    }
    double factor = job_field_factor(field);
    range->low /= factor;
    range->high /= factor;
    return true;
}

void sheet_fill_plausible(sheet_filler *filler, sheet_node *node, const job_field *field,
                          void *base)
{
    (void)base;
    (void)field;
    if (!sheet_expect(filler, node, SHEET_MAPPING)) {
        return;
    }
    sil_plausible *ranges = room_for(filler, node, sizeof *ranges);
    int count = 0;
    for (sheet_node *child = node->first; ranges && child; child = child->next) {
        const job_field *about = job_field_find(child->key);
        ranges[count] = (sil_plausible){child->key, 0.0, 0.0};
        if (!about) {
            sheet_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                          "%s is not a figure of a sheet; wanted one such as strings.gauge",
                          sheet_quote_of(child->key, child->key_length).text);
        } else if (child->given) {
            count += fill_range(filler, child, about, &ranges[count]);
        }
    }
    filler->job->plausible = ranges;
    filler->job->plausible_count = count;
}

void sheet_fill_files(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    (void)base;
    if (!sheet_expect(filler, node, SHEET_SEQUENCE)) {
        return;
    }
    if (node->count > SIL_FILES_MAX) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "at most %d files", SIL_FILES_MAX);
        return;
    }
    for (sheet_node *item = node->first; item; item = item->next) {
        double *width = &filler->job->files[filler->job->file_count];
        if (item->given && sheet_fill_quantity(filler, item, field, width)) {
            filler->job->file_count++;
        }
    }
}

void sheet_fill_travel(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    double *travel = job_field_place(field, base);
    if (node->shape != SHEET_MAPPING) {
        sheet_fill_quantity(filler, node, field, travel);
        return;
    }
    for (sheet_node *child = node->first; child; child = child->next) {
        bool down = strcmp(child->key, "down") == 0;
        if (!down && strcmp(child->key, "up") != 0) {
            sheet_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                          "unknown key %s: wanted down, and up where it is known",
                          sheet_quote_of(child->key, child->key_length).text);
        } else if (child->given) {
            sheet_fill_quantity(filler, child, field, down ? &travel[0] : &travel[1]);
        }
    }
}
