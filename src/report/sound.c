/* SPDX-License-Identifier: MIT */
/* The result's rooms of sound: pitch, clearance, causes of a buzz, the lowest clean setup. */
#include "writer.h"

static void put_slot(writer *w, cJSON *object, const char *key, sil_line line)
{
    const sil_board *board = &w->plan->bench.board;
    cJSON *slot = put_object(w, object, key);
    put_number(w, slot, "treble", sil_line_at(line, board->saddle_z[0]));
    put_number(w, slot, "bass", sil_line_at(line, board->saddle_z[board->strings - 1]));
}

static void put_compensation(writer *w, cJSON *root)
{
    static const char *const ends[] = {"clamped-pinned", "pinned", "clamped"};
    const sil_plan *plan = w->plan;
    cJSON *object = put_object(w, root, "compensation");
    put_word(w, object, "ends", ends[plan->job->model.ends]);
    put_number(w, object, "press", plan->job->model.press);
    cJSON *array = put_array(w, object, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        const sil_compensation *told = &plan->compensation[i];
        cJSON *row = add_string_row(w, array, i);
        put_number(w, row, "saddle_only", told->saddle_only);
        cJSON *best = put_object(w, row, "best");
        put_number(w, best, "setback", told->best.setback);
        put_number(w, best, "advance", told->best.advance);
        put_number(w, best, "rms", told->best.rms);
        put_number(w, row, "move", told->move);
        put_number(w, row, "off_slot", told->off_slot);
        put_numbers(w, row, "as_built_cents", told->as_built + 1, SIL_PITCH_FRETS);
        put_numbers(w, row, "best_cents", told->at_best + 1, SIL_PITCH_FRETS);
    }
    put_slot(w, object, "slot_as_built", plan->slot_as_built);
    put_slot(w, object, "slot_best", plan->slot_best);
}

static void put_clean(writer *w, cJSON *object, const char *key, const sil_clearance *clean)
{
    const sil_board *board = &w->plan->bench.board;
    cJSON *array = put_array(w, object, key);
    for (int i = 0; i < board->strings; i++) {
        cJSON *row = add_string_row(w, array, i);
        put_numbers(w, row, "clean_force", clean->force[i], board->frets);
        double frets[SIL_FRETS_MAX];
        for (int stop = 0; stop < board->frets; stop++) {
            int fret = clean->at_fret[i][stop];
            frets[stop] = fret > 0 ? fret : SIL_UNKNOWN;
        }
        put_numbers(w, row, "at_fret", frets, board->frets);
    }
}

static void put_clearance(writer *w, cJSON *root)
{
    const sil_plan *plan = w->plan;
    cJSON *object = put_object(w, root, "clearance");
    cJSON *attack = put_object(w, object, "attack");
    put_numbers(w, attack, "force", plan->job->attack.force, plan->job->string_count);
    put_number(w, attack, "at", plan->pluck.at);
    put_clean(w, object, "strings", &plan->clean_now);
    put_clean(w, object, "after", &plan->clean_after);
}

static void put_causes(writer *w, cJSON *root)
{
    static const char *const remedies[] = {"relief", "crown", "slot", "saddle"};
    cJSON *array = put_array(w, root, "causes");
    for (int k = 0; k < w->plan->cause_count; k++) {
        const sil_cause *note = &w->plan->causes[k];
        cJSON *row = add_row(w, array);
        put_int(w, row, "string", note->string + 1);
        put_int(w, row, "fret", note->fret);
        put_bool(w, row, "heard", note->heard);
        put_number(w, row, "clean_force", note->clean_force);
        for (int remedy = 0; remedy < SIL_REMEDIES; remedy++) {
            put_number(w, row, remedies[remedy], note->remedied[remedy]);
        }
        put_word(w, row, "cause", sil_cause_word(note->cause));
    }
}

static void put_lowest(writer *w, cJSON *root)
{
    const sil_plan *plan = w->plan;
    const sil_lowest *lowest = &plan->lowest;
    if (!sil_known(lowest->relief)) {
        put_null(w, root, "lowest");
        return;
    }
    cJSON *object = put_object(w, root, "lowest");
    put_number(w, object, "relief", lowest->relief);
    cJSON *array = put_array(w, object, "strings");
    for (int i = 0; i < plan->job->string_count; i++) {
        const sil_board *board = &plan->bench.board;
        cJSON *row = add_string_row(w, array, i);
        put_number(w, row, "first_held3", sil_first_gap(board, &lowest->fit, i, SIL_HOLD_3));
        put_number(w, row, "action", sil_action(board, &lowest->fit, i, 12));
    }
}

void put_sound(writer *w, cJSON *root)
{
    put_compensation(w, root);
    put_clearance(w, root);
    put_causes(w, root);
    put_lowest(w, root);
}
