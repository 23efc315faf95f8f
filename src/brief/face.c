/* SPDX-License-Identifier: MIT */
/* The public functions of the brief. */
#include "brief.h"

sil_status sil_brief_make(const sil_plan *plan, sil_unit unit, sil_brief **made)
{
    *made = brief_make(plan, unit);
    return *made ? SIL_DONE : SIL_NO_MEMORY;
}

void sil_brief_free(sil_brief *b)
{
    brief_free(b);
}

const char *sil_brief_finding(const sil_brief *b, int index)
{
    return b->findings[index].alone.words;
}

const char *sil_brief_step(const sil_brief *b, int index)
{
    return b->steps[index].what.words;
}

const char *sil_brief_check(const sil_brief *b, int index)
{
    return b->steps[index].check.words;
}

const char *sil_brief_next(const sil_brief *b)
{
    return b->row.next;
}

const char *sil_brief_waits(const sil_brief *b)
{
    return b->row.waits;
}

bool sil_brief_said(const sil_brief *b, int step, int index, sil_said *said)
{
    const brief_sentence *what = &b->steps[step].what;
    if (index < 0 || index >= what->count) {
        return false;
    }
    const brief_said *one = &b->said[what->first + index];
    *said = (sil_said){one->of, one->string, one->figure.exact, one->figure.shown};
    return true;
}

const char *sil_code_waits(sil_code code)
{
    return brief_waits(code);
}
