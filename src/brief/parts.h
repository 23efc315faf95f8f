/* SPDX-License-Identifier: MIT */
/* The nut and the saddle as they are shown: what is done to each, string by string, and its sizes. */
#ifndef SILLET_BRIEF_PARTS_H
#define SILLET_BRIEF_PARTS_H

#include <sillet/core/nut.h>
#include <sillet/core/saddle.h>

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
    bool stack_moved;           /* the stack follows from the one filed to at the visit before */
    bool stack_stays;           /* it was to be filed before, and its gap did not come down */
    brief_figure gap;           /* at fret 1 when the slot is done */
    brief_figure gap_first;     /* and once the first passes of all slots are filed, and no more */
    bool hardly_low;            /* below its range, but by no more than the reading error */
    bool zero_fret_high;        /* the zero fret is too high under this string */
    bool zero_fret_low;         /* or too low */
    brief_figure rise;          /* by how much it is too low there; "-" where that is not known */
    brief_figure zero_fret_gap; /* the gap to stop at where it is either; "-" where it is neither */
    bool apart;                 /* the gaps read fretted and open do not agree */
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
    brief_figure zero_over, zero_over_sure; /* of a zero fret that is too low: over the other frets,
                                               rounded up, and plus or minus that */
    brief_figure zero_height, zero_sure;    /* the same over the board; "-" without a fret height */
    bool one_pass;                          /* the first pass takes the whole cut */
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
    brief_figure dress_now;    /* off the top, on paper: the first pass, or all of it where it is
                               dressed later; "-" for nothing */
    brief_figure left_on;      /* left on the top, because it is too little to file */
    brief_figure present;      /* from the saddle's bottom to the string, now */
    brief_figure height;       /* the same when all steps are done */
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
    brief_figure action_done;    /* when all steps are done, as posts or thumbwheels leave it */
    brief_figure action_curved;  /* when the bridge has its curve, too */
    brief_figure action_rod;     /* after the truss rod is turned */
    sil_verdict curve;           /* on two posts: whether the bridge's curve leaves it too high
                                   (SIL_TAKE) or too low (SIL_RAISE) */
    brief_figure
        curve_off; /* by how much, at the bridge, a cut rounded down; "-" where it is right */
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
    bool takes_first;   /* the first pass off the bottom is large enough to make */
    bool one_pass;      /* the first pass takes the whole cut */
    bool sands_later;   /* the cut off the bottom is large enough to make, its first pass is not */
    bool dresses_later; /* the top is dressed once the bottom has had all its passes */
    bool dressed;       /* something comes off the top */
    bool curve_off;     /* notches are deepened or filled once posts or thumbwheels have done */
    bool replaced;      /* a new saddle is made */
    brief_bearing string[SIL_STRINGS_MAX];
    brief_figure base_first[BRIEF_ENDS],
        base_all[BRIEF_ENDS];           /* off the bottom at its two ends, rounded down */
    brief_figure base_left[BRIEF_ENDS]; /* about how much remains there after the first pass */
    brief_figure caliper[BRIEF_ENDS]; /* what the caliper reads at the first and last strings after
                                         the first pass, rounded up; "-" where it was not read */
    brief_figure left_on;             /* the most that is left on the top; "-" for nothing */
    bool posts;                       /* two posts or thumbwheels are turned */
    brief_post post[BRIEF_ENDS];
    brief_figure length, thickness, top_radius;
    brief_figure pickup; /* how thick the one under it is; "-" without one */
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
    brief_figure bow_accepted; /* what a bow left as it is costs of the action; "-" where none is */
    brief_figure half_out,
        half_action[SIL_STRINGS_MAX];   /* short of work on the neck: the least that
                                  the saddle then stands out, rounded up, and the action then; "-" where
                                  it is not offered */
    bool half_shallow[SIL_STRINGS_MAX]; /* the break angle is then under its limit */
    int lift_string;                    /* the string that needs most, or -1 */
    brief_blank blank;
} brief_saddle;

#endif
