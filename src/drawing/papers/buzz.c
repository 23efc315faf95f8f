/* SPDX-License-Identifier: MIT */
/* The part of a paper that answers "Will it buzz?": the clean force of every note now and after
 * the work, and the lowest clean setup. */
#include "../board/plain.h"
#include "../views/tone.h"
#include "tone.h"

static bool picked(const draw_draft *draft)
{
    return sil_known(draft->plan->job->attack.force[0]);
}

/* Counts the notes whose clean force is known, or only those that buzz. */
static int count_notes(const draw_draft *draft, const sil_clearance *clean, bool buzzing)
{
    int count = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        for (int stop = 0; stop < draft->plan->bench.board.frets; stop++) {
            bool buzzes = view_clearance_shade(draft, clean, i, stop) == VIEW_SHADE_BUZZES;
            count += buzzing ? buzzes : sil_known(clean->force[i][stop]);
        }
    }
    return count;
}

/* Words such as "a medium pick", or "this pick" if the job gives its force in newtons. */
static const char *say_pick(const draw_draft *draft)
{
    const char *name = draft->plan->job->attack.name;
    return name != NULL ? draw_say(draft, "a %s pick", name) : "this pick";
}

static int count_heard(const sil_plan *plan)
{
    int count = 0;
    for (int k = 0; k < plan->cause_count; k++) {
        count += plan->causes[k].heard;
    }
    return count;
}

static const char *say_count(const draw_draft *draft, int notes, bool about)
{
    return notes > 0 ? draw_say(draft, "%s%d", about ? "about " : "", notes) : "none";
}

static const char *buzz_headline(const draw_draft *draft)
{
    const sil_plan *plan = draft->plan;
    int known = count_notes(draft, &plan->clean_now, false);
    int now = count_notes(draft, &plan->clean_now, true);
    int after = count_notes(draft, &plan->clean_after, true);
    if (!picked(draft) || known == 0) {
        return "Will it buzz?";
    }
    if (now == 0 && after == 0) {
        int heard = count_heard(plan), all = plan->job->string_count * plan->bench.board.frets;
        return draw_say(draft, "Will it buzz? Not under %s%s%s", say_pick(draft),
                        known < all ? ", where known" : "",
                        heard > 0 ? draw_say(draft, "; yet %d heard", heard) : "");
    }
    return draw_say(draft, "Will it buzz? Notes under %s: %s now, %s after", say_pick(draft),
                    say_count(draft, now, false), say_count(draft, after, draft->brief->forecast));
}

static void put_buzz_words(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const char *held = "";
    if (picked(draft)) {
        held = draw_say(draft, " Held against %s, %s %s from the saddle.", say_pick(draft),
                        draw_plain_radius(draft, draft->plan->pluck.at), draft->brief->unit_name);
    }
    draw_flow_words(flow,
                    draw_say(draft,
                             "Hardest clean pluck of each note, square to the board, N; lowered, "
                             "the fret it would touch.%s %s",
                             held, brief_bound()),
                    3);
}

/* Whether there is a table of a time: of dashes alone, as of a saddle that is not made yet, there is none. */
static bool is_shown(const draw_draft *draft, bool after)
{
    const sil_plan *plan = draft->plan;
    int known = count_notes(draft, after ? &plan->clean_after : &plan->clean_now, false);
    return known > 0 || (!after && count_heard(plan) > 0);
}

/* Says why some columns have dashes. */
static void put_unknown(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool only_after = !is_shown(draft, false) && is_shown(draft, true);
    const sil_fit *fit = &draft->plan->stages.fit[only_after ? SIL_SADDLE : SIL_NOW];
    bool unread[SIL_STRINGS_MAX] = {false};
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        unread[i] = !sil_known(fit->bend + fit->nut_height[i] + fit->saddle_height[i]);
    }
    draw_flow_findings(flow, SIL_STRING_UNKNOWN);
    draw_flow_findings(flow, SIL_CORE_ASSUMED);
    const char *strings = draw_say_which(draft, "string", unread);
    if (strings[0] != '\0') {
        draw_flow_words(
            flow, draw_say(draft, "Relief, action and gap are needed first for %s.", strings), 2);
    }
}

static void put_key(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    flow->y -= 1;
    view_clearance_key(draft, list);
    draw_flow_put(flow, list, DRAW_LEFT, 5, view_clearance_height(draft, 4));
}

/* How many of the remaining rows go into this column. All of them if they fit, or if there is
 * too little room here and a new column can hold them all. Otherwise as many as fit, but never
 * just a few on their own. */
static int rows_here(const draw_flow *flow, int left)
{
    enum { FEW = 4 };
    const sil_drawing *drawing = flow->drawing;
    draw_room fresh = draw_paper_room(drawing, &flow->heading, draw_paper_columns(drawing) - 1);
    int here = view_clearance_rows(&drawing->draft, flow->y - flow->room.bottom);
    int most = view_clearance_rows(&drawing->draft, fresh.top - fresh.bottom);
    if (left <= here || (left <= most && here < most / 2)) {
        return left;
    }
    int rows = here < FEW ? most : here;
    return rows > left - FEW ? left - FEW : rows;
}

static void put_tables_of(draw_flow *flow, const view_clearance_form *form, bool now, bool after)
{
    const draw_draft *draft = &flow->drawing->draft;
    for (int first = 0, stops = draft->plan->bench.board.frets, end; first < stops; first = end) {
        end = first + rows_here(flow, stops - first);
        draw_shapes *list = draw_flow_list(flow), *second = draw_flow_list(flow);
        if (now) {
            view_clearance_table(draft, list, form, false, first, end);
        }
        if (after) {
            view_clearance_table(draft, second, form, true, first, end);
        }
        draw_shapes_add(list, second, now ? form->second : 0, 0);
        draw_shapes_free(second);
        draw_flow_put(flow, list, DRAW_LEFT, 5, 0);
    }
}

static void put_tables(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    view_clearance_form form = view_clearance_measure(draft, list, DRAW_COLUMN);
    draw_shapes_free(list);
    bool now = is_shown(draft, false), after = is_shown(draft, true);
    form.paired = form.paired && now && after;
    if (form.paired) {
        put_tables_of(flow, &form, true, true);
        return;
    }
    if (now) {
        put_tables_of(flow, &form, true, false);
    }
    if (after) {
        put_tables_of(flow, &form, false, true);
    }
}

static void put_lowest(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    brief_figure relief = draft->brief->lowest.relief;
    if (!brief_known(relief)) {
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    view_lowest(draft, list, DRAW_COLUMN);
    draw_flow_title(flow,
                    draw_say(draft, "Lowest that rings clean: relief %s %s",
                             draw_figure(draft, relief), draft->brief->unit_name),
                    draw_box_height(draw_shapes_box(list)) + 9.5);
    draw_flow_words(
        flow,
        draw_say(draft, "Under %s, on these crowns; gap held at the 3rd. A limit, not a target.",
                 say_pick(draft)),
        2);
    draw_flow_put(flow, list, DRAW_LEFT, 4, 0);
}

bool paper_has_buzz(const draw_draft *draft)
{
    return count_notes(draft, &draft->plan->clean_now, false) ||
           count_notes(draft, &draft->plan->clean_after, false);
}

void paper_buzz(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_flow_title(flow, buzz_headline(draft), 0);
    if (!paper_has_buzz(draft)) {
        put_unknown(flow);
        return;
    }
    put_buzz_words(flow);
    put_unknown(flow);
    put_key(flow);
    put_tables(flow);
    put_lowest(flow);
}
