/* SPDX-License-Identifier: MIT */
/* How a call ended: one list for the whole library. */
#ifndef SILLET_STATUS_H
#define SILLET_STATUS_H

#ifdef __cplusplus
extern "C" {
#endif

/* 0: done. Above 0: done, but there is something to be aware of. Below 0: not done; what was to be
 * returned is then NULL or untouched, as the function's block says.
 * Where more than one thing went wrong, the lowest number is returned. So no memory comes before
 * all else, a sheet that cannot be read before one that is wrong, and any error before a doubt.
 * Each function's block names those it can return. */
typedef enum sil_status {
    SIL_DOUBTFUL = 1, /* a sheet read with warnings, a drawing made with some */
    SIL_DONE = 0,
    SIL_NOT_A_NUMBER = -1, /* nothing that reads as a number, or not finite */
    SIL_NO_UNIT = -2,      /* a bare figure where a unit must be said */
    SIL_OTHER_UNIT = -3,   /* a unit that this measure does not know */
    SIL_NO_NOTE = -4,      /* not the name of a note */
    SIL_NOT_KNOWN = -5,    /* a figure that the answer depends on is not known */
    SIL_WRONG = -10,       /* the sheet has errors, and its complaints tell them: there is no job */
    SIL_UNREADABLE = -11,  /* a file or folder that cannot be read: not there, no right to it */
    SIL_NO_FACE = -20,     /* no lettering face found on this machine */
    SIL_NOT_SAVED = -21,   /* a file that could not be written; errno says why */
    SIL_FAULT = -30,       /* a defect: a place that is no number, more pages than there can be */
    SIL_NO_MEMORY = -40
} sil_status;

/* sil_status_text: what a status means, for a person.
 * Given:    status  any number
 * Returned: a line of English without full stop, never NULL; "unknown status" for a number that is
 *           none of these. Fixed text, not to be freed
 */
const char *sil_status_text(sil_status status);

#ifdef __cplusplus
}
#endif
#endif
