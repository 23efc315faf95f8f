/* SPDX-License-Identifier: MIT */
/* The head of the bench plan: who and what, and what each stage comes to. */
#include <stdio.h>
#include <string.h>

#include "views.h"

static const double line_height = 5;

static const char *or_dash(const char *text)
{
    return text != NULL && *text != '\0' ? text : "-";
}

/* A small name and its text on one line, from a tab on. */
static void fact(draw_shapes *list, double x, double y, double width, const char *name,
                 const char *text)
{
    const double tab = 22;
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, DRAW_SMALL, DRAW_LEFT, 0, name);
    draw_note(list, x + tab, y, draw_text_fit(list, text, DRAW_NOTE, width - tab).text);
}

static draw_words reading_date(const draw_draft *draft)
{
    const sil_reading *reading = sil_plan_reading(draft->plan);
    if (reading == NULL) {
        return draw_say("not yet");
    }
    if (!sil_known(reading->humidity_pct)) {
        return draw_say("%.40s", or_dash(reading->date));
    }
    return draw_say("%.30s at %s %% humidity", or_dash(reading->date),
                    draw_say_number(draft, reading->humidity_pct, 0).text);
}

/* One, or those of a fan: "640.0 to 665.0". */
static draw_words say_scales(const draw_draft *draft)
{
    const sil_instrument *it = &draft->plan->job->instrument;
    draw_words treble = draw_say_size(draft, it->scale);
    return sil_known(it->scale_bass)
               ? draw_say("%s to %s", treble.text, draw_say_size(draft, it->scale_bass).text)
               : treble;
}

double view_facts(const draw_draft *draft, draw_shapes *list, double width)
{
    const sil_job *job = draft->plan->job;
    const sil_about *about = &job->about;
    const sil_instrument *it = &job->instrument;
    double half = width / 2, y = -DRAW_NOTE;
    bool left = it->handed == SIL_LEFT_HANDED;
    fact(list, 0, y, half - 4, "Owner", or_dash(about->owner));
    fact(list, half, y, half, "Instrument", or_dash(job->profile));
    y -= line_height;
    fact(list, 0, y, half - 4, "Made by", or_dash(about->by));
    fact(list, half, y, half, "Neck",
         draw_say("%d frets, body joint at %d", it->frets, it->join).text);
    y -= line_height;
    fact(list, 0, y, half - 4, "Reference", or_dash(about->ref));
    fact(list, half, y, half, "Scale",
         draw_say("%s %s%s", say_scales(draft).text, draw_unit_name(draft),
                  left ? ", left-handed" : "")
             .text);
    y -= line_height;
    fact(list, 0, y, half - 4, "Read on", reading_date(draft).text);
    fact(list, half, y, half, "Figures in", draft->unit == SIL_MM ? "mm" : "inches");
    return y;
}

/* A cell of the outlook: a stage's name small, its word large. */
static void cell(draw_shapes *list, double x, double width, const char *name, const char *word,
                 bool wait)
{
    draw_box box = {x, -15, x + width, 0};
    draw_rectangle(list, DRAW_DIMENSION, box);
    draw_text(list, DRAW_TEXT, (draw_point){x + 2.5, -4.6}, DRAW_NOTE, DRAW_LEFT, 0, name);
    draw_text(list, wait ? DRAW_WARNING : DRAW_TEXT, (draw_point){x + 2.5, -12}, DRAW_HEAD,
              DRAW_LEFT, 0, word);
}

static draw_words relief_word(const draw_draft *draft)
{
    const sil_plan *plan = draft->plan;
    double relief = sil_relief_now(plan);
    if (!sil_known(relief)) {
        return draw_say("read it");
    }
    if (plan->stages.changed[SIL_ROD]) {
        return draw_say("set to %s", draw_say_length(draft, plan->bench.targets.relief.aim).text);
    }
    return draw_say("leave it");
}

static draw_words frets_word(const draw_draft *draft)
{
    static const char *const words[] = {[SIL_FRETS_LEAVE] = "leave them",
                                        [SIL_FRETS_SEAT] = "seat them",
                                        [SIL_FRETS_LEVEL] = "level them",
                                        [SIL_FRETS_NEW] = "new frets"};
    const sil_plan *plan = draft->plan;
    const sil_reading *reading = sil_plan_reading(plan);
    bool unread = reading == NULL || reading->crowns_read == SIL_CROWNS_NOT_READ;
    return draw_say("%s", unread ? "look at them" : words[plan->stages.fretwork]);
}

void view_outlook(const draw_draft *draft, draw_shapes *list, double width)
{
    static const char *const nut[] = {
        [SIL_NUT_NONE] = "leave it", [SIL_NUT_FILE] = "file slots", [SIL_NUT_FILL] = "fill a slot",
        [SIL_NUT_SHIM] = "shim it",  [SIL_NUT_REPLACE] = "new nut", [SIL_NUT_WAIT] = "WAIT"};
    static const char *const saddle[] = {
        [SIL_SADDLE_NONE] = "leave it",      [SIL_SADDLE_SAND] = "lower it",
        [SIL_SADDLE_SHIM] = "shim it",       [SIL_SADDLE_SCREW] = "turn screws",
        [SIL_SADDLE_REPLACE] = "new saddle", [SIL_SADDLE_WAIT] = "WAIT"};
    const sil_plan *plan = draft->plan;
    double w = width / 4;
    cell(list, 0, w, "1  Relief", relief_word(draft).text, false);
    cell(list, w, w, "2  Frets", frets_word(draft).text, false);
    bool waits = plan->nut.remedy == SIL_NUT_WAIT;
    /* Only the saddle waits for a zero fret, but the work is at the nut. */
    bool zero_fret = !waits && sil_withheld_by(&plan->saddle_withheld, SIL_ZERO_FRET_HIGH);
    const char *nut_word = zero_fret ? "zero fret" : nut[plan->nut.remedy];
    cell(list, 2 * w, w, "3  Nut", nut_word, waits);
    cell(list, 3 * w, w, "4  Saddle", saddle[plan->saddle.remedy],
         plan->saddle.remedy == SIL_SADDLE_WAIT);
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, -15, width, 0});
}
