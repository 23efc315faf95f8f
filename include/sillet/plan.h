/* SPDX-License-Identifier: MIT */
/* The plan: what is wrong, in which order to put it right, how much, and what must wait. */
#ifndef SILLET_PLAN_H
#define SILLET_PLAN_H

#include "core/clearance.h"
#include "job.h"
#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What a finding is about. sil_code_word gives the word scripts rely on. */
typedef enum sil_code {
    SIL_BACK_BOW,
    SIL_RELIEF_LOW,
    SIL_RELIEF_HIGH,
    SIL_RELIEF_UNKNOWN,
    SIL_ROD_LIMIT,
    SIL_FRET_WORN,
    SIL_FRET_HIGH,
    SIL_CROWN_THIN,
    SIL_CROWNS_UNREAD,
    SIL_SLOT_LOW,
    SIL_SLOT_HIGH,
    SIL_SADDLE_LOW,
    SIL_SADDLE_HIGH,
    SIL_PROTRUSION_LOW,
    SIL_PROTRUSION_HIGH,
    SIL_SEAT_SHALLOW,
    SIL_BREAK_ANGLE_LOW,
    SIL_NECK_ANGLE,
    SIL_CLIMATE,
    SIL_BRIDGE_LIFTED,
    SIL_BRACES_LOOSE,
    SIL_NOT_TUNED,
    SIL_READINGS_DISAGREE,
    SIL_TOOL_COARSE,
    SIL_FORECAST,
    SIL_ADJUST_LIMIT,
    SIL_EDGE_NARROW,
    SIL_TWIST,
    SIL_TECHNIQUE,
    SIL_UNEXPLAINED,
    SIL_ATTACK,
    SIL_STRING_UNKNOWN,
    SIL_STRING_STIFF,
    SIL_OFF_SADDLE,
    SIL_OFF_FORECAST,
    SIL_MOVED,
    SIL_ROD_UNKNOWN,
    SIL_WRONG_WAY,
    SIL_ZERO_FRET_LOW,
    SIL_ZERO_FRET_HIGH,
    SIL_CODES
} sil_code;

typedef enum sil_level {
    SIL_LEVEL_FINE,  /* good to know; nothing to do */
    SIL_LEVEL_WATCH, /* in order for now, or not certain */
    SIL_LEVEL_ACT,   /* a step puts it right */
    SIL_LEVEL_STOP   /* nothing is worked before it is put right */
} sil_level;

#define SIL_FINDINGS_MAX 192

typedef struct sil_finding {
    sil_code code;
    sil_level level;
    int string;           /* index, or -1 */
    int fret;             /* or -1 */
    double read;          /* the figure that raised it, in its own unit; may be unknown */
    double low, high;     /* the range or limit it was held against */
    sil_stage_name stage; /* that puts it right; SIL_NOW where none does */
} sil_finding;

/* A step of work. Which figures it carries is known from what it does. */
typedef enum sil_act {
    SIL_ACT_PREPARE, /* condition, strings, pitch, playing position, climate */
    SIL_ACT_STOP,    /* bridge or braces, climate: put right first */
    SIL_ACT_MEASURE_RELIEF,
    SIL_ACT_STRAIGHTEDGE, /* 0 under a string: straight or back-bowed */
    SIL_ACT_READ_CROWNS,
    SIL_ACT_MEASURE_FIRST,
    SIL_ACT_MEASURE_ACTION,
    SIL_ACT_READ_GAPS_AGAIN, /* held and open tell of different slots */
    SIL_ACT_MEASURE_CROWN,
    SIL_ACT_MEASURE_SADDLE,
    SIL_ACT_FIND_ROD,   /* nobody said whether there is one */
    SIL_ACT_ROD_BY_EAR, /* until a tap just pings, before it can be measured */
    SIL_ACT_NECK_BOW,   /* past all setting up, and no rod */
    SIL_ACT_ROD,
    SIL_ACT_READ_AGAIN, /* after the rod or the frets: everything */
    SIL_ACT_SEAT_FRETS,
    SIL_ACT_LEVEL_FRETS,
    SIL_ACT_NEW_FRETS,
    SIL_ACT_FILE_SLOTS,
    SIL_ACT_FILL_SLOT,
    SIL_ACT_SHIM_NUT,
    SIL_ACT_NEW_NUT,
    SIL_ACT_SAND_SADDLE,
    SIL_ACT_DRESS_SADDLE,
    SIL_ACT_SHIM_SADDLE,
    SIL_ACT_NEW_SADDLE,
    SIL_ACT_TURN_SCREWS,
    SIL_ACT_TURN_POSTS,
    SIL_ACT_BRIDGE_CURVE, /* what two posts cannot give a string */
    SIL_ACT_ZERO_FRET,
    SIL_ACT_NECK_ANGLE,
    SIL_ACT_NECK_SHIM,
    SIL_ACT_NECK_RESET,
    SIL_ACT_CHECK, /* tune, read again */
    SIL_ACTS
} sil_act;

#define SIL_STEPS_MAX 24

typedef struct sil_step {
    sil_stage_name stage;
    sil_act act;
} sil_step;

#define SIL_WITHHELD_MAX 16

/* Why a part may not be cut today. */
typedef struct sil_withheld {
    sil_code by[SIL_WITHHELD_MAX];
    int count;
} sil_withheld;

/* A piece to order, with its allowances, mm. */
typedef struct sil_blank {
    double length, thickness, height;
} sil_blank;

/* Why a note buzzes, by trying each remedy on the model. */
typedef enum sil_cause_name {
    SIL_CAUSE_RELIEF,
    SIL_CAUSE_CROWN,
    SIL_CAUSE_SLOT,
    SIL_CAUSE_SADDLE,
    SIL_REMEDIES,
    SIL_CAUSE_COMBINED = SIL_REMEDIES, /* several together */
    SIL_CAUSE_ATTACK,                  /* the targets do not carry this pick strength */
    SIL_CAUSE_TECHNIQUE,
    SIL_CAUSE_UNEXPLAINED
} sil_cause_name;

typedef struct sil_cause {
    int string, fret; /* string from 0; fret 0: open */
    bool heard;
    double clean_force;            /* as it is, N */
    double remedied[SIL_REMEDIES]; /* and after each remedy alone */
    sil_cause_name cause;
} sil_cause;

#define SIL_CAUSES_MAX (SIL_STRINGS_MAX * (SIL_FRETS_MAX + 1))

/* Where a string is to leave nut and saddle, on the last stage's heights. */
typedef struct sil_compensation {
    double saddle_only; /* setback, the nut as it is, mm */
    sil_best_pair best;
    double move;      /* change of setback by the cents read; unknown where none were */
    double off_slot;  /* saddle_only less the line the saddle stands on as built, mm */
    double stiffness; /* b of the string stopped at fret 12 */
    double as_built[SIL_PITCH_FRETS + 1]; /* cents, [1..12] */
    double at_best[SIL_PITCH_FRETS + 1];
} sil_compensation;

/* A visit: what was read, and what the plan of the visit before let expect. */
typedef struct sil_visit {
    int reading;                       /* its index in the job */
    bool worked[SIL_STAGES];           /* stages that plan asked for, taken as done */
    double relief;                     /* mm; as all here, unknown where not read */
    double read[SIL_STRINGS_MAX];      /* action at fret 12, open */
    double predicted[SIL_STRINGS_MAX]; /* the same as foretold for the relief now read; unknown at
                                          the first visit */
    double ratio; /* of the change foretold, what came; after the rod, of what an even bend gives.
                     Unknown where too little was to change */
    double apart; /* mean of read less predicted */
    bool unlike;  /* they differ by more than the tools explain */
} sil_visit;

/* The last so many visits are told and learned from. */
#define SIL_VISITS_MAX 100

/* What would give the saddle back its room, where it is stopped: the neck tilted back. What
 * it gives is unknown where it is not stopped, or the neck's own measures are not given. Advice,
 * never a cut. */
typedef struct sil_neck {
    /* How far the action wanted of a string goes past what its saddle can still give, mm; over 0:
     * it is stopped. Unknown where it does not come down, or no bound is known. */
    double short_by[SIL_STRINGS_MAX];
    double lift; /* how much higher the strings' line must come to pass the saddle, mm */
    double shim; /* at the body end of a bolt-on's pocket: pocket lift / (X - x_pocket) */
    double heel; /* off the heel's end of a set neck, running out at the board: heel lift/(X - x_J)
                  */
    int string;  /* the one that asks for most, or -1 */
} sil_neck;

/* A plan made: opaque. It points at the job it was made of, which must outlive it. What stands in
 * it is seen by the functions below; what they return lives as long as the plan. */
typedef struct sil_plan sil_plan;

/* sil_plan_make: the plan of a job.
 * Given:    job   checked without errors; must outlive the plan
 * Returned: plan  to be freed with sil_plan_free; NULL on error. While a part is withheld its work
 *                 is all unknown and its remedy to wait; what the stages hold is then a forecast
 * Status:   SIL_DONE or SIL_NO_MEMORY
 * Notes:    one allocation, no I/O.
 */
sil_status sil_plan_make(const sil_job *job, sil_plan **plan);

/* sil_plan_free: frees a plan; NULL is no matter. Drawings of it are to be freed before. */
void sil_plan_free(sil_plan *plan);

/* sil_plan_keep: leaves only the findings and steps of one stage in a plan, and what stops all
 * work.
 * Given:    plan   made
 *           stage  whose findings and steps are wanted
 * Returned: plan   everything else in it as it was
 */
void sil_plan_keep(sil_plan *plan, sil_stage_name stage);

/* sil_withheld_by: whether a part waits for this.
 * Given:    withheld  of a part
 *           code      any code; most withhold nothing
 */
bool sil_withheld_by(const sil_withheld *withheld, sil_code code);

/* --- what stands in a plan -------------------------------------------------------------------
 * All of these only look: what they return belongs to the plan and lives as long as it. Arrays of
 * strings count from 0 at string 1 and hold as many figures as the job has strings. Lengths are in
 * mm; what is not known is SIL_UNKNOWN. */

/* sil_plan_job: the job it was made of.
 * sil_plan_reading: the reading of it that counts, the last; NULL where nothing has been read.
 */
const sil_job *sil_plan_job(const sil_plan *plan);
const sil_reading *sil_plan_reading(const sil_plan *plan);

/* sil_plan_done: whether every reading is in its range and nothing is left to do. A buzz still
 * heard with all that right does not count.
 */
bool sil_plan_done(const sil_plan *plan);

/* sil_plan_bench: the instrument and its readings laid out as figures: board, gaps, targets, tools.
 * sil_plan_stages: the state each stage leaves, its verdicts and whole cuts, and how sure each is.
 * Notes:    the stages hold every cut, also one that must wait: ask sil_plan_nut_withheld and
 *           sil_plan_saddle_withheld before anything is cut by them
 */
const sil_bench *sil_plan_bench(const sil_plan *plan);
const sil_stages *sil_plan_stages(const sil_plan *plan);

/* sil_plan_nut_withheld, sil_plan_saddle_withheld: why the part may not be cut today.
 * Returned: count 0: it may be cut. sil_code_waits words each code
 */
const sil_withheld *sil_plan_nut_withheld(const sil_plan *plan);
const sil_withheld *sil_plan_saddle_withheld(const sil_plan *plan);

/* sil_plan_nut, sil_plan_saddle: the work at the part.
 * Returned: while the part is withheld its remedy is to wait and no figure one could cut to is
 * known
 */
const sil_nut_work *sil_plan_nut(const sil_plan *plan);
const sil_saddle_work *sil_plan_saddle(const sil_plan *plan);

/* sil_plan_nut_gap: the gap between string edges at the nut; unknown for equal steps from centre to
 * centre, and for one course.
 * sil_plan_slot_widths: the width to cut each nut slot to.
 */
double sil_plan_nut_gap(const sil_plan *plan);
const double *sil_plan_slot_widths(const sil_plan *plan);

/* sil_plan_nut_blank, sil_plan_saddle_blank: the piece to order for a new part, allowances counted
 * in.
 */
sil_blank sil_plan_nut_blank(const sil_plan *plan);
sil_blank sil_plan_saddle_blank(const sil_plan *plan);

/* sil_plan_neck: what tilting the neck back would have to give.
 * Returned: unknown unless the saddle has no more to give
 */
const sil_neck *sil_plan_neck(const sil_plan *plan);

/* sil_plan_unit_masses: of each string, kg/m.
 * sil_plan_pluck: the tension of each string, N, and where it is plucked: what clearances rest on.
 */
const double *sil_plan_unit_masses(const sil_plan *plan);
const sil_pluck *sil_plan_pluck(const sil_plan *plan);

/* sil_plan_clean_now, sil_plan_clean_after: how hard each note can be plucked before it buzzes, as
 * the instrument is and as the last stage leaves it.
 * Accuracy: as sil_clearance_find
 */
const sil_clearance *sil_plan_clean_now(const sil_plan *plan);
const sil_clearance *sil_plan_clean_after(const sil_plan *plan);

/* sil_plan_lowest: the lowest setup that still rings clean under the job's pick, on the crowns as
 * the frets stage leaves them; unknown where a tension is.
 * Accuracy: as sil_lowest_find
 */
const sil_lowest *sil_plan_lowest(const sil_plan *plan);

/* sil_plan_compensation: of each string, where it is to leave nut and saddle to play in tune.
 * sil_plan_slot_as_built, sil_plan_slot_best: setback over z, the straight saddle line nearest to
 * the setbacks built, and to those wanted with the nut as it is.
 * Accuracy: as sil_cents
 */
const sil_compensation *sil_plan_compensation(const sil_plan *plan);
sil_line sil_plan_slot_as_built(const sil_plan *plan);
sil_line sil_plan_slot_best(const sil_plan *plan);

/* Lists of a plan.
 * sil_plan_findings: what is wrong, or good to know, in the order it is told.
 * sil_plan_steps: the work, in the order of the bench.
 * sil_plan_causes: every note that was heard to buzz, or will under the job's pick, and why.
 * sil_plan_visits: the readings so far, oldest first, each with what the plan before it foretold.
 * Returned: count  how many there are, 0 or more
 *           the first of them, the others behind it; never NULL
 */
const sil_finding *sil_plan_findings(const sil_plan *plan, int *count);
const sil_step *sil_plan_steps(const sil_plan *plan, int *count);
const sil_cause *sil_plan_causes(const sil_plan *plan, int *count);
const sil_visit *sil_plan_visits(const sil_plan *plan, int *count);

/* What a person is shown as read, mm.
 * sil_relief_now: over the fret relief is told at.
 * sil_first_now:  at fret 1, held as its target is.
 * sil_action_now: at fret 12, open.
 * Given:    string  from 0
 * Returned: from the heights; where none follow, the gap as read, if read in this form (0: at or
 *           under); else unknown
 */
double sil_relief_now(const sil_plan *plan);
double sil_first_now(const sil_plan *plan, int string);
double sil_action_now(const sil_plan *plan, int string);

/* What a step asks to dress off the saddle's top, and what it leaves on because so little is inside
 * the feel of a file, mm: together what the stages count as dressed.
 * Given:    string  from 0
 * Returned: 0 of a new saddle, and where it is not known
 */
double sil_dressed_off(const sil_plan *plan, int string);
double sil_left_on(const sil_plan *plan, int string);

/* sil_action_after: the action at fret 12, open, to be read when all steps are done, mm: that of
 * the last stage, and what is left on. */
double sil_action_after(const sil_plan *plan, int string);

/* sil_code_word, sil_level_word, sil_stage_word, sil_cause_word: the word a script knows it by, as
 * in the result.
 * Returned: fixed text, not to be freed; one word keeps its meaning within a major version
 */
const char *sil_code_word(sil_code code);
const char *sil_level_word(sil_level level);
const char *sil_stage_word(sil_stage_name stage);
const char *sil_cause_word(sil_cause_name cause);
const char *sil_act_word(sil_act act);

#ifdef __cplusplus
}
#endif
#endif
