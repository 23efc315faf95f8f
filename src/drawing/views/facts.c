/* SPDX-License-Identifier: MIT */
/* The head of the bench plan: whose instrument it is, what it is, and the result of each stage. */
#include "views.h"

static const double line_height = 5;

static const char *or_dash(const char *words)
{
    return words != NULL && *words != '\0' ? words : "-";
}

/* Writes a name in small letters and its text on the same line, at a tab stop. */
static void fact(const draw_draft *draft, draw_shapes *list, double x, double y, double width,
                 const char *name, const char *words)
{
    const double tab = 22;
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, DRAW_NOTE, DRAW_LEFT, 0, name);
    draw_note(list, x + tab, y, draw_text_fit(draft, list, words, DRAW_NOTE, width - tab));
}

static const char *read_on(const draw_draft *draft)
{
    const sil_reading *reading = sil_plan_reading(draft->plan);
    brief_figure humidity = draft->brief->humidity;
    if (reading == NULL) {
        return "not yet";
    }
    return brief_known(humidity) ? draw_say(draft, "%s at %s %% humidity", or_dash(reading->date),
                                            draw_figure(draft, humidity))
                                 : or_dash(reading->date);
}

/* The scale length, or the two of a fan: "640 to 665". */
static const char *say_scales(const draw_draft *draft)
{
    const brief *b = draft->brief;
    const char *treble = draw_figure(draft, b->scale);
    return brief_known(b->scale_bass)
               ? draw_say(draft, "%s to %s", treble, draw_figure(draft, b->scale_bass))
               : treble;
}

void view_who(const draw_draft *draft, draw_shapes *list, double width)
{
    const sil_job *job = draft->plan->job;
    double half = width / 2, y = -DRAW_NOTE;
    fact(draft, list, 0, y, half - 4, "Owner", or_dash(job->about.owner));
    fact(draft, list, half, y, half, "Instrument", or_dash(job->profile));
    y -= line_height;
    fact(draft, list, 0, y, half - 4, "Read on", read_on(draft));
    fact(draft, list, half, y, half, "Scale",
         draw_say(draft, "%s %s, %d frets%s", say_scales(draft), draft->brief->unit_name,
                  job->instrument.frets, draw_left_handed(draft) ? ", left-handed" : ""));
}

double view_facts(const draw_draft *draft, draw_shapes *list, double width)
{
    const sil_job *job = draft->plan->job;
    const sil_about *about = &job->about;
    const sil_instrument *it = &job->instrument;
    double half = width / 2, y = -DRAW_NOTE;
    fact(draft, list, 0, y, half - 4, "Owner", or_dash(about->owner));
    fact(draft, list, half, y, half, "Instrument", or_dash(job->profile));
    y -= line_height;
    fact(draft, list, 0, y, half - 4, "Made by", or_dash(about->by));
    fact(draft, list, half, y, half, "Neck",
         draw_say(draft, "%d frets, body joint at %d", it->frets, it->join));
    y -= line_height;
    fact(draft, list, 0, y, half - 4, "Reference", or_dash(about->ref));
    fact(draft, list, half, y, half, "Scale",
         draw_say(draft, "%s %s%s", say_scales(draft), draft->brief->unit_name,
                  draw_left_handed(draft) ? ", left-handed" : ""));
    y -= line_height;
    fact(draft, list, 0, y, half - 4, "Read on", read_on(draft));
    fact(draft, list, half, y, half, "Figures in", draft->brief->unit == SIL_MM ? "mm" : "inches");
    return y;
}

/* A cell of the outlook: the name of a stage in small letters and its result in large ones. */
static void cell(const draw_draft *draft, draw_shapes *list, double x, double width, double height,
                 const char *name, const brief_stage *stage)
{
    draw_box box = {x, -15, x + width, 0};
    draw_rectangle(list, DRAW_DIMENSION, box);
    draw_text(list, DRAW_TEXT, (draw_point){x + 2.5, -4.6}, DRAW_NOTE, DRAW_LEFT, 0, name);
    draw_text(list, stage->waits ? DRAW_WARNING : DRAW_TEXT, (draw_point){x + 2.5, -12}, height,
              DRAW_LEFT, 0, draw_set_decimals(draft, stage->words));
}

/* The height of the results' letters: large where the longest of them has room in its cell. */
static double outlook_letters(const draw_draft *draft, const draw_shapes *list, double room)
{
    double widest = 0;
    for (int k = 0; k < BRIEF_STAGES; k++) {
        const char *words = draw_set_decimals(draft, draft->brief->stage[k].words);
        widest = fmax(widest, draw_text_width(list, words, DRAW_HEAD));
    }
    return widest <= room ? DRAW_HEAD : DRAW_NOTE;
}

void view_outlook(const draw_draft *draft, draw_shapes *list, double width)
{
    static const char *const names[BRIEF_STAGES] = {[BRIEF_RELIEF] = "1  Relief",
                                                    [BRIEF_FRETS] = "2  Frets",
                                                    [BRIEF_NUT] = "3  Nut",
                                                    [BRIEF_SADDLE] = "4  Saddle",
                                                    [BRIEF_TUNE] = "5  In tune"};
    double wide = width / BRIEF_STAGES, height = outlook_letters(draft, list, wide - 5);
    for (int k = 0; k < BRIEF_STAGES; k++) {
        cell(draft, list, k * wide, wide, height, names[k], &draft->brief->stage[k]);
    }
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, -15, width, 0});
}
