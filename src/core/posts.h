/* SPDX-License-Identifier: MIT */
/* A bridge on two posts. */
#ifndef SILLET_CORE_POSTS_H
#define SILLET_CORE_POSTS_H

#include <sillet/core/saddle.h>

/* core_turn_posts: how far both posts are turned, and what the strings' heights are then: as near as a
 * bridge can get whose strings all move along one straight line.
 * Given:  stages  the saddle judged, every string read
 *         work    the verdicts
 * Sets:   work    the remedy, the line and the posts, what stops and what falls short
 *         stages  the heights at the saddle, and whether anything is done
 */
void core_turn_posts(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                     sil_saddle_work *work);

#endif
