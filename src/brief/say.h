/* SPDX-License-Identifier: MIT */
/* Within the brief: the sentences for the steps, and for what changed between visits. */
#ifndef SILLET_BRIEF_SAY_H
#define SILLET_BRIEF_SAY_H

#include "tell.h"

typedef void say(const brief *b, telling *t);

/* Lists of strings for the sentences at nut and saddle.
 * say_slots:      the strings whose slot has this verdict, without a figure yet.
 * say_slots_with: the same strings, with a figure of their slots. say_strings_with: at the saddle.
 * say_take_coarse: takes the strings out of a list of first passes for which the tools are too
 *                 coarse to give one. hold: how far each may go so that it rings clean; where that
 *                 is known no tool would help, and the string is not among those returned. */
typedef brief_figure say_slot_figure(const brief_slot *slot);
typedef brief_figure say_bearing_figure(const brief_bearing *string);
tell_list say_slots(const brief *b, sil_verdict verdict);
tell_list say_slots_with(const brief *b, tell_list list, say_slot_figure *figure);
tell_list say_strings_with(const brief *b, tell_list list, say_bearing_figure *figure);
tell_list say_take_coarse(tell_list *first, const double *hold);

/* Getting ready and measuring. */
say say_prepare, say_check_prepare, say_stop, say_check_stop, say_measure_relief, say_straightedge,
    say_read_crowns, say_look_at_saddle, say_fit_saddle, say_check_fit, say_measure_first,
    say_measure_action, say_gaps_again, say_measure_crown, say_measure_saddle, say_check_written,
    say_read_again, say_check_read_again, say_check, say_check_check, say_measure_odd,
    say_check_odd;

/* The neck and its frets. */
say say_find_rod, say_rod_by_ear, say_check_rod_by_ear, say_neck_bow, say_rod, say_check_rod,
    say_rod_first, say_check_rod_first, say_back_bow, say_check_back_bow, say_seat, say_check_seat,
    say_level, say_check_level, say_new_frets, say_check_new_frets, say_zero_fret,
    say_raise_zero_fret, say_check_zero_fret;

/* The nut. */
say say_file, say_doubted_high, say_doubted_low, say_check_filed, say_fill, say_check_filled,
    say_shim_nut, say_check_shimmed_nut;

/* A nut or saddle from a blank. */
say say_fit_nut, say_check_fit_blank, say_mark_nut, say_check_mark_nut, say_cut_nut,
    say_check_cut_nut, say_shape_nut, say_check_shape_nut, say_measure_bridge, say_fit_blank,
    say_shape_saddle, say_check_shape_saddle, say_read_new, say_check_read_new;

/* The feelers, files and slope of the nut slots, which filing and cutting them share.
 * say_gap_done: the gap at fret 1 of a finished slot. say_first_stack: where its first pass stops.
 * say_top_usual: whether a slot is to be as deep below the nut's top as is usual.
 * say_files: the files to use for the slots of a list.
 * say_first_stacks: the feelers for slots that are cut from above, with the strings aside: the first
 *                   stack, at which to stop today, and the final one; how the file is held.
 * say_feelers: how a stack of feelers is used, from the string that lies in the slot, and the file.
 * say_last_stack: where a stack comes from, if not from the fret height, and what to do where a
 *             string did not follow its slot down.
 * say_stack_sure: how closely a stack of feelers gives the height of the string; ends a sentence.
 * say_fall: how the file is held, for the slope of the slots down toward the tuners.
 * say_doubted: to measure the doubtful gaps of these slots again, before they are worked; "" without. */
say_slot_figure say_gap_done, say_first_stack;
bool say_top_usual(const brief *b);
void say_files(const brief *b, tell_list slots, telling *t);
void say_first_stacks(const brief *b, tell_list slots, telling *t);
void say_feelers(const brief *b, telling *t);
void say_last_stack(const brief *b, const tell_list *stack, telling *t);
void say_stack_sure(const brief *b, telling *t);
void say_fall(const brief *b, telling *t);
void say_doubted(const brief *b, tell_list slots, telling *t);

/* The saddle, and where neck meets body. */
say say_sand, say_check_sand, say_dress, say_check_dress, say_check_action, say_check_curve,
    say_shim_saddle, say_check_shimmed, say_new_saddle, say_check_new_saddle, say_screws, say_posts,
    say_curve, say_neck_angle, say_check_neck_angle, say_neck_shim, say_neck_reset, say_check_neck;

/* Shared by what is done to a saddle.
 * say_actions:   a sentence with the action at fret 12 of every string of which it is known, when the
 *                work is as far as `when` says; and what it becomes after that, in the words of `later`,
 *                where it is not NULL.
 * say_actions_of: the same of some strings, which it names.
 * say_action_done: the action when all is done.
 * say_after_nut: where the nut is worked at the same visit, the action to find before the cut. */
void say_actions(const brief *b, const char *when, say_bearing_figure *figure, const char *later,
                 say_bearing_figure *then, telling *t);
void say_actions_of(const brief *b, tell_list strings, const char *when, say_bearing_figure *figure,
                    const char *later, say_bearing_figure *then, telling *t);
say_bearing_figure say_action_done;
void say_after_nut(const brief *b, telling *t);

/* Gives the sizes of a part or slot that is cut in two goes, with their unit: those to stop at first,
 * and the final ones. size: the word for it, by which the final ones are recorded, too. */
void say_first_and_final(const char *size, const char *of_first, const tell_list *first,
                         const tell_list *final, telling *t);

/* In tune. say_tune_out: what follows from cents that are out. */
say say_tune_screws, say_tune_ends, say_file_peaks, say_tuned_saddle, say_check_cents,
    say_check_peaks;
void say_tune_out(const brief *b, telling *t);

/* A finding's own sentence. f, count: the first finding, and how many from it on say the same. */
typedef void say_found(const brief *b, const sil_finding *f, int count, telling *t);

/* say_next_string: ": string 3 ", and from the second on "; string 4 ", of findings that are said together.
 * say_at_most:     " (at most 1.50 mm)", the limit of a length that is past it. */
void say_next_string(const sil_finding *f, int k, telling *t);
void say_at_most(const sil_finding *f, telling *t);

/* What changed between visits; readings and figures that cannot be; targets that would have strings
 * buzz under the pick, or that the saddle stops short of; a neck that may be twisted; a place in tune, or a
 * peak, past the edge of the saddle. */
say_found say_off_forecast, say_moved, say_wrong_way, say_saddle_moved, say_carried,
    say_reading_odd, say_reading_order, say_gaps_apart, say_seats_apart, say_sag, say_impossible,
    say_attack, say_aim_raised, say_aim_short, say_twist, say_off_saddle, say_peak_short;

/* Which target gives way to the pick. */
say say_choose;

/* Says that what is in range already is worked all the same, where a stage finishes such a string. */
void say_finished(const brief *b, sil_stage_name stage, telling *t);

/* Says how closely to measure so that a pass can be given, where the tools are too coarse. */
void say_finer(const brief *b, sil_stage_name stage, telling *t);

#endif
