/* SPDX-License-Identifier: MIT */
/* Finds readings that ask to be taken again. See docs/arithmetic.md, "One odd reading". */
#include "check.h"

#include <sillet/core/odd.h>

/* A reading that moved by more than this many standard uncertainties is another reading. */
static const double moved_u = 5.0;
static const double least_moved = 0.15; /* mm: common practice, no source */

double sil_moved_limit(double u)
{
    return fmax(least_moved, moved_u * u);
}

/* What is likely of a figure: by the job's own list, else as its row has it. */
static sil_plausible likely_of(const sil_job *job, const char *path)
{
    const job_field *field = job_field_find(path);
    for (int i = 0; i < job->plausible_count; i++) {
        if (job_field_find(job->plausible[i].path) == field) {
            return job->plausible[i];
        }
    }
    return (sil_plausible){path, field->low, field->high};
}

static bool is_unlikely(const sil_plausible *likely, double value)
{
    return value != 0.0 && (value < likely->low || value > likely->high); /* 0: "at or under" */
}

static void mark(sil_odd_one *one, sil_odd_why why, double read, double off)
{
    if (one->why == SIL_NOT_ODD) {
        *one = (sil_odd_one){.why = why, .read = read, .off = off};
    }
}

/* Looks at figures of one kind; with a step of 0 they are all marks of one reading. */
static void mark_unlikely(const sil_job *job, const char *path, const double *values, int count,
                          int step, sil_odd_one *one)
{
    sil_plausible likely = likely_of(job, path);
    for (int i = 0; i < count; i++) {
        if (is_unlikely(&likely, values[i])) {
            mark(&one[(size_t)i * (size_t)step], SIL_ODD_UNLIKELY, values[i], SIL_UNKNOWN);
        }
    }
}

static void find_unlikely(const sil_job *job, const sil_reading *reading, sil_odd *odd)
{
    const sil_gaps *gaps = &reading->gaps;
    int strings = job->string_count;
    mark_unlikely(job, "readings.relief", &reading->relief.gap, 1, 0, &odd->relief);
    mark_unlikely(job, "readings.action", gaps->action, strings, 1, odd->action);
    mark_unlikely(job, "readings.first", gaps->first, strings, 1, odd->first);
    mark_unlikely(job, "readings.first_open", gaps->first_open, strings, 1, odd->first);
    for (int k = 0; k < reading->crown_count; k++) {
        mark_unlikely(job, "readings.frets.off", &reading->crowns[k].off, 1, 0, &odd->crowns);
    }
    mark_unlikely(job, "readings.saddle_height", &reading->saddle_height_treble, 2, 0,
                  &odd->saddle);
    mark_unlikely(job, "readings.bridge_top", &reading->bridge_top_treble, 2, 0, &odd->saddle);
}

/* Courses whose strings were all read: the first string of each, where it is and its mean action. */
typedef struct courses {
    int count, first[SIL_STRINGS_MAX];
    double z[SIL_STRINGS_MAX], mean[SIL_STRINGS_MAX];
} courses;

static void read_courses(const sil_board *board, const double *action, courses *read)
{
    read->count = 0;
    for (int i = 0; i < board->strings;) {
        int first = i;
        double sum = 0.0, place = 0.0;
        for (; i < board->strings && board->course[i] == board->course[first]; i++) {
            sum += action[i] > 0.0 ? action[i] : SIL_UNKNOWN;
            place += board->saddle_z[i];
        }
        if (sil_known(sum)) {
            read->first[read->count] = first;
            read->z[read->count] = place / (i - first);
            read->mean[read->count++] = sum / (i - first);
        }
    }
}

/* Of the strings of a course, the one farthest from where the line of the others has it. */
static int farthest_of(const sil_board *board, const double *action, int first, double line)
{
    int farthest = first;
    for (int i = first; i < board->strings && board->course[i] == board->course[first]; i++) {
        farthest = fabs(action[i] - line) > fabs(action[farthest] - line) ? i : farthest;
    }
    return farthest;
}

static void find_off_line(const sil_tools *tools, const sil_reading *reading,
                          const sil_board *board, sil_odd *odd)
{
    courses read;
    const double *action = reading->gaps.action;
    read_courses(board, action, &read);
    double limit = fmax(SIL_ODD_ACTION, SIL_ODD_U * sil_rectangular(tools->action));
    sil_stray stray = sil_stray_from_line(read.count, read.z, read.mean, limit);
    if (stray.which < 0) {
        return;
    }
    double line = read.mean[stray.which] - stray.off;
    int string = farthest_of(board, action, read.first[stray.which], line);
    if (stray.curve) {
        odd->curve = string;
        odd->curve_off = stray.off;
    } else {
        mark(&odd->action[string], SIL_ODD_LINE, action[string], action[string] - line);
    }
}

/* Two actions that look as if each was written for the other's string. One that is off the line alone
 * is that; and of courses nobody can say which of their strings. */
static void find_swapped(const sil_tools *tools, const sil_reading *reading, const sil_board *board,
                         sil_odd *odd)
{
    courses read;
    const double *action = reading->gaps.action;
    read_courses(board, action, &read);
    for (int i = 0; i < board->strings; i++) {
        if (read.count != board->strings || odd->action[i].why != SIL_NOT_ODD) {
            return;
        }
    }
    sil_two two = sil_swapped(read.count, read.z, read.mean, sil_rectangular(tools->action));
    if (two.first >= 0 && odd->curve < 0) {
        double off = action[two.first] - action[two.second];
        mark(&odd->action[two.first], SIL_ODD_SWAPPED, action[two.first], off);
        mark(&odd->action[two.second], SIL_ODD_SWAPPED, action[two.second], -off);
    }
}

/* Gaps of held strings are nearly alike; of open ones they are not. */
static void find_off_others(const sil_tools *tools, const sil_reading *reading, int strings,
                            sil_odd *odd)
{
    const sil_gaps *gaps = &reading->gaps;
    double limit = fmax(SIL_ODD_FIRST, SIL_ODD_U * sil_rectangular(tools->first));
    if (gaps->first_held == SIL_HOLD_OPEN) {
        return;
    }
    double read[SIL_STRINGS_MAX]; /* 0 is "at or under", and no figure */
    for (int i = 0; i < strings; i++) {
        read[i] = gaps->first[i] > 0.0 ? gaps->first[i] : SIL_UNKNOWN;
    }
    for (int i = 0; i < strings; i++) {
        double off = sil_off_the_others(strings, read, i);
        if (sil_above(fabs(off), limit)) {
            mark(&odd->first[i], SIL_ODD_OTHERS, gaps->first[i], off);
        }
    }
}

/* A course of the same strings has one target, too. */
static void mean_targets(const sil_board *board, const sil_band *band, const courses *read,
                         double *target)
{
    for (int k = 0; k < read->count; k++) {
        double sum = 0.0;
        int i = read->first[k], first = i;
        for (; i < board->strings && board->course[i] == board->course[first]; i++) {
            sum += band[i].aim;
        }
        target[k] = sum / (i - first);
    }
}

/* How far a list falls against its targets; one that is not complete does not say. */
static double fall_of(const sil_board *board, const double *values, const sil_band *band, double u)
{
    static const double same_u = 2.0;
    courses read;
    double target[SIL_STRINGS_MAX];
    read_courses(board, values, &read);
    if (read.count == 0 || read.count != board->course[board->strings - 1] + 1) {
        return SIL_UNKNOWN;
    }
    mean_targets(board, band, &read, target);
    return sil_fall_against(read.count, read.z, read.mean, target, same_u * u);
}

/* Actions that fall where their target rises were likely written from the other end; gaps that do so
 * beside them, too. Figures given as treble and bass have no end to begin at. */
static void find_order(const sil_job *job, const sil_reading *reading, const sil_tools *tools,
                       const sil_board *board, sil_odd_order *order)
{
    const sil_gaps *gaps = &reading->gaps;
    double action_u = sil_rectangular(tools->action), first_u = sil_rectangular(tools->first);
    order->fall = fall_of(board, gaps->action, job->targets.action, action_u);
    order->action = !reading->by_ends[SIL_MARKED_ACTION] &&
                    sil_above(order->fall, fmax(SIL_ORDER_ACTION, SIL_ORDER_U * action_u));
    double first = fall_of(board, gaps->first, job->targets.first, first_u);
    order->first = order->action && !reading->by_ends[SIL_MARKED_FIRST] &&
                   sil_above(first, SIL_ORDER_FIRST_U * first_u);
    order->fall = order->action ? order->fall : SIL_UNKNOWN;
}

void sil_job_odd(const sil_job *job, const sil_reading *reading, const sil_tools *tools,
                 const sil_board *board, sil_odd *odd)
{
    *odd = (sil_odd){.curve = -1, .curve_off = SIL_UNKNOWN};
    find_unlikely(job, reading, odd);
    find_off_line(tools, reading, board, odd);
    find_swapped(tools, reading, board, odd);
    find_off_others(tools, reading, job->string_count, odd);
    find_order(job, reading, tools, board, &odd->order);
}
