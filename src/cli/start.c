/* SPDX-License-Identifier: MIT */
/* sillet start: a commented measuring sheet of a kind of instrument, ready to fill in; `plan` takes
 * it as it is. */
#include <stdio.h>
#include <string.h>

#include "cli.h"

static void say(const char *key, const char *value, const char *why)
{
    char line[512];
    snprintf(line, sizeof line, "%s%s%*s# %s\n", key, value,
             (int)(strlen(key) + strlen(value) < 40 ? 40 - strlen(key) - strlen(value) : 1), "",
             why);
    cli_print(line);
}

static void say_figure(const char *key, double mm, const char *why)
{
    char figure[SIL_NUMBER_FULL_MAX];
    sil_number_write_full(figure, mm);
    say(key, sil_known(mm) ? figure : "~", why);
}

/* "[~, ~, ~]", a place a string. */
static const char *blanks(int count, char out[64])
{
    size_t used = 0;
    for (int i = 0; i < count; i++) {
        used += (size_t)snprintf(out + used, 64 - used, "%s~", i ? ", " : "[");
    }
    snprintf(out + used, 64 - used, "]");
    return out;
}

/* A saddle whose height is cut, not turned. */
static bool stands_loose(const sil_job *job)
{
    return sil_working_in_slot(sil_saddle_working(job->saddle.kind, job->saddle.pitch));
}

static void say_scale(const sil_instrument *it)
{
    char treble[SIL_NUMBER_FULL_MAX], bass[SIL_NUMBER_FULL_MAX], fan[128];
    if (!sil_known(it->scale_bass)) {
        say_figure("  scale: ", it->scale, "nut to saddle, without compensation");
        return;
    }
    sil_number_write_full(treble, it->scale);
    sil_number_write_full(bass, it->scale_bass);
    snprintf(fan, sizeof fan, "{treble: %s, bass: %s, square: %d}", treble, bass, it->square);
    say("  scale: ", fan, "of the outer strings, and the fret that stands square");
}

static void say_instrument(const sil_job *job)
{
    char count[16];
    cli_print("\n# The instrument, as the profile has it: put yours in its place.\ninstrument:\n");
    say_scale(&job->instrument);
    snprintf(count, sizeof count, "%d", job->instrument.frets);
    say("  frets: ", count, "the last fret");
    snprintf(count, sizeof count, "%d", job->instrument.join);
    say("  join: ", count, "fret at the body join");
    if (isinf(job->instrument.radius_nut)) {
        say("  radius: ", "flat", "of the board; or a length, or {nut: 254, end: 406}");
    } else {
        say_figure("  radius: ", job->instrument.radius_nut,
                   "of the board; or flat, or {nut: 254, end: 406}");
    }
    say_figure("  crown: ", job->instrument.crown, "height of a sound fret over the board");
    say("  rod: ", "~", "none | one-way | two-way");
    say("  rod_state: ", "~", "works | slack | at-end | stuck");
    say("  head_angle: ", "~", "of the head against the neck, such as 14 deg");
    say("  handed: ", "right", "right | left");
    cli_print("nut:\n");
    say_figure("  width: ", job->nut.width, "of the board at the nut");
    say_figure("  thickness: ", job->nut.thickness, "along the strings");
    say("  seat_to_board: ", "~", "board's surface over the nut's seat, on the centre line");
    cli_print("saddle:\n");
    if (stands_loose(job)) {
        say_figure("  length: ", job->saddle.length, "end to end");
        say_figure("  thickness: ", job->saddle.thickness, "along the strings");
    }
    say_figure("  spread: ", job->saddle.spread, "centre of string 1 to centre of the last");
    if (stands_loose(job)) {
        say("  slot_depth: ", "~", "from the bridge's top");
        say("  pin_distance: ", "~", "saddle to where the string enters the bridge; or none");
    } else {
        say_figure("  pitch: ", job->saddle.pitch, "travel of one turn of its screws");
    }
}

static void say_readings(const sil_job *job)
{
    char list[64];
    blanks(job->string_count, list);
    cli_print("\n# What you read, in the order it is read; string 1 is the treble side. The last "
              "of several"
              "\n# counts and stands alone.\nreadings:\n");
    say("  - date: ", "~", "such as 2026-03-14");
    say("    humidity: ", "~", "such as 47 %");
    say("    condition: ", "{bridge: ~, braces: ~, strings: ~, tuned: ~}",
        "sound/lifted, sound/loose, new/worn, yes/no");
    say("    relief: ", "~", "a string held on 1 and the join, gap over fret 7");
    say("    frets: ", "~", "sound, or [{string: 2, fret: 1, off: -0.08}]");
    say("    first: ", list, "gap over fret 1, held at 3");
    say("    action: ", list, "open, over fret 12");
    if (stands_loose(job)) {
        say("    saddle_height: ", "{treble: ~, bass: ~}",
            "caliper, seat to underside, outer strings");
        say("    bridge_top: ", "{treble: ~, bass: ~}",
            "or: a straightedge on the frets down to the bridge's top");
    }
    say("    buzz: ", "~", "heard: [{string: 1, fret: 0}], 0 is open");
    say("    cents: ", list, "sharp (+) at fret 12 against the open string");
}

int cli_start(int argc, char **argv)
{
    cli_arguments arguments;
    int code = cli_read_arguments("start", argc, argv, &arguments);
    if (code != CLI_GO_ON) {
        return code;
    }
    const char *profile = arguments.operands[0];
    sil_sheet *sheet = NULL;
    code = cli_read_profile(profile, &sheet);
    if (code != CLI_DONE) {
        sil_sheet_free(sheet);
        return code;
    }
    const sil_job *job = sil_sheet_job(sheet);
    cli_print(
        "# A measuring sheet. Fill in what you read where a ~ stands; what stays ~ is not given,\n"
        "# and the plan says what to measure. Then: sillet plan THIS-FILE\nsillet: 1\n");
    say("units: ", "mm", "of a bare length; 0.012 in, 12 thou and 5/64 in are read too");
    say("profile: ", profile, "typical measures, targets and limits; this sheet lies over it");
    cli_print("job: {title: ~, ref: ~, owner: ~, by: ~, date: ~}\n");
    say_instrument(job);
    say_readings(job);
    sil_sheet_free(sheet);
    return CLI_DONE;
}
