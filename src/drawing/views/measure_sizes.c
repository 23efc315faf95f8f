/* SPDX-License-Identifier: MIT */
/* The instrument's sizes, read once, in the order of a sheet's keys. */
#include "../board/plain.h"
#include "measure.h"

#include <stddef.h>

typedef struct sizes {
    const draw_draft *draft;
    bool unread;
    int count;
    view_size *size;
} sizes;

static void add_size(sizes *s, const char *name, const char *value)
{
    s->size[s->count++] = (view_size){name, s->unread ? "" : value};
}

static void add_length(sizes *s, const char *name, double mm)
{
    add_size(s, name, sil_known(mm) ? draw_plain_length(s->draft, mm) : "");
}

/* One for all strings, or from the first to the last. */
static const char *pin_words(const draw_draft *draft)
{
    const sil_job *job = draft->plan->job;
    double treble = job->saddle.pin_distance[0];
    double bass = job->saddle.pin_distance[job->string_count - 1];
    if (!sil_known(treble + bass)) {
        return "";
    }
    return treble == bass ? draw_plain_length(draft, treble)
                          : draw_say(draft, "%s\u2013%s", draw_plain_size(draft, treble),
                                     draw_plain_size(draft, bass));
}

static const char *radius_words(const draw_draft *draft)
{
    const sil_instrument *it = &draft->plan->job->instrument;
    if (isinf(it->radius_nut)) {
        return "flat";
    }
    const char *nut = draw_plain_radius(draft, it->radius_nut);
    return it->radius_end == it->radius_nut
               ? nut
               : draw_say(draft, "%s\u2013%s", nut, draw_plain_radius(draft, it->radius_end));
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
        add_size(s, "square fret", draw_say(s->draft, "%d", it->square));
    } else {
        add_length(s, "scale", it->scale);
    }
    add_size(s, "last fret", draw_say(s->draft, "%d", it->frets));
    add_size(s, "body joint at fret", draw_say(s->draft, "%d", it->join));
    add_size(s, "board's radius", radius_words(s->draft));
    add_length(s, "crown over board", it->crown);
    add_size(s, "truss rod", rods[it->rod]);
    add_size(s, "rod's state", states[it->rod_state]);
    add_size(s, "head angle, deg",
             sil_known(it->head_angle_deg) ? draw_plain_number(s->draft, it->head_angle_deg, 1)
                                           : "");
    add_size(s, "handed", it->handed == SIL_LEFT_HANDED ? "left" : "right");
}

bool view_stands_loose(const sil_job *job)
{
    return sil_working_in_slot(sil_saddle_working(job->saddle.kind, job->saddle.pitch));
}

static bool has_pairs(const draw_draft *draft)
{
    int last = draft->plan->job->string_count - 1;
    return draft->plan->bench.board.course[last] < last;
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
    } else if (sil_working_turns(s->draft->brief->saddle.working)) {
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
