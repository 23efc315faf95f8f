/* SPDX-License-Identifier: MIT */
/* A job: one instrument, its readings and its targets, as plain data.
 *
 * It is filled from a measuring sheet, from the quick command or by a C program. It owns nothing:
 * its texts and lists belong to whoever filled it, and must outlive it. What is not given is
 * SIL_UNKNOWN for a double, 0 for an int, NULL for a text and the first value for an enum. Lengths
 * are in mm.
 *
 * A field is named by its path in a sheet, with lists counted from 0: "readings.0.action.2".
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

/* The shop that does the work. */
typedef struct sil_shop {
    const char *name, *contact;
    const char *file; /* the shop file that the job's tools, files and allowances may be from; NULL:
                         none was used */
} sil_shop;

typedef enum sil_rod { SIL_ROD_NOT_GIVEN, SIL_ROD_NONE, SIL_ROD_ONE_WAY, SIL_ROD_TWO_WAY } sil_rod;
typedef enum sil_rod_state {
    SIL_ROD_STATE_NOT_GIVEN, /* treated as SIL_ROD_WORKS */
    SIL_ROD_WORKS,
    SIL_ROD_SLACK,
    SIL_ROD_AT_END,
    SIL_ROD_STUCK,
    SIL_ROD_ACCEPTED /* it cannot do it, and the owner leaves the neck as it is */
} sil_rod_state;
typedef enum sil_hand { SIL_RIGHT_HANDED, SIL_LEFT_HANDED } sil_hand;

typedef struct sil_instrument {
    double scale;      /* of string 1 */
    double scale_bass; /* of the last string; unknown: as string 1 */
    int square;        /* with two scales: the fret square to the centre line; 0: the nut */
    int frets, join;   /* how many frets; the fret at the body joint */
    double radius_nut, radius_end;          /* of the board at nut and last fret; INFINITY: flat */
    double crown, fallaway, head_angle_deg; /* fret height; fall-away of the board at the last fret;
                                               headstock angle */
    double pocket;                          /* length of a bolt-on neck's pocket, along the neck */
    double pocket_at; /* from the nut to where the pocket begins; unknown: at the body joint */
    double heel;      /* for a neck that is not bolted on: from the board's underside to the end of
                         the heel */
    sil_rod rod;
    sil_rod_state rod_state;
    sil_hand handed;
} sil_instrument;

typedef struct sil_string {
    const char *note; /* as written, or NULL */
    double hz;        /* from the note, or as given */
    double gauge;
    sil_material material;
    double core; /* not given: a typical one, see sil_plan_core_assumed */
    double unit_mass_kg_m;
    double modulus_gpa; /* over sil_stiff_diameter */
    int course;         /* adjacent strings with the same number are a course; 0: by itself */
} sil_string;

typedef enum sil_nut_kind { SIL_NUT_SLOTTED, SIL_NUT_ZERO_FRET } sil_nut_kind;

typedef struct sil_job_nut {
    sil_nut_kind kind;
    double width, thickness;
    double edge_treble, edge_bass; /* from the board's edge to the outer edge of the outer string */
    double advance;       /* nut compensation: how far the front face is moved toward the saddle */
    double seat_to_board; /* height of the board's surface above the floor of the nut's slot in the
                             neck, on the centre line */
    double pair;          /* from centre to centre inside a course */
    sil_spacing spacing;
    double
        centres[SIL_STRINGS_MAX]; /* of the slots, from the nut's bass end along the nut; not given:
                                        by the spacing */
    double floors[SIL_STRINGS_MAX]; /* of a nut to copy: its slot floors over its bottom at the
                                        front face; not given: by the target */
    const char *material;
} sil_job_nut;

/* By what the length of a string is set at the bridge. */
typedef enum sil_intonation {
    SIL_INTONATION_NOT_GIVEN,
    SIL_INTONATION_SCREWS, /* a screw for each string */
    SIL_INTONATION_ENDS,   /* the bridge slides, or is turned, at its two ends */
    SIL_INTONATION_NONE    /* nothing moves: only the saddle's top can be filed to another place */
} sil_intonation;

typedef struct sil_job_saddle {
    sil_saddle_kind kind;
    double length, thickness;
    double spread;                   /* string spacing: between the centres of the outer strings */
    double setback[SIL_STRINGS_MAX]; /* how much longer a string is than its scale, as built: to
                                        where it leaves the saddle now */
    bool
        setback_read; /* measured on this instrument; false where it is what its kind usually has */
    double
        peak[SIL_STRINGS_MAX]; /* where a string leaves the saddle's top now, from the face toward
                                     the nut, square to it; see sil_job_peak */
    sil_intonation intonation; /* not given: as usual on its kind, see sil_job_intonation */
    double intonation_pitch;   /* travel of an intonation screw in one turn */
    double slot_depth, pickup; /* depth of the slot in the bridge; thickness of the pickup under the
                                  saddle */
    double pin_distance[SIL_STRINGS_MAX]; /* from the saddle to where the string enters the bridge;
                                             unknown: it is not anchored in the bridge */
    double exit_height; /* height of that place above the bridge's top; 0 unless given */
    double pitch;       /* travel of a screw or thumbwheel in one turn */
    double travel;      /* how far screws, posts or thumbwheels can still go down; unknown: no
                           limit */
    double travel_up;   /* and up, if that was given as well */
    double post_spread; /* from post to post */
    double pair;        /* from centre to centre inside a course */
    double old[SIL_STRINGS_MAX]; /* of a saddle to copy: its heights over its bottom; not given: by
                                    the target */
    const char *material;
} sil_job_saddle;

typedef enum sil_soundness { SIL_SOUNDNESS_NOT_GIVEN, SIL_SOUND, SIL_UNSOUND } sil_soundness;

typedef struct sil_condition {
    sil_soundness bridge;  /* unsound: lifted */
    sil_soundness braces;  /* unsound: loose */
    sil_soundness saddle;  /* unsound: it leans, rocks or is loose in its slot */
    sil_soundness strings; /* unsound: worn */
    sil_soundness tuned;   /* unsound: not at pitch */
} sil_condition;

typedef enum sil_crowns_read {
    SIL_CROWNS_NOT_READ,
    SIL_CROWNS_SOUND, /* read, and all found sound */
    SIL_CROWNS_LISTED /* read; crowns that are not listed are sound */
} sil_crowns_read;

typedef struct sil_crown_off {
    int string, fret; /* string from 1, as on the bench */
    double off;       /* - worn spot, + proud, mm */
} sil_crown_off;

typedef struct sil_buzz {
    int string, fret; /* string from 1; fret 0 is the open string */
} sil_buzz;

/* The keys of a reading whose lengths may be read on a scale marked in fractions of an inch. */
typedef enum sil_marked {
    SIL_MARKED_RELIEF,
    SIL_MARKED_ACTION,
    SIL_MARKED_FIRST,
    SIL_MARKED_FIRST_OPEN,
    SIL_MARKED_SADDLE_HEIGHT,
    SIL_MARKED_BRIDGE_TOP,
    SIL_MARKED_STANDS_OUT,
    SIL_MARKED
} sil_marked;

typedef struct sil_reading {
    const char *date, *notes;
    double humidity_pct, temperature_c;
    sil_condition condition;
    sil_relief_reading relief; /* not read where its gap is unknown */
    sil_gaps gaps;
    sil_crowns_read crowns_read;
    const sil_crown_off *crowns;
    int crown_count;
    double saddle_height_treble, saddle_height_bass;
    double bridge_top_treble, bridge_top_bass;
    double stands_out[SIL_STRINGS_MAX]; /* how far the saddle stands over the bridge's top, to the
                                           underside of the string, by ruler; perhaps at the outer
                                           strings alone */
    const sil_buzz *buzz;
    int buzz_count;
    bool confirmed[SIL_STRINGS_MAX]; /* its action and gaps were read again, and are so */
    double cents[SIL_STRINGS_MAX];   /* of fret 12 against the octave of the open string, + sharp */
    int marked[SIL_MARKED];   /* the greatest denominator of the fractions that the lengths of a key
                               are written with; 0: no fraction */
    bool by_ends[SIL_MARKED]; /* the key was given as treble and bass, and not as a list */
} sil_reading;

typedef struct sil_model {
    sil_ends ends;
    double press; /* how far behind the fret the finger presses, mm */
} sil_model;

typedef struct sil_attack {
    const char *name;              /* light, medium, firm or any; NULL where newtons are given */
    bool chosen;                   /* given in the sheet, so that nothing is cut to buzz under it */
    double force[SIL_STRINGS_MAX]; /* N, square to the board; unknown: any, a rattle is accepted */
    double at;                     /* from the saddle, mm */
} sil_attack;

typedef struct sil_limits {
    double wear, least_crown; /* how far a crown may be off its line; least fret height */
    double least_protrusion, most_protrusion, least_break_deg; /* saddle above the bridge; break
                                                                  angle */
    double good_protrusion; /* what a neck is set for; unknown: least_protrusion */
    double least_in_slot;   /* share of the saddle's height inside its slot, 0..1 */
    double most_shim, most_relief, least_first;
    double humidity_low_pct, humidity_high_pct;
} sil_limits;

typedef struct sil_allowances {
    double slot_plain, slot_wound; /* how much wider than the gauge a nut slot is cut */
    double bury_plain, bury_wound; /* depth of a nut slot, as a share of the gauge */
    double fall_share, shim_step;  /* slope of a nut slot, as a share of the headstock angle */
    double leave_slot, leave_base, leave_top; /* what a first pass leaves on for a later one: in a
                                                 nut slot, at the bottom and at the top of the
                                                 saddle */
    double band_relief, band_action, band_first; /* range on either side of a target given as one
                                                    value */
    double blank_length, blank_thickness, blank_height;
} sil_allowances;

/* The parts to make from a blank. The old one may be out, or in pieces. */
typedef struct sil_make {
    bool nut, saddle;
} sil_make;

/* The likely range of a figure on a kind of instrument. */
typedef struct sil_plausible {
    const char *path; /* without the indices of lists: "strings.gauge" */
    double low, high;
} sil_plausible;

typedef struct sil_job {
    sil_unit units;
    sil_make make;
    sil_about about;
    sil_shop shop;
    const char *profile;
    sil_instrument instrument;
    int string_count;
    sil_string strings[SIL_STRINGS_MAX];
    sil_job_nut nut;
    sil_job_saddle saddle;
    double files[SIL_FILES_MAX];
    int file_count;
    const sil_reading *readings; /* oldest first; the last one is used */
    int reading_count;
    sil_targets targets;
    bool cents_wanted; /* targets.cents is of this instrument, and not what its kind usually has */
    sil_model model;
    sil_attack attack;
    const char *style; /* of playing, one of the profile's: targets and attack may be from it */
    sil_tools tools;
    sil_limits limits;
    sil_allowances allowances;
    sil_material_constants materials[SIL_MATERIALS];
    const sil_plausible *plausible; /* used before the built-in ranges */
    int plausible_count;
} sil_job;

/* sil_job_clear: makes a job empty.
 * Returned: job  nothing is given, and the defaults are those in docs/sheet.md
 */
void sil_job_clear(sil_job *job);

/* sil_reading_clear: makes a reading empty.
 * Returned: reading  nothing is read; action at fret 12, first gap with the string held at fret 3
 * Notes:    do not fill a reading with zeros instead: that says that every string touches its fret
 */
void sil_reading_clear(sil_reading *reading);

typedef enum sil_severity { SIL_WARNING, SIL_ERROR } sil_severity;

/* sil_tell: a function that receives one complaint of sil_job_check.
 * Given:    with      as given to sil_job_check
 *           severity  warning or error
 *           path      of the field ("instrument.join"), also where the field is missing
 *           wanted    one line, without a newline: what is expected, and the likely slip if there
 *                     is one
 */
typedef void sil_tell(void *with, sil_severity severity, const char *path, const char *wanted);

/* sil_job_check: looks for values that are impossible, missing or unlikely.
 * Given:    job   filled
 *           tell  called for every complaint: first field by field, then for fields that do not
 *                 agree with each other
 *           with  passed on to tell
 * Status:   number of errors; 0: the job can be planned, perhaps with warnings; -1: no memory
 * Notes:    readings that contradict each other are errors, such as an action and a relief that
 *           would put a string below a crown by more than the tools explain
 */
int sil_job_check(const sil_job *job, sil_tell *tell, void *with);

/* Why a reading asks to be taken again. */
typedef enum sil_odd_why {
    SIL_NOT_ODD,
    SIL_ODD_UNLIKELY, /* outside what is likely on such an instrument */
    SIL_ODD_LINE,     /* an action off the straight line of the others */
    SIL_ODD_OTHERS,   /* a gap off the median of the others */
    SIL_ODD_MOVED,    /* not as at the visit before, though nothing was worked there */
    SIL_ODD_SWAPPED   /* an action that looks swapped with that of another string */
} sil_odd_why;

typedef struct sil_odd_one {
    sil_odd_why why;
    double read;   /* as on the sheet, mm */
    double off;    /* how far from the line, the median, or the visit before, mm */
    bool believed; /* confirmed, or read again the same; a plan finds this out */
} sil_odd_one;

/* A list that may have been begun at the wrong end. */
typedef struct sil_odd_order {
    bool action, first; /* whether the actions are doubted; the gaps, only along with them */
    double fall;        /* of the actions from string 1 to the last, mm; unknown: not doubted */
    bool believed;      /* every string confirmed, or read so again; a plan finds this out */
} sil_odd_order;

typedef struct sil_odd {
    sil_odd_order order;
    sil_odd_one relief, crowns;
    sil_odd_one saddle; /* its heights by caliper or from the bridge's top; the first that is odd */
    sil_odd_one action[SIL_STRINGS_MAX], first[SIL_STRINGS_MAX];
    int curve; /* the string that shows best that the actions follow a curve, or -1 */
    double curve_off;
} sil_odd;

/* sil_job_odd: the readings that ask to be taken again, as after a slip of the pen.
 * Given:    job      its likely ranges and strings are used
 *           reading  one of it
 *           tools    as they read at that visit (see sil_job_tools)
 *           board    laid
 * Returned: odd      of this reading by itself; none is believed yet
 */
void sil_job_odd(const sil_job *job, const sil_reading *reading, const sil_tools *tools,
                 const sil_board *board, sil_odd *odd);

/* sil_moved_limit: how far a gap or an action may move between visits and still be the same.
 * Given:    u  standard uncertainty of the reading, mm
 * Returned: mm; past it, it is odd where nothing was worked
 */
double sil_moved_limit(double u);

/* sil_job_courses: the course of each string, counted from 0.
 * Given:    job     its strings are used
 * Returned: course  one for each string, with room for SIL_STRINGS_MAX; adjacent strings with the
 *                   same course number share one
 */
void sil_job_courses(const sil_job *job, int *course);

/* sil_job_intonation: by what the length of a string is set.
 * Given:    job  its saddle is used
 * Returned: as given; unless given screws on individual saddles and on two posts, the ends of a
 *           floating bridge, and otherwise nothing
 */
sil_intonation sil_job_intonation(const sil_job *job);

/* sil_job_peak: where a string leaves the saddle's top now.
 * Given:    job     its saddle is used
 *           string  from 0
 * Returned: from the face toward the nut, square to it, mm: as given, or half the thickness of a
 *           saddle in a slot; otherwise SIL_UNKNOWN
 */
double sil_job_peak(const sil_job *job, int string);

/* sil_job_tools: how closely the tools read at one visit.
 * Given:    job      its tools and readings are used
 *           reading  index of the reading; -1: none
 * Returned: plus or minus, mm: the job's tools, or the graduation of what they were read on where
 *           that is coarser
 * Notes:    a key read in fractions of an inch is no finer than 1/(2 d) in, where d is the greatest
 *           denominator of that key in all readings, at least 32 (see sil_graduation). The
 *           caliper's is that of saddle_height and bridge_top, the ruler's that of stands_out.
 *           Dimensions have no graduation.
 */
sil_tools sil_job_tools(const sil_job *job, int reading);

/* sil_job_bench: lays out the instrument, one reading and the targets as figures for the stages.
 * Given:    job      checked without errors
 *           reading  index of the reading to use; -1: none, so every reading is unknown
 * Returned: bench    every field set; it holds no pointers into the job
 */
void sil_job_bench(const sil_job *job, int reading, sil_bench *bench);

/* sil_job_bench_read: the same, with what was read at that visit given by itself, as where part of
 * it is taken over from the visit before.
 * Given:    job, reading  as sil_job_bench; reading says which tools were used
 *           read          NULL: every reading is unknown
 * Returned: bench
 */
void sil_job_bench_read(const sil_job *job, int reading, const sil_reading *read, sil_bench *bench);

#ifdef __cplusplus
}
#endif
#endif
