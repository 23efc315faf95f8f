/* SPDX-License-Identifier: MIT */
/* What a plan waits for; and a plan in a row of a table, in few words. */
#include "plan.h"
#include "text.h"

static const char *const next_words[SIL_ACTS] = {
    [SIL_ACT_MEASURE_RELIEF] = "read the relief",
    [SIL_ACT_STRAIGHTEDGE] = "lay on a straightedge",
    [SIL_ACT_READ_CROWNS] = "look at the crowns",
    [SIL_ACT_MEASURE_FIRST] = "read the gaps at fret 1",
    [SIL_ACT_MEASURE_ACTION] = "read the action",
    [SIL_ACT_READ_GAPS_AGAIN] = "read fret 1 again",
    [SIL_ACT_MEASURE_CROWN] = "read a crown's height",
    [SIL_ACT_MEASURE_SADDLE] = "read the saddle's height",
    [SIL_ACT_NECK_BOW] = "neck to a repairer",
    [SIL_ACT_ROD] = "turn the truss rod",
    [SIL_ACT_FIND_ROD] = "look for a truss rod",
    [SIL_ACT_ROD_BY_EAR] = "turn the rod, by ear",
    [SIL_ACT_READ_AGAIN] = "read everything again",
    [SIL_ACT_SEAT_FRETS] = "seat the proud frets",
    [SIL_ACT_LEVEL_FRETS] = "level the frets",
    [SIL_ACT_NEW_FRETS] = "new frets",
    [SIL_ACT_FILE_SLOTS] = "file the nut's slots",
    [SIL_ACT_FILL_SLOT] = "fill and recut a slot",
    [SIL_ACT_SHIM_NUT] = "shim the nut",
    [SIL_ACT_NEW_NUT] = "new nut",
    [SIL_ACT_SAND_SADDLE] = "sand the saddle's base",
    [SIL_ACT_DRESS_SADDLE] = "dress the saddle's top",
    [SIL_ACT_SHIM_SADDLE] = "shim the saddle",
    [SIL_ACT_NEW_SADDLE] = "new saddle",
    [SIL_ACT_TURN_SCREWS] = "turn the saddle's screws",
    [SIL_ACT_TURN_POSTS] = "turn the bridge's posts",
    [SIL_ACT_BRIDGE_CURVE] = "fit the bridge's curve",
    [SIL_ACT_ZERO_FRET] = "work the zero fret",
    [SIL_ACT_NECK_ANGLE] = "neck to a repairer",
    [SIL_ACT_NECK_SHIM] = "neck to a repairer",
    [SIL_ACT_NECK_RESET] = "neck to a repairer",
};

/* Of what withholds, all there is to say. */
typedef struct wait_words {
    const char *why;
    const char *for_what;
    const char *next; /* where it stops all work: what to do about it */
} wait_words;

static const wait_words waits[SIL_CODES] = {
    [SIL_BACK_BOW] = {"the neck may be back-bowed, which a string cannot show",
                      "a straightedge on the neck", NULL},
    [SIL_RELIEF_UNKNOWN] = {"relief was not read", "the relief", NULL},
    [SIL_FRET_WORN] = {"the frets are levelled first", "the frets", NULL},
    [SIL_CROWN_THIN] = {"new frets come first", "new frets", NULL},
    [SIL_ROD_UNKNOWN] = {"it is not known whether there is a truss rod", "word of a truss rod",
                         NULL},
    [SIL_CROWNS_UNREAD] = {"the crowns were not looked at", "the crowns read", NULL},
    [SIL_PROTRUSION_LOW] = {"the saddle would stand too low; the neck's angle is at fault",
                            "the neck's angle", NULL},
    [SIL_ADJUST_LIMIT] = {"the screws end before the action wanted; the neck's angle is at fault",
                          "the neck's angle", NULL},
    [SIL_ZERO_FRET_HIGH] = {"the zero fret is put right first", "the zero fret", NULL},
    [SIL_READINGS_DISAGREE] = {"held gap and open gap tell of different slots",
                               "the gaps at fret 1", NULL},
    [SIL_ROD_LIMIT] = {"the neck is bowed past all setting up, and no rod can mend it",
                       "the neck's bow", NULL},
    [SIL_FORECAST] = {"the truss rod is turned first", "the truss rod", NULL},
    [SIL_CLIMATE] = {"the humidity is outside its limits", "the humidity",
                     "bring the humidity back"},
    [SIL_BRIDGE_LIFTED] = {"the bridge is lifting", "the bridge", "glue the bridge"},
    [SIL_BRACES_LOOSE] = {"a brace is loose", "a brace", "glue the brace"},
    [SIL_NOT_TUNED] = {"the strings were not at pitch", "strings at pitch", "tune, and read again"},
};

const char *sil_code_waits(sil_code code)
{
    return waits[code].why;
}

size_t sil_plan_next(const sil_plan *plan, char *out, size_t size)
{
    text t;
    plan_text_begin(&t, out, size, SIL_MM);
    int k = 0;
    while (k < plan->step_count && plan->steps[k].act == SIL_ACT_PREPARE) {
        k++;
    }
    if (k < plan->step_count && plan->steps[k].act == SIL_ACT_STOP) {
        for (int i = 0; i < plan->nut_withheld.count; i++) {
            const char *words = waits[plan->nut_withheld.by[i]].next;
            if (words) {
                plan_text_add(&t, "%s%s", t.length > 0 ? ", " : "", words);
            }
        }
    } else if (k < plan->step_count && plan->steps[k].act != SIL_ACT_CHECK) {
        plan_text_add(&t, "%s", next_words[plan->steps[k].act]);
    }
    return plan_text_end(&t);
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

size_t sil_plan_waits(const sil_plan *plan, char *out, size_t size)
{
    text t;
    plan_text_begin(&t, out, size, SIL_MM);
    const sil_withheld *parts[] = {&plan->nut_withheld, &plan->saddle_withheld};
    for (int part = 0; part < 2; part++) {
        for (int i = 0; i < parts[part]->count; i++) {
            sil_code code = parts[part]->by[i];
            if (part == 0 || !sil_withheld_by(parts[0], code)) {
                plan_text_add(&t, "%s%s", t.length > 0 ? ", " : "", waits[code].for_what);
            }
        }
    }
    if (t.length == 0 && any_unread(plan)) {
        plan_text_add(&t, "the readings missing");
    }
    return plan_text_end(&t);
}
