/* SPDX-License-Identifier: MIT */
/* How a call ended. The whole library uses this one list. */
#ifndef SILLET_STATUS_H
#define SILLET_STATUS_H

#ifdef __cplusplus
extern "C" {
#endif

/* 0: done. Above 0: done, but with warnings. Below 0: not done, and what would have been returned
 * is then NULL or untouched, as the function's block says.
 * Where more than one thing went wrong, the lowest number is returned. So having no memory comes
 * first, a sheet that cannot be read comes before one with errors, and any error before a warning.
 * Each function's block names the values it can return. */
typedef enum sil_status {
    SIL_DOUBTFUL = 1, /* done with warnings: a sheet was read, or a drawing made */
    SIL_DONE = 0,
    SIL_NOT_A_NUMBER = -1, /* the text is not a number, or the number is not finite */
    SIL_NO_UNIT = -2,      /* a figure without a unit where one is needed */
    SIL_OTHER_UNIT = -3,   /* a unit that does not fit this measure */
    SIL_NO_NOTE = -4,      /* not the name of a note */
    SIL_NOT_KNOWN = -5,    /* a figure that the answer depends on is not known */
    SIL_WRONG = -10,       /* the sheet has errors, so there is no job; see its complaints */
    SIL_UNREADABLE = -11,  /* a file or folder is missing, or may not be read */
    SIL_NO_FACE = -20,     /* no typeface for the lettering was found on this machine */
    SIL_NOT_SAVED = -21,   /* a file could not be written; errno says why */
    SIL_NO_SOLID = -22,    /* no part has a solid: it waits, or a size is not known */
    SIL_FAULT = -30,       /* a defect, as a coordinate that is not a number or too many pages */
    SIL_NO_MEMORY = -40
} sil_status;

/* sil_status_text: what a status means, in words.
 * Given:    status  any number
 * Returned: fixed text, not to be freed and never NULL: a line of English without a full stop;
 *           "unknown status" for a number that is not in the list
 */
const char *sil_status_text(sil_status status);

#ifdef __cplusplus
}
#endif
#endif
