/* SPDX-License-Identifier: MIT */
/* The plan: what is wrong, the order in which to put it right, how much to do, and what must wait.
 */
#ifndef SILLET_PLAN_H
#define SILLET_PLAN_H

#include "core/clearance.h"
#include "found.h"
#include "job.h"
#include "status.h"
#include "tuning.h"

#ifdef __cplusplus
extern "C" {
#endif

#define SIL_WITHHELD_MAX 24

/* Why a part may not be cut today. */
typedef struct sil_withheld {
    sil_code by[SIL_WITHHELD_MAX];
    int count;
} sil_withheld;

/* The size of blank to order for a new part, with allowances, mm. */
typedef struct sil_blank {
    double length, thickness, height;
} sil_blank;

/* Why a note buzzes, found by trying each remedy on the model. */
typedef enum sil_cause_name {
    SIL_CAUSE_RELIEF,
    SIL_CAUSE_CROWN,
    SIL_CAUSE_SLOT,
    SIL_CAUSE_SADDLE,
    SIL_REMEDIES,
    SIL_CAUSE_COMBINED = SIL_REMEDIES, /* no remedy alone, but all the work of this plan helps */
    SIL_CAUSE_ATTACK,                  /* the targets are too low for this pick strength */
    SIL_CAUSE_TECHNIQUE,
    SIL_CAUSE_UNEXPLAINED,
    SIL_CAUSE_TOO_CLOSE, /* it rings clean by the readings, but by little more than the pick */
    SIL_CAUSE_TARGETS    /* it rings clean at the targets, to which this plan does not bring it */
} sil_cause_name;

typedef struct sil_cause {
    int string, fret;              /* string from 0; fret 0: open */
    bool heard;                    /* the buzz was heard; otherwise it is expected */
    double clean_force;            /* the hardest clean pluck now, N */
    double remedied[SIL_REMEDIES]; /* the same after each remedy alone */
    sil_cause_name cause;
    bool likely; /* it rings clean by the readings: the cause is the one of them farthest out */
} sil_cause;

#define SIL_CAUSES_MAX (SIL_STRINGS_MAX * (SIL_FRETS_MAX + 1))

/* Where a string should leave the nut and saddle, with the heights after the last stage. */
typedef struct sil_compensation {
    double saddle_only; /* best setback without changing the nut, mm */
    sil_best_pair best;
    double move; /* change of setback by the cents read, from lengths alone, mm; unknown where
                         none were read */
    double
        off_slot; /* the setback in tune at fret 12, by the cents read, else saddle_only, less that
                         of the present saddle line, mm; unknown where only an assumed core tells it
                       */
    double stiffness;                     /* b of the string fretted at 12 */
    double as_built[SIL_PITCH_FRETS + 1]; /* cents, [1..12] */
    double at_best[SIL_PITCH_FRETS + 1];
} sil_compensation;

/* A visit: what was read, and what the plan of the visit before predicted. */
typedef struct sil_visit {
    int reading;                       /* its index in the job */
    bool worked[SIL_STAGES];           /* stages with work in that plan, taken as done */
    double relief;                     /* mm; here and below unknown where not read */
    double read[SIL_STRINGS_MAX];      /* action at fret 12, open */
    double predicted[SIL_STRINGS_MAX]; /* the same as predicted, for the relief read at this visit;
                                          unknown at the first visit */
    double ratio; /* the change read, divided by the change predicted; after a turn of the rod, by
                     the change that an even bend gives. Unknown where little was to change */
    double apart; /* mean of read less predicted, mm */
    bool unlike;  /* they differ by more than the tools explain */
} sil_visit;

/* Why a saddle cannot come down far enough. */
typedef enum sil_short_cause {
    SIL_NOT_SHORT,
    SIL_SHORT_RELIEF, /* relief that no rod can take out */
    SIL_SHORT_BOTH,   /* that in part, and the angle of the neck */
    SIL_SHORT_BRIDGE, /* a floating bridge: its notches, then its feet */
    SIL_SHORT_ANGLE   /* the angle of the neck */
} sil_short_cause;

/* How many visits a plan looks back. */
#define SIL_VISITS_MAX 100

/* How far the neck must be tilted back where a saddle cannot come down far enough. Its lift, shim
 * and heel are unknown where the saddle can come down far enough, or where the dimensions of the
 * neck are not given. This is advice, and never a cut. */
typedef struct sil_neck {
    /* Short of work on the neck: a saddle in a slot can go as far down as it may stand out, which
     * leaves the strings too high. half_action: the action at fret 12 then; half_out: how far the
     * saddle then stands out of the bridge; half_break_deg: the break angle then. Unknown where the
     * saddle can come down far enough, or where that brings too little. Never ordered. */
    double half_action[SIL_STRINGS_MAX], half_out[SIL_STRINGS_MAX], half_break_deg[SIL_STRINGS_MAX];
    double accepted; /* what a bow that is left as it is costs of the action at fret 12, mm; unknown
                        where there is none over its range, or it is not left */
    /* How far the saddle falls short of the string's target action, mm. Over 0: the saddle cannot
     * come down far enough. Unknown where the string does not come down, or no limit is known. */
    double short_by[SIL_STRINGS_MAX];
    sil_short_cause cause; /* why the saddle cannot come down far enough */
    double explains;       /* how much farther it would reach with the neck's relief at its target,
                              where that is a cause, mm at the saddle */
    double lift;    /* how much higher the neck's line must pass the saddle, mm: so that the saddle
                    then stands out by good_protrusion, or the screws are in the middle of their
                    travel; where how far they go up is not known, only what is missing */
    double degrees; /* the angle that tilts the neck by so much */
    double shim;    /* at the body end of a bolt-on neck's pocket: pocket lift / (X - x_pocket) */
    double heel;    /* off the end of a set neck's heel, tapering to nothing at the board:
                    heel lift / (X - x_J) */
    int string;     /* the string that needs most, or -1 */
} sil_neck;

/* A plan. It refers to its job, which must outlive it. The functions below read it, and what they
 * return lives as long as the plan. */
typedef struct sil_plan sil_plan;

/* sil_plan_make: makes the plan of a job.
 * Given:    job   checked without errors; must outlive the plan
 * Returned: plan  to be freed with sil_plan_free; NULL on error. Where a part is withheld, its
 *                 remedy is to wait and its figures are unknown; its stages are then a forecast
 * Status:   SIL_DONE or SIL_NO_MEMORY
 * Notes:    makes one allocation, and no input or output
 */
sil_status sil_plan_make(const sil_job *job, sil_plan **plan);

/* sil_plan_free: frees a plan; NULL is allowed. Its briefs and drawings must be freed before. */
void sil_plan_free(sil_plan *plan);

/* sil_plan_keep: keeps only the findings and steps of one stage in a plan, and those that stop all
 * work.
 * Given:    plan   made
 *           stage  the stage to keep
 * Returned: plan   everything else in it is unchanged
 */
void sil_plan_keep(sil_plan *plan, sil_stage_name stage);

/* sil_withheld_by: whether a part waits because of one kind of finding.
 * Given:    withheld  of the part
 *           code      of the finding
 */
bool sil_withheld_by(const sil_withheld *withheld, sil_code code);

/* --- reading a plan --------------------------------------------------------------------------
 * None of these functions changes the plan. What they return belongs to the plan and lives as long
 * as it does. Arrays have one figure for each string of the job, and index 0 is string 1. Lengths
 * are in mm. What is not known is SIL_UNKNOWN. */

/* sil_plan_job: the job that the plan was made from.
 * sil_plan_reading: the reading that the plan uses, the last one; NULL where there is none.
 */
const sil_job *sil_plan_job(const sil_plan *plan);
const sil_reading *sil_plan_reading(const sil_plan *plan);

/* sil_plan_done: whether every reading is in its target range and there is no work left.
 * Notes:    a buzz that is still heard then does not change the answer
 */
bool sil_plan_done(const sil_plan *plan);

/* sil_plan_bench: the instrument and its readings as figures: board, gaps, targets and tools.
 * sil_plan_stages: for each stage, the instrument after it, its verdicts, its whole cuts and their
 *                  uncertainties.
 * Notes:    the stages also have cuts that must wait. Before cutting anything by them, look at
 *           sil_plan_nut_withheld and sil_plan_saddle_withheld.
 */
const sil_bench *sil_plan_bench(const sil_plan *plan);
const sil_stages *sil_plan_stages(const sil_plan *plan);

/* sil_plan_nut_withheld, sil_plan_saddle_withheld: why the part may not be cut today.
 * Returned: with a count of 0, it may be cut; sil_code_waits gives the words for each code
 */
const sil_withheld *sil_plan_nut_withheld(const sil_plan *plan);
const sil_withheld *sil_plan_saddle_withheld(const sil_plan *plan);

/* sil_plan_nut, sil_plan_saddle: the work at the part.
 * Returned: while the part is withheld, its remedy is to wait, and every figure that someone could
 *           cut to is unknown
 */
const sil_nut_work *sil_plan_nut(const sil_plan *plan);
const sil_saddle_work *sil_plan_saddle(const sil_plan *plan);

/* sil_plan_tuning: what is done to bring the strings into tune.
 * Returned: while it waits, what someone could move by is unknown
 */
const sil_tuning *sil_plan_tuning(const sil_plan *plan);

/* sil_plan_nut_gap: the gap between string edges at the nut; unknown where the strings are spaced
 *                   evenly by their centres, and for one course.
 * sil_plan_slot_widths: the width to cut each nut slot to.
 */
double sil_plan_nut_gap(const sil_plan *plan);
const double *sil_plan_slot_widths(const sil_plan *plan);

/* sil_plan_nut_blank, sil_plan_saddle_blank: the size of blank to order for a new part, including
 * allowances.
 */
sil_blank sil_plan_nut_blank(const sil_plan *plan);
sil_blank sil_plan_saddle_blank(const sil_plan *plan);

/* The crown that a zero fret is to have, before it is dressed down to each string's gap. */
typedef struct sil_zero_fret {
    double over, over_u; /* over the line of the other crowns, where the most is wanted, mm, and its
                                standard uncertainty */
    double height, height_u; /* the same over the board: the height of a new fret */
} sil_zero_fret;

/* sil_plan_zero_fret: what a zero fret that is too low is to be raised to.
 * Returned: unknown where there is none, or it is not too low; the heights are unknown where the fret
 *           height is
 * Accuracy: as sil_new_slot_over
 */
sil_zero_fret sil_plan_zero_fret(const sil_plan *plan);

/* sil_plan_neck: how far the neck would have to be tilted back.
 * Returned: unknown unless the saddle cannot come down far enough
 */
const sil_neck *sil_plan_neck(const sil_plan *plan);

/* sil_plan_unit_masses: the mass of each string, kg/m.
 * sil_plan_pluck: the tension of each string, N, and where it is plucked. Clearances are computed
 *                 from these.
 */
const double *sil_plan_unit_masses(const sil_plan *plan);
const sil_pluck *sil_plan_pluck(const sil_plan *plan);

/* sil_plan_core_assumed: whether figures of a string stand on a typical core, because its own is
 *                        not known: its stiffness, and its tension where no mass was given.
 * Given:    string  from 0
 * Notes:    then they are told, but nothing is cut by them
 */
bool sil_plan_core_assumed(const sil_plan *plan, int string);

/* sil_plan_clean_now, sil_plan_clean_after: how hard each note can be plucked before it buzzes, now
 * and after the last stage.
 * Accuracy: as sil_clearance_find
 */
const sil_clearance *sil_plan_clean_now(const sil_plan *plan);
const sil_clearance *sil_plan_clean_after(const sil_plan *plan);

/* sil_plan_lowest: the lowest set-up that still rings clean at the job's pick strength, on the
 * crowns as they are after the frets stage.
 * Returned: unknown where a tension is unknown
 * Accuracy: as sil_lowest_find
 */
const sil_lowest *sil_plan_lowest(const sil_plan *plan);

/* sil_plan_compensation: for each string, where it should leave the nut and saddle to play in tune.
 * sil_plan_slot_as_built: the straight saddle line nearest to the present setbacks, over z.
 * sil_plan_slot_best: the straight saddle line nearest to the setbacks in tune without changing the
 *                     nut, over z.
 * Accuracy: as sil_cents
 */
const sil_compensation *sil_plan_compensation(const sil_plan *plan);
sil_line sil_plan_slot_as_built(const sil_plan *plan);
sil_line sil_plan_slot_best(const sil_plan *plan);

/* sil_plan_findings: what is wrong or good to know, in the order in which it is shown.
 * sil_plan_steps: the work, in the order in which it is done.
 * sil_plan_causes: every note that was heard to buzz, or will buzz at the job's pick strength, and
 *                  why.
 * sil_plan_visits: the readings so far, oldest first, with what the plan before each predicted.
 * Returned: count  how many there are, 0 or more
 *           an array of them; never NULL
 */
const sil_finding *sil_plan_findings(const sil_plan *plan, int *count);
const sil_step *sil_plan_steps(const sil_plan *plan, int *count);
const sil_cause *sil_plan_causes(const sil_plan *plan, int *count);
const sil_visit *sil_plan_visits(const sil_plan *plan, int *count);

/* sil_relief_now: the present relief, at fret relief_at of the board.
 * sil_first_now:  the present gap at fret 1, with the string held as in its target.
 * sil_action_now: the present action of the open string at fret 12.
 * Given:    string  from 0
 * Returned: mm, from the heights. Where the heights are unknown: the gap as read, if it was read in
 *           this way (0: the string touches), otherwise unknown. A gap and an action are never negative: a
 *           string whose line would pass below a crown lies on it
 */
double sil_relief_now(const sil_plan *plan);
double sil_first_now(const sil_plan *plan, int string);
double sil_action_now(const sil_plan *plan, int string);

/* sil_dressed_off: how much a step dresses off the saddle's top.
 * sil_left_on:     how much of that is left on, because it is too little to file (SIL_LEAST_DRESSED)
 *                  and what the bottom loses has brought the string into its range.
 * Given:    string  from 0
 * Returned: mm; 0 for a new saddle, and where it is not known
 * Notes:    the stages count the sum of the two as dressed off
 */
double sil_dressed_off(const sil_plan *plan, int string);
double sil_left_on(const sil_plan *plan, int string);

/* sil_action_after: the action of the open string at fret 12 to expect when all steps are done.
 * Given:    string  from 0
 * Returned: mm: the action after the last stage, raised by what sil_left_on leaves; with its curve,
 *           too, where a bridge on two posts needs one
 */
double sil_action_after(const sil_plan *plan, int string);

/* The tools of a sheet. */
typedef enum sil_tool {
    SIL_TOOL_ACTION,
    SIL_TOOL_FIRST,
    SIL_TOOL_RELIEF,
    SIL_TOOL_CALIPER,
    SIL_TOOLS
} sil_tool;

/* sil_hear_pair: a function that receives one pair of sil_plan_pairs.
 * Given:    with           as given to sil_plan_pairs
 *           before, after  the same thing as read at two visits, mm
 */
typedef void sil_hear_pair(void *with, sil_tool tool, double before, double after);

/* sil_plan_pairs: finds what was read at two visits one after the other and not worked between
 * them, so that the readings differ only by what the tool reads to.
 * Given:    job   checked without errors
 *           hear  called for every pair, oldest first
 * Status:   SIL_DONE or SIL_NO_MEMORY
 * Notes:    the work that the plan of a visit called for is taken as done. Nothing is compared
 *           where humidity differs by over 5 % or was not read, where the strings were not at
 *           pitch, or where it was read in another way
 */
sil_status sil_plan_pairs(const sil_job *job, sil_hear_pair *hear, void *with);

/* sil_tool_word: the tool's key in a sheet; lives for good. */
const char *sil_tool_word(sil_tool tool);

/* sil_stage_word, sil_cause_word: the word for it in the result, for scripts.
 * Returned: fixed text, not to be freed; a word keeps its meaning within a major version
 */
const char *sil_stage_word(sil_stage_name stage);
const char *sil_cause_word(sil_cause_name cause);

#ifdef __cplusplus
}
#endif
#endif
