/* SPDX-License-Identifier: MIT */
/* Checks what must agree between the fields of an instrument, its strings, its targets and
 * limits. */
#include "check.h"

#include <string.h>

static int last_fret(const sil_job *job)
{
    return job->instrument.frets < 12 ? 12 : job->instrument.frets;
}

static void check_frets(job_check *check)
{
    const sil_instrument *instrument = &check->job->instrument;
    job_place root = job_key(NULL, "instrument"), join = job_key(&root, "join");
    if (instrument->frets > 0 && instrument->join > instrument->frets) {
        job_check_say(check, SIL_ERROR, &join, "past the last fret, %d", instrument->frets);
    }
}

static void check_cores(job_check *check)
{
    job_place strings = job_key(NULL, "strings");
    for (int i = 0; i < check->job->string_count; i++) {
        const sil_string *string = &check->job->strings[i];
        if (string->core >= string->gauge) {
            job_place item = job_item(&strings, i), core = job_key(&item, "core");
            job_check_say(check, SIL_ERROR, &core, "wanted less than the gauge, %s",
                          job_length_of(check, string->gauge).text);
        }
    }
}

/* The first string that has no room to the next, edge to edge; -1 if all have room. */
static int first_crowded(const sil_job *job, const double *centre)
{
    for (int i = 0; i + 1 < job->string_count; i++) {
        double half_gauges = (job->strings[i].gauge + job->strings[i + 1].gauge) / 2.0;
        if (centre[i] - centre[i + 1] <= half_gauges) {
            return i;
        }
    }
    return -1;
}

static void check_nut(job_check *check, const sil_board *board)
{
    const sil_job_nut *nut = &check->job->nut;
    job_place root = job_key(NULL, "nut"), edge = job_key(&root, "edge");
    job_place advance = job_key(&root, "advance");
    double outer = nut->edge_treble + nut->edge_bass + check->job->strings[0].gauge;
    bool kept = job_any_given(nut->centres, check->job->string_count);
    int crowded = kept ? -1 : first_crowded(check->job, board->nut_z);
    if (outer > nut->width) {
        job_check_say(check, SIL_ERROR, &edge, "no room for a string on a nut %s wide",
                      job_length_of(check, nut->width).text);
    } else if (crowded >= 0) {
        job_check_say(check, SIL_ERROR, &edge, "strings %d and %d would touch on a nut %s wide",
                      crowded + 1, crowded + 2, job_length_of(check, nut->width).text);
    }
    if (nut->advance >= board->spine_x[1]) {
        job_check_say(check, SIL_ERROR, &advance, "this would put the nut past fret 1");
    }
}

static void check_saddle(job_check *check, const sil_board *board)
{
    const sil_job *job = check->job;
    const sil_job_saddle *saddle = &job->saddle;
    job_place root = job_key(NULL, "saddle"), length = job_key(&root, "length");
    job_place spread = job_key(&root, "spread"), setback = job_key(&root, "setback");
    int crowded = first_crowded(job, board->saddle_z);
    if (saddle->length < saddle->spread) {
        job_check_say(check, SIL_ERROR, &length, "shorter than the string spacing, %s",
                      job_length_of(check, saddle->spread).text);
    }
    if (crowded >= 0) {
        job_check_say(check, SIL_ERROR, &spread, "strings %d and %d would touch at the saddle",
                      crowded + 1, crowded + 2);
    }
    for (int i = 0; i < job->string_count; i++) {
        if (board->saddle_x[i] <= board->fret_x[i][last_fret(job)]) {
            job_place item = job_item(&setback, i);
            job_check_say(check, SIL_ERROR, &item,
                          "this would put the saddle before the last fret");
        }
    }
}

/* A pickup lies at the bottom of the saddle's slot, with some of the saddle above it in the slot. */
static void check_pickup(job_check *check)
{
    const sil_job_saddle *saddle = &check->job->saddle;
    job_place root = job_key(NULL, "saddle"), pickup = job_key(&root, "pickup");
    if (saddle->pickup > 0.0 && saddle->pickup >= saddle->slot_depth) {
        job_check_say(check, SIL_ERROR, &pickup,
                      "as thick as its slot is deep, %s, so that no saddle would stand in it: "
                      "measure both again",
                      job_length_of(check, saddle->slot_depth).text);
    }
}

/* Checks that a kind of saddle has the figures it cannot do without. */
static void check_saddle_kind(job_check *check)
{
    const sil_job_saddle *saddle = &check->job->saddle;
    job_place root = job_key(NULL, "saddle"), length = job_key(&root, "length");
    job_place thickness = job_key(&root, "thickness"), pitch = job_key(&root, "pitch");
    job_place posts = job_key(&root, "post_spread");
    sil_working working = sil_saddle_working(saddle->kind, saddle->pitch);
    if (sil_working_cuts(working) && !sil_known(saddle->length)) {
        job_check_missing(check, &length);
    }
    if (sil_working_in_slot(working) && !sil_known(saddle->thickness)) {
        job_check_missing(check, &thickness);
    }
    if (sil_working_turns(working) && !sil_known(saddle->pitch)) {
        job_check_missing(check, &pitch);
    }
    if (sil_working_on_two(working) && !sil_known(saddle->post_spread)) {
        job_check_missing(check, &posts);
    }
}

/* A saddle in a slot does not move along the strings; and a string leaves it within its thickness. */
static void check_intonation(job_check *check)
{
    const sil_job_saddle *saddle = &check->job->saddle;
    job_place root = job_key(NULL, "saddle"), by = job_key(&root, "intonation");
    job_place peak = job_key(&root, "peak");
    bool moves =
        saddle->intonation == SIL_INTONATION_SCREWS || saddle->intonation == SIL_INTONATION_ENDS;
    if (moves && sil_working_in_slot(sil_saddle_working(saddle->kind, saddle->pitch))) {
        job_check_say(check, SIL_ERROR, &by,
                      "a saddle in a slot does not move; wanted none, or another kind of saddle");
    }
    for (int i = 0; i < check->job->string_count; i++) {
        if (saddle->peak[i] > saddle->thickness) {
            job_place item = job_item(&peak, i);
            job_check_say(check, SIL_ERROR, &item,
                          "past the back of the saddle, which is %s thick; measure from its face "
                          "toward the nut",
                          job_length_of(check, saddle->thickness).text);
        }
    }
}

/* Strings of a course are side by side, and their distance must be given. */
static void check_courses(job_check *check)
{
    const sil_job *job = check->job;
    job_place strings = job_key(NULL, "strings"), nut = job_key(NULL, "nut");
    job_place saddle = job_key(NULL, "saddle");
    job_place nut_pair = job_key(&nut, "pair"), saddle_pair = job_key(&saddle, "pair");
    int highest = 0;
    bool paired = false;
    for (int i = 0; i < job->string_count; i++) {
        int course = job->strings[i].course;
        bool joins = i > 0 && course > 0 && course == job->strings[i - 1].course;
        job_place item = job_item(&strings, i), place = job_key(&item, "course");
        paired = paired || joins;
        if (course > 0 && course <= highest && !joins) {
            job_check_say(check, SIL_ERROR, &place,
                          "courses run in the order of the strings, each side by side");
        }
        highest = course > highest ? course : highest;
    }
    if (paired && !sil_known(job->nut.pair)) {
        job_check_missing(check, &nut_pair);
    }
    if (paired && !sil_known(job->saddle.pair)) {
        job_check_missing(check, &saddle_pair);
    }
}

/* Reports two scales that make no playable fan: most likely one of them is a slip. */
static void check_fan(job_check *check, const sil_board *board)
{
    static const double most_slant = 0.6; /* rad; common practice stays under half of this */
    static const double no_part = 0.785398163397448; /* 45 degrees: no nut or saddle leans so far */
    const sil_instrument *it = &check->job->instrument;
    job_place root = job_key(NULL, "instrument"), scale = job_key(&root, "scale");
    job_place square = job_key(&scale, "square"), bass = job_key(&scale, "bass");
    double slant = fmax(fabs(board->nut_slant), fabs(board->saddle_slant));
    if (it->pocket_at >= board->saddle_x[0]) {
        job_place pocket = job_key(&root, "pocket_at");
        job_check_say(check, SIL_ERROR, &pocket, "past the saddle: measure it from the nut");
    }
    if (it->square > it->frets && it->frets > 0) {
        job_check_say(check, SIL_ERROR, &square, "past the last fret, %d", it->frets);
    } else if (slant > no_part) {
        job_check_say(
            check, SIL_ERROR, &scale,
            "nut or saddle would lean by %s degrees, and none leans past 45: likely a slip in "
            "one of the two scales, or in the square fret",
            job_figure_of(round(slant * 180.0 / 3.14159265358979323846)).text);
    } else if (it->scale_bass < it->scale) {
        job_check_say(check, SIL_WARNING, &bass, "unlikely: shorter than the treble's");
    } else if (slant > most_slant) {
        job_check_say(check, SIL_WARNING, &scale,
                      "unlikely: nut or saddle would be slanted by more than 34 degrees");
    }
}

/* A round board must reach out under every string. Radius and strings both change in a straight
 * line, so checking at the nut and at the end is enough. */
static void check_radius(job_check *check, const sil_board *board)
{
    job_place root = job_key(NULL, "instrument"), place = job_key(&root, "radius");
    double half = check->job->nut.width / 2.0;
    if (half >= board->radius_nut) {
        job_check_say(check, SIL_ERROR, &place, "smaller than half the board's width, %s",
                      job_length_of(check, half).text);
        return;
    }
    for (int i = 0; i < 2 * board->strings; i++) {
        int fret = i % 2 ? last_fret(check->job) : 0;
        double z = fabs(sil_string_z(board, i / 2, board->fret_x[i / 2][fret]));
        if (z >= sil_board_radius(board, sil_axis_x(board, i / 2, fret))) {
            job_check_say(check, SIL_ERROR, &place, "string %d runs outside it, %s from the middle",
                          i / 2 + 1, job_length_of(check, z).text);
            return;
        }
    }
}

static void check_order(job_check *check, const char *part, const char *low_key, double low,
                        const char *high_key, double high)
{
    if (low > high) {
        job_place root = job_key(NULL, part), place = job_key(&root, low_key);
        job_check_say(check, SIL_ERROR, &place, "over %s, %s", high_key, job_figure_of(high).text);
    }
}

static void check_limits(job_check *check)
{
    const sil_limits *limits = &check->job->limits;
    job_place root = job_key(NULL, "limits"), climate = job_key(&root, "humidity");
    job_place low = job_key(&climate, "low"), high = job_key(&climate, "high");
    if (limits->humidity_low_pct > limits->humidity_high_pct) {
        job_check_say(check, SIL_ERROR, &low, "over the high limit, %s %%",
                      job_figure_of(limits->humidity_high_pct).text);
    }
    if (limits->humidity_high_pct > 100.0) {
        job_check_say(check, SIL_ERROR, &high, "wanted 0 to 100 %%");
    }
    check_order(check, "limits", "least_protrusion", limits->least_protrusion, "most_protrusion",
                limits->most_protrusion);
}

static void check_attack(job_check *check)
{
    const sil_attack *attack = &check->job->attack;
    job_place root = job_key(NULL, "attack"), force = job_key(&root, "force");
    job_place at = job_key(&root, "at");
    if (check->job->string_count == 0) {
        return;
    }
    bool pull = sil_known(attack->force[0]);
    if (pull && !sil_known(attack->at)) {
        job_check_missing(check, &at);
    }
    bool any = attack->name && strcmp(attack->name, "any") == 0; /* any force */
    if (!pull && !any && sil_known(attack->at)) {
        job_check_missing(check, &force);
    }
    bool own = !attack->name; /* an attack given by name was written for another instrument */
    if (own && check->job->instrument.scale > 0.0 && attack->at >= check->job->instrument.scale) {
        job_check_say(check, SIL_ERROR, &at, "past the nut: measure it from the saddle");
    }
}

static void check_held_target(job_check *check)
{
    int frets = check->job->instrument.frets;
    job_place root = job_key(NULL, "targets"), first = job_key(&root, "first");
    job_place held = job_key(&first, "held");
    if (frets > 0 && (int)check->job->targets.first_held > frets) {
        job_check_say(check, SIL_ERROR, &held, "the string cannot lie on fret %d of %d",
                      (int)check->job->targets.first_held, frets);
    }
}

static bool is_number(const char *text, int digits)
{
    for (int i = 0; i < digits; i++) {
        if (text[i] < '0' || text[i] > '9') {
            return false;
        }
    }
    return true;
}

/* YYYY-MM-DD (ISO 8601), a day that the month has. */
static bool is_date(const char *text)
{
    static const int days[] = {31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (!is_number(text, 4) || text[4] != '-' || !is_number(text + 5, 2) || text[7] != '-' ||
        !is_number(text + 8, 2) || text[10] != '\0') {
        return false;
    }
    int year =
        (text[0] - '0') * 1000 + (text[1] - '0') * 100 + (text[2] - '0') * 10 + text[3] - '0';
    int month = (text[5] - '0') * 10 + text[6] - '0';
    int day = (text[8] - '0') * 10 + text[9] - '0';
    bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1] &&
           (month != 2 || day < 29 || leap);
}

void job_check_date(job_check *check, const job_place *up, const char *date)
{
    if (date && !is_date(date)) {
        job_place place = job_key(up, "date");
        job_check_say(check, SIL_WARNING, &place, "wanted a date as 2026-03-14");
    }
}

bool job_check_can_lay(const sil_job *job)
{
    const sil_instrument *instrument = &job->instrument;
    return job->string_count > 0 && instrument->scale > 0.0 && !(instrument->scale_bass <= 0.0) &&
           instrument->square >= 0 && instrument->square <= SIL_FRETS_MAX &&
           instrument->frets > 0 && instrument->frets <= SIL_FRETS_MAX && instrument->join > 0 &&
           instrument->join <= instrument->frets;
}

void job_check_instrument(job_check *check)
{
    job_place about = job_key(NULL, "job");
    job_check_date(check, &about, check->job->about.date);
    check_frets(check);
    check_cores(check);
    check_courses(check);
    check_saddle_kind(check);
    check_pickup(check);
    check_intonation(check);
    if (job_check_can_lay(check->job)) {
        sil_board board;
        job_lay_board(check->job, &board);
        if (job_check_make(check, &board)) {
            check_fan(check, &board);
            check_nut(check, &board);
            check_saddle(check, &board);
            check_radius(check, &board);
        }
    }
    check_held_target(check);
    check_attack(check);
    check_limits(check);
}
