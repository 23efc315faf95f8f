/* SPDX-License-Identifier: MIT */
/* The instrument's sizes, read once, in the order of a sheet's keys. */
#include "measure.h"
#include "sheet.h"

#include <stddef.h>

typedef struct sizes {
    const sil_draft *draft;
    bool unread;
    int count;
    sil_size *size;
} sizes;

static void add_size(sizes *s, const char *name, sil_words value)
{
    s->size[s->count++] = (sil_size){sil_say("%s", name), s->unread ? sil_say("%s", "") : value};
}

static void add_length(sizes *s, const char *name, double mm)
{
    add_size(s, name, sil_known(mm) ? sil_say_length(s->draft, mm) : sil_say("%s", ""));
}

/* One for all strings, or from the first to the last. */
static sil_words pin_words(const sil_draft *draft)
{
    const sil_job *job = draft->plan->job;
    double treble = job->saddle.pin_distance[0];
    double bass = job->saddle.pin_distance[job->string_count - 1];
    if (!sil_known(treble + bass)) {
        return sil_say("%s", "");
    }
    return treble == bass ? sil_say_length(draft, treble)
                          : sil_say("%s\u2013%s", sil_say_size(draft, treble).text,
                                    sil_say_size(draft, bass).text);
}

static sil_words radius_words(const sil_draft *draft)
{
    const sil_instrument *it = &draft->plan->job->instrument;
    if (isinf(it->radius_nut)) {
        return sil_say("flat");
    }
    sil_words nut = sil_say_radius(draft, it->radius_nut);
    return it->radius_end == it->radius_nut
               ? nut
               : sil_say("%s\u2013%s", nut.text, sil_say_radius(draft, it->radius_end).text);
}

static void add_neck(sizes *s)
{
    static const char *const rods[] = {[SIL_ROD_NOT_GIVEN] = "",
                                       [SIL_ROD_NONE] = "none",
                                       [SIL_ROD_ONE_WAY] = "one-way",
                                       [SIL_ROD_TWO_WAY] = "two-way"};
    static const char *const states[] = {[SIL_ROD_STATE_NOT_GIVEN] = "",
                                         [SIL_ROD_WORKS] = "works",
                                         [SIL_ROD_SLACK] = "slack",
                                         [SIL_ROD_AT_END] = "at end",
                                         [SIL_ROD_STUCK] = "stuck"};
    const sil_instrument *it = &s->draft->plan->job->instrument;
    if (sil_known(it->scale_bass)) {
        add_length(s, "scale, treble", it->scale);
        add_length(s, "scale, bass", it->scale_bass);
        add_size(s, "square fret", sil_say("%d", it->square));
    } else {
        add_length(s, "scale", it->scale);
    }
    add_size(s, "last fret", sil_say("%d", it->frets));
    add_size(s, "body joint at fret", sil_say("%d", it->join));
    add_size(s, "board's radius", radius_words(s->draft));
    add_length(s, "crown over board", it->crown);
    add_size(s, "truss rod", sil_say("%s", rods[it->rod]));
    add_size(s, "rod's state", sil_say("%s", states[it->rod_state]));
    add_size(s, "head angle, deg",
             sil_known(it->head_angle_deg) ? sil_say_number(s->draft, it->head_angle_deg, 1)
                                           : sil_say("%s", ""));
    add_size(s, "handed", sil_say("%s", it->handed == SIL_LEFT_HANDED ? "left" : "right"));
}

bool sil_stands_loose(const sil_job *job)
{
    return sil_saddle_slotted(job->saddle.kind);
}

static bool has_pairs(const sil_draft *draft)
{
    int last = draft->plan->job->string_count - 1;
    return draft->board->course[last] < last;
}

static void add_ends(sizes *s)
{
    const sil_job *job = s->draft->plan->job;
    const sil_job_saddle *saddle = &job->saddle;
    add_length(s, "width at the nut", job->nut.width);
    add_length(s, "nut thickness", job->nut.thickness);
    add_length(s, "nut seat to board", job->nut.seat_to_board);
    if (sil_stands_loose(job)) {
        add_length(s, "saddle length", saddle->length);
        add_length(s, "saddle thickness", saddle->thickness);
    }
    if (job->string_count > 1) {
        add_length(s, "spread at saddle", saddle->spread);
    }
    if (sil_stands_loose(job)) {
        add_length(s, "slot depth", saddle->slot_depth);
        add_size(s, "saddle to pin", pin_words(s->draft));
    } else if (sil_on_screws(s->draft)) {
        add_length(s, "travel of one turn", saddle->pitch);
        add_length(s, "still to go down", saddle->travel);
    }
    if (has_pairs(s->draft)) {
        add_length(s, "pair at the nut", job->nut.pair);
        add_length(s, "pair at the saddle", saddle->pair);
    }
}

int sil_measure_sizes(const sil_draft *draft, bool unread, sil_size size[SIL_SIZES_MAX])
{
    sizes s = {draft, unread, 0, size};
    add_neck(&s);
    add_ends(&s);
    return s.count;
}
