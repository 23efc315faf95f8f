/* SPDX-License-Identifier: MIT */
#include <sillet/status.h>

const char *sil_status_text(sil_status status)
{
    switch (status) {
    case SIL_DOUBTFUL:
        return "done, with warnings";
    case SIL_DONE:
        return "done";
    case SIL_NOT_A_NUMBER:
        return "not a number";
    case SIL_NO_UNIT:
        return "the unit is missing";
    case SIL_OTHER_UNIT:
        return "not a unit for this";
    case SIL_NO_NOTE:
        return "not the name of a note";
    case SIL_NOT_KNOWN:
        return "a figure this depends on is not known";
    case SIL_WRONG:
        return "the sheet has errors";
    case SIL_UNREADABLE:
        return "cannot be read";
    case SIL_NO_FACE:
        return "no lettering face found";
    case SIL_NOT_SAVED:
        return "cannot be written";
    case SIL_NO_SOLID:
        return "no part has a solid";
    case SIL_FAULT:
        return "a defect of the library";
    case SIL_NO_MEMORY:
        return "out of memory";
    }
    return "unknown status";
}
