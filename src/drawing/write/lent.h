/* SPDX-License-Identifier: MIT */
/* Memory lent to libharu, which does not survive being refused any: the work that asked is then
 * ended where it stands, and all that was lent is taken back at once.
 */
#ifndef SILLET_DRAWING_LENT_H
#define SILLET_DRAWING_LENT_H

#include <setjmp.h>
#include <stdbool.h>
#include <stddef.h>

#include <sillet/status.h>

/* What stands before each block. */
typedef struct write_block {
    _Alignas(max_align_t) struct write_block *next;
    struct write_block *last;
} write_block;

typedef struct write_lender {
    write_block blocks; /* a ring: this one is no block, and always there */
    jmp_buf end;
    sil_status error; /* why work was ended, or SIL_DONE */
} write_lender;

void write_lender_begin(write_lender *lender);

/* write_lender_work: does a piece of work for which memory may be asked, unless an earlier one was
 * ended. The work's own frame, and those below it, are left without notice where it is ended: it
 * holds nothing that it would have to give back.
 * Returned: whether the work came to its end
 */
bool write_lender_work(write_lender *lender, void (*work)(void *with), void *with);

/* write_lender_end_work: ends the work under way, for an error that is not SIL_DONE. */
_Noreturn void write_lender_end_work(write_lender *lender, sil_status error);

/* write_lend, write_give_back: as malloc and free, within a work of this thread; out of memory the
 * work ends with SIL_NO_MEMORY. */
void *write_lend(unsigned size);
void write_give_back(void *lent);

/* write_lender_take_back: frees all that is still lent. */
void write_lender_take_back(write_lender *lender);

#endif
