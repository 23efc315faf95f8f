/* SPDX-License-Identifier: MIT */
/* Memory lent to libharu, which does not survive a failed allocation. If memory runs out, the
 * current work is ended at once, and everything that was lent is freed together. */
#ifndef SILLET_DRAWING_LENT_H
#define SILLET_DRAWING_LENT_H

#include <setjmp.h>
#include <stdbool.h>
#include <stddef.h>

#include <sillet/status.h>

/* The header of each block. */
typedef struct write_block {
    _Alignas(max_align_t) struct write_block *next;
    struct write_block *last;
} write_block;

typedef struct write_lender {
    write_block blocks; /* the head of the ring of blocks, always present */
    jmp_buf end;
    sil_status error; /* why the work was ended, or SIL_DONE */
} write_lender;

void write_lender_begin(write_lender *lender);

/* write_lender_work: does a piece of work that may ask for memory, unless earlier work was ended.
 * Work that is ended early is left by a jump, without any clean-up: it must not hold anything that
 * it would have to free.
 * Returned: whether the work was completed
 */
bool write_lender_work(write_lender *lender, void (*work)(void *with), void *with);

/* write_lender_end_work: ends the current work with an error, which is not SIL_DONE. */
_Noreturn void write_lender_end_work(write_lender *lender, sil_status error);

/* write_lend, write_give_back: like malloc and free, during the work of this thread. If memory
 * runs out, the work ends with SIL_NO_MEMORY. */
void *write_lend(unsigned size);
void write_give_back(void *lent);

/* write_lender_take_back: frees everything that is still lent. */
void write_lender_take_back(write_lender *lender);

#endif
