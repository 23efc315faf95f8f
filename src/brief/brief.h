/* SPDX-License-Identifier: MIT */
/* The brief: everything that a plan shows a person, worked out once. The text report, the drawings,
 * the web page and the programs only format it. They do not compute figures, verdicts or directions
 * themselves.
 */
#ifndef SILLET_BRIEF_H
#define SILLET_BRIEF_H

#include <sillet/brief.h>

#include "../part/part.h"
#include "../plan/plan.h"
#include "../text/text.h"
#include "shown.h"

/* What is done to the nut slot of one string, or to the saddle under it. */
typedef enum brief_does {
    BRIEF_LEAVES,
    BRIEF_FILES,  /* a slot, deeper by the figure */
    BRIEF_FILLS,  /* a slot, filled and cut again */
    BRIEF_NEW,    /* a new part is made */
    BRIEF_LOWERS, /* the saddle, by the figure */
    BRIEF_RAISES, /* the saddle, by the figure */
    BRIEF_WAITS
} brief_does;

enum { BRIEF_BLADES = 3 };

/* A string at the nut. Every figure is that after the whole plan. Heights are above the nut's own
 * bottom: a shim under it is not counted. */
typedef struct brief_slot {
    sil_verdict verdict;
    brief_does does;
    bool worked;              /* there is work at this slot */
    brief_figure gauge;       /* of the string */
    brief_figure width;       /* of the slot to cut */
    brief_figure along;       /* from the bass end to its centre, along the nut */
    brief_figure across;      /* the same, square to the board's centre line */
    brief_figure floor;       /* finished slot floor, above the nut's bottom */
    brief_figure depth;       /* below the finished top */
    brief_figure top;         /* height of the finished top above the nut's bottom, at this slot */
    brief_figure off;         /* how much it is too high; minus: too low */
    brief_figure sure;        /* the uncertainty of that, plus or minus: two standard ones */
    brief_figure deepen;      /* the whole to file, rounded down; "-" where nothing is filed */
    brief_figure first;       /* the first pass, rounded down; "-" where nothing is filed */
    brief_figure left;        /* about how much remains after the first pass */
    brief_figure stack_first; /* stack of feelers to stop at in the first pass, rounded up */
    brief_figure stack;       /* stack of feelers for the finished slot, rounded up */
    brief_figure stack_now;   /* the first where there is one, else the other; "-" without work */
    int leaves; /* how many feelers make up the stack now; 0 where the usual ones do not */
    brief_figure leaf[BRIEF_BLADES]; /* thickest first */
    const char *leaf_words;          /* "1.00 + 0.15 + 0.03"; "" for none */
    bool stack_moved;       /* the stack follows from the one filed to at the visit before */
    bool stack_stays;       /* it was to be filed before, and its gap did not come down */
    brief_figure gap;       /* at fret 1 when the slot is done */
    brief_figure gap_first; /* and once the first passes of all slots are filed, and no more */
    bool hardly_low;        /* below its range, but by no more than the reading error */
    bool zero_fret_high;    /* the zero fret is too high under this string */
    bool apart;             /* the gaps read fretted and open do not agree */
} brief_slot;

/* A blank to order for a new part. */
typedef struct brief_blank {
    bool ordered, complete; /* a new part may be needed; all three sizes are known */
    brief_figure length, thickness, height;                /* at least, rounded up */
    brief_figure done_length, done_thickness, done_height; /* of the finished part */
    brief_figure spare_length, spare_thickness, spare_height;
    brief_figure spacing; /* outer strings' centres */
    brief_figure radius;  /* of the finished top */
} brief_blank;

typedef struct brief_nut {
    sil_nut_remedy remedy;
    const char *headline; /* what to do with it, one line */
    bool zero_fret;
    bool one_pass; /* the first pass takes the whole cut */
    brief_slot slot[SIL_STRINGS_MAX];
    brief_figure length, thickness, height, top_radius, floor_radius;
    brief_figure crest_at; /* from the bass end to the highest point of an arc; "-" for none */
    brief_figure ends[BRIEF_ENDS];             /* height of a top that is no arc at its two ends */
    brief_figure fall;                         /* slope of the slots, in tenths of a degree */
    brief_figure gap;                          /* between string edges, along the nut */
    brief_figure spacing[SIL_STRINGS_MAX + 1]; /* along the nut: from the treble end to slot 1, from
                                                  each slot's centre to the next, and from the last
                                                  to the bass end */
    brief_figure crossing;                     /* thickness of the nut along a slot, which is more
                                                  where the nut is at an angle */
    brief_figure drop;       /* how far a slot's floor falls over that thickness */
    brief_figure stack_sure; /* error of the stacks of the slots that are worked, plus or minus: two
                                standard uncertainties of the least sure; "-" without a stack */
    brief_figure stack_bend; /* the most by which stiffness may lift a string over the floor of a
                                slot that is worked; "-" where that is next to nothing, or not
                                known of any */
    brief_figure rough; /* of a new nut: the height its blank is brought down to before its slots
                                are cut, rounded up; "-" for the present one, and where the blank is
                                no higher */
    const char *stack_words; /* both in a sentence; "" without a stack */
    const char *fit;         /* how a new one fits between neck and board; "" for the present one */
    const char *bottom;  /* how flat and square its bottom is made; "" where that is not worked */
    const char *files;   /* which files suit its slots; "" where the sheet lists none */
    const char *no_file; /* the slots for which the shop has none, in a sentence; "" for none */
    brief_figure board;  /* its height over the neck under the nut, on which all heights depend */
    brief_figure shim;   /* under the nut; for one to be replaced, the shim it would have needed */
    brief_figure lean;   /* angle to square across, in tenths of a degree; "-" where it is square */
    bool bass_to_head;   /* the bass end is nearer the headstock, otherwise nearer the tail */
    brief_blank blank;
} brief_nut;

/* A string at the saddle. */
typedef struct brief_bearing {
    sil_verdict verdict;
    brief_does does;
    brief_figure along, across; /* from the bass end to its centre, as at the nut */
    brief_figure off;           /* how much it is too high; minus: too low */
    brief_figure sure;
    brief_figure by;    /* how far it comes down or up in all: the height now less the finished one;
                        rounded down for a cut; "-" where it stays */
    brief_figure first; /* how much it comes down in the first pass, rounded down */
    brief_figure base_first, base_all; /* off the bottom under it, in the first pass and in all,
                                          rounded down; "-": not sanded */
    brief_figure dress; /* off the top after that, rounded down; "-" where nothing comes off */
    brief_figure dress_first, dress_left; /* its first pass, and about how much is left after it */
    brief_figure left_on;                 /* left on the top, because it is too little to file */
    brief_figure present;                 /* from the saddle's bottom to the string, now */
    brief_figure height;                  /* the same when all steps are done */
    brief_figure height_first; /* of a new saddle: with what stays on at first, rounded up; "-" for
                                  any other */
    brief_figure out;          /* how much of that is above the bridge */
    brief_figure in_slot;      /* how much of that is in the slot, per cent */
    brief_figure slot_wall; /* from the floor of the slot, or a pickup in it, to the bridge's top */
    brief_figure angle;     /* break angle of the string, degrees */
    brief_figure beyond;    /* how far the place where it would play in tune is beyond the nearer
                               face of the saddle; "-" where it is on the saddle, or not known */
    brief_way way;          /* which way its screws, or its place on posts or thumbwheels, moves */
    brief_figure moves;     /* how far; "-" where it does not move */
    brief_figure turns;     /* of its screws */
    brief_figure action_before;  /* at fret 12, when nut and neck are done */
    brief_figure action_first;   /* after the first pass off the bottom */
    brief_figure action_dressed; /* after the first pass off the top, with the bottom done */
    brief_figure action_all;     /* after the whole cut off the bottom, or with the shim under it */
    brief_figure action_made;    /* with a new saddle at its first height; "-" for any other */
    brief_figure action_done;    /* when all steps are done */
    brief_figure action_rod;     /* after the truss rod is turned */
    sil_verdict curve;           /* on two posts: whether the bridge's curve leaves it too high
                                   (SIL_TAKE) or too low (SIL_RAISE) */
} brief_bearing;

/* A post or thumbwheel. */
typedef struct brief_post {
    brief_way way;
    brief_figure moves, turns;
} brief_post;

typedef struct brief_saddle {
    sil_working working;
    sil_saddle_remedy remedy;
    const char *headline;
    bool floats; /* only the strings hold the bridge */
    bool
        from_bridge; /* glued: a caliper reaches its top from the bridge's top, not from its bottom */
    bool in_slot;    /* it is in a slot of the bridge */
    bool along;      /* strings in range are set to their targets with others, by screws */
    bool base;       /* its bottom, or the feet of the bridge, are sanded */
    bool takes_all;   /* the whole cut off the bottom is large enough to make */
    bool takes_first; /* the first pass off the bottom is large enough to make */
    bool one_pass;    /* the first pass takes the whole cut */
    bool dressed;     /* something comes off the top */
    bool replaced;    /* a new saddle is made */
    brief_bearing string[SIL_STRINGS_MAX];
    brief_figure base_first[BRIEF_ENDS],
        base_all[BRIEF_ENDS];           /* off the bottom at its two ends, rounded down */
    brief_figure base_left[BRIEF_ENDS]; /* about how much remains there after the first pass */
    brief_figure caliper[BRIEF_ENDS]; /* what the caliper reads at the first and last strings after
                                         the first pass, rounded up; "-" where it was not read */
    brief_figure left_on;             /* the most that is left on the top; "-" for nothing */
    bool posts;                       /* two posts or thumbwheels are turned */
    brief_post post[BRIEF_ENDS];
    brief_figure length, thickness, slot_depth, top_radius;
    brief_figure crest, crest_at, ends[BRIEF_ENDS]; /* of a new saddle's top, as at the nut */
    brief_figure shim;                              /* as at the nut */
    brief_figure lean;
    bool bass_to_head;
    const char *fit, *bottom;              /* as at the nut */
    brief_figure best_setback[BRIEF_ENDS]; /* of the best straight slot, at the outer strings */
    brief_figure best_thickness;    /* of a saddle thick enough for all contact points in that slot,
                                       rounded up; "-" where the present one is thick enough */
    brief_figure lift, wedge, heel; /* for tilting the neck back, see sil_neck */
    brief_figure wedge_angle;       /* degrees */
    brief_figure bow;               /* what the neck's bow costs the saddle */
    int lift_string;                /* the string that needs most, or -1 */
    brief_blank blank;
} brief_saddle;

/* The fretted note of a string that buzzes most easily, and its hardest clean pluck. */
typedef struct brief_weakest {
    int stop;           /* where it is fretted, or -1 where that is not known */
    int on;             /* the fret it would touch, or one near it */
    brief_figure force; /* N, square to the board */
} brief_weakest;

/* How cleanly a string rings, and where it should leave the saddle to play in tune. */
typedef struct brief_tone {
    brief_figure picked;               /* the pick strength: N, square to the board */
    brief_figure open_now, open_after; /* the hardest clean pluck of the open string */
    brief_weakest now, after;
    brief_figure built, in_tune;   /* setback now, and setback in tune at fret 12 */
    brief_figure setback, advance; /* the best setback and nut compensation together */
    brief_figure cents, worst;     /* with the present setback: at fret 12, and the worst of frets 1
                                      to 12 */
    brief_figure move;             /* how far to move the saddle, from the tuner's cents */
    const char *assumed;           /* "*" where these figures stand on an assumed core, else "" */
} brief_tone;

/* A string that is brought into tune, or not. */
typedef struct brief_tuned {
    const char *verdict; /* "in tune", "back", "forward", "wait", "not read", .. */
    bool moves;          /* its screw is turned, or its peak filed to another place */
    brief_way way;
    brief_figure cents; /* as read, with its sign */
    brief_figure move;  /* how far; "-" where it stays, waits, or was not read */
    brief_figure turns; /* of its intonation screw */
    brief_figure left;  /* cents when that is done, with their sign */
    brief_figure peak;  /* where it leaves the top then, from the face toward the nut */
    brief_figure drop;  /* how far it comes down by that */
} brief_tuned;

typedef struct brief_tuning {
    sil_tune_remedy remedy;
    const char *headline; /* what to do, or what it waits for, one line */
    bool read;            /* cents were read of some string */
    brief_tuned string[SIL_STRINGS_MAX];
    brief_way end_way[BRIEF_ENDS]; /* of the bridge; BRIEF_NO_WAY where that side stays */
    brief_figure end[BRIEF_ENDS];
    brief_figure within;    /* the target, either way */
    brief_figure most_drop; /* the most of the strings' */
    brief_figure thick; /* of a saddle on which every peak has its place, rounded up; "-" where this
                            one is thick enough */
} brief_tuning;

typedef struct brief_step {
    sil_stage_name stage;
    sil_act act;
    brief_sentence what, check;
    const char
        *first; /* what `what` begins with where something is to be measured before; else "" */
    const char *care; /* how to be safe from what no earlier step warned of; otherwise "" */
    bool goes_on; /* when it is done the step after it follows at once; otherwise, where work was
                         done, everything is measured again */
} brief_step;

typedef struct brief_finding {
    brief_sentence alone;    /* this finding by itself */
    const char *in_short;    /* without its figures where a stage's glance has them */
    brief_sentence together; /* with the findings after it that say the same of other strings */
    int alike;               /* how many findings `together` covers */
} brief_finding;

/* What is to do in a stage, in two or three words: "set to 0.20", "file slots". */
typedef enum brief_stage_of {
    BRIEF_RELIEF,
    BRIEF_FRETS,
    BRIEF_NUT,
    BRIEF_SADDLE,
    BRIEF_TUNE,
    BRIEF_STAGES
} brief_stage_of;

typedef struct brief_stage {
    const char *words;
    brief_figure figure; /* the figure in those words, or "-" */
    bool waits, unread;  /* unread: nothing of it was read */
    /* Why it waits, each reason as a clause: first the codes that withhold it, in their order. */
    const char *why[SIL_WITHHELD_MAX];
    int whys;
} brief_stage;

/* How a stage is: in its range, to be worked, waiting, or not all of it read. */
typedef enum brief_state { BRIEF_RIGHT, BRIEF_WORK, BRIEF_WAIT, BRIEF_UNREAD } brief_state;

/* A stage at a glance. */
typedef struct brief_glance {
    const char *name;    /* "relief" */
    const char *verdict; /* "in range", "too low", "wait": at most 12 letters */
    brief_state state;   /* what kind of verdict that is */
    const char *span;    /* what was read, as short as it can be: "0.06 to 0.10"; "" for nothing */
    brief_sentence figures; /* what that rests on: "0.18 (target 0.05 to 0.30)"; "" for nothing */
} brief_glance;

/* A figure for each string, of which a sentence gives only the least and the most. */
typedef struct brief_strip {
    const char *label; /* what it is, at most 16 letters */
    const char *cell[SIL_STRINGS_MAX];
} brief_strip;

enum { BRIEF_STRIPS = 8 };

/* The step to do next, and those after it. */
typedef struct brief_next {
    int step;                   /* index into the steps; -1 where there is none */
    brief_sentence what, check; /* as in the steps, but long lists are put into the strips */
    brief_strip strip[BRIEF_STRIPS];
    int strips;
    bool listed[SIL_STRINGS_MAX]; /* which strings have a figure in any strip */
    const char *before;    /* how things must be before anything is cut; "" where it is the next */
    const char **in_short; /* for each step of the plan, a few words with its main figure */
} brief_next;

/* A visit: what was read, and what was predicted. */
typedef struct brief_visit {
    const char *date; /* as written, "no date" for none */
    const char *work; /* work taken as done before it: "rod", "nut and saddle", "no work" */
    bool expected;    /* there is a visit before it, from which to predict */
    brief_figure humidity, relief, ratio; /* %; mm; the change read as % of that predicted */
    brief_figure read[SIL_STRINGS_MAX], due[SIL_STRINGS_MAX];
} brief_visit;

/* The fret under a string that is farthest off the line of the sound ones. */
typedef struct brief_fret_off {
    int fret;  /* 0 where none is off */
    bool worn; /* it is worn; otherwise it is proud */
    brief_figure off;
} brief_fret_off;

/* The lowest set-up that still rings clean. It is a limit, so its heights are rounded up. */
typedef struct brief_lowest {
    brief_figure relief;                  /* "-" where not known; rounded to the nearest */
    brief_figure action[SIL_STRINGS_MAX]; /* at fret 12 */
    brief_figure first[SIL_STRINGS_MAX];  /* gap at fret 1, held at the 3rd */
} brief_lowest;

/* A plan as a row of a table. */
typedef struct brief_row {
    const char *next;  /* the next work in a few words; "" where nothing needs to be put right */
    const char *waits; /* what nut and saddle wait for; "" where neither waits */
} brief_row;

struct sil_brief {
    const sil_plan *plan;
    sil_unit unit;         /* of every length shown */
    const char *unit_name; /* "mm", "in" */
    int strings;
    part_nut nut_part;
    part_saddle saddle_part;
    brief_figure scale, scale_bass; /* scale_bass is "-" with one scale */
    brief_stage stage[BRIEF_STAGES];
    brief_reading relief, first[SIL_STRINGS_MAX], action[SIL_STRINGS_MAX];
    const char
        *on_a_rule; /* the actions and their targets in 64ths of an inch, in a sentence; "" in
                              mm, and where none is known */
    brief_figure first_off[SIL_STRINGS_MAX]; /* how far a held gap at fret 1 is off the others */
    bool slackens;                           /* the strings come off for today's work */
    brief_figure humidity;                   /* at the last reading, % */
    brief_range humidity_wanted;             /* its limits, %, without an aim */
    brief_fret_off worst[SIL_STRINGS_MAX];
    bool forecast; /* what follows depends on work after which everything must be measured again */
    brief_nut nut;
    brief_saddle saddle;
    brief_tuning tuning;
    brief_tone tone[SIL_STRINGS_MAX];
    brief_visit *visits; /* the last ones, oldest first */
    int visit_count;
    brief_step *steps; /* one for each step of the plan */
    brief_finding *findings;
    brief_said *said; /* the figures of all sentences */
    int said_count, said_room;
    brief_lowest lowest;
    brief_row row;
    brief_glance glance[BRIEF_STAGES];
    brief_next next;
    text_store store; /* owns every text and list */
};
typedef struct sil_brief brief;

/* On which side of its target range a reading is. */
typedef struct brief_off {
    const char *side; /* "in", "under" or "over"; NULL where the reading is not known */
    brief_figure by;  /* how far past the edge of the range; "-" inside it, and where not known */
} brief_off;

/* brief_off_range: how a reading now compares with its target range. */
brief_off brief_off_range(const brief *b, const brief_reading *reading);

/* brief_off_humidity: how the humidity of the last reading compares with its limits. */
brief_off brief_off_humidity(const brief *b);

/* What the mark of an assumed core means, for under a table. */
extern const char *const brief_assumed_words;

/* brief_make: works out everything that a plan shows a person.
 * Given:    plan  made, of one stage or of all; must outlive the brief
 *           unit  of every length shown
 * Returned: the brief, to be freed with brief_free; NULL if there is no memory
 */
brief *brief_make(const sil_plan *plan, sil_unit unit);
void brief_free(brief *b);

/* brief_next_step: the step to do next, from 0; -1 if there is none. That things are as they should be
 * before a cut is no step to do, unless the strings are worn.
 */
int brief_next_step(const sil_plan *plan);

/* brief_row_of: a plan as a row of a table, without the rest of a brief. Its words are kept in the
 * store, which fails if there is no memory. */
brief_row brief_row_of(const sil_plan *plan, text_store *store);

/* Words that do not depend on a plan.
 * brief_files_again: whether nut slots are filed by a first pass now, which leaves some to file.
 * brief_hold:   how a gap at fret 1 is read: "open", "lying on the 2nd", "held at the 3rd"
 * brief_waits:  why a part waits, in words; NULL for a code that no part waits for
 */
bool brief_files_again(const brief *b);
const char *brief_hold(sil_hold hold);
const char *brief_waits(sil_code code);

/* brief_tune_waits: why the strings are not brought into tune yet, as a clause; NULL where nothing
 * waits. */
const char *brief_tune_waits(sil_tune_wait wait);

/* brief_from_to: "0.06 to 0.10", or one of them where both are the same; kept in the store. */
const char *brief_from_to(text_store *store, const char *least, const char *most);

/* brief_bound: how far the hardest clean pluck and the fret it names may be relied on. */
const char *brief_bound(void);

/* brief_level: how much a finding matters, for a person: "stop", "do", "watch" or "note". */
const char *brief_level(sil_level level);

#endif
