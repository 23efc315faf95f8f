/* SPDX-License-Identifier: MIT */
/* The fields of a job. The likely ranges here hold for any fretted instrument: common practice, no
 * source; a profile narrows them for its own kind. */
#include "fields.h"

/* Macros, because a function cannot make part of a constant row. */
#define AT(type, member) .at = offsetof(type, member)
#define REQUIRED .required = true
#define LIKELY(in, from, least, most)                                                              \
    .measure = SIL_##in, .sign = JOB_##from, .low = (least), .high = (most)
#define MARKED(as) .marked = (1 + SIL_MARKED_##as)
#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

static const job_word unit_words[] = {{"mm", SIL_MM}, {"in", SIL_INCH}, {NULL, 0}};
static const job_word rod_words[] = {
    {"none", SIL_ROD_NONE}, {"one-way", SIL_ROD_ONE_WAY}, {"two-way", SIL_ROD_TWO_WAY}, {NULL, 0}};
static const job_word rod_state_words[] = {{"works", SIL_ROD_WORKS},       {"slack", SIL_ROD_SLACK},
                                           {"at-end", SIL_ROD_AT_END},     {"stuck", SIL_ROD_STUCK},
                                           {"accepted", SIL_ROD_ACCEPTED}, {NULL, 0}};
static const job_word hand_words[] = {
    {"right", SIL_RIGHT_HANDED}, {"left", SIL_LEFT_HANDED}, {NULL, 0}};
static const job_word spacing_words[] = {
    {"equal-gap", SIL_EQUAL_GAP}, {"equal-centre", SIL_EQUAL_CENTRE}, {NULL, 0}};
static const job_word make_words[] = {
    {"nut", JOB_MAKES_NUT}, {"saddle", JOB_MAKES_SADDLE}, {NULL, 0}};
static const job_word nut_words[] = {
    {"slotted", SIL_NUT_SLOTTED}, {"zero-fret", SIL_NUT_ZERO_FRET}, {NULL, 0}};
static const job_word saddle_words[] = {
    {"slotted", SIL_SADDLE_SLOTTED},       {"glued", SIL_SADDLE_GLUED},
    {"individual", SIL_SADDLE_INDIVIDUAL}, {"two-post", SIL_SADDLE_TWO_POST},
    {"floating", SIL_SADDLE_FLOATING},     {NULL, 0}};
static const job_word intonation_words[] = {{"screws", SIL_INTONATION_SCREWS},
                                            {"ends", SIL_INTONATION_ENDS},
                                            {"none", SIL_INTONATION_NONE},
                                            {NULL, 0}};
static const job_word bridge_words[] = {{"sound", SIL_SOUND}, {"lifted", SIL_UNSOUND}, {NULL, 0}};
static const job_word brace_words[] = {{"sound", SIL_SOUND}, {"loose", SIL_UNSOUND}, {NULL, 0}};
static const job_word fit_words[] = {{"firm", SIL_SOUND}, {"loose", SIL_UNSOUND}, {NULL, 0}};
static const job_word age_words[] = {{"new", SIL_SOUND}, {"worn", SIL_UNSOUND}, {NULL, 0}};
static const job_word tuned_words[] = {{"yes", SIL_SOUND}, {"no", SIL_UNSOUND}, {NULL, 0}};
static const job_word capo_words[] = {{"0", 0}, {"1", 1}, {NULL, 0}};
static const job_word flat_words[] = {{"flat", 0}, {NULL, 0}};
static const job_word none_words[] = {{"none", 0}, {NULL, 0}};
static const job_word crowns_words[] = {{"sound", SIL_CROWNS_SOUND}, {NULL, 0}};
static const job_word tap_words[] = {
    {"none", SIL_NOT_TAPPED}, {"ping", SIL_TAP_PING}, {"wide", SIL_TAP_WIDE}, {NULL, 0}};
static const job_word by_words[] = {{"string", 0}, {"straightedge", 1}, {NULL, 0}};
static const job_word hold_words[] = {
    {"3", SIL_HOLD_3}, {"2", SIL_HOLD_2}, {"open", SIL_HOLD_OPEN}, {NULL, 0}};
static const job_word end_words[] = {{"clamped-pinned", SIL_CLAMPED_PINNED},
                                     {"pinned", SIL_PINNED},
                                     {"clamped", SIL_CLAMPED},
                                     {NULL, 0}};
const job_word job_material_words[] = {{"plain-steel", SIL_PLAIN_STEEL},
                                       {"plain-nylon", SIL_PLAIN_NYLON},
                                       {"plain-fluorocarbon", SIL_PLAIN_FLUOROCARBON},
                                       {"plain-gut", SIL_PLAIN_GUT},
                                       {"wound-bronze", SIL_WOUND_BRONZE},
                                       {"wound-nickel", SIL_WOUND_NICKEL},
                                       {"wound-nickel-plated", SIL_WOUND_NICKEL_PLATED},
                                       {"wound-steel", SIL_WOUND_STEEL},
                                       {"wound-nylon", SIL_WOUND_NYLON},
                                       {NULL, 0}};
const job_word job_attack_words[] = {
    {"light", 0}, {"medium", 1}, {"firm", 2}, {"any", 3}, {NULL, 0}};

static const job_field about_fields[] = {
    {"title", JOB_AS_TEXT, AT(sil_about, title)}, {"ref", JOB_AS_TEXT, AT(sil_about, ref)},
    {"owner", JOB_AS_TEXT, AT(sil_about, owner)}, {"by", JOB_AS_TEXT, AT(sil_about, by)},
    {"date", JOB_AS_TEXT, AT(sil_about, date)},   {"notes", JOB_AS_TEXT, AT(sil_about, notes)},
};
static const job_table about_table = {about_fields, COUNT_OF(about_fields)};

static const job_field shop_fields[] = {
    {"name", JOB_AS_TEXT, AT(sil_shop, name)},
    {"contact", JOB_AS_TEXT, AT(sil_shop, contact)},
};
static const job_table shop_table = {shop_fields, COUNT_OF(shop_fields)};

/* The fields of a scale with two lengths. Their likely ranges are in the row of the scale. */
#define IN_SCALE(member) (offsetof(sil_instrument, member) - offsetof(sil_instrument, scale))
static const job_field scale_fields[] = {
    {"treble", JOB_AS_FIGURE, .at = IN_SCALE(scale)},
    {"bass", JOB_AS_FIGURE, .at = IN_SCALE(scale_bass)},
    {"square", JOB_AS_COUNT, .at = IN_SCALE(square)},
};
static const job_table scale_table = {scale_fields, COUNT_OF(scale_fields)};

static const job_field instrument_fields[] = {
    {"scale", JOB_AS_SCALE, AT(sil_instrument, scale), REQUIRED,
     LIKELY(LENGTH, OVER_ZERO, 300, 950), .of = &scale_table},
    {"frets", JOB_AS_COUNT, AT(sil_instrument, frets), REQUIRED, .low = 1, .high = 36},
    {"join", JOB_AS_COUNT, AT(sil_instrument, join), REQUIRED, .low = 1, .high = 36},
    {"radius", JOB_AS_RADIUS, AT(sil_instrument, radius_nut), REQUIRED,
     LIKELY(LENGTH, OVER_ZERO, 100, 1000), .words = flat_words},
    {"crown", JOB_AS_FIGURE, AT(sil_instrument, crown), LIKELY(LENGTH, OVER_ZERO, 0.5, 1.8)},
    {"rod", JOB_AS_WORD, AT(sil_instrument, rod), .words = rod_words},
    {"rod_state", JOB_AS_WORD, AT(sil_instrument, rod_state), .words = rod_state_words},
    {"fallaway", JOB_AS_FIGURE, AT(sil_instrument, fallaway), LIKELY(LENGTH, FROM_ZERO, 0, 1.5)},
    {"head_angle", JOB_AS_FIGURE, AT(sil_instrument, head_angle_deg),
     LIKELY(ANGLE, FROM_ZERO, 0, 25)},
    {"handed", JOB_AS_WORD, AT(sil_instrument, handed), .words = hand_words},
    {"pocket", JOB_AS_FIGURE, AT(sil_instrument, pocket), LIKELY(LENGTH, OVER_ZERO, 30, 150)},
    {"pocket_at", JOB_AS_FIGURE, AT(sil_instrument, pocket_at),
     LIKELY(LENGTH, OVER_ZERO, 150, 650)},
    {"heel", JOB_AS_FIGURE, AT(sil_instrument, heel), LIKELY(LENGTH, OVER_ZERO, 40, 150)},
};
static const job_table instrument_table = {instrument_fields, COUNT_OF(instrument_fields)};

static const job_field string_fields[] = {
    {"note", JOB_AS_NOTE, .at = 0},
    {"hz", JOB_AS_FIGURE, AT(sil_string, hz), LIKELY(FREQUENCY, OVER_ZERO, 20, 1500)},
    {"gauge", JOB_AS_FIGURE, AT(sil_string, gauge), REQUIRED, LIKELY(LENGTH, OVER_ZERO, 0.15, 3.6)},
    {"make", JOB_AS_WORD, AT(sil_string, material), REQUIRED, .words = job_material_words},
    {"core", JOB_AS_FIGURE, AT(sil_string, core), LIKELY(LENGTH, OVER_ZERO, 0.15, 2.5)},
    {"unit_mass", JOB_AS_FIGURE, AT(sil_string, unit_mass_kg_m),
     LIKELY(UNIT_MASS, OVER_ZERO, 0.1, 80)},
    {"modulus", JOB_AS_FIGURE, AT(sil_string, modulus_gpa), LIKELY(MODULUS, OVER_ZERO, 1, 250)},
    {"course", JOB_AS_COUNT, AT(sil_string, course), .low = 1, .high = 12},
};
const job_table job_table_string = {string_fields, COUNT_OF(string_fields)};

static const job_field nut_fields[] = {
    {"width", JOB_AS_FIGURE, AT(sil_job_nut, width), REQUIRED, LIKELY(LENGTH, OVER_ZERO, 20, 120)},
    {"thickness", JOB_AS_FIGURE, AT(sil_job_nut, thickness), LIKELY(LENGTH, OVER_ZERO, 2, 15)},
    {"edge", JOB_AS_PAIR, AT(sil_job_nut, edge_treble), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.5, 10)},
    {"spacing", JOB_AS_WORD, AT(sil_job_nut, spacing), .words = spacing_words},
    {"advance", JOB_AS_FIGURE, AT(sil_job_nut, advance), LIKELY(LENGTH, ANY_SIGN, -1, 3)},
    {"seat_to_board", JOB_AS_FIGURE, AT(sil_job_nut, seat_to_board),
     LIKELY(LENGTH, FROM_ZERO, 0, 15)},
    {"kind", JOB_AS_WORD, AT(sil_job_nut, kind), .words = nut_words},
    {"pair", JOB_AS_FIGURE, AT(sil_job_nut, pair), LIKELY(LENGTH, OVER_ZERO, 1, 5)},
    {"centres", JOB_AS_PER_STRING, AT(sil_job_nut, centres), LIKELY(LENGTH, OVER_ZERO, 1, 120)},
    {"floors", JOB_AS_PER_STRING, AT(sil_job_nut, floors), LIKELY(LENGTH, OVER_ZERO, 0.5, 20)},
    {"material", JOB_AS_TEXT, AT(sil_job_nut, material)},
};
static const job_table nut_table = {nut_fields, COUNT_OF(nut_fields)};

static const job_field saddle_fields[] = {
    {"kind", JOB_AS_WORD, AT(sil_job_saddle, kind), REQUIRED, .words = saddle_words},
    {"length", JOB_AS_FIGURE, AT(sil_job_saddle, length), LIKELY(LENGTH, OVER_ZERO, 20, 150)},
    {"thickness", JOB_AS_FIGURE, AT(sil_job_saddle, thickness), LIKELY(LENGTH, OVER_ZERO, 1.5, 15)},
    {"spread", JOB_AS_FIGURE, AT(sil_job_saddle, spread), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 130)},
    {"setback", JOB_AS_PER_STRING, AT(sil_job_saddle, setback), REQUIRED,
     LIKELY(LENGTH, ANY_SIGN, -3, 12)},
    {"peak", JOB_AS_PER_STRING, AT(sil_job_saddle, peak), LIKELY(LENGTH, FROM_ZERO, 0.3, 12)},
    {"intonation", JOB_AS_WORD, AT(sil_job_saddle, intonation), .words = intonation_words},
    {"intonation_pitch", JOB_AS_FIGURE, AT(sil_job_saddle, intonation_pitch),
     LIKELY(LENGTH, OVER_ZERO, 0.2, 1.5)},
    {"slot_depth", JOB_AS_FIGURE, AT(sil_job_saddle, slot_depth), LIKELY(LENGTH, FROM_ZERO, 1, 15)},
    {"pickup", JOB_AS_FIGURE, AT(sil_job_saddle, pickup), LIKELY(LENGTH, FROM_ZERO, 0, 3)},
    {"pin_distance", JOB_AS_PER_STRING, AT(sil_job_saddle, pin_distance),
     LIKELY(LENGTH, OVER_ZERO, 2, 80), .words = none_words},
    {"exit_height", JOB_AS_FIGURE, AT(sil_job_saddle, exit_height),
     LIKELY(LENGTH, ANY_SIGN, -10, 10)},
    {"pitch", JOB_AS_FIGURE, AT(sil_job_saddle, pitch), LIKELY(LENGTH, OVER_ZERO, 0.2, 1.5),
     .words = none_words},
    {"travel", JOB_AS_TRAVEL, AT(sil_job_saddle, travel), LIKELY(LENGTH, FROM_ZERO, 0, 12)},
    {"post_spread", JOB_AS_FIGURE, AT(sil_job_saddle, post_spread),
     LIKELY(LENGTH, OVER_ZERO, 30, 130)},
    {"pair", JOB_AS_FIGURE, AT(sil_job_saddle, pair), LIKELY(LENGTH, OVER_ZERO, 1, 6)},
    {"old", JOB_AS_PER_STRING, AT(sil_job_saddle, old), LIKELY(LENGTH, OVER_ZERO, 2, 25)},
    {"material", JOB_AS_TEXT, AT(sil_job_saddle, material)},
};
static const job_table saddle_table = {saddle_fields, COUNT_OF(saddle_fields)};

static const job_field relief_fields[] = {
    {"gap", JOB_AS_RELIEF_GAP, AT(sil_relief_reading, gap), LIKELY(LENGTH, ANY_SIGN, -1, 1.5),
     .words = tap_words, MARKED(RELIEF)},
    {"at", JOB_AS_COUNT, AT(sil_relief_reading, over), .low = 1, .high = 36},
    {"held", JOB_AS_SPAN, AT(sil_relief_reading, low), .low = 1, .high = 36},
    {"by", JOB_AS_FLAG, AT(sil_relief_reading, straightedge), .words = by_words},
    {"string", JOB_AS_INDEX, AT(sil_relief_reading, string), .low = 1, .high = 12},
};
static const job_table relief_table = {relief_fields, COUNT_OF(relief_fields)};

static const job_field condition_fields[] = {
    {"bridge", JOB_AS_WORD, AT(sil_condition, bridge), .words = bridge_words},
    {"braces", JOB_AS_WORD, AT(sil_condition, braces), .words = brace_words},
    {"saddle", JOB_AS_WORD, AT(sil_condition, saddle), .words = fit_words},
    {"strings", JOB_AS_WORD, AT(sil_condition, strings), .words = age_words},
    {"tuned", JOB_AS_WORD, AT(sil_condition, tuned), .words = tuned_words},
};
static const job_table condition_table = {condition_fields, COUNT_OF(condition_fields)};

static const job_field crown_fields[] = {
    {"string", JOB_AS_COUNT, AT(sil_crown_off, string), REQUIRED, .low = 1, .high = 12},
    {"fret", JOB_AS_COUNT, AT(sil_crown_off, fret), REQUIRED, .low = 0, .high = 36},
    {"off", JOB_AS_FIGURE, AT(sil_crown_off, off), REQUIRED, LIKELY(LENGTH, ANY_SIGN, -0.4, 0.4)},
};
const job_table job_table_crown = {crown_fields, COUNT_OF(crown_fields)};

static const job_field buzz_fields[] = {
    {"string", JOB_AS_COUNT, AT(sil_buzz, string), REQUIRED, .low = 1, .high = 12},
    {"fret", JOB_AS_COUNT, AT(sil_buzz, fret), .low = 0, .high = 36},
};
const job_table job_table_buzz = {buzz_fields, COUNT_OF(buzz_fields)};

static const job_field reading_fields[] = {
    {"date", JOB_AS_TEXT, AT(sil_reading, date)},
    {"humidity", JOB_AS_FIGURE, AT(sil_reading, humidity_pct), LIKELY(HUMIDITY, FROM_ZERO, 5, 95)},
    {"temperature", JOB_AS_FIGURE, AT(sil_reading, temperature_c),
     LIKELY(TEMPERATURE, ANY_SIGN, -10, 45)},
    {"notes", JOB_AS_TEXT, AT(sil_reading, notes)},
    {"condition", JOB_AS_PART, AT(sil_reading, condition), .of = &condition_table},
    {"relief", JOB_AS_RELIEF, AT(sil_reading, relief), .of = &relief_table},
    {"action", JOB_AS_PER_STRING, AT(sil_reading, gaps.action), LIKELY(LENGTH, FROM_ZERO, 0.4, 4.5),
     MARKED(ACTION)},
    {"action_at", JOB_AS_COUNT, AT(sil_reading, gaps.action_at), .low = 5, .high = 36},
    {"action_capo", JOB_AS_FLAG, AT(sil_reading, gaps.capo), .words = capo_words},
    {"first", JOB_AS_FIRST, AT(sil_reading, gaps.first), LIKELY(LENGTH, FROM_ZERO, 0, 1.5),
     .words = tap_words, MARKED(FIRST)},
    {"first_held", JOB_AS_WORD, AT(sil_reading, gaps.first_held), .words = hold_words},
    {"first_open", JOB_AS_PER_STRING, AT(sil_reading, gaps.first_open),
     LIKELY(LENGTH, FROM_ZERO, 0, 1.5), MARKED(FIRST_OPEN)},
    {"frets", JOB_AS_CROWNS, AT(sil_reading, crowns), .of = &job_table_crown,
     .words = crowns_words},
    {"saddle_height", JOB_AS_PAIR, AT(sil_reading, saddle_height_treble),
     LIKELY(LENGTH, OVER_ZERO, 2, 25), MARKED(SADDLE_HEIGHT)},
    {"bridge_top", JOB_AS_PAIR, AT(sil_reading, bridge_top_treble), LIKELY(LENGTH, ANY_SIGN, -5, 8),
     MARKED(BRIDGE_TOP)},
    {"stands_out", JOB_AS_OUTER, AT(sil_reading, stands_out), LIKELY(LENGTH, FROM_ZERO, 0, 12),
     MARKED(STANDS_OUT)},
    {"buzz", JOB_AS_BUZZ, AT(sil_reading, buzz), .of = &job_table_buzz},
    {"confirmed", JOB_AS_MARKED, AT(sil_reading, confirmed)},
    {"cents", JOB_AS_PER_STRING, AT(sil_reading, cents), LIKELY(RATIO, ANY_SIGN, -40, 40)},
};
const job_table job_table_reading = {reading_fields, COUNT_OF(reading_fields)};

static const job_field targets_fields[] = {
    {"relief", JOB_AS_BAND, AT(sil_targets, relief), REQUIRED, LIKELY(LENGTH, ANY_SIGN, 0, 0.6)},
    {"action", JOB_AS_BANDS, AT(sil_targets, action), REQUIRED,
     LIKELY(LENGTH, OVER_ZERO, 0.5, 4.5)},
    {"first", JOB_AS_BANDS, AT(sil_targets, first), REQUIRED, LIKELY(LENGTH, FROM_ZERO, 0, 1.5),
     .words = hold_words},
    {"cents", JOB_AS_FIGURE, AT(sil_targets, cents), LIKELY(RATIO, OVER_ZERO, 1, 15)},
};
static const job_table targets_table = {targets_fields, COUNT_OF(targets_fields)};

static const job_field model_fields[] = {
    {"ends", JOB_AS_WORD, AT(sil_model, ends), .words = end_words},
    {"press", JOB_AS_FIGURE, AT(sil_model, press), LIKELY(LENGTH, FROM_ZERO, 0, 10)},
};
static const job_table model_table = {model_fields, COUNT_OF(model_fields)};

static const job_field attack_fields[] = {
    {"force", JOB_AS_PER_STRING, AT(sil_attack, force), LIKELY(FORCE, OVER_ZERO, 0.05, 5)},
    {"at", JOB_AS_FIGURE, AT(sil_attack, at), LIKELY(LENGTH, OVER_ZERO, 10, 350)},
};
static const job_table attack_table = {attack_fields, COUNT_OF(attack_fields)};

static const job_field style_fields[] = {
    {"targets", JOB_AS_PART, AT(job_style, targets), .of = &targets_table},
    {"attack", JOB_AS_ATTACK, AT(job_style, attack), .of = &attack_table,
     .words = job_attack_words},
};
static const job_table style_table = {style_fields, COUNT_OF(style_fields)};

static const job_field tools_fields[] = {
    {"action", JOB_AS_FIGURE, AT(sil_tools, action), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.002, 0.5)},
    {"first", JOB_AS_FIGURE, AT(sil_tools, first), REQUIRED, LIKELY(LENGTH, FROM_ZERO, 0.002, 0.5)},
    {"relief", JOB_AS_FIGURE, AT(sil_tools, relief), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.002, 0.5)},
    {"caliper", JOB_AS_FIGURE, AT(sil_tools, caliper), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.002, 0.5)},
    {"cents", JOB_AS_FIGURE, AT(sil_tools, cents), LIKELY(RATIO, FROM_ZERO, 0.1, 10)},
    {"ruler", JOB_AS_FIGURE, AT(sil_tools, ruler), LIKELY(LENGTH, FROM_ZERO, 0.05, 1)},
};
static const job_table tools_table = {tools_fields, COUNT_OF(tools_fields)};

static const job_field climate_fields[] = {
    {"low", JOB_AS_FIGURE, AT(sil_limits, humidity_low_pct), REQUIRED,
     LIKELY(HUMIDITY, FROM_ZERO, 5, 95)},
    {"high", JOB_AS_FIGURE, AT(sil_limits, humidity_high_pct), REQUIRED,
     LIKELY(HUMIDITY, FROM_ZERO, 5, 95)},
};
static const job_table climate_table = {climate_fields, COUNT_OF(climate_fields)};

static const job_field limits_fields[] = {
    {"wear", JOB_AS_FIGURE, AT(sil_limits, wear), REQUIRED, LIKELY(LENGTH, OVER_ZERO, 0.01, 0.5)},
    {"least_crown", JOB_AS_FIGURE, AT(sil_limits, least_crown), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.2, 1.2)},
    {"least_protrusion", JOB_AS_FIGURE, AT(sil_limits, least_protrusion), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 10)},
    {"good_protrusion", JOB_AS_FIGURE, AT(sil_limits, good_protrusion),
     LIKELY(LENGTH, FROM_ZERO, 0, 12)},
    {"most_protrusion", JOB_AS_FIGURE, AT(sil_limits, most_protrusion), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 1, 20)},
    {"least_in_slot", JOB_AS_FIGURE, AT(sil_limits, least_in_slot), REQUIRED,
     LIKELY(RATIO, FROM_ZERO, 0, 1)},
    {"least_break", JOB_AS_FIGURE, AT(sil_limits, least_break_deg), REQUIRED,
     LIKELY(ANGLE, FROM_ZERO, 0, 45)},
    {"most_shim", JOB_AS_FIGURE, AT(sil_limits, most_shim), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 3)},
    {"most_relief", JOB_AS_FIGURE, AT(sil_limits, most_relief), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.1, 1.5)},
    {"least_first", JOB_AS_FIGURE, AT(sil_limits, least_first), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 0.3)},
    {"humidity", JOB_AS_PART, .at = 0, .of = &climate_table},
};
static const job_table limits_table = {limits_fields, COUNT_OF(limits_fields)};

static const job_field spread_fields[] = {
    {"relief", JOB_AS_FIGURE, AT(sil_allowances, band_relief), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.005, 1)},
    {"action", JOB_AS_FIGURE, AT(sil_allowances, band_action), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.005, 1)},
    {"first", JOB_AS_FIGURE, AT(sil_allowances, band_first), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0.005, 1)},
};
static const job_table spread_table = {spread_fields, COUNT_OF(spread_fields)};

static const job_field blank_fields[] = {
    {"length", JOB_AS_FIGURE, AT(sil_allowances, blank_length), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 10)},
    {"thickness", JOB_AS_FIGURE, AT(sil_allowances, blank_thickness), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 10)},
    {"height", JOB_AS_FIGURE, AT(sil_allowances, blank_height), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 10)},
};
static const job_table blank_table = {blank_fields, COUNT_OF(blank_fields)};

static const job_field leave_fields[] = {
    {"slot", JOB_AS_FIGURE, AT(sil_allowances, leave_slot), LIKELY(LENGTH, FROM_ZERO, 0, 0.2)},
    {"base", JOB_AS_FIGURE, AT(sil_allowances, leave_base), LIKELY(LENGTH, FROM_ZERO, 0, 0.5)},
    {"top", JOB_AS_FIGURE, AT(sil_allowances, leave_top), LIKELY(LENGTH, FROM_ZERO, 0, 0.5)},
};
static const job_table leave_table = {leave_fields, COUNT_OF(leave_fields)};

static const job_field allowances_fields[] = {
    {"slot_plain", JOB_AS_FIGURE, AT(sil_allowances, slot_plain), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 0.5)},
    {"slot_wound", JOB_AS_FIGURE, AT(sil_allowances, slot_wound), REQUIRED,
     LIKELY(LENGTH, FROM_ZERO, 0, 0.5)},
    {"bury_plain", JOB_AS_FIGURE, AT(sil_allowances, bury_plain), REQUIRED,
     LIKELY(RATIO, FROM_ZERO, 0, 3)},
    {"bury_wound", JOB_AS_FIGURE, AT(sil_allowances, bury_wound), REQUIRED,
     LIKELY(RATIO, FROM_ZERO, 0, 3)},
    {"fall_share", JOB_AS_FIGURE, AT(sil_allowances, fall_share), REQUIRED,
     LIKELY(RATIO, FROM_ZERO, 0, 1)},
    {"shim_step", JOB_AS_FIGURE, AT(sil_allowances, shim_step), REQUIRED,
     LIKELY(LENGTH, OVER_ZERO, 0.01, 1)},
    {"leave", JOB_AS_PART, .at = 0, .of = &leave_table},
    {"band", JOB_AS_PART, .at = 0, .of = &spread_table},
    {"blank", JOB_AS_PART, .at = 0, .of = &blank_table},
};
static const job_table allowances_table = {allowances_fields, COUNT_OF(allowances_fields)};

static const job_field material_fields[] = {
    {"modulus", JOB_AS_FIGURE, AT(sil_material_constants, modulus_gpa),
     LIKELY(MODULUS, OVER_ZERO, 1, 250)},
    {"density", JOB_AS_FIGURE, AT(sil_material_constants, density),
     LIKELY(DENSITY, OVER_ZERO, 500, 20000)},
    {"wrap_density", JOB_AS_FIGURE, AT(sil_material_constants, wrap_density),
     LIKELY(DENSITY, OVER_ZERO, 500, 22000)},
};
const job_table job_table_material = {material_fields, COUNT_OF(material_fields)};

static const job_field job_fields[] = {
    {"sillet", JOB_AS_FORMAT, .at = JOB_NOT_KEPT},
    {"units", JOB_AS_WORD, AT(sil_job, units), .words = unit_words},
    {"job", JOB_AS_PART, AT(sil_job, about), .of = &about_table},
    {"shop", JOB_AS_PART, AT(sil_job, shop), .of = &shop_table},
    {"profile", JOB_AS_TEXT, AT(sil_job, profile)},
    {"make", JOB_AS_MAKE, AT(sil_job, make), .words = make_words},
    {"instrument", JOB_AS_PART, AT(sil_job, instrument), .of = &instrument_table},
    {"strings", JOB_AS_STRINGS, AT(sil_job, strings), REQUIRED, .of = &job_table_string},
    {"nut", JOB_AS_PART, AT(sil_job, nut), .of = &nut_table},
    {"saddle", JOB_AS_PART, AT(sil_job, saddle), .of = &saddle_table},
    {"files", JOB_AS_FILES, AT(sil_job, files), LIKELY(LENGTH, OVER_ZERO, 0.1, 4)},
    {"readings", JOB_AS_READINGS, AT(sil_job, readings), .of = &job_table_reading},
    {"targets", JOB_AS_PART, AT(sil_job, targets), .of = &targets_table},
    {"model", JOB_AS_PART, AT(sil_job, model), .of = &model_table},
    {"attack", JOB_AS_ATTACK, AT(sil_job, attack), .of = &attack_table, .words = job_attack_words},
    {"attacks", JOB_AS_ATTACKS, .at = JOB_NOT_KEPT, .of = &attack_table},
    {"style", JOB_AS_STYLE, AT(sil_job, style)},
    {"styles", JOB_AS_STYLES, .at = JOB_NOT_KEPT, .of = &style_table},
    {"tools", JOB_AS_PART, AT(sil_job, tools), .of = &tools_table},
    {"limits", JOB_AS_PART, AT(sil_job, limits), .of = &limits_table},
    {"allowances", JOB_AS_PART, AT(sil_job, allowances), .of = &allowances_table},
    {"materials", JOB_AS_MATERIALS, AT(sil_job, materials), .of = &job_table_material},
    {"plausible", JOB_AS_PLAUSIBLE, AT(sil_job, plausible)},
};
const job_table job_table_all = {job_fields, COUNT_OF(job_fields)};
