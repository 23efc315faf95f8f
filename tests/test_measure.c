/* SPDX-License-Identifier: MIT */
/* The measuring sheet on paper: a blank for everything that is asked of an instrument, what was read
 * in the first visit's cells, and the target as it is held. */
#include "../src/drawing/board/plain.h"
#include "../src/drawing/views/measure.h"
#include "viewed.h"

enum { JOBS = 72 };

/* Whether a text is on any page. */
static int told(const sil_drawing *sheet, const char *words)
{
    int count = 0;
    for (int page = 0; page < sheet->paper_count; page++) {
        count += count_words(sheet->papers[page].shapes, words);
    }
    return count;
}

static sil_drawing *sheet_of(const sil_plan *plan, sil_unit unit, bool unread)
{
    const sil_draw_options order = {.paper = SIL_A4, .unit = unit};
    sil_drawing *sheet;
    assert_true(sil_drawing_measure(plan, &order, unread, &sheet) >= SIL_DONE);
    return sheet;
}

/* The unit is beside a label only where it is not that of the sheet. */
static void labels_have_their_units(void **state)
{
    (void)state;
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        const char *label = view_field_label(drawn.draft, &field);
        size_t length = strlen(field.label);
        bool figure = field.kind == SIL_FIELD_FIGURE || field.kind == SIL_FIELD_ENDS ||
                      field.kind == SIL_FIELD_EACH;
        assert_int_equal(strncmp(label, field.label, length), 0);
        if (!figure || field.unit[0] == '\0') {
            continue;
        }
        bool own = strcmp(field.unit, "length") != 0 && field.measure != SIL_LENGTH;
        const char *unit = field.measure == SIL_ANGLE ? "°" : field.unit;
        assert_string_equal(label + length, own ? draw_say(drawn.draft, ", %s", unit) : "");
    }
}

/* A value as it is written: lengths and figures, one for both ends or from one end to the other. */
static void values_are_written_as_read(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 71;
    set_up_random(&s, &seed, 6);
    sil_job *job = &s.made.job;
    const sil_field width = view_field("nut.width"), edge = view_field("nut.edge");
    const sil_field setback = view_field("saddle.setback"), frets = view_field("instrument.frets");
    const sil_field radius = view_field("instrument.radius");
    const sil_field angle = view_field("instrument.head_angle");
    job->nut.width = 43.25;
    job->nut.edge_treble = job->nut.edge_bass = 3.1;
    job->instrument.frets = 21;
    job->instrument.radius_nut = job->instrument.radius_end = 254.04;
    job->instrument.head_angle_deg = 13.5;
    assert_string_equal(view_field_words(s.draft, &width), "43.25");
    assert_string_equal(view_field_words(s.draft, &edge), "3.10");
    job->nut.edge_bass = 4;
    assert_string_equal(view_field_words(s.draft, &edge), "3.10–4.00");
    job->nut.edge_bass = SIL_UNKNOWN;
    assert_string_equal(view_field_words(s.draft, &edge), "");
    for (int i = 0; i < 6; i++) {
        job->saddle.setback[i] = 1.5 + i;
    }
    assert_string_equal(view_field_words(s.draft, &setback), "1.5–6.5");
    assert_string_equal(view_field_words(s.draft, &frets), "21");
    assert_string_equal(view_field_words(s.draft, &radius), "254");
    assert_string_equal(view_field_words(s.draft, &angle), "13.5");
    job->instrument.radius_end = 400;
    assert_string_equal(view_field_words(s.draft, &radius), "254–400");
    job->instrument.radius_nut = job->instrument.radius_end = (double)INFINITY;
    assert_string_equal(view_field_words(s.draft, &radius), radius.choices[0].shown);
    job->nut.width = SIL_UNKNOWN;
    assert_string_equal(view_field_words(s.draft, &width), "");
    const sil_field humidity = view_field("readings.humidity");
    assert_string_equal(view_figure_words(s.draft, &humidity, 46.6), "47");
    take_down(&s);
}

/* Each cell's words stand in its own row under the first visit, and a cross in the box chosen. */
static void a_form_shows_what_was_read(void **state)
{
    (void)state;
    view_form form = {.label = 40, .visit = 30, .ranged = true};
    view_entry *row = view_form_row(&form, VIEW_CELL_FIGURE, "figure");
    row->read[0] = "r1";
    row->range = "low-high";
    row->aim = "aim";
    row = view_form_row(&form, VIEW_CELL_CROWN, "crown");
    row->read[0] = "c1";
    row->read[1] = "c2";
    row->read[2] = "c3";
    row = view_form_row(&form, VIEW_CELL_CHOICE, "choice");
    row->choice[0] = "yes";
    row->choice[1] = "no";
    row->chosen = 1;
    row = view_form_row(&form, VIEW_CELL_CHOICE, "unread");
    row->choice[0] = "yes";
    row->choice[1] = "no";
    assert_int_equal(form.rows, 4);
    draw_shapes *list = empty_list(&drawn);
    double bottom = view_add_form(drawn.draft, list, 0, 0, 140, &form);
    near(bottom, -5.2 - 4 * 5.8, 1e-9);
    assert_int_equal(count_rows(list, "range|target|visit 1|visit 2"), 1);
    assert_int_equal(count_rows(list, "figure|low-high|aim|r1"), 1);
    assert_int_equal(count_rows(list, "crown|c1|c2|c3"), 1);
    assert_int_equal(count_rows(list, "choice|yes|no|yes|no"), 1);
    assert_int_equal(count_rows(list, "unread|yes|no|yes|no"), 1);
    int crossed = 0;
    for (int i = 0; i < list->count; i++) {
        const draw_shape *shape = &list->shapes[i];
        if (shape->kind == DRAW_SHAPE_TEXT && strchr("rc", words_of(list, i)[0]) != NULL &&
            strlen(words_of(list, i)) == 2) {
            assert_true(shape->box.left > 80 && shape->box.right < 110);
        }
        if (shape->layer == DRAW_OUTLINE && shape->count == 2) {
            draw_box box = shape->box;
            crossed++;
            near(draw_box_width(box), 2.9, 1e-6);
            near(draw_box_height(box), 2.9, 1e-6);
            near((box.bottom + box.top) / 2, -5.2 - 2.5 * 5.8, 1e-6);
            assert_true(box.left > 95 && box.right < 110);
        }
    }
    assert_int_equal(crossed, 2);
    near(box_of_layer(list, DRAW_OUTLINE).left, 80, 1e-9);
    draw_shapes_free(list);
}

static void a_form_never_overflows(void **state)
{
    (void)state;
    static view_form form;
    for (int k = 0; k < 2 * VIEW_ENTRIES_MAX; k++) {
        view_entry *row = view_form_row(&form, VIEW_CELL_FIGURE, "");
        assert_ptr_equal(row, &form.row[k < VIEW_ENTRIES_MAX ? k : VIEW_ENTRIES_MAX - 1]);
    }
    assert_int_equal(form.rows, VIEW_ENTRIES_MAX);
}

/* Every size and reading that is asked of this instrument has its label on the sheet. */
static void look_for_blanks(const sil_drawing *sheet, const sil_job *job)
{
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        bool part = sil_field_within(field.path, "instrument") ||
                    sil_field_within(field.path, "nut") || sil_field_within(field.path, "saddle");
        bool plain = field.kind == SIL_FIELD_FIGURE || field.kind == SIL_FIELD_COUNT;
        const char *label = view_field_label(&sheet->draft, &field);
        if (field.asked && part && plain && sil_field_applies(field.path, job) &&
            draw_text_width(sheet->papers[0].shapes, label, DRAW_NOTE) < 34) {
            assert_true(told(sheet, label) > 0);
        }
    }
}

/* How the strings' gaps are held, and how their targets are. */
static void look_for_ways(const sil_drawing *sheet, const sil_bench *bench)
{
    const sil_gaps *gaps = &bench->gaps;
    const char *hold = brief_hold(gaps->first_held),
               *target = brief_hold(bench->targets.first_held);
    bool as_wanted = gaps->first_held == bench->targets.first_held;
    bool at_12 = gaps->action_at == 12 && !gaps->capo;
    const draw_draft *draft = &sheet->draft;
    const char *held[] = {
        [SIL_HOLD_OPEN] = "open", [SIL_HOLD_2] = "on the 2nd", [SIL_HOLD_3] = "at the 3rd"};
    assert_int_equal(told(sheet, "Eye level with the string."), at_12);
    assert_int_equal(told(sheet, "Range: open, over fret 12."), !at_12);
    assert_int_equal(told(sheet, "open, at 12"), !at_12);
    assert_int_equal(told(sheet, "The thickest feeler that does not lift it."), as_wanted);
    assert_int_equal(told(sheet, draw_say(draft, "Range: %s.", target)), !as_wanted);
    assert_true(as_wanted || told(sheet, held[bench->targets.first_held]) > 0);
    assert_int_equal(
        told(sheet, draw_say(draft, "%s, %s", view_field("readings.first").label, hold)), 1);
    assert_int_equal(
        told(sheet, draw_say(draft, "%s over fret %d, %s", view_field("readings.action").label,
                             gaps->action_at, gaps->capo ? "capo at 1" : "open")),
        1);
}

/* Of each string on one row what was heard, its cents, and the open gap where any was read. */
static void look_for_readings(const sil_drawing *sheet, const sil_plan *plan)
{
    const sil_reading *read = sil_plan_reading(plan);
    const draw_draft *draft = &sheet->draft;
    bool open = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        open = open || sil_known(plan->bench.gaps.first_open[i]);
    }
    assert_int_equal(told(sheet, view_field("readings.first_open").label), open);
    for (int i = 0; i < plan->job->string_count && read != NULL; i++) {
        const char *row = draw_say(draft, "%d|%s|%s", i + 1, draw_say_note(draft, i),
                                   draft->brief->nut.slot[i].gauge.shown),
                   *heard = NULL;
        for (int k = 0; k < read->buzz_count; k++) {
            const char *fret = draw_say(draft, "%d", read->buzz[k].fret);
            if (read->buzz[k].string == i + 1) {
                heard = heard ? draw_say(draft, "%s, %s", heard, fret) : fret;
            }
        }
        row = heard ? draw_say(draft, "%s|%s", row, heard) : row;
        row = sil_known(read->cents[i])
                  ? draw_say(draft, "%s|%s", row, draw_plain_number(draft, read->cents[i], 1))
                  : row;
        double gap = plan->bench.gaps.first_open[i];
        row = sil_known(gap) ? draw_say(draft, "%s|%s", row, draw_plain_length(draft, gap)) : row;
        int rows = 0;
        for (int page = 0; page < sheet->paper_count; page++) {
            rows += count_rows(sheet->papers[page].shapes, row);
        }
        assert_int_equal(rows, 1);
    }
}

/* The readings are numbered in the order of the work, one after the other. */
static void look_for_numbers(const sil_drawing *sheet)
{
    int number = 0;
    for (int page = 0; page < sheet->paper_count; page++) {
        const draw_shapes *list = sheet->papers[page].shapes;
        for (int i = 1; i + 1 < list->count; i++) {
            bool title = list->shapes[i - 1].kind == DRAW_SHAPE_ARC &&
                         list->shapes[i].kind == DRAW_SHAPE_TEXT &&
                         list->shapes[i + 1].kind == DRAW_SHAPE_TEXT &&
                         list->shapes[i + 1].size == DRAW_HEAD;
            number += title;
            assert_true(!title || atoi(words_of(list, i)) == number);
        }
    }
    assert_true(number >= 7);
}

/* A row for each plain reading of a visit: two words to tick, or a blank, and its unit beside it
 * unless that is the sheet's. */
static void look_for_rows(const draw_draft *draft, const char *part)
{
    view_form form = {0};
    int row = 0;
    view_form_part(draft, &form, part);
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        bool plain = field.kind == SIL_FIELD_FIGURE || field.kind == SIL_FIELD_COUNT ||
                     field.kind == SIL_FIELD_CHOICE || field.kind == SIL_FIELD_TEXT;
        if (!plain || !field.asked || !sil_field_within(field.path, part) ||
            !sil_field_applies(field.path, draft->plan->job)) {
            continue;
        }
        const view_entry *entry = &form.row[row++];
        bool ticked = field.kind == SIL_FIELD_CHOICE && field.choice_count == 2;
        bool unit = field.unit[0] != '\0' && field.measure != SIL_LENGTH;
        assert_int_equal(entry->cell, ticked ? VIEW_CELL_CHOICE : VIEW_CELL_FIGURE);
        if (strcmp(field.path, "readings.humidity") == 0) {
            assert_string_equal(entry->label, draw_say(draft, "%s, 35 to 65 %%", field.label));
        } else {
            assert_string_equal(entry->label,
                                unit ? draw_say(draft, "%s, %s", field.label, field.unit)
                                     : field.label);
        }
        for (int c = 0; c < 2 && ticked; c++) {
            assert_string_equal(entry->choice[c], field.choices[c].shown);
        }
    }
    assert_int_equal(form.rows, row);
}

static void the_sheet_asks_for_everything(void **state)
{
    (void)state;
    static scene s;
    static sil_buzz buzz[4];
    static const sil_hold holds[] = {SIL_HOLD_3, SIL_HOLD_2, SIL_HOLD_OPEN};
    uint64_t seed = 72;
    for (int job = 0; job < JOBS; job++) {
        int strings = 1 + job % SIL_STRINGS_MAX;
        make_random_job(&s.made, &seed, strings);
        s.made.reading.buzz = buzz;
        s.made.reading.buzz_count = whole(&seed, 0, 4);
        for (int k = 0; k < 4; k++) {
            buzz[k] = (sil_buzz){whole(&seed, 1, strings), 2 + k};
        }
        for (int i = 0; i < strings; i++) {
            s.made.reading.cents[i] = one_in(&seed, 2) ? uniform(&seed, -9, 9) : SIL_UNKNOWN;
        }
        set_up(&s);
        sil_gaps *gaps = &s.plan.bench.gaps;
        gaps->first_held = holds[job % 3];
        gaps->action_at = job % 4 ? 12 : 5 + job % 14;
        gaps->capo = job % 5 == 0;
        gaps->first_open[strings - 1] = job % 6 ? SIL_UNKNOWN : 0.55;
        sil_drawing *sheet = sheet_of(&s.plan, SIL_MM, false);
        look_for_blanks(sheet, &s.made.job);
        look_for_ways(sheet, &s.plan.bench);
        look_for_readings(sheet, &s.plan);
        look_for_numbers(sheet);
        look_for_rows(&sheet->draft, "readings");
        look_for_rows(&sheet->draft, "readings.condition");
        sil_drawing_free(sheet);
        take_down(&s);
    }
}

/* Crowns beyond the rows that there are, are counted. */
static void many_crowns_are_counted(void **state)
{
    (void)state;
    static scene s;
    static sil_crown_off crowns[40];
    for (int count = 20; count <= 26; count++) {
        uint64_t seed = 73;
        make_random_job(&s.made, &seed, 6);
        for (int k = 0; k < count; k++) {
            crowns[k] = (sil_crown_off){1 + k % 6, 2 + k / 6, k % 2 == 0 ? -0.01 * (k + 1) : 0.12};
        }
        s.made.reading.crowns_read = SIL_CROWNS_LISTED;
        s.made.reading.crowns = crowns;
        s.made.reading.crown_count = count;
        s.made.job.reading_count = 1;
        set_up(&s);
        sil_drawing *sheet = sheet_of(&s.plan, SIL_MM, false);
        assert_int_equal(told(sheet, draw_say(s.draft, "and %d more read", count - 22)),
                         count > 22);
        int rows = 0;
        for (int k = 0; k < count; k++) {
            const char *row = draw_say(s.draft, "%s%d|%d|%s%.2f",
                                       k == 0 ? "string, fret, off by|" : "", crowns[k].string,
                                       crowns[k].fret, crowns[k].off > 0 ? "+" : "", crowns[k].off);
            for (int page = 0; page < sheet->paper_count; page++) {
                rows += count_rows(sheet->papers[page].shapes, row) > 0;
            }
        }
        assert_int_equal(rows, count < 22 ? count : 22);
        sil_drawing_free(sheet);
        take_down(&s);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(labels_have_their_units),
        cmocka_unit_test(values_are_written_as_read),
        cmocka_unit_test(a_form_shows_what_was_read),
        cmocka_unit_test(a_form_never_overflows),
        cmocka_unit_test(the_sheet_asks_for_everything),
        cmocka_unit_test(many_crowns_are_counted),
    };
    return cmocka_run_group_tests(tests, set_up_letters, take_down_letters);
}
