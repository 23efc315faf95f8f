/* SPDX-License-Identifier: MIT */
/* Lays out a job's figures for the stages. */
#include "check.h"

#include <string.h>

/* Defaults of a relief reading: over fret 7, or over the middle of a neck whose body joint is at
 * fret 7 or before; the string lying on crown 1 and on the body joint's. */
sil_relief_reading job_relief_laid(const sil_job *job, const sil_reading *reading)
{
    sil_relief_reading laid = reading->relief;
    int join = job->instrument.join;
    if (laid.over == 0) {
        laid.over = join > 7 ? 7 : (1 + join) / 2;
    }
    laid.low = laid.low != 0 ? laid.low : 1;
    laid.high = laid.high != 0 ? laid.high : join;
    return laid;
}

void sil_job_courses(const sil_job *job, int *course)
{
    course[0] = 0;
    for (int i = 1; i < job->string_count; i++) {
        int number = job->strings[i].course;
        bool joined = number > 0 && number == job->strings[i - 1].course;
        course[i] = course[i - 1] + !joined;
    }
}

/* Slots that are kept where they are: their distances across the board, from those along the nut.
 * On a fan a nut leans, by what its two ends differ along the board. */
static void keep_centres(const sil_job *job, double *nut_z)
{
    const sil_instrument *it = &job->instrument;
    int last = job->string_count - 1;
    double bass = sil_known(it->scale_bass) ? it->scale_bass : it->scale;
    double apart = (it->scale - bass) * (1.0 - exp2(-it->square / 12.0));
    double along = job->nut.centres[0] - job->nut.centres[last];
    double cosine = last > 0 ? sqrt(1.0 - apart * apart / (along * along)) : 1.0;
    for (int i = 0; i <= last; i++) {
        nut_z[i] = job->nut.centres[i] * cosine - job->nut.width / 2.0;
    }
}

void job_lay_board(const sil_job *job, sil_board *board)
{
    const sil_instrument *instrument = &job->instrument;
    double gauge[SIL_STRINGS_MAX], gap;
    memset(board, 0, sizeof *board);
    for (int i = 0; i < job->string_count; i++) {
        gauge[i] = job->strings[i].gauge;
    }
    board->strings = job->string_count;
    board->frets = instrument->frets;
    board->join = instrument->join;
    board->radius_nut = instrument->radius_nut;
    board->radius_end = instrument->radius_end;
    board->fallaway = instrument->fallaway;
    sil_job_courses(job, board->course);
    sil_courses courses = {job->string_count, board->course, job->nut.pair};
    sil_nut_centres(&courses, gauge, job->nut.width, job->nut.edge_treble, job->nut.edge_bass,
                    job->nut.spacing, board->nut_z, &gap);
    if (job_any_given(job->nut.centres, job->string_count)) {
        keep_centres(job, board->nut_z);
    }
    courses.pair = job->saddle.pair;
    sil_saddle_centres(&courses, job->saddle.spread, board->saddle_z);
    sil_fan fan = {instrument->scale, instrument->scale, instrument->square};
    if (sil_known(instrument->scale_bass)) {
        fan.bass = instrument->scale_bass;
    }
    sil_board_fan(board, &fan, job->saddle.setback);
}

void job_lay_crowns(const sil_reading *reading, sil_crowns *crowns)
{
    for (int i = 0; i < reading->crown_count; i++) {
        const sil_crown_off *crown = &reading->crowns[i];
        if (crown->fret > 0) { /* a zero fret is the nut, and none of the crowns */
            crowns->off[crown->string - 1][crown->fret] = crown->off;
        }
    }
}

static void lay_zero_fret(const sil_reading *reading, double *off)
{
    memset(off, 0, SIL_STRINGS_MAX * sizeof *off);
    for (int i = 0; i < reading->crown_count; i++) {
        const sil_crown_off *crown = &reading->crowns[i];
        if (crown->fret == 0) {
            off[crown->string - 1] = crown->off;
        }
    }
}

/* Which strings were heard to buzz, and whether any does at a fret before the one over which relief
 * is read, as on a neck that is too straight. */
static void hear(const sil_reading *reading, int relief_over, sil_standing *standing)
{
    for (int k = 0; k < reading->buzz_count; k++) {
        const sil_buzz *note = &reading->buzz[k];
        bool open = note->fret == 0;
        standing->buzz[note->string - 1] = true;
        standing->buzz_open[note->string - 1] = open || standing->buzz_open[note->string - 1];
        standing->buzz_low = standing->buzz_low || note->fret < relief_over;
    }
}

static bool rod_works(const sil_instrument *instrument)
{
    bool rod = instrument->rod == SIL_ROD_ONE_WAY || instrument->rod == SIL_ROD_TWO_WAY;
    return rod && (instrument->rod_state == SIL_ROD_WORKS ||
                   instrument->rod_state == SIL_ROD_STATE_NOT_GIVEN);
}

/* The graduation of one key at one visit; 0 where the key was not read in fractions there. */
static double graduation(const sil_job *job, int reading, sil_marked key)
{
    int finest = 0;
    if (job->readings[reading].marked[key] == 0) {
        return 0.0;
    }
    for (int k = 0; k < job->reading_count; k++) {
        int marked = job->readings[k].marked[key];
        finest = marked > finest ? marked : finest;
    }
    return sil_graduation(finest);
}

/* The coarser of a tool and of the scale it was read on; a tool that is not known stays so. */
static void coarsen(double *tool, double scale)
{
    *tool = scale > *tool ? scale : *tool;
}

sil_tools sil_job_tools(const sil_job *job, int reading)
{
    sil_tools tools = job->tools;
    bool there = job->readings && reading >= 0 && reading < job->reading_count;
    double *const of[SIL_MARKED] = {
        [SIL_MARKED_RELIEF] = &tools.relief,         [SIL_MARKED_ACTION] = &tools.action,
        [SIL_MARKED_FIRST] = &tools.first,           [SIL_MARKED_FIRST_OPEN] = &tools.first,
        [SIL_MARKED_SADDLE_HEIGHT] = &tools.caliper, [SIL_MARKED_BRIDGE_TOP] = &tools.caliper,
        [SIL_MARKED_STANDS_OUT] = &tools.ruler};
    for (int key = 0; key < SIL_MARKED && there; key++) {
        coarsen(of[key], graduation(job, reading, (sil_marked)key));
    }
    return tools;
}

void sil_job_bench(const sil_job *job, int reading, sil_bench *bench)
{
    bool there = reading >= 0 && reading < job->reading_count;
    sil_job_bench_read(job, reading, there ? &job->readings[reading] : NULL, bench);
}

void sil_job_bench_read(const sil_job *job, int reading, const sil_reading *read, sil_bench *bench)
{
    sil_reading empty;
    if (!read) {
        sil_reading_clear(&empty);
        read = &empty;
    }
    bench->crowns = (sil_crowns){0};
    job_lay_board(job, &bench->board);
    bench->relief = job_relief_laid(job, read);
    bench->board.relief_at = bench->relief.over;
    bench->gaps = read->gaps;
    job_lay_crowns(read, &bench->crowns);
    bench->targets = job->targets;
    bench->tools = sil_job_tools(job, reading);
    bench->rod_works = rod_works(&job->instrument);
    bench->rod_ratio = 1.0;
    bench->rod_spread = SIL_ROD_SPREAD;
    bench->wear_limit = job->limits.wear;
    bench->crown = job->instrument.crown;
    bench->least_crown = job->limits.least_crown;
    bool looked = read->crowns_read != SIL_CROWNS_NOT_READ;
    bench->looked_at = looked && (bench->relief.straightedge || bench->relief.gap > 0.0);
    bench->leave_slot = job->allowances.leave_slot;
    sil_working working = sil_saddle_working(job->saddle.kind, job->saddle.pitch);
    bench->leave_saddle =
        working == SIL_WORKING_TOP ? job->allowances.leave_top : job->allowances.leave_base;
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        bench->finish_slot[i] = bench->finish_saddle[i] = false;
        bench->attack[i] = bench->tension[i] = SIL_UNKNOWN;
    }
    bench->pluck_at = SIL_UNKNOWN;
    bench->shim_step = job->allowances.shim_step;
    bench->most_shim = job->limits.most_shim;
    bench->zero_fret = job->nut.kind == SIL_NUT_ZERO_FRET;
    lay_zero_fret(read, bench->zero_fret_off);
    bench->standing = (sil_standing){0};
    bench->fresh = (sil_fresh){0};
    hear(read, bench->relief.over, &bench->standing);
}
