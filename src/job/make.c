/* SPDX-License-Identifier: MIT */
/* Checks what a sheet says of parts to make. */
#include "check.h"

bool job_any_given(const double *figures, int count)
{
    for (int i = 0; i < count; i++) {
        if (sil_known(figures[i])) {
            return true;
        }
    }
    return false;
}

static const char *no_saddle_to_make(sil_working working)
{
    switch (working) {
    case SIL_WORKING_SCREWS:
        return "each string has its own height screw: there is no saddle to make";
    case SIL_WORKING_POSTS:
        return "the bridge stands on two posts: there is no saddle to make";
    case SIL_WORKING_FEET:
    case SIL_WORKING_THUMBWHEELS:
        return "the bridge floats: there is no saddle in a slot to make";
    case SIL_WORKING_NOT_GIVEN:
    case SIL_WORKING_BASE:
    case SIL_WORKING_TOP:
    case SIL_WORKINGS:
        break;
    }
    return NULL;
}

static void check_parts(job_check *check)
{
    const sil_job *job = check->job;
    job_place make = job_key(NULL, "make");
    const char *none = no_saddle_to_make(sil_saddle_working(job->saddle.kind, job->saddle.pitch));
    if (job->make.nut && job->nut.kind == SIL_NUT_ZERO_FRET) {
        job_check_say(check, SIL_ERROR, &make,
                      "a zero fret sets the height here, so there is no nut to make: see kind of "
                      "nut");
    }
    if (job->make.saddle && none) {
        job_check_say(check, SIL_ERROR, &make, "%s: see kind of saddle", none);
    }
}

/* A list of a part to make: of every string or of none, and not without that part. Returned: whether
 * every string has its own. */
static bool check_list(job_check *check, const char *part, const char *key, const double *figures,
                       bool made)
{
    job_place root = job_key(NULL, part), place = job_key(&root, key);
    int strings = check->job->string_count;
    if (!job_any_given(figures, strings)) {
        return false;
    }
    if (!made) {
        job_check_say(check, SIL_WARNING, &place, "used only with make: %s", part);
    }
    for (int i = 0; i < strings; i++) {
        if (!sil_known(figures[i])) {
            job_place item = job_item(&place, i);
            job_check_say(check, SIL_ERROR, &item, "wanted for every string, or for none");
            return false;
        }
    }
    return true;
}

/* Slots in the order of the strings, with room between them. */
static bool check_places(job_check *check, const job_place *place)
{
    const sil_job *job = check->job;
    const double *centre = job->nut.centres;
    for (int i = 1; i < job->string_count; i++) {
        double room = (job->strings[i].gauge + job->strings[i - 1].gauge) / 2.0;
        job_place item = job_item(place, i);
        if (centre[i] >= centre[i - 1]) {
            job_check_say(check, SIL_ERROR, &item,
                          "not nearer the bass end than string %d: they are measured from there, "
                          "string 1 first, so the figures fall",
                          i);
            return false;
        }
        if (centre[i - 1] - centre[i] <= room) {
            job_check_say(check, SIL_ERROR, &item, "strings %d and %d would touch", i, i + 1);
            return false;
        }
    }
    return true;
}

/* Slots inside the nut. */
static bool check_inside(job_check *check, const job_place *place, const sil_board *board)
{
    const sil_job *job = check->job;
    double length = job->nut.width / cos(board->nut_slant);
    if (!sil_known(length)) {
        job_check_say(check, SIL_ERROR, place,
                      "too close together for a nut that leans as the two scales say");
        return false;
    }
    for (int i = 0; i < job->string_count; i++) {
        double half = job->strings[i].gauge / 2.0, centre = job->nut.centres[i];
        job_place item = job_item(place, i);
        if (centre - half < 0.0 || centre + half > length) {
            job_check_say(check, SIL_ERROR, &item, "outside the nut, which is %s long",
                          job_length_of(check, length).text);
            return false;
        }
    }
    return true;
}

bool job_check_make(job_check *check, const sil_board *board)
{
    const sil_job *job = check->job;
    job_place root = job_key(NULL, "nut"), place = job_key(&root, "centres");
    check_parts(check);
    check_list(check, "nut", "floors", job->nut.floors, job->make.nut);
    check_list(check, "saddle", "old", job->saddle.old, job->make.saddle);
    if (!job_any_given(job->nut.centres, job->string_count)) {
        return true;
    }
    return check_list(check, "nut", "centres", job->nut.centres, job->make.nut) &&
           check_places(check, &place) && check_inside(check, &place, board);
}
