/* SPDX-License-Identifier: MIT */
#include "lent.h"

#include <stdlib.h>

/* The lender of the current thread: libharu asks for memory without naming the document. */
static _Thread_local write_lender *working;

void write_lender_begin(write_lender *lender)
{
    lender->blocks.next = lender->blocks.last = &lender->blocks;
    lender->error = SIL_DONE;
}

bool write_lender_work(write_lender *lender, void (*work)(void *with), void *with)
{
    if (lender->error != SIL_DONE) {
        return false;
    }
    working = lender;
    if (setjmp(lender->end) == 0) {
        work(with);
    }
    working = NULL;
    return lender->error == SIL_DONE;
}

void write_lender_end_work(write_lender *lender, sil_status error)
{
    lender->error = error;
    longjmp(lender->end, 1);
}

void *write_lend(unsigned size)
{
    write_block *block = malloc(sizeof *block + size);
    if (block == NULL) {
        write_lender_end_work(working, SIL_NO_MEMORY);
    }
    block->next = working->blocks.next;
    block->last = &working->blocks;
    block->next->last = block;
    block->last->next = block;
    return block + 1;
}

void write_give_back(void *lent)
{
    if (lent == NULL) {
        return;
    }
    write_block *block = (write_block *)lent - 1;
    block->last->next = block->next;
    block->next->last = block->last;
    free(block);
}

void write_lender_take_back(write_lender *lender)
{
    for (write_block *block = lender->blocks.next, *next; block != &lender->blocks; block = next) {
        next = block->next;
        free(block);
    }
    write_lender_begin(lender);
}
