/* SPDX-License-Identifier: MIT */
/* The figures that are shown for the nut. */
#include "within.h"

/* Of a nut that is shimmed a slot is filed that is then too high. */
static brief_does does(const sil_plan *plan, int i)
{
    if (plan->nut.remedy == SIL_NUT_REPLACE) {
        return BRIEF_NEW;
    }
    if (plan->nut.remedy == SIL_NUT_SHIM) {
        return plan->stages.shim_leaves[i] ? BRIEF_LEAVES : BRIEF_FILES;
    }
    switch (plan->nut.verdict[i]) {
    case SIL_TAKE:
        return BRIEF_FILES;
    case SIL_RAISE:
        return BRIEF_FILLS;
    case SIL_LEAVE:
        return BRIEF_LEAVES;
    case SIL_WAIT:
        return BRIEF_WAITS;
    }
    return BRIEF_WAITS;
}

/* Less than this is too little to be a pass, mm. */
static const double least_pass = 0.005;

/* How much is filed at a slot: its own cut, plus the thickness of a shim under the nut. */
static void fill_passes(const brief *b, brief_slot *slot, int i)
{
    const sil_plan *plan = b->plan;
    slot->does = does(plan, i);
    bool files = slot->does == BRIEF_FILES, back = files && slot->verdict != SIL_TAKE;
    double shim = b->nut_part.shim, whole = plan_slot_goal(plan, i) + shim;
    double first = back ? plan->stages.filed_back[i] : plan->nut.first_pass[i] + shim;
    double left = plan_slot_left(plan, i);
    bool at_once = left < least_pass;
    slot->deepen = files
                       ? figure_limited(b->unit, at_once ? first : whole, SIL_DOWN, FIGURE_OFF_SLOT)
                       : figure_none();
    slot->first = files ? figure_limited(b->unit, first, SIL_DOWN, FIGURE_OFF_SLOT) : figure_none();
    slot->left = files ? figure_nearest(b, at_once ? 0.0 : left) : figure_none();
    slot->stack_first =
        files || plan_cuts_anew(plan, i)
            ? figure_limited(b->unit, plan->nut.stack[i] + left, SIL_UP, FIGURE_FLOOR)
            : figure_none();
    slot->worked = files || slot->does == BRIEF_FILLS || slot->does == BRIEF_NEW;
    slot->stack = figure_limited(b->unit, plan->nut.stack[i], SIL_UP, FIGURE_FLOOR);
    slot->stack_now = !slot->worked                    ? figure_none()
                      : brief_known(slot->stack_first) ? slot->stack_first
                                                       : slot->stack;
    slot->stack_moved = plan->nut.stack_moved[i];
    slot->stack_stays = plan->nut.stack_stays[i];
}

/* The gap at fret 1 once a slot that is filed has had its first pass, and the saddle is not yet worked. */
static brief_figure gap_after_pass(const brief *b, int i)
{
    const sil_plan *plan = b->plan;
    sil_fit fit = plan->stages.fit[SIL_FRETS];
    fit.nut_height[i] -= plan->nut.verdict[i] == SIL_TAKE ? plan->nut.first_pass[i] : 0.0;
    sil_hold hold = plan->bench.targets.first_held;
    return figure_nearest(b, plan_first_over(plan, &fit, i, hold));
}

/* A string that stiffness lifts by less than this lies as good as on its floor, mm. */
static const double least_lift = 0.01;

/* How good the feelers are for what they are used for. */
static void fill_feelers(brief *b)
{
    const sil_nut_work *work = &b->plan->nut;
    double u = SIL_UNKNOWN, lift = SIL_UNKNOWN;
    for (int i = 0; i < b->strings; i++) {
        if (b->nut.slot[i].worked && sil_known(work->stack[i])) {
            u = fmax(u, work->stack_u[i]); /* fmax leaves out what is not known */
            lift = fmax(lift, work->stack_bend[i]);
        }
    }
    brief_figure sure = figure_nearest(b, 2.0 * u);
    b->nut.stack_sure = sure;
    b->nut.stack_bend = lift >= least_lift ? figure_nearest(b, lift) : figure_none();
    b->nut.stack_words =
        !sil_known(u) ? ""
        : !brief_known(b->nut.stack_bend)
            ? text_keep(&b->store, "Feelers: \u00b1%s. The gap decides.", sure.shown)
            : text_keep(&b->store,
                        "Feelers: \u00b1%s, and stiffness may lift a string by up to %s. The gap "
                        "decides.",
                        sure.shown, b->nut.stack_bend.shown);
}

/* A new zero fret is dressed down to its gaps, so its height is rounded up. */
static void fill_zero_fret(brief *b)
{
    const sil_zero_fret *is = &b->plan->zero_fret;
    brief_nut *nut = &b->nut;
    nut->zero_over = figure_length(b->unit, is->over, SIL_UP);
    nut->zero_over_sure = figure_nearest(b, 2.0 * is->over_u);
    nut->zero_height = figure_length(b->unit, is->height, SIL_UP);
    nut->zero_sure = figure_nearest(b, 2.0 * is->height_u);
}

/* Whether a slot is below its range by no more than the reading error of its gap. */
static bool hardly_low(const sil_plan *plan, int i)
{
    sil_hold hold = plan->bench.targets.first_held;
    double gap = sil_first_gap(&plan->bench.board, &plan->stages.fit[SIL_FRETS], i, hold);
    return sil_known(gap) &&
           !sil_above(plan->bench.targets.first[i].low - gap, plan->bench.tools.first);
}

static void fill_slot(brief *b, int i, brief_slot *slot)
{
    const sil_plan *plan = b->plan;
    const part_nut *part = &b->nut_part;
    sil_hold hold = plan->bench.targets.first_held;
    slot->verdict = plan->nut.verdict[i];
    slot->hardly_low = hardly_low(plan, i);
    slot->zero_fret_high = plan_zero_fret_high(plan, i);
    slot->zero_fret_low = plan_zero_fret_low(plan, i);
    slot->rise = slot->zero_fret_low ? figure_nearest(b, -plan->stages.deepen[i]) : figure_none();
    slot->apart = plan_gaps_apart(plan, i);
    slot->gauge = figure_gauge(b->unit, part->gauge[i]);
    slot->width = figure_limited(b->unit, part->width[i], SIL_NEAREST, FIGURE_WIDTH);
    slot->along = figure_nearest(b, part->along[i]);
    slot->across = figure_nearest(b, part->across[i]);
    slot->floor = figure_limited(b->unit, part->floor[i], SIL_UP, FIGURE_FLOOR);
    slot->depth = figure_reference(figure_nearest(b, part->depth[i]));
    slot->top = figure_nearest(b, part->floor[i] + part->depth[i]);
    slot->off = figure_nearest(b, plan->stages.deepen[i]);
    slot->sure = figure_nearest(b, 2.0 * plan->stages.deepen_u[i]);
    slot->gap = figure_nearest(b, plan_first_over(plan, &plan->stages.fit[SIL_SADDLE], i, hold));
    fill_passes(b, slot, i);
    slot->gap_first = gap_after_pass(b, i);
    brief_fill_leaves(b, slot);
    slot->zero_fret_gap = slot->zero_fret_high || slot->zero_fret_low
                              ? figure_nearest(b, plan->bench.targets.first[i].aim)
                              : figure_none();
}

static const char *slots_with(brief *b, sil_verdict verdict)
{
    bool meant[SIL_STRINGS_MAX];
    for (int i = 0; i < b->strings; i++) {
        meant[i] = b->nut.slot[i].verdict == verdict;
    }
    return brief_which(b, "slot", meant);
}

static const char *nothing_filed(brief *b)
{
    if (b->nut.zero_fret) {
        return "No slot is filed for height: the zero fret sets it";
    }
    const char *unread = slots_with(b, SIL_WAIT);
    return unread[0] ? text_keep(&b->store, "Nothing is filed; not read yet: %s", unread)
                     : "Nothing is filed: every slot is in its range";
}

static bool files_any(const brief_nut *nut, int strings)
{
    for (int i = 0; i < strings; i++) {
        if (nut->slot[i].does == BRIEF_FILES) {
            return true;
        }
    }
    return false;
}

static const char *headline(brief *b)
{
    const brief_nut *nut = &b->nut;
    switch (nut->remedy) {
    case SIL_NUT_FILE:
        return text_keep(&b->store, "File %s down to feelers", slots_with(b, SIL_TAKE));
    case SIL_NUT_FILL:
        return text_keep(&b->store, "Fill %s and recut", slots_with(b, SIL_RAISE));
    case SIL_NUT_SHIM:
        return text_keep(&b->store,
                         files_any(nut, b->strings) ? "Shim the nut by %s %s, then file"
                                                    : "Shim the nut by %s %s, and file nothing",
                         nut->shim.shown, b->unit_name);
    case SIL_NUT_REPLACE:
        return text_keep(&b->store, "New nut%s", brief_blank_words(b, &nut->blank));
    case SIL_NUT_WAIT:
        return "Wait: nothing is cut at the nut today";
    case SIL_NUT_NONE:
        return nothing_filed(b);
    }
    return "";
}

bool brief_has_file(const sil_job *job, double width)
{
    for (int k = 0; k < job->file_count; k++) {
        if (job->files[k] == width) {
            return true;
        }
    }
    return false;
}

/* Every slot that is worked is cut as wide as one of the shop's files where one is wide enough. */
static void fill_files(brief *b)
{
    bool none[SIL_STRINGS_MAX], any = false;
    for (int i = 0; i < b->strings; i++) {
        none[i] = b->nut.slot[i].worked && !brief_has_file(b->plan->job, b->plan->slot_width[i]);
        any = any || b->nut.slot[i].worked;
    }
    b->nut.files = b->nut.no_file = "";
    if (any && b->plan->job->file_count > 0) {
        const char *which = brief_which(b, "slot", none);
        b->nut.files = "as wide as the cut width";
        b->nut.no_file =
            which[0] ? text_keep(&b->store, "No file fits %s: roll a narrower one.", which) : "";
    }
}

static void fill_spacing(brief *b)
{
    const part_nut *part = &b->nut_part;
    double from = part->length;
    for (int i = 0; i <= b->strings; i++) {
        double to = i < b->strings ? part->along[i] : 0.0;
        b->nut.spacing[i] = figure_nearest(b, from - to);
        from = to;
    }
}

static bool one_pass(const brief *b)
{
    for (int i = 0; i < b->strings; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        if (brief_known(slot->left) && slot->left.exact > 0.0) {
            return false;
        }
    }
    return true;
}

/* By how much a blank is left higher than its finished top while its slots are cut, mm. Common practice,
 * no source. */
static const double rough_over = 1.0;

/* How high a blank is while its slots are cut: from much higher a thin file would have to cut deep. */
static brief_figure rough_height(const brief *b)
{
    double rough = b->nut_part.height + rough_over;
    bool comes_off = b->nut.blank.ordered && b->plan->nut.remedy == SIL_NUT_REPLACE &&
                     sil_above(b->plan->nut_blank.height, rough);
    return comes_off ? figure_length(b->unit, rough, SIL_UP) : figure_none();
}

bool brief_files_again(const brief *b)
{
    return b->nut.remedy == SIL_NUT_FILE && !b->nut.one_pass;
}

static const double degree = 0.017453292519943295;

void brief_fill_nut(brief *b)
{
    const sil_plan *plan = b->plan;
    const part_nut *part = &b->nut_part;
    brief_nut *nut = &b->nut;
    bool replaced = plan->nut.remedy == SIL_NUT_REPLACE;
    nut->remedy = plan->nut.remedy;
    nut->zero_fret = plan->bench.zero_fret;
    fill_zero_fret(b);
    for (int i = 0; i < b->strings; i++) {
        fill_slot(b, i, &nut->slot[i]);
    }
    nut->one_pass = one_pass(b);
    fill_feelers(b);
    nut->length = figure_nearest(b, part->length);
    nut->thickness = brief_thickness(b, part->thickness, replaced);
    nut->height = figure_nearest(b, part->height);
    nut->top_radius = figure_radius(b->unit, part->top_radius);
    nut->crest_at = brief_crest_at(b, &part->top);
    nut->ends[BRIEF_TREBLE] = brief_end_height(b, &part->top, part->length);
    nut->ends[BRIEF_BASS] = brief_end_height(b, &part->top, 0);
    nut->floor_radius = figure_radius(b->unit, part->floor_radius);
    nut->fall = figure_number(part->fall_deg, 1);
    nut->gap = figure_nearest(b, part->gap);
    double crossing = part->thickness / cos(part->slant);
    nut->lean = brief_lean(part->slant);
    nut->crossing =
        brief_known(nut->lean) ? figure_reference(figure_nearest(b, crossing)) : nut->thickness;
    nut->drop = figure_nearest(b, crossing * tan(part->fall_deg * degree));
    nut->fit = brief_fit_words(b, nut->thickness);
    nut->bottom = replaced || nut->remedy == SIL_NUT_SHIM ? brief_bottom_words(b) : "";
    fill_spacing(b);
    fill_files(b);
    nut->board = figure_nearest(b, plan->job->nut.seat_to_board);
    nut->shim = figure_nearest(b, plan->nut.shim);
    nut->bass_to_head = part->slant < 0;
    const double done[] = {part->length, part->thickness, part->height + part->shim};
    nut->blank =
        brief_blank_of(b, nut->remedy != SIL_NUT_WAIT && !nut->zero_fret, plan->nut_blank, done,
                       part->along[0] - part->along[b->strings - 1], part->top_radius);
    nut->rough = rough_height(b);
    nut->headline = headline(b);
}
