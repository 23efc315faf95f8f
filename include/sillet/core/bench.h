/* SPDX-License-Identifier: MIT */
/* The bench: everything the stages are computed from. Readings with how far each is to be trusted,
 * targets, tools, and what is made new.
 */
#ifndef SILLET_BENCH_H
#define SILLET_BENCH_H

#include "board.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How the gap at the first fret is read: with the string open, or held down on fret 2 or 3. */
typedef enum sil_hold { SIL_HOLD_OPEN = 0, SIL_HOLD_2 = 2, SIL_HOLD_3 = 3 } sil_hold;

/* Readings at the strings. 0 in action or in a gap read with the string held means "touches": the
 * string rests on the fret, and no height can be computed from it. A gap that was not read is
 * SIL_UNKNOWN, not 0; start from sil_reading_clear. */
typedef struct sil_gaps {
    double action[SIL_STRINGS_MAX];     /* at fret action_at, mm, >= 0 or unknown */
    int action_at;                      /* 5..frets */
    bool capo;                          /* action read with a capo at fret 1 */
    double first[SIL_STRINGS_MAX];      /* gap at fret 1, mm */
    sil_tap first_tap[SIL_STRINGS_MAX]; /* where no gauge was used */
    sil_hold first_held;
    double first_open[SIL_STRINGS_MAX]; /* open gap, if also read; it counts where first is 0 or
                                           unknown, and where it is 0 itself */
} sil_gaps;

typedef struct sil_band {
    double low, aim, high;
} sil_band;

typedef struct sil_targets {
    sil_band relief;
    sil_band action[SIL_STRINGS_MAX]; /* open string, at fret 12 */
    sil_band first[SIL_STRINGS_MAX];
    sil_hold first_held;
    double cents; /* how far fret 12 may be from the octave of the open string, either way; unknown:
                     it is not judged */
} sil_targets;

/* How closely each tool reads, plus or minus, mm; the tuner, cents. The ruler is for how far the
 * saddle stands out of the bridge. */
typedef struct sil_tools {
    double action, first, relief, caliper, ruler, cents;
} sil_tools;

/* The rod ratio compares how far nut and saddle really move over the chord when the rod is turned
 * with how far they would move if the neck bent evenly. These are its least and greatest accepted
 * values, its standard uncertainty before two visits have shown it, and the least that it can have
 * after them (common practice, no source). */
#define SIL_ROD_RATIO_LEAST 0.3
#define SIL_ROD_RATIO_MOST 1.2
#define SIL_ROD_SPREAD 0.25
#define SIL_ROD_SPREAD_LEAST 0.1

/* How far each reading is to be trusted, and what else is known of it. All false: read today, and
 * nothing against it. */
typedef struct sil_standing {
    /* Not read today but taken over from the visit before. */
    bool relief_carried, action_carried[SIL_STRINGS_MAX], first_carried[SIL_STRINGS_MAX];
    /* Likely a slip of the pen: nothing is done by it until it was read again. order: so the list. */
    bool relief_odd, crowns_odd, saddle_odd, action_odd[SIL_STRINGS_MAX],
        first_odd[SIL_STRINGS_MAX], action_order, first_order;
    /* In its range at an earlier visit, and not worked since. */
    bool action_settled[SIL_STRINGS_MAX], first_settled[SIL_STRINGS_MAX];
    /* Heard to buzz: the open string; the string at any fret; any string at a fret before the one
     * where relief is read. */
    bool buzz_open[SIL_STRINGS_MAX], buzz[SIL_STRINGS_MAX], buzz_low;
} sil_standing;

/* How closely a target that stands for a reading is taken to be true, plus or minus, mm: relief,
 * where no string could be on to read it, and the gap at fret 1 of a nut that is there but was not
 * read. Common practice, no source. */
#define SIL_RELIEF_STANDS 0.1
#define SIL_FIRST_STANDS 0.1

/* The parts that are made from a blank. All false: none. */
typedef struct sil_fresh {
    bool nut, saddle;
    bool nut_made;      /* the nut that is in was made from a blank for this job */
    bool relief_stands; /* the relief of the bench is its target, and was not read */
    bool copied;        /* the nut is a copy, and not made to the targets of the first gap */
    double copy_over[SIL_STRINGS_MAX]; /* of a copy: its slot floors over the board's surface at the
                                          nut on the centre line, mm */
} sil_fresh;

/* Everything the stages are computed from, as plain figures. */
typedef struct sil_bench {
    sil_board board;
    sil_relief_reading relief;
    sil_gaps gaps;
    sil_crowns crowns; /* as read; all 0 if they were found sound or were not read */
    sil_targets targets;
    sil_tools tools;
    bool rod_works;     /* a rod is there and moves */
    bool straighten;    /* relief in its range is brought to its target all the same: the saddle has
                           too little room for it */
    double rod_ratio;   /* see SIL_ROD_RATIO_LEAST; 1 until it is measured */
    double rod_spread;  /* standard uncertainty of that ratio */
    bool looked_at;     /* somebody looked at the crowns, and relief was read in a way that can be
                           relied on: under a straightedge, or over 0 */
    double wear_limit;  /* a crown further than this from the line is put right, mm */
    double crown;       /* fret height of the sound frets, mm; may be unknown */
    double least_crown; /* with a fret height below this, the frets are replaced, mm */
    double shim_step,
        most_shim;  /* shims come in such steps, and none under the nut is thicker, mm */
    bool zero_fret; /* the crown of fret 0 sets the height at the nut: no slot is filed */
    /* How far the zero fret's crown was read off the line of the others, + over it, mm; 0: not read.
     * Its height follows from the gap at fret 1; this is only compared with it. */
    double zero_fret_off[SIL_STRINGS_MAX];
    /* What a first pass leaves on for a later one, in a slot and at the saddle, mm; and which
     * strings were cut since they were last read, by less than their cut. These are finished: their
     * next pass leaves nothing on, and is made though they may be in range by now. */
    double leave_slot, leave_saddle;
    bool finish_slot[SIL_STRINGS_MAX], finish_saddle[SIL_STRINGS_MAX];
    /* The pluck that nothing may be cut to buzz under: its force for each string, square to the
     * board, N (0 or unknown: none), where it is, from the saddle, mm, and the tensions, N. */
    double attack[SIL_STRINGS_MAX], pluck_at, tension[SIL_STRINGS_MAX];
    sil_standing standing;
    sil_fresh fresh;
} sil_bench;

#ifdef __cplusplus
}
#endif
#endif
