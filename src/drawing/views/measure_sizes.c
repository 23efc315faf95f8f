/* SPDX-License-Identifier: MIT */
/* The instrument's sizes, read once, in the order of a sheet's keys. */
#include "../board/paper.h"
#include "measure.h"

#include <stddef.h>

typedef struct sizes {
    const draw_draft *draft;
    bool unread;
    int count;
    view_size *size;
} sizes;

static void add_size(sizes *s, const char *name, draw_words value)
{
    s->size[s->count++] = (view_size){draw_say("%s", name), s->unread ? draw_say("%s", "") : value};
}

static void add_length(sizes *s, const char *name, double mm)
{
    add_size(s, name, sil_known(mm) ? draw_say_length(s->draft, mm) : draw_say("%s", ""));
}

/* One for all strings, or from the first to the last. */
static draw_words pin_words(const draw_draft *draft)
{
    const sil_job *job = draft->plan->job;
    double treble = job->saddle.pin_distance[0];
    double bass = job->saddle.pin_distance[job->string_count - 1];
    if (!sil_known(treble + bass)) {
        return draw_say("%s", "");
    }
    return treble == bass ? draw_say_length(draft, treble)
                          : draw_say("%s\u2013%s", draw_say_size(draft, treble).text,
                                     draw_say_size(draft, bass).text);
}

static draw_words radius_words(const draw_draft *draft)
{
    const sil_instrument *it = &draft->plan->job->instrument;
    if (isinf(it->radius_nut)) {
        return draw_say("flat");
    }
    draw_words nut = draw_say_radius(draft, it->radius_nut);
    return it->radius_end == it->radius_nut
               ? nut
               : draw_say("%s\u2013%s", nut.text, draw_say_radius(draft, it->radius_end).text);
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
        add_size(s, "square fret", draw_say("%d", it->square));
    } else {
        add_length(s, "scale", it->scale);
    }
    add_size(s, "last fret", draw_say("%d", it->frets));
    add_size(s, "body joint at fret", draw_say("%d", it->join));
    add_size(s, "board's radius", radius_words(s->draft));
    add_length(s, "crown over board", it->crown);
    add_size(s, "truss rod", draw_say("%s", rods[it->rod]));
    add_size(s, "rod's state", draw_say("%s", states[it->rod_state]));
    add_size(s, "head angle, deg",
             sil_known(it->head_angle_deg) ? draw_say_number(s->draft, it->head_angle_deg, 1)
                                           : draw_say("%s", ""));
    add_size(s, "handed", draw_say("%s", it->handed == SIL_LEFT_HANDED ? "left" : "right"));
}

bool view_stands_loose(const sil_job *job)
{
    return sil_working_in_slot(sil_saddle_working(job->saddle.kind, job->saddle.pitch));
}

static bool has_pairs(const draw_draft *draft)
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
    if (view_stands_loose(job)) {
        add_length(s, "saddle length", saddle->length);
        add_length(s, "saddle thickness", saddle->thickness);
    }
    if (job->string_count > 1) {
        add_length(s, "spread at saddle", saddle->spread);
    }
    if (view_stands_loose(job)) {
        add_length(s, "slot depth", saddle->slot_depth);
        add_size(s, "saddle to pin", pin_words(s->draft));
    } else if (draw_on_screws(s->draft)) {
        add_length(s, "travel of one turn", saddle->pitch);
        add_length(s, "still to go down", saddle->travel);
    }
    if (has_pairs(s->draft)) {
        add_length(s, "pair at the nut", job->nut.pair);
        add_length(s, "pair at the saddle", saddle->pair);
    }
}

int view_measure_sizes(const draw_draft *draft, bool unread, view_size size[VIEW_SIZES_MAX])
{
    sizes s = {draft, unread, 0, size};
    add_neck(&s);
    add_ends(&s);
    return s.count;
}
