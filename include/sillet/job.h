/* SPDX-License-Identifier: MIT */
/* A job: one instrument, what was read on it and what is wanted, as plain data.
 *
 * A measuring sheet, a quick question or a C program fills it. Nothing here is owned: texts and
 * lists belong to whoever filled the job and must outlive it. A double not given is SIL_UNKNOWN,
 * an int not given 0, a text NULL, an enum its first word. Lengths in mm.
 *
 * A field is named by its path in a sheet, lists counted from 0: "readings.0.action.2".
 */
#ifndef SILLET_JOB_H
#define SILLET_JOB_H

#include "core/fit.h"
#include "core/nut.h"
#include "core/pitch.h"
#include "core/saddle.h"
#include "core/tension.h"

#ifdef __cplusplus
extern "C" {
#endif

#define SIL_FILES_MAX 64
#define SIL_READINGS_MAX 1000

typedef struct sil_about {
    const char *title, *ref, *owner, *by, *date, *notes;
} sil_about;

typedef enum sil_rod { SIL_ROD_NOT_GIVEN, SIL_ROD_NONE, SIL_ROD_ONE_WAY, SIL_ROD_TWO_WAY } sil_rod;
typedef enum sil_rod_state {
    SIL_ROD_STATE_NOT_GIVEN, /* taken as works */
    SIL_ROD_WORKS,
    SIL_ROD_SLACK,
    SIL_ROD_AT_END,
    SIL_ROD_STUCK
} sil_rod_state;
typedef enum sil_hand { SIL_RIGHT_HANDED, SIL_LEFT_HANDED } sil_hand;

typedef struct sil_instrument {
    double scale;      /* of string 1 */
    double scale_bass; /* of the last string; unknown: the same */
    int square;        /* of two scales: the fret square to the centre line; 0: the nut */
    int frets, join;
    double radius_nut, radius_end; /* INFINITY: flat */
    double crown, fallaway, head_angle_deg;
    double pocket;    /* length of a bolt-on neck's pocket along the neck */
    double pocket_at; /* from the nut to where it begins; unknown: at the body join */
    double heel; /* of a neck that is not bolted on: board's underside to the end of its heel */
    sil_rod rod;
    sil_rod_state rod_state;
    sil_hand handed;
} sil_instrument;

typedef struct sil_string {
    const char *note; /* as written, or NULL */
    double hz;        /* from the note, or as given */
    double gauge;
    sil_material material;
    double core;
    double unit_mass_kg_m;
    double modulus_gpa; /* of the core */
    int course;         /* neighbours of one number are a course; 0: a course of its own */
} sil_string;

typedef enum sil_nut_kind { SIL_NUT_SLOTTED, SIL_NUT_ZERO_FRET } sil_nut_kind;

typedef struct sil_job_nut {
    sil_nut_kind kind;
    double width, thickness;
    double edge_treble, edge_bass; /* board edge to the outer edge of strings 1 and N */
    double advance;                /* front face moved toward the saddle, + shorter */
    double seat_to_board;          /* board surface over the nut's seat, on the centre line */
    double pair;                   /* centres inside a course */
    sil_spacing spacing;
    const char *material;
} sil_job_nut;

typedef struct sil_job_saddle {
    sil_saddle_kind kind;
    double length, thickness;
    double spread;                        /* centre to centre of the outer strings */
    double setback[SIL_STRINGS_MAX];      /* behind the scale, + longer */
    double slot_depth, pickup;            /* of the bridge; of what lies under the saddle */
    double pin_distance[SIL_STRINGS_MAX]; /* unknown: not anchored in the bridge */
    double exit_height;                   /* 0 unless given */
    double pitch;                         /* travel of a screw or wheel in one turn */
    double travel;      /* how far screws, posts or wheels can still go down; unknown: no bound */
    double post_spread; /* from post to post */
    double pair;        /* centres inside a course */
    const char *material;
} sil_job_saddle;

typedef enum sil_soundness { SIL_SOUNDNESS_NOT_GIVEN, SIL_SOUND, SIL_UNSOUND } sil_soundness;

typedef struct sil_condition {
    sil_soundness bridge;  /* unsound: lifted */
    sil_soundness braces;  /* unsound: loose */
    sil_soundness strings; /* unsound: worn */
    sil_soundness tuned;   /* unsound: not at pitch */
} sil_condition;

typedef enum sil_crowns_read {
    SIL_CROWNS_NOT_READ,
    SIL_CROWNS_SOUND, /* looked at, none off */
    SIL_CROWNS_LISTED /* those not listed are sound */
} sil_crowns_read;

typedef struct sil_crown_off {
    int string, fret; /* string from 1, as on the bench */
    double off;       /* - dent, + proud, mm */
} sil_crown_off;

typedef struct sil_buzz {
    int string, fret; /* string from 1; fret 0 is the open string */
} sil_buzz;

typedef struct sil_reading {
    const char *date, *notes;
    double humidity_pct, temperature_c;
    sil_condition condition;
    sil_relief_reading relief; /* gap unknown: not read. string from 0, -1 none */
    sil_gaps gaps;
    sil_crowns_read crowns_read;
    const sil_crown_off *crowns;
    int crown_count;
    double saddle_height_treble, saddle_height_bass;
    double bridge_top_treble, bridge_top_bass;
    const sil_buzz *buzz;
    int buzz_count;
    double cents[SIL_STRINGS_MAX]; /* at fret 12 against the open string's octave, + sharp */
} sil_reading;

typedef struct sil_model {
    sil_ends ends;
    double press; /* behind the fret, mm */
} sil_model;

typedef struct sil_attack {
    const char *name;              /* light, medium or firm; NULL where newtons are given */
    double force[SIL_STRINGS_MAX]; /* N, square to the board */
    double at;                     /* from the saddle, mm */
} sil_attack;

typedef struct sil_limits {
    double wear, least_crown; /* a crown off its line; a crown's height */
    double least_protrusion, most_protrusion, least_break_deg; /* of the saddle out of the bridge */
    double least_in_slot;                                      /* share of the saddle, 0..1 */
    double most_shim, most_relief, least_first;
    double humidity_low_pct, humidity_high_pct;
} sil_limits;

typedef struct sil_allowances {
    double slot_plain, slot_wound; /* over the gauge */
    double bury_plain, bury_wound; /* share of the gauge */
    double fall_share, shim_step;
    double band_relief, band_action, band_first; /* each way of a target given as one value */
    double blank_length, blank_thickness, blank_height;
} sil_allowances;

/* What a figure of a kind of instrument is likely to be. */
typedef struct sil_plausible {
    const char *path; /* without list places: "strings.gauge" */
    double low, high;
} sil_plausible;

typedef struct sil_job {
    sil_unit units;
    sil_about about;
    const char *profile;
    sil_instrument instrument;
    int string_count;
    sil_string strings[SIL_STRINGS_MAX];
    sil_job_nut nut;
    sil_job_saddle saddle;
    double files[SIL_FILES_MAX];
    int file_count;
    const sil_reading *readings; /* oldest first; the last counts */
    int reading_count;
    sil_targets targets;
    sil_model model;
    sil_attack attack;
    sil_tools tools;
    sil_limits limits;
    sil_allowances allowances;
    sil_material_constants materials[SIL_MATERIALS];
    const sil_plausible *plausible; /* over the built-in ranges */
    int plausible_count;
} sil_job;

/* sil_job_clear: an empty job.
 * Returned: job  nothing given, and what docs/sheet.md gives as "unless given"
 */
void sil_job_clear(sil_job *job);

/* sil_reading_clear: an empty reading.
 * Returned: reading  nothing read; action at 12, first gap held at 3
 * Notes:    one filled with noughts instead would say that every string lies on its fret
 */
void sil_reading_clear(sil_reading *reading);

typedef enum sil_severity { SIL_WARNING, SIL_ERROR } sil_severity;

/* sil_tell: receives one complaint of a check.
 * Given:    path    of the field ("instrument.join"); where it is missing, its path all the same
 *           wanted  one line, no end of line: what was wanted, and the likely slip if there is one
 *           with    as handed to the check
 */
typedef void sil_tell(void *with, sil_severity severity, const char *path, const char *wanted);

/* sil_job_check: looks for what cannot be, what is missing and what is unlikely.
 * Given:    job   filled
 *           tell  called for every complaint: field by field, then what must agree across fields
 *           with  handed on to tell
 * Status:   number of errors; 0: the job can be planned (warnings may have been told); -1: no memory
 * Notes:    among errors are readings that contradict each other, such as an action and a relief
 *           by which a string would lie under a crown by more than the tools explain.
 */
int sil_job_check(const sil_job *job, sil_tell *tell, void *with);

/* sil_job_courses: the course of each string, from 0.
 * Given:    job     strings filled
 * Returned: course  as many as strings, room for SIL_STRINGS_MAX; neighbours of one number stand
 *                   together
 */
void sil_job_courses(const sil_job *job, int *course);

/* sil_job_bench: a reading and the targets of a job as figures for the stages.
 * Given:    job      checked without errors
 *           reading  index of the reading that counts, or -1: none, every reading unknown
 * Returned: bench    all of it; it refers to nothing of the job
 */
void sil_job_bench(const sil_job *job, int reading, sil_bench *bench);

#ifdef __cplusplus
}
#endif
#endif
