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
#include "parts.h"
#include "shown.h"

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
    brief_sentence figures; /* what that rests on: "0.18 (range 0.05 to 0.30)"; "" for nothing */
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
    brief_figure relief_read; /* as it was read under a string; "-" where it was not */
    brief_reading relief, first[SIL_STRINGS_MAX], action[SIL_STRINGS_MAX];
    const char
        *on_a_rule; /* the actions and their targets in 64ths of an inch, in a sentence; "" in
                              mm, and where none is known */
    brief_figure first_off[SIL_STRINGS_MAX]; /* how far a held gap at fret 1 is off the others */
    bool slackens;                           /* the strings come off for today's work */
    brief_figure humidity;                   /* at the last reading, % */
    brief_range humidity_wanted;             /* its limits, %, without an aim */
    brief_fret_off worst[SIL_STRINGS_MAX];
    bool asks_cents; /* a target is given in cents, and none were read yet */
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

/* brief_turns:      turns in words: "about 1/2 turn", "about 1-3/8 turns", "less than 1/8 turn"; kept
 *                   in the store.
 * brief_turns_each: the same without "about", for one of several.
 */
const char *brief_turns(text_store *store, brief_figure turns);
const char *brief_turns_each(text_store *store, brief_figure turns);

/* brief_bound: how far the hardest clean pluck and the fret it names may be relied on. */
const char *brief_bound(void);

/* brief_level: how much a finding matters, for a person: "stop", "do", "watch" or "note". */
const char *brief_level(sil_level level);

#endif
