/* SPDX-License-Identifier: MIT */
/* The plan as the rooms above it see it, and within the plan its parts in the order they run. */
#ifndef SILLET_PLAN_PARTS_H
#define SILLET_PLAN_PARTS_H

#include <sillet/plan.h>

/* A plan. Nothing in it points into itself: a copy is a plan of its own, of the same job. */
struct sil_plan {
    const sil_job *job;
    int reading;    /* index of the reading that counts, or -1: none */
    int only_stage; /* the stage whose findings and steps are left, or -1: all */
    bool done;      /* every reading is in its range and nothing is left to do */
    int finding_count, step_count, cause_count, visit_count;
    sil_bench bench;
    sil_stages stages;
    double unit_mass_kg_m[SIL_STRINGS_MAX];
    sil_withheld nut_withheld, saddle_withheld;
    double nut_gap; /* between string edges at the nut, mm; unknown for equal centres */
    double slot_width[SIL_STRINGS_MAX]; /* to cut, mm */
    sil_nut_work nut;
    sil_blank nut_blank;
    sil_saddle_work saddle;
    sil_blank saddle_blank;
    sil_neck neck;
    double finer_first, finer_action;     /* what plan_finer_tool gives */
    sil_pluck pluck;                      /* with the tension of each string */
    sil_clearance clean_now, clean_after; /* on the first and the last stage */
    sil_lowest lowest;                    /* unknown where a tension is */
    sil_compensation compensation[SIL_STRINGS_MAX];
    sil_line slot_as_built; /* setback over z: the straight line nearest to the setbacks built */
    sil_line slot_best;     /* and to those wanted, the nut as it is */

    /* Lists, of which only so many as counted above are filled. They stand last: nothing clears
     * them. */
    sil_finding findings[SIL_FINDINGS_MAX];
    sil_step steps[SIL_STEPS_MAX];
    sil_cause causes[SIL_CAUSES_MAX];
    sil_visit visits[SIL_VISITS_MAX]; /* oldest first; one a reading */
};

/* Fills nut_withheld and saddle_withheld, takes the withheld work back and marks its stages. */
void plan_withhold(sil_plan *plan);

/* From one reading through the stages to the work at nut and saddle: all that a visit rests on.
 * ratio, spread: of the neck, as in sil_bench. */
void plan_work(const sil_job *job, int reading, double ratio, double spread, sil_plan *plan);

/* The same from the bench that is laid in plan already. */
void plan_work_bench(const sil_job *job, int reading, sil_plan *plan);

/* Works every visit, oldest first, each with what those before taught of the neck. Left in plan:
 * the work of the last, and the visits. other: a second plan to work them in, which may be as
 * malloc gives it. */
void plan_visits(sil_plan *plan, sil_plan *other);
void plan_find_visits(sil_plan *plan);
/* What a tilted neck would have to give, where the saddle is stopped. */
void plan_lift(sil_plan *plan);

/* Where a string still stands once a bridge's two posts are at their best: over its range SIL_TAKE,
 * under it SIL_RAISE; SIL_LEAVE in it, and for any other bridge. */
sil_verdict plan_curve_at(const sil_plan *plan, int string);

/* Whether a zero fret's crown is too high under a string. Too low it is by a buzz alone: level with
 * its neighbours it leaves next to no gap, and rings as any fret does. */
bool plan_zero_fret_high(const sil_plan *plan, int string);

/* room: for the lowest setup, as sil_lowest_room says. */
void plan_ring(sil_plan *plan, void *room);
void plan_tune(sil_plan *plan);
void plan_find(sil_plan *plan);
void plan_find_tone(sil_plan *plan);

/* A new finding at the end of the plan's, of no string, no fret and no figure yet. */
sil_finding *plan_found(sil_plan *plan, sil_code code, sil_level level);

/* A new finding with the figure that raised it and the range or limit it was held against. */
void plan_found_figure(sil_plan *plan, sil_code code, sil_level level, sil_stage_name stage,
                       int string, double read, sil_band range);

void plan_order(sil_plan *plan);

/* Whether a line off the saddle's base is anything a person could take: a hundredth at an end. */
bool plan_takes_anything(const sil_plan *plan, sil_line line);

/* What the action (saddle) or the gap at fret 1 (nut) would have to be read to, plus or minus, for
 * every cut that the tools are too coarse for to get a first pass; unknown where no tool does, or
 * no cut is too small for the tools there are. plan_look_finer finds both. */
double plan_finer_tool(const sil_plan *plan, sil_stage_name stage);
void plan_look_finer(sil_plan *plan, sil_plan *tried);

/* Whether anything of the instrument's state stops all work: bridge, braces, pitch, climate. */
bool plan_stopped(const sil_plan *plan);

/* The saddle would stand too low out of the bridge, on readings that hold: nothing but that keeps
 * it from being cut. On a forecast it may yet come right. */
bool plan_sinks_too_low(const sil_plan *plan);

/* Whether a held gap and an open one of the same string tell of different slots: one is wrong. */
bool plan_gaps_apart(const sil_plan *plan, int string);

/* Relief out of its range, and nobody said whether there is a rod to mend it. */
bool plan_rod_unknown(const sil_plan *plan);

/* Relief past all setting up, and no rod to mend it. */
bool plan_bowed_for_good(const sil_plan *plan);

/* Relief read as 0 under a string: straight or back-bowed, a string cannot tell. */
bool plan_relief_at_nought(const sil_plan *plan);

#endif
