/* SPDX-License-Identifier: MIT */
/* The words above a blank, and the value of a job as it is written in the blank. */
#include "../board/plain.h"
#include "measure.h"

#include <string.h>

sil_field view_field(const char *path)
{
    sil_field field = {.path = path, .label = "", .hint = "", .unit = ""};
    sil_field_find(path, &field);
    return field;
}

const char *view_field_label(const draw_draft *draft, const sil_field *field)
{
    bool told = field->unit[0] != '\0' && field->measure != SIL_LENGTH;
    const char *unit = field->measure == SIL_ANGLE ? "\u00b0" : field->unit;
    return told ? draw_say(draft, "%s, %s", field->label, unit) : field->label;
}

const char *view_figure_words(const draw_draft *draft, const sil_field *field, double value)
{
    if (!sil_known(value)) {
        return "";
    }
    if (isinf(value)) {
        return field->choices[0].shown; /* a flat board */
    }
    if (strcmp(field->path, "instrument.radius") == 0) {
        return draw_plain_radius(draft, value);
    }
    bool whole = field->measure == SIL_HUMIDITY || field->measure == SIL_TEMPERATURE;
    return field->measure == SIL_LENGTH ? draw_plain_length(draft, value)
                                        : draw_plain_number(draft, value, whole ? 0 : 1);
}

/* One value for both ends, or a range from the first to the last. */
static const char *range_words(const draw_draft *draft, const sil_field *field, double first,
                               double last)
{
    bool each = field->kind == SIL_FIELD_EACH;
    if (first == last || !sil_known(first + last)) {
        return view_figure_words(draft, field, first == last ? first : SIL_UNKNOWN);
    }
    const char *from =
        each ? draw_plain_size(draft, first) : view_figure_words(draft, field, first);
    const char *to = each ? draw_plain_size(draft, last) : view_figure_words(draft, field, last);
    return draw_say(draft, "%s\u2013%s", from, to);
}

const char *view_field_words(const draw_draft *draft, const sil_field *field)
{
    const sil_job *job = draft->plan->job;
    sil_field_value value;
    if (!sil_field_read(field, job, job->reading_count - 1, &value)) {
        return "";
    }
    switch (field->kind) {
    case SIL_FIELD_COUNT:
        return draw_say(draft, "%.0f", value.figure[0]);
    case SIL_FIELD_CHOICE:
        return field->choices[value.choice].shown;
    case SIL_FIELD_TEXT:
        return value.text;
    case SIL_FIELD_FIGURE:
    case SIL_FIELD_ENDS:
    case SIL_FIELD_EACH:
        return range_words(draft, field, value.figure[0], value.figure[value.count - 1]);
    case SIL_FIELD_PART:
    case SIL_FIELD_TARGET:
    case SIL_FIELD_TARGETS:
    case SIL_FIELD_LIST:
        break;
    }
    return "";
}

static bool is_plain(const sil_field *field)
{
    return field->kind == SIL_FIELD_FIGURE || field->kind == SIL_FIELD_COUNT ||
           field->kind == SIL_FIELD_CHOICE || field->kind == SIL_FIELD_TEXT;
}

/* Adds a row for a field of a visit: a blank, or words to tick if there are two to choose from. */
static void add_row(const draw_draft *draft, view_form *form, const sil_field *field)
{
    const sil_limits *limits = &draft->plan->job->limits;
    bool ticked = field->kind == SIL_FIELD_CHOICE && field->choice_count == 2;
    view_entry *row = view_form_row(form, ticked ? VIEW_CELL_CHOICE : VIEW_CELL_FIGURE, "");
    bool told = field->unit[0] != '\0' && field->measure != SIL_LENGTH;
    row->label = told ? draw_say(draft, "%s, %s", field->label, field->unit) : field->label;
    if (strcmp(field->path, "readings.humidity") == 0 && sil_known(limits->humidity_low_pct) &&
        sil_known(limits->humidity_high_pct)) {
        row->label = draw_say(draft, "%s, %s to %s %%", field->label,
                              draw_plain_number(draft, limits->humidity_low_pct, 0),
                              draw_plain_number(draft, limits->humidity_high_pct, 0));
    }
    if (!ticked) {
        row->read[0] = view_field_words(draft, field);
        return;
    }
    sil_field_value read;
    sil_field_read(field, draft->plan->job, draft->plan->job->reading_count - 1, &read);
    row->choice[0] = field->choices[0].shown;
    row->choice[1] = field->choices[1].shown;
    row->chosen = read.choice;
}

void view_form_part(const draw_draft *draft, view_form *form, const char *part)
{
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        if (field.asked && is_plain(&field) && sil_field_within(field.path, part) &&
            sil_field_applies(field.path, draft->plan->job)) {
            add_row(draft, form, &field);
        }
    }
}
