/* SPDX-License-Identifier: MIT */
/* Used inside the core: a shim under the nut. */
#ifndef SILLET_CORE_SHIM_H
#define SILLET_CORE_SHIM_H

#include <sillet/core/fit.h>

/* core_put_shim: decides whether the nut is shimmed, once every slot has its verdict, and puts the slots
 * that are not filed to where the shim lifts them. Fills shim, shim_leaves and filed_back of stages. */
void core_put_shim(const sil_bench *bench, sil_stages *stages);

/* Whether two low slots are filled and recut, and the nut is not shimmed for them. */
bool core_fills_two(const sil_bench *bench, const sil_stages *stages);

#endif
