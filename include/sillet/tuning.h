/* SPDX-License-Identifier: MIT */
/* What is done to bring the strings into tune at fret 12, by the cents that were read. */
#ifndef SILLET_TUNING_H
#define SILLET_TUNING_H

#include "core/tune.h"
#include "job.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_tune_remedy {
    SIL_TUNE_NONE,    /* no string is out, as far as cents were read */
    SIL_TUNE_SCREWS,  /* the intonation screws of the strings that are out */
    SIL_TUNE_ENDS,    /* the bridge is moved at its two ends */
    SIL_TUNE_PEAKS,   /* the saddle's top is filed so that strings leave it elsewhere */
    SIL_TUNE_REPLACE, /* so much bone is not there any more: a new saddle with its peaks there */
    SIL_TUNE_NOTE,    /* out, and nothing that is asked for can put it right: only said */
    SIL_TUNE_WAIT
} sil_tune_remedy;

/* What the work waits for, since it would move every string again. */
typedef enum sil_tune_wait {
    SIL_TUNE_READY,
    SIL_TUNE_AFTER_STOP, /* what stops all work */
    SIL_TUNE_AFTER_NECK, /* relief and frets */
    SIL_TUNE_AFTER_NUT,
    SIL_TUNE_AFTER_SADDLE
} sil_tune_wait;

typedef struct sil_tuning {
    sil_intonation by; /* what sets the length of a string */
    sil_tune_remedy remedy;
    sil_tune_wait waits;              /* SIL_TUNE_READY unless a string is out and the work waits */
    bool unused;                      /* cents were read, but of worn strings, or not at pitch */
    double cents[SIL_STRINGS_MAX];    /* as read, + sharp; unknown where they are not used */
    sil_side side[SIL_STRINGS_MAX];   /* to the target: SIL_OVER is sharp */
    double move[SIL_STRINGS_MAX];     /* what would put it in tune, + longer (back), mm, in range or
                                       not; unknown without cents */
    double proposed[SIL_STRINGS_MAX]; /* the same by the string's physics, where no cents were read,
                                         its setback was and its core is known; otherwise unknown.
                                         Only the peaks of a new saddle go by it */
    bool out[SIL_STRINGS_MAX];        /* out of the target */
    double
        turns[SIL_STRINGS_MAX];   /* of its intonation screw, + back; unknown unless it is turned */
    double end[2];                /* the bridge at strings 1 and N, + back, mm; unknown unless the
                                       ends are moved */
    double left[SIL_STRINGS_MAX]; /* cents that are left when that is done; unknown without cents */
    bool modelled[SIL_STRINGS_MAX];     /* its peak on a new saddle is by physics, not by a tuner */
    bool filed[SIL_STRINGS_MAX];        /* its peak is filed to another place */
    double peak[SIL_STRINGS_MAX];       /* where it leaves the top when that is done, from the face
                                       toward the nut, square to it, mm; unknown where no saddle is
                                       in a slot */
    double peak_short[SIL_STRINGS_MAX]; /* how far that is from where it should be, since the piece
                                           ends: + it should be farther back; 0 for none, mm */
    double drop[SIL_STRINGS_MAX]; /* how far the string comes down as its peak is filed, mm; 0 where
                                     it is not, and for a new saddle */
} sil_tuning;

#ifdef __cplusplus
}
#endif
#endif
