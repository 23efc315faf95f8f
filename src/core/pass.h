/* SPDX-License-Identifier: MIT */
/* Used inside the core: which strings in range are brought to their targets all the same. */
#ifndef SILLET_CORE_PASS_H
#define SILLET_CORE_PASS_H

#include <sillet/core/fit.h>

/* core_finish_slots, core_finish_saddle: fill finish_slot and finish_saddle of stages, which have
 * been run without them.
 * Returned: whether any string is to be finished, so that the stages are run again
 */
bool core_finish_slots(const sil_bench *bench, sil_stages *stages);
bool core_finish_saddle(const sil_bench *bench, sil_stages *stages);

#endif
