/* SPDX-License-Identifier: MIT */
/* The arithmetic alone: a sheet's stages and cuts, run as often as asked. Two runs of different
 * counts tell what one costs, whatever reading the sheet costs. */
#include <stdio.h>
#include <stdlib.h>

#include <sillet/sillet.h>

static double run_once(const sil_plan *plan)
{
    sil_stages stages;
    sil_nut_work nut;
    sil_saddle_work saddle;
    sil_nut_make nut_make = {.seat_to_board = 6.5,
                             .head_angle_deg = 14.0,
                             .fall_share = 0.5,
                             .most_shim = 0.8,
                             .shim_step = 0.1};
    sil_saddle_make saddle_make = {.kind = SIL_SADDLE_SLOTTED,
                                   .length = 72.0,
                                   .slot_depth = 5.0,
                                   .most_shim = 0.8,
                                   .shim_step = 0.1,
                                   .present_treble = 9.0,
                                   .present_bass = 10.0,
                                   .bridge_top_treble = SIL_UNKNOWN,
                                   .bridge_top_bass = SIL_UNKNOWN};
    sil_stages_run(&plan->bench, &stages);
    sil_nut_cut(&plan->bench, &stages, &nut_make, &nut);
    sil_saddle_cut(&plan->bench, &saddle_make, &stages, &saddle);
    return nut.first_pass[0] + saddle.first_pass[0];
}

int main(int argc, char **argv)
{
    sil_sheet *sheet = NULL;
    if (argc != 3 || sil_sheet_read(argv[1], NULL, &sheet) < 0) {
        fputs("usage: arithmetic SHEET TIMES\n", stderr);
        return 1;
    }
    static sil_plan plan;
    sil_plan_make(sil_sheet_job(sheet), &plan);
    double sum = 0.0;
    for (long k = strtol(argv[2], NULL, 10); k > 0; k--) {
        sum += run_once(&plan);
    }
    printf("%g\n", sum);
    sil_sheet_free(sheet);
    return 0;
}
