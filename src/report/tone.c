/* SPDX-License-Identifier: MIT */
/* The part of the result on sound: pitch, clearance, causes of a buzz, and the lowest clean
 * setup. */
#include "result.h"

static void put_slot(const sil_plan *plan, json_at object, const char *key, sil_line line)
{
    const sil_board *board = &plan->bench.board;
    const json_named slot[] = {{"treble", sil_line_at(line, board->saddle_z[0])},
                               {"bass", sil_line_at(line, board->saddle_z[board->strings - 1])}};
    json_put_named(object, key, slot, RESULT_COUNT(slot));
}

static void put_compensation(const sil_plan *plan, json_at root)
{
    static const char *const ends[] = {"clamped-pinned", "pinned", "clamped"};
    json_at object = json_put_object(root, "compensation");
    json_put_word(object, "ends", ends[plan->job->model.ends]);
    json_put_number(object, "press", plan->job->model.press);
    json_at array = json_put_array(object, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        const sil_compensation *told = &plan->compensation[i];
        json_at row = result_string(array, i);
        json_put_number(row, "saddle_only", told->saddle_only);
        const json_named best[] = {{"setback", told->best.setback},
                                   {"advance", told->best.advance},
                                   {"rms", told->best.rms}};
        json_put_named(row, "best", best, RESULT_COUNT(best));
        json_put_number(row, "move", told->move);
        json_put_number(row, "off_slot", told->off_slot);
        json_put_numbers(row, "as_built_cents", told->as_built + 1, SIL_PITCH_FRETS);
        json_put_numbers(row, "best_cents", told->at_best + 1, SIL_PITCH_FRETS);
    }
    put_slot(plan, object, "slot_as_built", plan->slot_as_built);
    put_slot(plan, object, "slot_best", plan->slot_best);
}

static void put_clean(const sil_plan *plan, json_at object, const char *key,
                      const sil_clearance *clean)
{
    const sil_board *board = &plan->bench.board;
    json_at array = json_put_array(object, key);
    for (int i = 0; i < board->strings; i++) {
        json_at row = result_string(array, i);
        json_put_numbers(row, "clean_force", clean->force[i], board->frets);
        double frets[SIL_FRETS_MAX];
        for (int stop = 0; stop < board->frets; stop++) {
            int fret = clean->at_fret[i][stop];
            frets[stop] = fret > 0 ? fret : SIL_UNKNOWN;
        }
        json_put_numbers(row, "at_fret", frets, board->frets);
    }
}

static void put_clearance(const sil_plan *plan, json_at root)
{
    json_at object = json_put_object(root, "clearance");
    json_at attack = json_put_object(object, "attack");
    json_put_numbers(attack, "force", plan->job->attack.force, plan->job->string_count);
    json_put_number(attack, "at", plan->pluck.at);
    put_clean(plan, object, "strings", &plan->clean_now);
    put_clean(plan, object, "after", &plan->clean_after);
}

static void put_causes(const sil_plan *plan, json_at root)
{
    static const char *const remedies[] = {"relief", "crown", "slot", "saddle"};
    json_at array = json_put_array(root, "causes");
    for (int k = 0; k < plan->cause_count; k++) {
        const sil_cause *note = &plan->causes[k];
        json_at row = json_add_object(array);
        json_put_int(row, "string", note->string + 1);
        json_put_int(row, "fret", note->fret);
        json_put_bool(row, "heard", note->heard);
        json_put_bool(row, "likely", note->likely);
        json_put_number(row, "clean_force", note->clean_force);
        for (int remedy = 0; remedy < SIL_REMEDIES; remedy++) {
            json_put_number(row, remedies[remedy], note->remedied[remedy]);
        }
        json_put_word(row, "cause", sil_cause_word(note->cause));
    }
}

static void put_lowest(const sil_plan *plan, json_at root)
{
    const sil_lowest *lowest = &plan->lowest;
    if (!sil_known(lowest->relief)) {
        json_put_null(root, "lowest");
        return;
    }
    json_at object = json_put_object(root, "lowest");
    json_put_number(object, "relief", lowest->relief);
    json_at array = json_put_array(object, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        const sil_board *board = &plan->bench.board;
        const json_named row[] = {
            {"number", i + 1},
            {"first_held3", sil_first_gap(board, &lowest->fit, i, SIL_HOLD_3)},
            {"action", sil_action(board, &lowest->fit, i, 12)}};
        json_add_named(array, row, RESULT_COUNT(row));
    }
}

void result_tone(const sil_plan *plan, json_at root)
{
    put_compensation(plan, root);
    put_clearance(plan, root);
    put_causes(plan, root);
    put_lowest(plan, root);
}
