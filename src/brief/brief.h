/* SPDX-License-Identifier: MIT */
/* The brief: what a person is shown of a plan, worked out once. The text, the papers, the page and
 * the programs only format it. They derive no figure, no verdict and no direction of their own.
 */
#ifndef SILLET_BRIEF_H
#define SILLET_BRIEF_H

#include <sillet/brief.h>

#include "../part/part.h"
#include "../plan/plan.h"
#include "../text/text.h"

/* A figure as a person is shown it. Only this room makes one (figure.h); everyone else takes it as
 * it is, so that a figure shown twice is the same twice. */
typedef struct brief_figure {
    double exact;          /* mm, or in the unit of what it measures; unknown where nobody knows */
    char shown[16];        /* with a decimal point and no unit behind it; "-" where unknown */
    sil_rounding rounding; /* how `shown` was rounded */
} brief_figure;

/* Whether there is anything to show. */
static inline bool brief_known(brief_figure figure)
{
    return sil_known(figure.exact);
}

typedef struct brief_range {
    brief_figure low, aim, high;
} brief_range;

/* A reading, what is wanted of it, and what it will be when all steps are done. */
typedef struct brief_reading {
    brief_figure now, after;
    brief_range wanted;
} brief_reading;

/* The two ends of a part. */
typedef enum brief_end {
    BRIEF_TREBLE,
    BRIEF_BASS,
    BRIEF_ENDS,
    BRIEF_NO_END = BRIEF_ENDS
} brief_end;

/* Which way something goes. */
typedef enum brief_way {
    BRIEF_NO_WAY,
    BRIEF_DOWN,
    BRIEF_UP,
    BRIEF_TIGHTEN, /* the truss rod: less relief */
    BRIEF_EASE     /* more relief */
} brief_way;

/* What is done to one string's slot or to the saddle under it. */
typedef enum brief_does {
    BRIEF_LEAVES,
    BRIEF_FILES,  /* a slot, deeper by the figure */
    BRIEF_FILLS,  /* a slot filled and cut again */
    BRIEF_NEW,    /* the part is made anew */
    BRIEF_LOWERS, /* the saddle, by the figure */
    BRIEF_RAISES, /* the saddle, by the figure */
    BRIEF_WAITS
} brief_does;

/* A string at the nut. Every figure as the whole plan leaves it, a shim under the nut counted in.
 */
typedef struct brief_slot {
    sil_verdict verdict;
    brief_does does;
    bool worked;              /* some of the work is at this slot */
    brief_figure gauge;       /* of the string */
    brief_figure width;       /* of the slot to cut */
    brief_figure along;       /* its centre from the bass end, along the nut */
    brief_figure across;      /* the same, square to the board's centre line */
    brief_figure floor;       /* over the nut's bottom, finished */
    brief_figure depth;       /* under the finished top */
    brief_figure top;         /* the finished top over the bottom, above this slot */
    brief_figure off;         /* too high by; minus: too low */
    brief_figure sure;        /* that is good to plus or minus this: two standard uncertainties */
    brief_figure deepen;      /* to file in all, rounded down; "-" where nothing is filed */
    brief_figure first;       /* of it before reading again, rounded down; "-" where nothing is */
    brief_figure left;        /* about this much is left after that */
    brief_figure stack_first; /* feelers to stop at in the first pass, rounded up */
    brief_figure stack;       /* and for good, rounded up */
    brief_figure gap;         /* at fret 1 when the slot is done */
    bool hardly_low;          /* under its range by no more than a gap is read to */
    bool zero_fret_high;      /* the zero fret under the string is */
    bool apart;               /* fretted and open gap do not fit the same slot */
} brief_slot;

/* A piece to order. */
typedef struct brief_blank {
    bool ordered, complete;                 /* a new one may be wanted; all three sizes are known */
    brief_figure length, thickness, height; /* at least, rounded up */
    brief_figure done_length, done_thickness, done_height; /* of the finished part */
    brief_figure spare_length, spare_thickness, spare_height;
    brief_figure within_length, within_thickness, within_height; /* ISO 2768-1, fine */
    brief_figure spacing;                                        /* outer strings' centres */
    brief_figure radius;                                         /* of the finished top */
} brief_blank;

typedef struct brief_nut {
    sil_nut_remedy remedy;
    const char *headline; /* what to do with it, one line */
    bool zero_fret;
    bool one_pass; /* the first pass takes all there is to file */
    brief_slot slot[SIL_STRINGS_MAX];
    brief_figure length, thickness, height, top_radius, floor_radius;
    brief_figure fall; /* degrees, whole ones */
    brief_figure gap;  /* between string edges, along the nut */
    brief_figure gap_across;
    brief_figure spacing[SIL_STRINGS_MAX + 1]; /* along it: from the treble end to slot 1, from each
                                                  slot's centre to the next, to the bass end */
    brief_figure crossing;                     /* its thickness along a slot: more where it leans */
    brief_figure within;                       /* a gap at fret 1 is read to plus or minus this */
    brief_figure shim; /* under it; where it is to be replaced, the shim it would have wanted */
    brief_figure lean; /* degrees, tenths; "-" where it stands square */
    bool bass_to_head; /* the bass end leans toward the headstock, else toward the tail */
    brief_blank blank;
} brief_nut;

/* A string at the saddle. */
typedef struct brief_bearing {
    sil_verdict verdict;
    brief_does does;
    brief_figure along, across; /* its centre from the bass end, as at the nut */
    brief_figure off;           /* too high by; minus: too low */
    brief_figure sure;
    brief_figure by;                   /* lower or raise by; rounded down where it is cut */
    brief_figure first;                /* comes down in the first pass, rounded down */
    brief_figure base_first, base_all; /* off the bottom under it, rounded down; "-": not sanded */
    brief_figure dress;     /* off the top after that, rounded down; "-" where nothing is */
    brief_figure left_on;   /* too little for a file to feel: not asked for, it stays on */
    brief_figure present;   /* bottom to string as it is */
    brief_figure height;    /* and when all that is asked for is done */
    brief_figure out;       /* of it stands out of the bridge */
    brief_figure in_slot;   /* per cent of it in its slot */
    brief_figure slot_wall; /* the bridge's top over the floor of the slot, with a pickup in it */
    brief_figure angle;     /* of the string over it, degrees */
    brief_way way;          /* of its screws, or of its place on posts or thumbwheels */
    brief_figure moves;     /* so far; "-" where it stays */
    brief_figure turns;     /* of its screws */
    brief_figure action_before; /* at fret 12, once nut and neck are done */
    brief_figure action_first;  /* after the first pass off the bottom */
    brief_figure action_all;    /* after all of it; with a shim, on the shim */
    brief_figure action_done;   /* when all steps are done */
    brief_figure action_rod;    /* once the truss rod is turned */
    sil_verdict curve;          /* on two posts: what the bridge's curve leaves of it */
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
    bool floats;      /* only the strings hold the bridge */
    bool in_slot;     /* it stands in a slot of the bridge */
    bool thick_shim;  /* the shim it wants is thicker than is good practice */
    bool base;        /* its bottom, or a bridge's feet, are sanded */
    bool takes_all;   /* all that is to come off the bottom is anything a person could take */
    bool takes_first; /* and so is the first pass */
    bool one_pass;    /* the first pass takes all there is to take */
    bool dressed;     /* something comes off the top */
    bool replaced;    /* a new one is made */
    brief_bearing string[SIL_STRINGS_MAX];
    brief_figure base_first[BRIEF_ENDS], base_all[BRIEF_ENDS]; /* at its two ends, rounded down */
    brief_figure base_left[BRIEF_ENDS];                        /* about this much is left */
    brief_figure caliper[BRIEF_ENDS]; /* the caliper at strings 1 and last when the first pass is
                                         done, rounded up; "-" where it was not read */
    brief_figure left_on;             /* the most that is left on, "-" for nothing */
    bool posts;                       /* two posts or thumbwheels are turned */
    brief_post post[BRIEF_ENDS];
    brief_figure length, thickness, slot_depth, top_radius;
    brief_figure shim; /* as at the nut */
    brief_figure lean;
    bool bass_to_head;
    brief_figure within;                   /* the caliper reads to plus or minus this */
    brief_figure best_setback[BRIEF_ENDS]; /* of the best straight slot, at the outer strings */
    brief_figure best_thickness;    /* of a saddle that carries all contact points in that slot,
                                       rounded    up; "-" where this one does */
    brief_figure lift, wedge, heel; /* what a neck at a wrong angle would have to give */
    int lift_string;                /* that asks for most, or -1 */
    brief_blank blank;
} brief_saddle;

/* The weakest of a string's stopped notes: the hardest pluck that still rings clean there. */
typedef struct brief_weakest {
    int stop;           /* the fret it is stopped at, or -1 where none is known */
    int on;             /* the fret it would touch */
    brief_figure force; /* N, square to the board */
} brief_weakest;

/* How a string rings, and where it has to leave the saddle to play in tune. */
typedef struct brief_sound {
    brief_figure picked;               /* N, square to the board */
    brief_figure open_now, open_after; /* the hardest clean pluck of the open string */
    brief_weakest now, after;
    brief_figure built, in_tune;   /* setback as built, and in tune at fret 12 */
    brief_figure setback, advance; /* of the best pair of saddle and nut */
    brief_figure cents, worst;     /* as built: at fret 12, and the worst of frets 1 to 12 */
    brief_figure move;             /* of the saddle by the tuner's cents */
} brief_sound;

/* A figure inside a sentence. */
typedef struct brief_said {
    const char *of; /* what it is: a fixed word, see docs/result.md */
    int string;     /* from 0, or -1 */
    int fret;       /* or -1 */
    brief_end end;
    brief_way way;
    brief_figure figure;
} brief_said;

/* A sentence, and what it says as data. */
typedef struct brief_sentence {
    const char *words;
    int first, count; /* its figures: brief->said[first .. first + count - 1] */
    unsigned strings; /* strings it names by number, a bit each, string 1 the lowest */
    brief_way way; /* of what is turned or moved; where strings differ, each figure has its own */
} brief_sentence;

typedef struct brief_step {
    sil_stage_name stage;
    sil_act act;
    brief_sentence what, check;
} brief_step;

typedef struct brief_finding {
    brief_sentence alone;    /* this finding by itself */
    brief_sentence together; /* with those behind it that say the same of other strings */
    int alike;               /* how many findings `together` tells: the next is that many on */
} brief_finding;

/* What a stage comes to, in two or three words: "set to 0.20", "file slots". */
typedef enum brief_stage_of {
    BRIEF_RELIEF,
    BRIEF_FRETS,
    BRIEF_NUT,
    BRIEF_SADDLE,
    BRIEF_STAGES
} brief_stage_of;

typedef struct brief_stage {
    const char *words;
    brief_figure figure; /* the one in its words, or "-" */
    bool waits;
    const char *why; /* the first reason it waits or is worked, NULL for none */
} brief_stage;

/* A visit: what was read, and what was to be expected. */
typedef struct brief_visit {
    const char *date; /* as written, "no date" for none */
    const char *work; /* taken as done before it: "rod", "nut and saddle", "no work" */
    bool expected;    /* there is a visit before it to expect by */
    brief_figure humidity, relief, ratio; /* %, mm, % of the change foretold that came */
    brief_figure read[SIL_STRINGS_MAX], due[SIL_STRINGS_MAX];
} brief_visit;

/* The fret farthest out of line under a string. */
typedef struct brief_fret_off {
    int fret;  /* 0 where none is */
    bool worn; /* else it stands too high */
    brief_figure off;
} brief_fret_off;

/* The lowest setup that would just ring clean: a limit, so all of it is rounded up. */
typedef struct brief_lowest {
    brief_figure relief;                  /* "-" where it is not known; rounded to the nearest */
    brief_figure action[SIL_STRINGS_MAX]; /* at fret 12 */
    brief_figure first[SIL_STRINGS_MAX];  /* at fret 1, held at the 3rd */
} brief_lowest;

/* A plan in a row of a table. */
typedef struct brief_row {
    const char *next;  /* the next work in a few words; "" where nothing is to be put right */
    const char *waits; /* what nut and saddle wait for; "" where neither waits */
} brief_row;

struct sil_brief {
    const sil_plan *plan;
    sil_unit unit;         /* of every length shown */
    const char *unit_name; /* "mm", "in" */
    int strings;
    part_nut nut_part;
    part_saddle saddle_part;
    brief_figure scale, scale_bass; /* "-" where it is not a fan */
    brief_stage stage[BRIEF_STAGES];
    brief_reading relief, first[SIL_STRINGS_MAX], action[SIL_STRINGS_MAX];
    brief_figure humidity; /* at the reading that counts, % */
    brief_fret_off worst[SIL_STRINGS_MAX];
    bool forecast; /* what follows rests on work that must be read again first */
    brief_nut nut;
    brief_saddle saddle;
    brief_sound sound[SIL_STRINGS_MAX];
    brief_visit *visits; /* the last ones, oldest first */
    int visit_count;
    brief_step *steps; /* as many as the plan's */
    brief_finding *findings;
    brief_said *said; /* the figures of all sentences */
    int said_count, said_room;
    brief_lowest lowest;
    brief_row row;
    text_store store; /* owns every text and list */
};
typedef struct sil_brief brief;

/* brief_make: everything a person is shown of a plan.
 * Given:    plan  made, of one stage or of all; must outlive the brief
 *           unit  of every length shown
 * Returned: the brief, to be freed with brief_free; NULL without memory
 */
brief *brief_make(const sil_plan *plan, sil_unit unit);
void brief_free(brief *b);

/* brief_row_of: a plan in a row of a table, without the rest of a brief; the store keeps its words
 * and fails without memory. */
brief_row brief_row_of(const sil_plan *plan, text_store *store);

/* Words that do not depend on a plan.
 * brief_hold:   how a gap at fret 1 is read: "open", "lying on the 2nd", "held at the 3rd"
 * brief_waits:  why a part waits, for a person; NULL for a code that holds nothing up
 */
const char *brief_hold(sil_hold hold);
const char *brief_waits(sil_code code);

/* A quick question: one string, no sheet. */
typedef struct brief_quick {
    double change, u;   /* exact, mm: + to take off; its standard uncertainty */
    const char *words;  /* the answer, two sentences */
    brief_said said[4]; /* its figures */
    int said_count;
    text_store store;
} brief_quick;

/* brief_quick_saddle, brief_quick_nut: how far to lower the saddle, or to deepen a slot.
 * Given:    scale, setback, now, want  mm; held: how the gap at fret 1 was read
 *           unit                       of the answer
 * Returned: answer, to be freed with brief_quick_free; its words are NULL without memory
 */
void brief_quick_saddle(double scale, double setback, double now, double want, sil_unit unit,
                        brief_quick *answer);
void brief_quick_nut(double scale, double now, double want, sil_hold held, sil_unit unit,
                     brief_quick *answer);
void brief_quick_free(brief_quick *answer);

#endif
