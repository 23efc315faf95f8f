/* SPDX-License-Identifier: MIT */
/* Used inside the core: how far each string can come down at the saddle. */
#ifndef SILLET_CORE_ROOM_H
#define SILLET_CORE_ROOM_H

#include <sillet/core/saddle.h>

/* core_to_high: how far a string must come down at the saddle to reach the high edge of its range,
 * mm; under 0 where it is below that already. */
double core_to_high(const sil_bench *bench, const sil_stages *stages, int string);

/* core_least_out: how far the saddle must stand out of the bridge under a string, mm: the least that
 * it may, and what leaves its string enough of a break angle; unknown where neither is known. */
double core_least_out(const sil_saddle_given *make, int string);

/* core_saddle_room: fills room, goal, aim_short, missing and stops of work, from its verdicts and
 * from how far the saddle stands out. */
void core_saddle_room(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                      sil_saddle_work *work);

/* core_set_with_others: where a string's own screw is turned, the strings in range that are off their
 * targets by more than they may be wrong by are set to them, too: a screw costs nothing. Changes work
 * and stages, after core_saddle_room. */
void core_set_with_others(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                          sil_saddle_work *work);

/* core_dressed_only: whether the strings to lower are few, stand apart from the ends of the saddle
 * and need so little that the top is dressed under them and nothing comes off the bottom.
 * core_held_up: whether the others allow the bottom so little at a time that the top is dressed all
 * the same, at the ends as well; half: of the saddle's length, mm.
 * core_tilted: where the strings to lower are fewer than half and reach from one end of the saddle:
 * + from the treble end, - from the bass end; otherwise 0. */
bool core_dressed_only(int strings, const sil_saddle_work *work);
bool core_held_up(int strings, double half, const sil_saddle_work *work);
int core_tilted(int strings, const sil_saddle_work *work);

/* core_saddle_tilt: the line that takes nothing at one end of the bottom and the most under every
 * cap at the other. side: as core_tilted. The rest is as for sil_saddle_line. */
sil_line core_saddle_tilt(int count, const double *z, const double *cap, double half, int side,
                          const sil_line *most);

/* core_saddle_passes: fills first_pass and dress_first of work, when the rest of it is filled. */
void core_saddle_passes(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work);

/* Whether every string to lower has been cut before, so that a pass at the bottom, which carries them
 * all, need leave nothing on. */
bool core_all_finished(const sil_bench *bench, const sil_saddle_work *work);

#endif
