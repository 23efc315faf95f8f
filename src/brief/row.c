/* SPDX-License-Identifier: MIT */
/* A plan in a row of a table: the next work and what the parts wait for, in few words. */
#include "within.h"

/* The next work in few words; NULL for a step that is no work on the instrument. */
static const char *next_words(sil_act act)
{
    switch (act) {
    case SIL_ACT_PREPARE:
    case SIL_ACT_STOP:
    case SIL_ACT_CHECK:
    case SIL_ACTS:
        return NULL;
    case SIL_ACT_MEASURE_RELIEF:
        return "measure the relief";
    case SIL_ACT_STRAIGHTEDGE:
        return "lay on a straightedge";
    case SIL_ACT_READ_CROWNS:
        return "look at the frets";
    case SIL_ACT_MEASURE_FIRST:
        return "measure gaps at fret 1";
    case SIL_ACT_MEASURE_ACTION:
        return "measure the action";
    case SIL_ACT_READ_GAPS_AGAIN:
        return "measure fret 1 again";
    case SIL_ACT_MEASURE_CROWN:
        return "measure a fret's height";
    case SIL_ACT_MEASURE_SADDLE:
        return "measure the saddle";
    case SIL_ACT_NECK_BOW:
    case SIL_ACT_NECK_ANGLE:
    case SIL_ACT_NECK_SHIM:
    case SIL_ACT_NECK_RESET:
        return "neck to a repairer";
    case SIL_ACT_ROD:
        return "turn the truss rod";
    case SIL_ACT_FIND_ROD:
        return "look for a truss rod";
    case SIL_ACT_ROD_BY_EAR:
        return "turn the rod, by ear";
    case SIL_ACT_READ_AGAIN:
        return "measure all again";
    case SIL_ACT_SEAT_FRETS:
        return "seat the proud frets";
    case SIL_ACT_LEVEL_FRETS:
        return "level the frets";
    case SIL_ACT_NEW_FRETS:
        return "new frets";
    case SIL_ACT_FILE_SLOTS:
        return "file the nut slots";
    case SIL_ACT_FILL_SLOT:
        return "fill and recut a slot";
    case SIL_ACT_SHIM_NUT:
        return "shim the nut";
    case SIL_ACT_NEW_NUT:
        return "new nut";
    case SIL_ACT_SAND_SADDLE:
        return "sand the saddle's bottom";
    case SIL_ACT_DRESS_SADDLE:
        return "dress the saddle's top";
    case SIL_ACT_SHIM_SADDLE:
        return "shim the saddle";
    case SIL_ACT_NEW_SADDLE:
        return "new saddle";
    case SIL_ACT_TURN_SCREWS:
        return "turn the height screws";
    case SIL_ACT_TURN_POSTS:
        return "turn the bridge's posts";
    case SIL_ACT_BRIDGE_CURVE:
        return "fit the bridge's curve";
    case SIL_ACT_ZERO_FRET:
        return "work the zero fret";
    }
    return NULL;
}

/* Why a part may not be worked today, in words, for each code that holds one up. */
typedef struct wait_words {
    const char *why;      /* as a clause: "relief was not measured" */
    const char *for_what; /* what it waits for: "the relief" */
    const char *next;     /* where it stops all work: what to do about it */
} wait_words;

static wait_words waits_of(sil_code code)
{
    switch (code) {
    case SIL_BACK_BOW:
        return (wait_words){"the neck may be back-bowed, which a string cannot show",
                            "a straightedge on the neck", NULL};
    case SIL_RELIEF_UNKNOWN:
        return (wait_words){"relief was not measured", "the relief", NULL};
    case SIL_FRET_WORN:
        return (wait_words){"the frets are levelled first", "the frets", NULL};
    case SIL_CROWN_THIN:
        return (wait_words){"new frets come first", "new frets", NULL};
    case SIL_ROD_UNKNOWN:
        return (wait_words){"it is not known whether there is a truss rod",
                            "whether there is a truss rod", NULL};
    case SIL_CROWNS_UNREAD:
        return (wait_words){"nobody has looked at the frets for wear", "a look at the frets", NULL};
    case SIL_PROTRUSION_LOW:
        return (wait_words){"the saddle would stand too low; the neck's angle is at fault",
                            "the neck's angle", NULL};
    case SIL_ADJUST_LIMIT:
        return (wait_words){
            "the saddle reaches the end of its travel before the target; the neck's angle is at "
            "fault",
            "the neck's angle", NULL};
    case SIL_ZERO_FRET_HIGH:
        return (wait_words){"the zero fret is put right first", "the zero fret", NULL};
    case SIL_READINGS_DISAGREE:
        return (wait_words){"the fretted and the open gap do not fit the same slot",
                            "the gaps at fret 1", NULL};
    case SIL_ROD_LIMIT:
        return (wait_words){"the neck is bowed too far to set up, and no truss rod can mend it",
                            "the neck's bow", NULL};
    case SIL_FORECAST:
        return (wait_words){"the truss rod is turned first", "the truss rod", NULL};
    case SIL_CLIMATE:
        return (wait_words){"the humidity is outside its limits", "the humidity",
                            "bring the humidity back"};
    case SIL_BRIDGE_LIFTED:
        return (wait_words){"the bridge is lifting", "the bridge", "glue the bridge"};
    case SIL_BRACES_LOOSE:
        return (wait_words){"a brace is loose", "a brace", "glue the brace"};
    case SIL_NOT_TUNED:
        return (wait_words){"the strings were not at pitch", "strings at pitch",
                            "tune, and measure again"};
    case SIL_RELIEF_LOW:
    case SIL_RELIEF_HIGH:
    case SIL_FRET_HIGH:
    case SIL_SLOT_LOW:
    case SIL_SLOT_HIGH:
    case SIL_SADDLE_LOW:
    case SIL_SADDLE_HIGH:
    case SIL_PROTRUSION_HIGH:
    case SIL_SEAT_SHALLOW:
    case SIL_BREAK_ANGLE_LOW:
    case SIL_NECK_ANGLE:
    case SIL_TOOL_COARSE:
    case SIL_EDGE_NARROW:
    case SIL_TWIST:
    case SIL_TECHNIQUE:
    case SIL_UNEXPLAINED:
    case SIL_ATTACK:
    case SIL_STRING_UNKNOWN:
    case SIL_STRING_STIFF:
    case SIL_OFF_SADDLE:
    case SIL_OFF_FORECAST:
    case SIL_MOVED:
    case SIL_WRONG_WAY:
    case SIL_ZERO_FRET_LOW:
    case SIL_CODES:
        break;
    }
    return (wait_words){NULL, NULL, NULL};
}

const char *brief_waits(sil_code code)
{
    return waits_of(code).why;
}

static void add_item(text *t, const char *words)
{
    text_add(t, "%s%s", t->length > 0 ? ", " : "", words);
}

static const char *next_work(const sil_plan *plan, text_store *store)
{
    text t = {0};
    int k = 0;
    while (k < plan->step_count && plan->steps[k].act == SIL_ACT_PREPARE) {
        k++;
    }
    if (k == plan->step_count) {
        return "";
    }
    if (plan->steps[k].act != SIL_ACT_STOP) {
        const char *words = next_words(plan->steps[k].act);
        return words ? words : "";
    }
    for (int i = 0; i < plan->nut_withheld.count; i++) {
        const char *words = waits_of(plan->nut_withheld.by[i]).next;
        if (words) {
            add_item(&t, words);
        }
    }
    return text_keep_made(store, &t);
}

/* Whether a string of nut or saddle waits for want of a reading. */
static bool any_unread(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->nut.verdict[i] == SIL_WAIT || plan->saddle.verdict[i] == SIL_WAIT) {
            return true;
        }
    }
    return false;
}

static const char *waits_for(const sil_plan *plan, text_store *store)
{
    const sil_withheld *parts[] = {&plan->nut_withheld, &plan->saddle_withheld};
    text t = {0};
    for (int part = 0; part < 2; part++) {
        for (int i = 0; i < parts[part]->count; i++) {
            sil_code code = parts[part]->by[i];
            if (part == 0 || !sil_withheld_by(parts[0], code)) {
                add_item(&t, waits_of(code).for_what);
            }
        }
    }
    if (t.length == 0 && any_unread(plan)) {
        add_item(&t, "the missing readings");
    }
    return text_keep_made(store, &t);
}

brief_row brief_row_of(const sil_plan *plan, text_store *store)
{
    return (brief_row){next_work(plan, store), waits_for(plan, store)};
}
