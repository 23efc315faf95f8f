/* SPDX-License-Identifier: MIT */
/* The plan's own fields, which other parts of the source may read, and the functions that fill
 * them, in the order in which they run. */
#ifndef SILLET_PLAN_PARTS_H
#define SILLET_PLAN_PARTS_H

#include <sillet/core/odd.h>
#include <sillet/plan.h>

/* What was not read at this visit but taken over: the visit at which it was read, or -1. */
typedef struct plan_carried {
    int relief, frets, bridge, braces, saddle_height, bridge_top, stands_out;
    int action[SIL_STRINGS_MAX], first[SIL_STRINGS_MAX];
} plan_carried;

/* A figure of a part, or of what is foretold of a string, as "What a part can be" in docs/arithmetic.md
 * has it; and one that no part can have, with its range. */
typedef enum plan_figure {
    PLAN_POSSIBLE, /* none that cannot be */
    PLAN_FLOOR,    /* of a nut slot over the nut's bottom */
    PLAN_STACK,    /* of a nut slot over the board */
    PLAN_PRESENT,  /* height of the saddle over its bottom, now */
    PLAN_HEIGHT,   /* and finished */
    PLAN_STANDS,   /* how far the saddle stands out of the bridge, now */
    PLAN_OUT,      /* and finished */
    PLAN_SHARE,    /* of the saddle inside its slot */
    PLAN_ACTION    /* foretold */
} plan_figure;

typedef struct plan_range {
    double low, high;
} plan_range;

typedef struct plan_sense {
    plan_figure figure;
    double value;
    plan_range range;
} plan_sense;

/* A part that is made from a blank: not made yet, asked for at an earlier visit, or read since. */
typedef enum plan_made { PLAN_NOT_MADE, PLAN_MADE, PLAN_READ_BACK } plan_made;

/* A plan. It has no pointers into itself, so it can be copied. */
struct sil_plan {
    const sil_job *job;
    int reading;    /* index of the reading to use, or -1: none */
    int only_stage; /* the stage whose findings and steps are kept, or -1: all */
    bool done;      /* every reading is in its range and there is no work left */
    int finding_count, step_count, cause_count, visit_count;
    sil_reading read; /* the reading in use; only where reading is not -1 */
    plan_made nut_made, saddle_made;
    plan_carried carried;
    sil_odd odd; /* what is odd in it, believed or not */
    sil_bench bench;
    sil_stages stages;
    double unit_mass_kg_m[SIL_STRINGS_MAX];
    double core[SIL_STRINGS_MAX];       /* mm: given, or typical */
    bool core_assumed[SIL_STRINGS_MAX]; /* a figure of this string stands on a typical core */
    sil_withheld nut_withheld, saddle_withheld;
    plan_sense nut_sense[SIL_STRINGS_MAX], saddle_sense[SIL_STRINGS_MAX];
    double nut_gap; /* between string edges at the nut, mm; unknown for equal centres */
    double slot_width[SIL_STRINGS_MAX]; /* to cut, mm */
    double off_line[SIL_STRINGS_MAX]; /* how far over its line the action at fret 12 was read, where
                                         a whole top is dressed by that line; otherwise 0 */
    sil_nut_work nut;
    sil_zero_fret zero_fret;
    sil_blank nut_blank;
    sil_saddle_work saddle;
    sil_blank saddle_blank;
    sil_tuning tuning;
    sil_neck neck;
    bool season;        /* the season moved it since the visit before */
    double saddle_jump; /* how far its height by caliper is from that of the visit before, where it
                           was not worked and the tools do not explain it, mm; otherwise unknown */
    double finer_first, finer_action; /* what plan_finer_tool gives */
    sil_pluck pluck;                  /* including the tension of each string */
    sil_fit finished; /* after the last stage, with the curve that a bridge on posts may need */
    sil_clearance clean_now, clean_after; /* before any work, and when it is finished */
    sil_lowest lowest;                    /* unknown where a tension is unknown */
    sil_compensation compensation[SIL_STRINGS_MAX];
    sil_line slot_as_built; /* setback over z: the straight line nearest to the present setbacks */
    sil_line slot_best;     /* the one nearest to the setbacks in tune at 12, by the tuner first */

    /* Lists. Only as many entries as are counted above are filled. The lists are the last fields,
     * because they are large and are not cleared. */
    sil_finding findings[SIL_FINDINGS_MAX];
    sil_step steps[SIL_STEPS_MAX];
    sil_cause causes[SIL_CAUSES_MAX];
    sil_visit visits[SIL_VISITS_MAX]; /* oldest first; one for each reading */
};

/* Fills nut_withheld and saddle_withheld, removes the figures of withheld work, and marks the
 * stages that wait. */
void plan_withhold(sil_plan *plan);

/* Fills nut_sense and saddle_sense; nut, saddle: whether that part has a figure that no part can have.
 * Then these are forgotten. Whether a part waits for it; and what is said of them. */
void plan_look_for_sense(sil_plan *plan, bool *nut, bool *saddle);
void plan_forget_impossible(sil_plan *plan);
bool plan_cannot_be(plan_figure figure, double value);
bool plan_any_impossible(const sil_plan *plan);
void plan_find_impossible(sil_plan *plan);

/* Of a string: its sounding length when open, from nut to fret 12, and what a tuner told of it. */
double plan_open_length(const sil_plan *plan, int string);
double plan_to_fret(const sil_plan *plan, int string);
void plan_read_cents(const sil_plan *plan, sil_tuning *t);
bool plan_any(const bool *marked, int count);

/* Whether this saddle's top may be filed for intonation, since somebody asked for it; and whether it
 * has the height for that: every string that is out stands so high over its target, or under one that
 * is glued in, so high over the low edge of its range. */
extern const double plan_one_stroke, plan_least_move;
bool plan_may_file(const sil_plan *plan);
bool plan_can_file(const sil_plan *plan, const sil_tuning *t);

/* Where a string's peak should go, from the face toward the nut; as near to that as the piece lets it
 * come; and the height that filing it there takes: 0 where it stays. */
double plan_peak_wanted(const sil_plan *plan, int string, double move);
double plan_peak_held(const sil_plan *plan, double wanted);
double plan_peak_drop(const sil_plan *plan, const sil_tuning *t, int string);
bool plan_any_peak_moves(const sil_plan *plan, const sil_tuning *t);

/* Fills tuning, after the parts are withheld. plan_peaks_first: whether the saddle is held back, so
 * that its peaks are filed while it has the height for them. plan_files_at_height: whether peaks are to
 * be filed on a saddle that is otherwise left alone, and take height from it. */
void plan_tuning(sil_plan *plan);
bool plan_peaks_first(const sil_plan *plan);
bool plan_files_at_height(const sil_plan *plan);

/* Whether a string that is out is left as it is: nothing moves, or its peak is at the face already. */
bool plan_stays_out(const sil_tuning *t, int string);

/* What a string is to be moved by at the saddle, mm, away from the nut where over 0; unknown for one
 * that is left or that waits. */
double plan_tune_move(const sil_tuning *t, int string);

/* Whether the plan asked for a string to leave the saddle's top at another place, on this saddle or
 * on a new one. */
bool plan_asked_peak(const sil_plan *plan, int string);
bool plan_asked_peaks(const sil_plan *plan); /* of any string */
void plan_find_tuning(sil_plan *plan);

/* A string over the heights of a fit, as its pitch is worked out. */
sil_pitch_string plan_pitch_string(const sil_plan *plan, const sil_fit *fit, int string);

/* Gives the peaks of a new saddle their places by the strings' physics, where nobody read cents. */
void plan_propose_peaks(sil_plan *plan);

/* Puts the pluck that was chosen in the sheet into a bench, for the strings that are known well enough.
 */
void plan_hold_to_pluck(const sil_job *job, sil_bench *bench);

/* A larger change of humidity than this moves the top as well as the neck: common practice, no
 * source. */
#define PLAN_CLIMATE_SWING_PCT 10.0

/* Lays out the bench from one reading, and what the visit before makes of it. before: NULL at the
 * first visit. ratio, spread: rod_ratio and rod_spread, as in sil_bench. */
void plan_lay(const sil_job *job, int reading, const sil_plan *before, double ratio, double spread,
              sil_plan *plan);

/* Takes over what this visit does not tell and the visit before did, into `read`: first what the
 * bench is laid out from, then, with the bench laid, the gaps. before: NULL at the first visit. */
void plan_carry(const sil_plan *before, sil_plan *now);
void plan_carry_gaps(const sil_plan *before, sil_plan *now);

/* Whether anything was taken over that was read at that visit. */
bool plan_carries(const plan_carried *carried, int visit);

/* Finds out which parts are made from a blank at this visit, and to what: fills bench.fresh, and
 * puts the target in place of a relief that no string at pitch showed. before: NULL at the first
 * visit. plan_clear_odd takes back what makes a part wait that is not read at all. */
void plan_begin_fresh(const sil_plan *before, sil_plan *now);
void plan_clear_odd(sil_plan *now);

/* Whether a part is made from a blank at this visit; whether its nut or saddle is, and does not
 * wait; whether the nut's target stands for gaps that were not read, under a new saddle. */
bool plan_makes(const sil_plan *plan);
bool plan_makes_nut(const sil_plan *plan);

/* plan_cuts_anew: whether a slot is cut from above today: in a new nut, or once it is filled. At first a
 * stroke is left on it. */
bool plan_cuts_anew(const sil_plan *plan, int string);
bool plan_makes_saddle(const sil_plan *plan);
bool plan_nut_stands(const sil_plan *plan);

/* Whether a gap at fret 1 was read from which a height follows. */
bool plan_gap_read(const sil_plan *plan, int string);

/* What is said of parts made from a blank, and the steps in a maker's order. */
void plan_find_fresh(sil_plan *plan);
void plan_order_new_nut(sil_plan *plan);
void plan_order_new_saddle(sil_plan *plan);

/* Computes the stages and the work at nut and saddle from the bench in plan. A visit needs no more
 * than this. */
void plan_work(sil_plan *plan);

/* plan_even: where a whole top is dressed and its actions lie on a line, works again by that line.
 * plan_as_read: by each reading. */
void plan_even(sil_plan *plan, void work(sil_plan *plan));
void plan_as_read(sil_plan *plan);

/* The action over fret 12 in a state, and the gap at fret 1. No string lies under a crown: an action
 * that would is unknown, since no height follows from it, and a gap is 0, at or under. */
double plan_action_over(const sil_plan *plan, const sil_fit *fit, int string);
double plan_first_over(const sil_plan *plan, const sil_fit *fit, int string, sil_hold hold);

/* The range that a gap at fret 1 is compared with as it is shown: its target's, and for a new nut over a
 * worn fret 1 as much higher as the gap reads more. */
sil_band plan_first_range(const sil_plan *plan, const sil_fit *fit, int string);

/* What the plan of a visit asked for: the rod, the frets, either of them, a string's slot or a
 * string's height at the saddle. The next visit takes it as done. */
bool plan_asked_rod(const sil_plan *plan);
sil_fretwork plan_asked_frets(const sil_plan *plan);
bool plan_asked_neck(const sil_plan *plan);
bool plan_asked_slot(const sil_plan *plan, int string);
bool plan_asked_saddle(const sil_plan *plan, int string);

/* Whether any work came before a visit, taken as done. */
bool plan_any_worked(const sil_visit *visit);

/* Marks the readings that must be taken again before anything is done by them. before: NULL at the
 * first visit. */
void plan_find_odd(const sil_plan *before, sil_plan *now);

/* Whether a reading must be taken again; and the findings that say which, and why. */
bool plan_any_odd(const sil_plan *plan);
void plan_find_odd_ones(sil_plan *plan);

/* Marks the strings that were in range at an earlier visit and were not worked since. */
void plan_settle(const sil_plan *before, sil_plan *now);

/* Marks the strings that were cut since the visit before by less than their cut; whether there are
 * any, so that the work is computed again. */
bool plan_finish(const sil_plan *before, sil_plan *now);

/* saddle_jump, from two visits. */
double plan_jump(const sil_plan *before, const sil_plan *now);

/* How much the plan asks to take off under a string before it is measured again: off the bottom and off
 * the top. */
double plan_saddle_pass(const sil_plan *plan, int string);

/* From which gap at the 1st fret (part SIL_NUT), or which action at the 12th (SIL_SADDLE), a string to
 * be lowered rings clean under the pick, mm, where that is over its target range, so that somebody has
 * to choose; unknown where nobody has. */
double plan_choice(const sil_plan *plan, sil_stage_name part, int string);

/* Whether the bow of the neck comes before what is cut by it. plan_rod_first: it is over its range,
 * and a rod that is there cannot take it out. plan_back_bowed: a straightedge showed a back-bow that
 * no rod can ease. */
bool plan_rod_first(const sil_plan *plan);
bool plan_back_bowed(const sil_plan *plan);

/* Whether a string is to come down at the saddle, and every one was read. */
bool plan_would_lower(const sil_plan *plan);

/* Whether the saddle would lose something to such a bow. */
bool plan_bow_holds_saddle(const sil_plan *plan);

/* Fills what a bow that is left as it is costs of the action. */
void plan_accept_bow(sil_plan *plan);

/* plan_slot_goal: how far a slot is deepened in all, mm: to its target, or to where the string rings
 *                 clean.
 * plan_slot_left: how much of that today's pass leaves on for a later one; or of a slot that is cut from
 *                 above, how much higher than its stack it is filed today, mm. */
double plan_slot_goal(const sil_plan *plan, int string);
double plan_slot_left(const sil_plan *plan, int string);

/* Cores, unit mass and tension of each string, for what is shown; the bench is set. */
void plan_weigh(sil_plan *plan);

/* Tension of a string with this core, N, and its unit mass, kg/m: as given, else by gauge and core.
 * Both unknown where they need a core that is not known. */
double plan_tension(const sil_plan *plan, int i, double core, double *mass);

/* How far stiffness may lift a string over the floor of its slot, mm; unknown where its core or its
 * modulus is. plan_bend_stacks keeps it for every string with a stack of feelers. */
double plan_stack_bend(const sil_plan *plan, int i);
void plan_bend_stacks(sil_plan *plan);

/* Moves the stack of each slot that was filed after the plan before: to the stack it was filed to,
 * less what its gap still asks for. It stays as it is where the gap did not come down by half of
 * that pass, or where it is farther off than lift and error of the stack explain. */
void plan_move_stacks(const sil_plan *before, sil_plan *now);

/* Computes every visit, oldest first, each with the rod ratio that the visits before it showed.
 * Afterwards plan has the work of the last visit, and the list of visits. other: memory for a
 * second plan to compute in, which need not be cleared. */
void plan_visits(sil_plan *plan, sil_plan *other);
void plan_find_visits(sil_plan *plan);

/* How far the neck would have to be tilted back, where the saddle cannot come down far enough, and what
 * the saddle can do short of that; what a bow that is left as it is costs. */
void plan_lift(sil_plan *plan);

/* Whether the saddle has too little room only for the relief that a rod can take out: it is turned
 * to the target though the relief is in its range. */
bool plan_straightens(const sil_plan *plan);

/* On a bridge with two posts: whether a string is still too high (SIL_TAKE) or too low (SIL_RAISE)
 * when the posts are at their best. SIL_LEAVE if it is in its range, and for any other bridge. */
sil_verdict plan_curve_at(const sil_plan *plan, int string);

/* How far that takes the string at the bridge after the posts, + up, mm; 0 where its curve is right. */
double plan_curve_rise(const sil_plan *plan, int string);

/* Whether it is wrong under any string. */
bool plan_curve_off(const sil_plan *plan);

/* Fills `finished`, when the stages are through and what waits is held up. */
void plan_finish_curve(sil_plan *plan);

/* Whether a zero fret is too high under a string, or too low. A zero fret level with the other frets
 * leaves almost no gap and still rings clean: it is too low where the string touches or was heard to
 * buzz when open, or its crown is under the line of the others. */
bool plan_zero_fret_high(const sil_plan *plan, int string);
bool plan_zero_fret_low(const sil_plan *plan, int string);
bool plan_any_zero_fret(const sil_plan *plan, bool (*is)(const sil_plan *, int));

/* The gap at fret 1, held down as in its target, that a zero fret leaves by how far its crown was read
 * off the others, mm; unknown where that was not read. */
double plan_zero_fret_told(const sil_plan *plan, int string);

/* How far a height over the chord is over the line of the other crowns, at the nut under a string, mm. */
double plan_over_others(const sil_plan *plan, const sil_fit *fit, double height, int string);

/* What a zero fret that is too low is to be raised to. */
void plan_zero_fret(sil_plan *plan);

/* How far a bridge in one piece sags under a string, mm; unknown where it does not. */
double plan_sag(const sil_plan *plan, int string);
void plan_find_sag(sil_plan *plan);

/* room: memory to find the lowest set-up in, of sil_lowest_room bytes. */
void plan_ring(sil_plan *plan, void *room);
void plan_tune(sil_plan *plan);
void plan_find(sil_plan *plan);
void plan_find_tone(sil_plan *plan);

/* Adds a finding at the end of the plan's list, without string, fret or figure. */
sil_finding *plan_found(sil_plan *plan, sil_code code, sil_level level);

/* Adds a finding, with the figure that caused it and the range or limit it is compared with. */
void plan_found_figure(sil_plan *plan, sil_code code, sil_level level, sil_stage_name stage,
                       int string, double read, sil_band range);

void plan_order(sil_plan *plan);

/* Whether a cut off the saddle's bottom is large enough to make: at least 0.01 mm at one end. */
bool plan_takes_anything(const sil_plan *plan, sil_line line);

/* How closely the action (for the saddle) or the gap at fret 1 (for the nut) must be read, plus or
 * minus, so that every cut has a first pass. Unknown where the present tools are good enough, and
 * where no tool is. plan_look_finer finds both figures. */
double plan_finer_tool(const sil_plan *plan, sil_stage_name stage);
void plan_look_finer(sil_plan *plan, sil_plan *tried);

/* Whether the state of the instrument stops all work: bridge, braces, pitch or climate. */
bool plan_stopped(const sil_plan *plan);

/* Whether the saddle is withheld only because it would end up too low above the bridge, or past the
 * end of its travel. Never true of a forecast, because that may still change. */
bool plan_sinks_too_low(const sil_plan *plan);

/* Whether the gaps of one string, and what else was read of its slot, cannot all be right. */
bool plan_gaps_apart(const sil_plan *plan, int string);

/* Either of the ways in which they cannot: the gap held and the open one, from which a held one follows
 * (unknown: not read); or the gap and how far the zero fret was read off the other frets. */
bool plan_open_apart(const sil_plan *plan, int string);
bool plan_zero_fret_apart(const sil_plan *plan, int string);
double plan_open_told(const sil_plan *plan, int string);

/* Whether relief is out of its range, and it was not given whether there is a rod to put it right.
 */
bool plan_rod_unknown(const sil_plan *plan);

/* Whether relief is too far out for a set-up, and there is no rod to put it right. */
bool plan_bowed_for_good(const sil_plan *plan);

/* Whether the saddle was found leaning, rocking or loose, so that every height over it is false. */
bool plan_saddle_loose(const sil_plan *plan);

/* Whether relief was read as 0 under a string: the neck is straight or back-bowed, and the string
 * cannot show which. */
bool plan_relief_at_nought(const sil_plan *plan);

#endif
