/* SPDX-License-Identifier: MIT */
/* Which papers a pack needs, so that none of them is idle at the bench. */
#include "papers.h"
#include "slip.h"

static bool asked_for(const sil_drawing *drawing)
{
    return drawing->order.all || drawing->order.part != SIL_PART_ALL;
}

bool paper_needs(const sil_drawing *drawing, sil_part part)
{
    const brief *b = drawing->brief;
    return asked_for(drawing) || (part == SIL_PART_NUT ? b->nut.remedy != SIL_NUT_NONE
                                                       : b->saddle.remedy != SIL_SADDLE_NONE);
}

/* A part on a shim keeps its shape, so there is nothing to saw or file it by. A part that is longer
 * than the paper would have a sheet that says so and nothing else. */
bool paper_needs_template(const sil_drawing *drawing, sil_part part)
{
    const brief *b = drawing->brief;
    if (asked_for(drawing)) {
        return true;
    }
    double length = part == SIL_PART_NUT ? b->nut_part.length : b->saddle_part.length;
    bool cut = part == SIL_PART_NUT
                   ? b->nut.remedy != SIL_NUT_NONE && b->nut.remedy != SIL_NUT_WAIT &&
                         b->nut.remedy != SIL_NUT_SHIM
                   : b->saddle.remedy != SIL_SADDLE_NONE && b->saddle.remedy != SIL_SADDLE_WAIT &&
                         b->saddle.remedy != SIL_SADDLE_SHIM &&
                         !sil_working_turns(b->saddle.working);
    return cut && paper_slip_fits(length);
}

bool paper_needs_blank(const sil_drawing *drawing, sil_part part)
{
    const brief *b = drawing->brief;
    if (asked_for(drawing)) {
        return true;
    }
    return part == SIL_PART_NUT ? b->nut.remedy == SIL_NUT_REPLACE && b->nut.blank.ordered
                                : b->saddle.remedy == SIL_SADDLE_REPLACE && b->saddle.blank.ordered;
}
