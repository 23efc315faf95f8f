/* SPDX-License-Identifier: MIT */
/* Strings, readings and the other lists of a sheet. */
#include <string.h>

#include "fill.h"

void sil_fill_strings(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    (void)base;
    if (!sil_expect(filler, node, SIL_SEQUENCE)) {
        return;
    }
    if (node->count > SIL_STRINGS_MAX) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "at most %d strings", SIL_STRINGS_MAX);
        return;
    }
    sil_string *string = filler->job->strings;
    for (sil_node *item = node->first; item; item = item->next) {
        if (item->given) {
            sil_fill_table(filler, item, field->of, string);
        }
        string++;
    }
    sil_job_courses(filler->job, filler->course);
}

/* Room for one struct an item; NULL where there is none to fill, or no memory. */
static void *room_for(sil_filler *filler, const sil_node *list, size_t size)
{
    return list->count > 0 ? sil_arena_take(&filler->sheet->arena, size * (size_t)list->count)
                           : NULL;
}

void sil_fill_readings(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    (void)base;
    if (!sil_expect(filler, node, SIL_SEQUENCE)) {
        return;
    }
    if (node->count > SIL_READINGS_MAX) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "at most %d readings", SIL_READINGS_MAX);
        return;
    }
    sil_reading *readings = room_for(filler, node, sizeof *readings), *reading = readings;
    for (sil_node *item = node->first; readings && item; item = item->next, reading++) {
        sil_reading_clear(reading);
        if (item->given) {
            sil_fill_table(filler, item, field->of, reading);
        }
    }
    filler->job->readings = readings;
    filler->job->reading_count = readings ? node->count : 0;
}

/* A list of small structs, each a mapping; returns how many were laid at *list. */
static int fill_items(sil_filler *filler, sil_node *node, const sil_field *field, size_t size,
                      void **list)
{
    *list = room_for(filler, node, size);
    char *item = *list;
    for (sil_node *child = node->first; item && child; child = child->next, item += size) {
        sil_table_clear(field->of, item);
        if (child->given) {
            sil_fill_table(filler, child, field->of, item);
        }
    }
    return *list ? node->count : 0;
}

void sil_fill_crowns(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    sil_reading *reading = base;
    if (node->shape == SIL_SCALAR && strcmp(node->text, "sound") == 0) {
        reading->crowns_read = SIL_CROWNS_SOUND;
    } else if (node->shape == SIL_SEQUENCE) {
        void *list;
        reading->crowns_read = SIL_CROWNS_LISTED;
        reading->crown_count = fill_items(filler, node, field, sizeof *reading->crowns, &list);
        reading->crowns = list;
    } else {
        sil_tell_value(filler->sheet, SIL_ERROR, node,
                       "wanted sound, or a list such as [{string: 2, fret: 1, off: -0.08}]");
    }
}

void sil_fill_buzz(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    sil_reading *reading = base;
    if (sil_expect(filler, node, SIL_SEQUENCE)) {
        void *list;
        reading->buzz_count = fill_items(filler, node, field, sizeof *reading->buzz, &list);
        reading->buzz = list;
    }
}

static const sil_word *find_word(const sil_word *words, const char *text)
{
    while (words->text && strcmp(words->text, text) != 0) {
        words++;
    }
    return words->text ? words : NULL;
}

/* A key that is none of a list of words. */
static void unknown_word(sil_filler *filler, sil_node *node, const sil_word *words)
{
    const sil_word *nearest = NULL;
    int nearness = 99;
    for (const sil_word *word = words; word->text; word++) {
        int apart = sil_nearness(node->key, node->key_length, word->text);
        if (apart < nearness) {
            nearest = word;
            nearness = apart;
        }
    }
    bool near = nearest && sil_near(nearness, node->key_length);
    sil_tell_at(filler->sheet, SIL_ERROR, node->source, node->key_at, "unknown key %s%s%s%s",
                sil_quote_of(node->key, node->key_length).text, near ? "; did you mean " : "",
                near ? nearest->text : "", near ? "?" : "");
}

/* By name: what the profile or the sheet holds it to be worth. */
void sil_fill_attack(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    sil_attack *attack = sil_field_place(field, base);
    if (node->shape == SIL_MAPPING) {
        sil_fill_table(filler, node, field->of, attack);
        return;
    }
    int word = 0;
    if (!sil_fill_word(filler, node, sil_attack_words, &word)) {
        return;
    }
    const sil_node *all = sil_node_find(filler->root, "attacks", strlen("attacks"));
    sil_node *named = all ? sil_node_find(all, node->text, node->length) : NULL;
    if (!named) {
        sil_tell_value(filler->sheet, SIL_ERROR, node,
                       "no attacks say what that is worth: name a profile, or give {force: 0.6 N, "
                       "at: 110}");
    }
}

void sil_fill_attacks(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    (void)base;
    if (!sil_expect(filler, node, SIL_MAPPING)) {
        return;
    }
    const sil_node *chosen = sil_node_find(filler->root, "attack", strlen("attack"));
    bool named = chosen && chosen->given && chosen->shape == SIL_SCALAR;
    const char *name = named ? chosen->text : !chosen || !chosen->given ? "medium" : "";
    for (sil_node *child = node->first; child; child = child->next) {
        sil_attack worth = {.at = SIL_UNKNOWN};
        sil_table_clear(field->of, &worth);
        if (!find_word(sil_attack_words, child->key)) {
            unknown_word(filler, child, sil_attack_words);
        } else if (child->given) {
            sil_fill_table(filler, child, field->of, &worth);
            if (strcmp(child->key, name) == 0) {
                worth.name = child->key;
                filler->job->attack = worth;
            }
        }
    }
}

void sil_fill_materials(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    (void)base;
    if (!sil_expect(filler, node, SIL_MAPPING)) {
        return;
    }
    for (sil_node *child = node->first; child; child = child->next) {
        const sil_word *make = find_word(sil_make_words, child->key);
        if (!make) {
            unknown_word(filler, child, sil_make_words);
        } else if (child->given) {
            sil_fill_table(filler, child, field->of, &filler->job->materials[make->value]);
        }
    }
}

/* low and high of one field's likely range; true where both can be used. */
static bool fill_range(sil_filler *filler, sil_node *node, const sil_field *field,
                       sil_plausible *range)
{
    bool low = false, high = false;
    if (!sil_expect(filler, node, SIL_MAPPING)) {
        return false;
    }
    for (sil_node *child = node->first; child; child = child->next) {
        if (strcmp(child->key, "low") == 0 && child->given) {
            low = sil_fill_quantity(filler, child, field, &range->low);
        } else if (strcmp(child->key, "high") == 0 && child->given) {
            high = sil_fill_quantity(filler, child, field, &range->high);
        } else {
            sil_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                        "unknown key %s: wanted low and high",
                        sil_quote_of(child->key, child->key_length).text);
        }
    }
    if (!(low && high) || range->low > range->high) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "wanted {low: .., high: ..}, low first");
        return false;
    }
    double factor = sil_field_factor(field);
    range->low /= factor;
    range->high /= factor;
    return true;
}

void sil_fill_plausible(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    (void)base;
    (void)field;
    if (!sil_expect(filler, node, SIL_MAPPING)) {
        return;
    }
    sil_plausible *ranges = room_for(filler, node, sizeof *ranges);
    int count = 0;
    for (sil_node *child = node->first; ranges && child; child = child->next) {
        const sil_field *about = sil_field_find(child->key);
        ranges[count] = (sil_plausible){child->key, 0.0, 0.0};
        if (!about) {
            sil_tell_at(filler->sheet, SIL_ERROR, child->source, child->key_at,
                        "%s is no figure of a sheet; wanted one such as strings.gauge",
                        sil_quote_of(child->key, child->key_length).text);
        } else if (child->given) {
            count += fill_range(filler, child, about, &ranges[count]);
        }
    }
    filler->job->plausible = ranges;
    filler->job->plausible_count = count;
}
