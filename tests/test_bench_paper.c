/* SPDX-License-Identifier: MIT */
/* The visits so far and the blanks of each step on the bench plan, read back row by row. */
#include "viewed.h"

enum { JOBS = 90 };

enum { SHOWN = 6, CHANGE = DRAW_COLUMNS_MAX - 1 };

/* What was read at a visit, and over it what was due; of more than eight strings every second. */
static void fill_visit(const scene *s, const brief_visit *visit, const char **read,
                       const char **due)
{
    int step = s->b->strings > 8 ? 2 : 1;
    read[0] = visit->date;
    read[1] = "read";
    read[2] =
        brief_known(visit->humidity) ? draw_say(s->draft, "%s %%", visit->humidity.shown) : "-";
    read[3] = visit->relief.shown;
    read[CHANGE] =
        brief_known(visit->ratio) ? draw_say(s->draft, "%s %% of it", visit->ratio.shown) : "-";
    due[0] = visit->expected ? "expected" : NULL;
    due[1] = visit->expected ? draw_say(s->draft, "after %s", visit->work) : NULL;
    for (int i = 0; i < s->b->strings; i += step) {
        read[4 + i / step] = visit->read[i].shown;
        due[4 + i / step] = visit->expected ? visit->due[i].shown : NULL;
    }
}

/* The last six visits, each under what was due at it. */
static void look_at_visits(const scene *s, const draw_shapes *list, table_cells cell, int rows)
{
    int count = s->b->visit_count, first = count > SHOWN ? count - SHOWN : 0;
    double above = INFINITY;
    for (int k = 0; k < count; k++) {
        const brief_visit *visit = &s->b->visits[k];
        int row = 2 * (k - first);
        assert_int_equal(count_words(list, visit->date), k >= first);
        for (int i = 0; i < list->count && k >= first; i++) {
            if (strcmp(words_of(list, i), visit->date) == 0) {
                double level = level_of_text(&list->shapes[i]);
                assert_string_equal(row_at(list, level, -1, 1e4), row_told(s, cell, rows, row + 1));
                const char *over = row_at(list, level + 5, -1, 1e4);
                assert_true(level < above);
                assert_true(!visit->expected || strcmp(over, row_told(s, cell, rows, row)) == 0);
                assert_true(visit->expected || strstr(over, "expected") == NULL);
                above = level;
            }
        }
    }
}

/* The lower words over the columns that have more than dashes; all of them where no row is. */
static void fill_heads(const scene *s, table_cells cell, int rows, const char **head)
{
    int step = s->b->strings > 8 ? 2 : 1;
    for (int c = 0; c < DRAW_COLUMNS_MAX; c++) {
        bool told = rows == 0;
        for (int r = 0; r < rows; r++) {
            told = told || (cell[r][c] != NULL && strcmp(cell[r][c], "-") != 0);
        }
        int string = 1 + (c - 4) * step;
        head[c] = !told                               ? NULL
                  : c == 0                            ? "visit"
                  : c == 2                            ? "humidity"
                  : c == 3                            ? "relief"
                  : c == CHANGE                       ? "change"
                  : c >= 4 && string <= s->b->strings ? draw_say(s->draft, "%d", string)
                                                      : NULL;
    }
}

static void visits_are_told_one_under_another(void **state)
{
    (void)state;
    static const char *const dates[] = {"2025-01-02", "2025-02-03", "2025-03-04", "2025-04-05",
                                        "2025-05-06", "2025-06-07", "2025-07-08", "2025-08-09"};
    static scene s = {.pack = true};
    static sil_reading readings[8];
    uint64_t seed = 66;
    for (int job = 0; job < 40; job++) {
        make_random_job(&s.made, &seed, 1 + job % SIL_STRINGS_MAX);
        int count = 1 + job % 8;
        for (int k = 0; k < count; k++) {
            readings[k] = s.made.reading;
            readings[k].date = dates[k];
            readings[k].humidity_pct = k % 3 == 2 ? SIL_UNKNOWN : 40 + k;
            for (int i = 0; i < s.made.job.string_count; i++) {
                readings[k].gaps.action[i] += 0.03 * (count - 1 - k);
            }
        }
        s.made.job.readings = readings;
        s.made.job.reading_count = count;
        set_up(&s);
        table_cells cell = {{NULL}}, heads = {{NULL}};
        int rows = 0;
        for (int k = s.b->visit_count > SHOWN ? s.b->visit_count - SHOWN : 0; k < s.b->visit_count;
             k++, rows += 2) {
            fill_visit(&s, &s.b->visits[k], cell[rows + 1], cell[rows]);
        }
        draw_shapes *list = empty_list(&s);
        view_visits(s.draft, list, DRAW_COLUMN);
        look_at_visits(&s, list, cell, rows);
        fill_heads(&s, cell, rows, heads[0]);
        const char *head = row_told(&s, heads, 1, 0);
        assert_int_equal(count_rows(list, head), 1);
        assert_int_equal(rows_on(&s, 0, "Bench plan", head), s.b->visit_count > 0);
        draw_shapes_free(list);
        take_down(&s);
    }
}

/* The blanks that a step leaves to write in, beside the figures to work to. */
static const char *blank_of(const brief *b, sil_act act)
{
    switch ((int)act) {
    case SIL_ACT_MEASURE_RELIEF:
    case SIL_ACT_STRAIGHTEDGE:
        return "relief read";
    case SIL_ACT_ROD:
        return "relief read, action at the 12th";
    case SIL_ACT_READ_AGAIN:
    case SIL_ACT_READ_NEW:
    case SIL_ACT_CHECK:
        return b->asks_cents ? "relief read, action at the 12th, gap at the 1st, cents at the 12th"
                             : "relief read, action at the 12th, gap at the 1st";
    case SIL_ACT_READ_CROWNS:
        return "off, fret 1, off, fret 2, off, fret 3";
    case SIL_ACT_MEASURE_FIRST:
    case SIL_ACT_READ_GAPS_AGAIN:
        return "held at the 3rd, open";
    case SIL_ACT_ZERO_FRET:
    case SIL_ACT_RAISE_ZERO_FRET:
        return "gap read";
    case SIL_ACT_FIT_SADDLE:
    case SIL_ACT_MEASURE_ACTION:
        return "action at the 12th";
    case SIL_ACT_READ_ODD:
        return "read again";
    case SIL_ACT_MEASURE_CROWN:
        return "fret height, fret 1";
    case SIL_ACT_MEASURE_SADDLE:
        return "caliper, slot";
    case SIL_ACT_FILE_SLOTS:
    case SIL_ACT_FILL_SLOT:
    case SIL_ACT_SHIM_NUT:
        return "gap read, and again";
    case SIL_ACT_SAND_SADDLE:
        return b->saddle.takes_first ? "action read, and again" : "action at the 12th";
    case SIL_ACT_DRESS_SADDLE:
    case SIL_ACT_SHIM_SADDLE:
    case SIL_ACT_NEW_SADDLE:
    case SIL_ACT_TURN_SCREWS:
    case SIL_ACT_TURN_POSTS:
    case SIL_ACT_BRIDGE_CURVE:
        return "action read";
    default:
        return "";
    }
}

static void look_at_step(const scene *s, int step)
{
    static const char *const blanks[] = {
        "relief read", "action at the 12th", "gap at the 1st",      "off, fret 1",   "off, fret 2",
        "off, fret 3", "held at the 3rd",    "fret height, fret 1", "caliper, slot", "gap read",
        "and again",   "action read",        "cents at the 12th"};
    const char *wanted = blank_of(s->b, s->b->steps[step].act);
    int bands = s->b->strings > 8 ? 2 : 1;
    draw_shapes *list = empty_list(s);
    view_step(s->draft, list, step, DRAW_COLUMN);
    for (size_t k = 0; k < sizeof blanks / sizeof *blanks; k++) {
        bool once = strcmp(blanks[k], "relief read") == 0 ||
                    strchr(blanks[k], ',') == blanks[k] + 7 ||
                    strcmp(blanks[k], "fret height, fret 1") == 0;
        int count = strstr(wanted, blanks[k]) == NULL ? 0 : once ? 1 : bands;
        assert_int_equal(count_words(list, blanks[k]), count);
    }
    assert_int_equal(count_words(list, draw_say(s->draft, "%d", step + 1)) > 0, 1);
    for (int i = 0; i < list->count; i++) { /* no row of nothing but dashes */
        const char *row = row_at(list, level_of_text(&list->shapes[i]), 14, 1e4);
        size_t label = strcspn(row, "|");
        assert_true(bands == 2 || row[label] == '\0' ||
                    strspn(row + label, "|-") < strlen(row + label));
    }
    draw_shapes_free(list);
}

/* The rows of figures of a step at the nut; a row of which nothing is known is left out. */
static void look_at_nut_rows(scene *s, int step)
{
    int bands = s->b->strings > 8 ? 2 : 1;
    for (int idle = 0; idle < 2; idle++) {
        bool first = false, worked = false;
        for (int i = 0; i < s->b->strings; i++) {
            brief_slot *slot = &s->drawing->brief->nut.slot[i];
            slot->worked = slot->worked && !idle;
            first = first || brief_known(slot->first);
            worked = worked || slot->worked;
        }
        draw_shapes *list = empty_list(s);
        view_step(s->draft, list, step, DRAW_COLUMN);
        assert_int_equal(count_words(list, "first pass"), first ? bands : 0);
        assert_int_equal(count_words(list, "gap when done"), worked ? bands : 0);
        draw_shapes_free(list);
    }
}

/* Whether a string, or a fret out of line under it, can be seen from the side. */
static bool has_side(const scene *s, int i)
{
    const sil_fit *now = &s->plan.stages.fit[SIL_NOW], *after = &s->plan.stages.fit[SIL_SADDLE];
    return sil_known(now->nut_height[i] + now->saddle_height[i]) ||
           sil_known(after->nut_height[i] + after->saddle_height[i]) || s->b->worst[i].fret > 0;
}

/* Two strings from the side: the last, and the first or the one over the fret that is most out of
 * line. */
static void look_at_sides(const scene *s)
{
    int last = s->b->strings - 1, worst = 0, seen = 0;
    for (int i = 0; i <= last; i++) {
        bool off = s->b->worst[i].fret > 0, none = s->b->worst[worst].fret == 0;
        if (off && (none || s->b->worst[i].off.exact > s->b->worst[worst].off.exact)) {
            worst = i;
        }
    }
    const int shown[] = {last, worst == last ? 0 : worst};
    int wanted[2] = {0, 0}, count = 0;
    for (int k = 0; k < (last > 0 ? 2 : 1); k++) {
        draw_shapes *list = empty_list(s);
        view_side(s->draft, list, shown[k], DRAW_COLUMN);
        wanted[count] = shown[k] + 1;
        count += list->count > 0; /* nothing is drawn of a string that was not read */
        draw_shapes_free(list);
    }
    count = has_side(s, shown[0]) || has_side(s, shown[1]) ? count : 0;
    for (int page = 0; page < s->drawing->paper_count; page++) {
        const draw_shapes *list = s->drawing->papers[page].shapes;
        for (int i = 1; i < list->count; i++) {
            if (strncmp(words_of(list, i), "action at the 12th: ", 20) == 0) {
                assert_true(seen < 2);
                assert_int_equal(atoi(words_of(list, i - 1)), wanted[seen]);
                seen++;
            }
        }
    }
    assert_int_equal(seen, count);
}

static void steps_leave_their_blanks(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 67;
    bool seen[SIL_ACTS] = {false};
    int acts = 0;
    for (int job = 0; job < 4 * JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        look_at_sides(&s);
        for (int step = 0; step < s.plan.step_count; step++) {
            look_at_step(&s, step);
            sil_act act = s.b->steps[step].act;
            if (strcmp(blank_of(s.b, act), "gap read, and again") == 0) {
                look_at_nut_rows(&s, step);
            }
            acts += !seen[s.b->steps[step].act];
            seen[s.b->steps[step].act] = true;
        }
        take_down(&s);
    }
    assert_true(acts > 12);
}

/* The first step that has its act, or the next one. */
static int step_of(const scene *s, sil_act act)
{
    for (int step = 0; step < s->plan.step_count; step++) {
        if (s->b->steps[step].act == act) {
            return step;
        }
    }
    return s->b->next.step;
}

/* Where nothing is left to do nothing is read again, and the card leaves no blank; else it has one for
 * each reading, and a second where there is the room. */
static void a_card_that_is_done_has_no_blanks(void **state)
{
    (void)state;
    static scene s;
    static const char *const actions[] = {"[1.75, 1.85, 1.95, 2.05, 2.15, 2.25]",
                                          "[2.75, 2.85, 2.95, 3.05, 3.15, 3.25]"};
    for (int work = 0; work < 2; work++) {
        char readings[400];
        snprintf(readings, sizeof readings,
                 "  - relief: 0.2\n    frets: sound\n    humidity: 48 %%\n"
                 "    first: [0.06, 0.06, 0.06, 0.07, 0.07, 0.08]\n    action: %s\n"
                 "    stands_out: {treble: 4, bass: 6}\n    cents: [0, 0, 0, 0, 0, 0]\n",
                 actions[work]);
        plan_readings("instrument: {rod: two-way, rod_state: works, crown: 1.1}\n"
                      "saddle: {slot_depth: 5}\n",
                      readings, &s.plan);
        assert_int_equal(s.plan.done, !work);
        set_up_drawing(&s);
        for (int room = VIEW_AMPLE; room <= VIEW_SCARCE; room++) {
            draw_shapes *list = empty_list(&s);
            view_next_form(s.draft, list, step_of(&s, SIL_ACT_SAND_SADDLE), (view_room)room, 180);
            assert_int_equal(count_words(list, "read") > 0, work);
            assert_int_equal(count_words(list, "and again") > 0, work && room == VIEW_AMPLE);
            draw_shapes_free(list);
        }
        take_down(&s);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(visits_are_told_one_under_another),
        cmocka_unit_test(steps_leave_their_blanks),
        cmocka_unit_test(a_card_that_is_done_has_no_blanks),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
