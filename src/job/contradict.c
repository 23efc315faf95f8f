/* SPDX-License-Identifier: MIT */
/* Checks what must agree within a reading, and with the instrument it was taken on. */
#include "check.h"

#include <string.h>

/* Reports a string or fret that the instrument does not have. A string of 0 was not given. */
static void check_string(job_check *check, const job_place *up, int string)
{
    job_place place = job_key(up, "string");
    if (string > check->job->string_count && check->job->string_count > 0) {
        job_check_say(check, SIL_ERROR, &place, "past the last string, %d",
                      check->job->string_count);
    }
}

static void check_fret(job_check *check, const job_place *up, const char *key, int fret)
{
    job_place place = job_key(up, key);
    int frets = check->job->instrument.frets;
    if (fret > frets && frets > 0) {
        job_check_say(check, SIL_ERROR, &place, "past the last fret, %d", frets);
    }
}

/* Marks a string and fret; true if they were marked before. */
static bool seen_before(bool seen[SIL_STRINGS_MAX + 1][SIL_FRETS_MAX + 1], int string, int fret)
{
    if (string < 1 || string > SIL_STRINGS_MAX || fret < 0 || fret > SIL_FRETS_MAX) {
        return false;
    }
    bool before = seen[string][fret];
    seen[string][fret] = true;
    return before;
}

/* Returned: whether every crown is one of this instrument's. */
static bool check_crowns(job_check *check, const job_place *up, const sil_reading *reading)
{
    bool seen[SIL_STRINGS_MAX + 1][SIL_FRETS_MAX + 1] = {{false}};
    job_place list = job_key(up, "frets");
    int errors = check->errors;
    bool counted = true;
    for (int i = 0; i < reading->crown_count; i++) {
        const sil_crown_off *crown = &reading->crowns[i];
        job_place item = job_item(&list, i);
        check_string(check, &item, crown->string);
        check_fret(check, &item, "fret", crown->fret);
        if (seen_before(seen, crown->string, crown->fret)) {
            job_check_say(check, SIL_ERROR, &item, "this crown is given twice");
        }
        if (crown->fret == 0 && check->job->nut.kind != SIL_NUT_ZERO_FRET) {
            job_place fret = job_key(&item, "fret");
            job_check_say(check, SIL_ERROR, &fret,
                          "this nut has no zero fret, and the first fret is fret 1; if there is a "
                          "zero fret, write nut: {kind: zero-fret}");
        }
        counted = counted && crown->string > 0 && crown->fret >= 0;
    }
    return counted && errors == check->errors;
}

static void check_buzz(job_check *check, const job_place *up, const sil_reading *reading)
{
    bool seen[SIL_STRINGS_MAX + 1][SIL_FRETS_MAX + 1] = {{false}};
    job_place list = job_key(up, "buzz");
    for (int i = 0; i < reading->buzz_count; i++) {
        const sil_buzz *buzz = &reading->buzz[i];
        job_place item = job_item(&list, i);
        check_string(check, &item, buzz->string);
        check_fret(check, &item, "fret", buzz->fret);
        if (seen_before(seen, buzz->string, buzz->fret)) {
            job_check_say(check, SIL_ERROR, &item, "this note is given twice");
        }
    }
}

/* Checks where relief was read; false if nothing can be computed from it. */
static bool check_relief(job_check *check, const job_place *up, const sil_reading *reading)
{
    sil_relief_reading laid = job_relief_laid(check->job, reading);
    int join = check->job->instrument.join, frets = check->job->instrument.frets;
    job_place relief = job_key(up, "relief"), at = job_key(&relief, "at");
    job_place gap = job_key(&relief, "gap"), held = job_key(&relief, "held");
    int errors = check->errors;
    check_string(check, &relief, reading->relief.string + 1);
    if (reading->relief.gap < 0.0 && !reading->relief.straightedge) {
        job_check_say(
            check, SIL_ERROR, &gap,
            "a string cannot show a back-bow, only a straightedge can; did you mean "
            "{gap: %s, by: straightedge}?",
            job_figure_of(reading->relief.gap / (check->job->units == SIL_INCH ? 25.4 : 1.0)).text);
    }
    if (join < 1 || join > frets) {
        return false; /* reported already */
    }
    if (join < 3) {
        if (sil_known(reading->relief.gap)) {
            job_check_say(check, SIL_WARNING, &relief,
                          "not used: there is no fret between fret 1 and the body joint");
        }
        return errors == check->errors;
    }
    if (laid.over <= 1 || laid.over >= join) {
        job_check_say(check, SIL_ERROR, &at, "wanted a fret between 1 and the body joint, %d",
                      join);
    } else if (laid.low < 1 || laid.low >= laid.over || laid.high <= laid.over ||
               laid.high > frets) {
        job_check_say(check, SIL_ERROR, &held,
                      "wanted two frets with fret %d between them, up to %d", laid.over, frets);
    }
    return errors == check->errors;
}

/* Checks where action and the gap at fret 1 were read; false if no height can be computed from
 * them. */
static bool check_gap_places(job_check *check, const job_place *up, const sil_reading *reading)
{
    int at = reading->gaps.action_at, frets = check->job->instrument.frets;
    int held = (int)reading->gaps.first_held;
    job_place first = job_key(up, "first_held");
    if (at != 12) {
        check_fret(check, up, "action_at", at);
    }
    bool given = false;
    for (int i = 0; i < check->job->string_count; i++) {
        given = given || sil_known(reading->gaps.first[i]);
    }
    if (given && frets > 0 && held > frets) {
        job_check_say(check, SIL_ERROR, &first, "the string cannot lie on fret %d of %d", held,
                      frets);
    }
    return (at >= 5 && at <= frets) || at == 12;
}

/* The crown that a string lies under by most, and by how much. */
static double deepest(const sil_board *board, const sil_fit *fit, int string, int *fret)
{
    double depth = 0.0;
    for (int n = 1; n <= board->frets; n++) {
        double gap = sil_action(board, fit, string, n);
        if (-gap > depth) {
            depth = -gap;
            *fret = n;
        }
    }
    return depth;
}

/* Readings by which an open string would lie under a crown by more than the tools explain. */
static void check_heights(job_check *check, const job_place *up, int index)
{
    const sil_job *job = check->job;
    const sil_reading *reading = &job->readings[index];
    sil_tools tools = sil_job_tools(job, index);
    sil_relief_reading relief = job_relief_laid(job, reading);
    sil_board board;
    sil_fit fit = {0};
    job_lay_board(job, &board);
    job_lay_crowns(reading, &fit.crowns);
    fit.bend = sil_bend_from_relief(&board, &fit.crowns, &relief);
    sil_fit_read(&board, &reading->gaps, &fit);
    job_place action = job_key(up, "action");
    for (int i = 0; i < board.strings; i++) {
        int fret = 0;
        double depth = deepest(&board, &fit, i, &fret);
        if (depth > tools.action + tools.relief) {
            job_place item = job_item(&action, i);
            job_check_say(check, SIL_ERROR, &item,
                          "contradicts relief and the gap at fret 1: string %d would lie %s below "
                          "the crown of fret %d; read all three again",
                          i + 1, job_length_of(check, depth).text, fret);
        }
    }
}

/* Only the last of the list counts, so a list in reverse order would be planned on the oldest
 * reading. */
static void check_order_of_dates(job_check *check, const job_place *up, int index)
{
    const char *date = check->job->readings[index].date;
    const char *before = index > 0 ? check->job->readings[index - 1].date : NULL;
    if (date && before && strlen(date) == 10 && strlen(before) == 10 && strcmp(date, before) < 0) {
        job_place place = job_key(up, "date");
        job_check_say(check, SIL_WARNING, &place,
                      "before the reading above it, %.10s; oldest first: the last counts", before);
    }
}

/* Reports a saddle so low that the string would be below the bridge's top. */
static void check_saddle_stands(job_check *check, const job_place *up, const sil_reading *reading)
{
    const sil_job_saddle *saddle = &check->job->saddle;
    double in_slot = saddle->slot_depth - saddle->pickup;
    job_place place = job_key(up, "saddle_height");
    if (fmin(reading->saddle_height_treble, reading->saddle_height_bass) <= in_slot) {
        job_check_say(check, SIL_WARNING, &place,
                      "no higher than its slot is deep, %s: the string would lie on the bridge; "
                      "read both again",
                      job_length_of(check, in_slot).text);
    }
}

/* Whether no saddle is as high, so that of two readings that contradict each other it is this one. */
static bool unlikely_height(double height)
{
    const job_field *field = job_field_find("readings.saddle_height");
    return height < field->low || height > field->high;
}

/* Reports a saddle that would stand out of the bridge by more than all of its height. */
static void check_stands_out(job_check *check, const job_place *up, const sil_reading *reading)
{
    const double height[2] = {reading->saddle_height_treble, reading->saddle_height_bass};
    int last = check->job->string_count - 1;
    job_place list = job_key(up, "stands_out");
    for (int end = 0; end < 2 && end <= last; end++) {
        int i = end == 0 ? 0 : last;
        if (reading->stands_out[i] > height[end] && unlikely_height(height[end])) {
            job_place caliper = job_key(up, "saddle_height"),
                      at = job_key(&caliper, end == 0 ? "treble" : "bass");
            job_check_say(check, SIL_ERROR, &at,
                          "less than what stands out of the bridge, %s: measure the saddle again",
                          job_length_of(check, reading->stands_out[i]).text);
        } else if (reading->stands_out[i] > height[end]) {
            job_place item = job_item(&list, i);
            job_check_say(check, SIL_ERROR, &item,
                          "more than the whole saddle, %s; measure from the bridge's top, not from "
                          "the saddle's bottom",
                          job_length_of(check, height[end]).text);
        }
    }
}

/* Whether a figure may be another one than at the visit before. */
static bool moved(double now, double before, double half_width)
{
    return !sil_known(before) || fabs(now - before) > sil_moved_limit(sil_rectangular(half_width));
}

static bool any_confirmed(const sil_job *job, const sil_reading *reading)
{
    bool any = false;
    for (int i = 0; i < job->string_count; i++) {
        any = any || reading->confirmed[i];
    }
    return any;
}

/* A string that is confirmed without need. Whether it is odd to have moved since the visit before
 * depends on what was worked, so one that moved may be. */
static void check_confirmed(job_check *check, const job_place *up, int index)
{
    const sil_job *job = check->job;
    const sil_gaps *gaps = &job->readings[index].gaps;
    const sil_gaps *before = &job->readings[index > 0 ? index - 1 : 0].gaps;
    const sil_tools tools = sil_job_tools(job, index);
    job_place list = job_key(up, "confirmed");
    sil_board board;
    sil_odd odd;
    if (!any_confirmed(job, &job->readings[index])) {
        return;
    }
    job_lay_board(job, &board);
    sil_job_odd(job, &job->readings[index], &tools, &board, &odd);
    for (int i = 0; i < job->string_count; i++) {
        bool found =
            odd.action[i].why != SIL_NOT_ODD || odd.first[i].why != SIL_NOT_ODD || odd.order.action;
        found = found || (index > 0 && (moved(gaps->action[i], before->action[i], tools.action) ||
                                        moved(gaps->first[i], before->first[i], tools.first)));
        if (job->readings[index].confirmed[i] && !found) {
            job_check_say(check, SIL_WARNING, &list,
                          "not needed: nothing is odd about the readings of string %d", i + 1);
        }
    }
}

/* A semitone out is no error of intonation. */
static void check_cents(job_check *check, const job_place *up, const sil_reading *reading)
{
    static const double semitone = 100.0;
    job_place list = job_key(up, "cents");
    for (int i = 0; i < check->job->string_count; i++) {
        if (fabs(reading->cents[i]) >= semitone) {
            job_place item = job_item(&list, i);
            job_check_say(check, SIL_ERROR, &item,
                          "a semitone or more at fret 12, which is no error of intonation: wanted "
                          "under 100; likely a wrong string, or the tuner showed another note");
        }
    }
}

static void check_reading(job_check *check, const job_place *up, int index)
{
    const sil_job *job = check->job;
    const sil_reading *reading = &job->readings[index];
    job_place humidity = job_key(up, "humidity");
    job_check_date(check, up, reading->date);
    check_order_of_dates(check, up, index);
    check_saddle_stands(check, up, reading);
    check_cents(check, up, reading);
    check_stands_out(check, up, reading);
    if (reading->humidity_pct > 100.0) {
        job_check_say(check, SIL_ERROR, &humidity, "wanted 0 to 100 %%");
    }
    bool placed = check_gap_places(check, up, reading);
    check_buzz(check, up, reading);
    bool crowns = check_crowns(check, up, reading);
    bool relief = check_relief(check, up, reading);
    if (job_check_can_lay(job)) {
        check_confirmed(check, up, index);
    }
    if (placed && crowns && relief && job_check_can_lay(job)) {
        check_heights(check, up, index);
    }
}

void job_check_readings(job_check *check)
{
    job_place list = job_key(NULL, "readings");
    for (int i = 0; i < check->job->reading_count; i++) {
        job_place item = job_item(&list, i);
        check_reading(check, &item, i);
    }
}
