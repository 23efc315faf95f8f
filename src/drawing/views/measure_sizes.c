/* SPDX-License-Identifier: MIT */
/* The sizes of the instrument, which are measured once: every one of its fields that a blank
 * sheet asks for. */
#include "measure.h"

#include <string.h>

bool view_stands_loose(const sil_job *job)
{
    return sil_working_in_slot(sil_saddle_working(job->saddle.kind, job->saddle.pitch));
}

static void add_size(const draw_draft *draft, bool unread, const sil_field *field, int *count,
                     view_size *size)
{
    const char *value = unread ? "" : view_field_words(draft, field);
    if (*count < VIEW_SIZES_MAX) {
        size[(*count)++] = (view_size){view_field_label(draft, field), value};
    }
}

/* Lists the fields of a part. A field that is made of other fields is replaced by them: a fan
 * has two scales instead of one. */
static int add_part(const draw_draft *draft, bool unread, const char *part, int count,
                    view_size *size)
{
    const sil_job *job = draft->plan->job;
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        sil_field_value value;
        bool given = sil_field_read(&field, job, -1, &value);
        if (!field.asked || !sil_field_within(field.path, part) ||
            !(sil_field_applies(field.path, job) || given)) {
            continue;
        }
        int before = count;
        for (int inner = k + 1; inner < sil_field_count(); inner++) {
            sil_field within = sil_field_at(inner);
            if (within.asked && sil_field_within(within.path, field.path) &&
                sil_field_applies(within.path, job)) {
                add_size(draft, unread, &within, &count, size);
            }
        }
        if (count == before) {
            add_size(draft, unread, &field, &count, size);
        }
    }
    return count;
}

int view_measure_sizes(const draw_draft *draft, bool unread, view_size size[VIEW_SIZES_MAX])
{
    int count = add_part(draft, unread, "instrument", 0, size);
    count = add_part(draft, unread, "nut", count, size);
    return add_part(draft, unread, "saddle", count, size);
}
