/* SPDX-License-Identifier: MIT */
/* The arithmetic alone: one part of a sheet's, run as often as asked. Two runs of different counts
 * tell what one costs, whatever reading the sheet costs. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../src/plan/plan.h"
#include <sillet/sillet.h>

static double run_cuts(const sil_plan *plan)
{
    sil_stages stages;
    sil_nut_work nut;
    sil_saddle_work saddle;
    sil_nut_given nut_given = {.seat_to_board = 6.5, .head_angle_deg = 14.0, .fall_share = 0.5};
    sil_saddle_given saddle_given = {.working = SIL_WORKING_BASE,
                                     .length = 72.0,
                                     .slot_depth = 5.0,
                                     .most_shim = 0.8,
                                     .shim_step = 0.1,
                                     .present_treble = 9.0,
                                     .present_bass = 10.0,
                                     .bridge_top_treble = SIL_UNKNOWN,
                                     .bridge_top_bass = SIL_UNKNOWN};
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        saddle_given.stands_out[i] = SIL_UNKNOWN;
    }
    sil_stages_run(&plan->bench, &stages);
    sil_nut_cut(&plan->bench, &stages, &nut_given, &nut);
    sil_saddle_cut(&plan->bench, &saddle_given, &stages, &saddle);
    return nut.first_pass[0] + saddle.first_pass[0];
}

static double run_clearance(const sil_plan *plan)
{
    static sil_clearance now;
    static sil_clearance after;
    const sil_board *board = &plan->bench.board;
    sil_clearance_find(board, &plan->stages.fit[SIL_NOW], &plan->pluck, &now);
    sil_clearance_find(board, &plan->stages.fit[SIL_SADDLE], &plan->pluck, &after);
    return now.force[0][0] + after.force[0][0];
}

static double run_lowest(const sil_plan *plan)
{
    sil_lowest lowest;
    sil_lowest_wish wish = {.most_relief = plan->job->limits.most_relief,
                            .least_first = plan->job->limits.least_first};
    const sil_board *board = &plan->bench.board;
    void *room = malloc(sil_lowest_room(board->strings, board->frets));
    memcpy(wish.force, plan->job->attack.force, sizeof wish.force);
    if (room) {
        sil_lowest_find(board, NULL, &plan->pluck, &wish, room, &lowest);
    }
    free(room);
    return room ? lowest.relief : SIL_UNKNOWN;
}

/* As the plan asks of each string: saddle alone, best pair, cents both ways. */
static double run_pitch(const sil_plan *plan)
{
    const sil_fit *fit = &plan->stages.fit[SIL_SADDLE];
    double sum = 0.0;
    for (int i = 0; i < plan->bench.board.strings; i++) {
        sil_pitch_string pitch = plan_pitch_string(plan, fit, i);
        sil_best_pair best = sil_best_pair_find(&pitch);
        sum += best.rms + sil_saddle_only(&pitch, 0.0);
        for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
            sum += sil_cents(&pitch, 2.0, 0.0, n);
            sum += sil_cents(&pitch, best.setback, best.advance, n);
        }
    }
    return sum;
}

typedef struct part {
    const char *name;
    double (*run)(const sil_plan *plan);
} part;

static const part parts[] = {{"cuts", run_cuts},
                             {"clearance", run_clearance},
                             {"compensation", run_pitch},
                             {"lowest", run_lowest}};

static const part *find_part(const char *name)
{
    for (size_t k = 0; k < sizeof parts / sizeof *parts; k++) {
        if (strcmp(name, parts[k].name) == 0) {
            return &parts[k];
        }
    }
    return NULL;
}

int main(int argc, char **argv)
{
    sil_sheet *sheet = NULL;
    const part *asked = argc == 4 ? find_part(argv[2]) : NULL;
    if (!asked || sil_sheet_read(argv[1], NULL, &sheet) < 0) {
        fputs("usage: arithmetic SHEET cuts|clearance|compensation|lowest TIMES\n", stderr);
        return 1;
    }
    sil_plan *plan;
    if (sil_plan_make(sil_sheet_job(sheet), &plan) != SIL_DONE) {
        return 1;
    }
    double sum = 0.0;
    for (long k = strtol(argv[3], NULL, 10); k > 0; k--) {
        sum += asked->run(plan);
    }
    printf("%g\n", sum);
    sil_plan_free(plan);
    sil_sheet_free(sheet);
    return 0;
}
