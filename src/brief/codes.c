/* SPDX-License-Identifier: MIT */
/* The words of every code: the fixed word for scripts, and what a person reads. Why a part waits for
 * it is in waits.c. */
#include "codes.h"

code_words code_words_of(sil_code code)
{
    switch (code) {
    case SIL_BACK_BOW:
        return (code_words){
            .word = "back-bow",
            .figure = LENGTH,
            .subject = "Relief at fret %",
            .meaning = "A string lies flat on a straight neck and on a back-bowed one alike. A "
                       "back-bow shows only under a straightedge, and buzzes at the first frets."};
    case SIL_RELIEF_LOW:
        return (code_words){.word = "relief-low",
                            .figure = LENGTH,
                            .subject = "Relief at fret %",
                            .meaning =
                                "Too straight: buzzes toward the first frets when picked hard."};
    case SIL_RELIEF_HIGH:
        return (code_words){.word = "relief-high",
                            .figure = LENGTH,
                            .subject = "Relief at fret %",
                            .meaning = "Too much bow: high and stiff in the middle of the neck, "
                                       "and buzzes near the body."};
    case SIL_RELIEF_FIRST:
        return (code_words){.word = "relief-first",
                            .figure = LENGTH,
                            .subject = "Relief at fret %",
                            .meaning = "In its range, but with this much bow the saddle has too "
                                       "little room to bring the strings down: take the relief "
                                       "to its target first."};
    case SIL_RELIEF_UNKNOWN:
        return (code_words){.word = "relief-unknown",
                            .subject = "Relief was not measured",
                            .meaning =
                                "Every height depends on it: measure it before cutting anything."};
    case SIL_ROD_LIMIT:
        return (code_words){
            .word = "rod-limit",
            .figure = LENGTH,
            .subject = "Relief at fret %",
            .meaning =
                "No truss rod can put it right here, so it stays, and the plan takes it as it is.",
            .meaning_act = "No truss rod can put it right as things are. Have the rod or the neck "
                           "put right before anything is cut to this bow.",
            .meaning_stop = "Too far to set up, and no truss rod puts it right as it is: all work "
                            "on nut and saddle waits for the neck."};
    case SIL_FRET_WORN:
        return (code_words){.word = "fret-worn",
                            .figure = LENGTH,
                            .subject = "Worn spot in fret %",
                            .meaning = "A note fretted at it buzzes on the next frets; at fret 1 "
                                       "the gap reads too large by its depth."};
    case SIL_FRET_HIGH:
        return (code_words){.word = "fret-high",
                            .figure = LENGTH,
                            .subject = "Fret % stands proud",
                            .meaning =
                                "Notes fretted behind it buzz on it: seat it, or spot-dress it."};
    case SIL_CROWN_THIN:
        return (code_words){.word = "crown-thin",
                            .figure = LENGTH,
                            .subject = "Fret height after levelling to the deepest worn spot",
                            .meaning = "Too little to level: fit new frets."};
    case SIL_CROWNS_UNREAD:
        return (code_words){.word = "crowns-unread",
                            .subject = "The frets have not been checked for wear",
                            .meaning = "Worn first frets look like a high nut. Check frets 1 to "
                                       "3 before you file a nut slot."};
    case SIL_SLOT_LOW:
        return (code_words){.word = "slot-low",
                            .figure = LENGTH,
                            .subject = "Gap at the 1st fret",
                            .meaning =
                                "Nut slot too low: the open string rattles on the 1st fret."};
    case SIL_SLOT_HIGH:
        return (code_words){.word = "slot-high",
                            .figure = LENGTH,
                            .subject = "Gap at the 1st fret",
                            .meaning =
                                "Nut slot too high: hard to press down, and sharp at the first "
                                "frets."};
    case SIL_SADDLE_LOW:
        return (code_words){.word = "saddle-low",
                            .figure = LENGTH,
                            .subject = "Action at the 12th fret",
                            .meaning = "Too low at the saddle: buzzes up the neck."};
    case SIL_SADDLE_HIGH:
        return (code_words){.word = "saddle-high",
                            .figure = LENGTH,
                            .subject = "Action at the 12th fret",
                            .meaning = "Too high at the saddle: hard to play up the neck."};
    case SIL_PROTRUSION_LOW:
        return (code_words){.word = "protrusion-low",
                            .figure = LENGTH,
                            .subject = "Finished saddle would stand out of the bridge",
                            .meaning =
                                "Too little, and a taller one would raise the strings. Lay a "
                                "straightedge on the frets and out over the bridge: if it does "
                                "not clear the bridge's top, the neck's angle is too low."};
    case SIL_PROTRUSION_HIGH:
        return (code_words){.word = "protrusion-high",
                            .figure = LENGTH,
                            .subject = "Finished saddle would stand out of the bridge",
                            .meaning = "A tall saddle leans in its slot and may split the bridge."};
    case SIL_SEAT_SHALLOW:
        return (code_words){
            .word = "seat-shallow",
            .figure = SHARE,
            .subject = "Share of the saddle inside its slot",
            .meaning =
                "At least half belongs inside: otherwise it leans and may split the bridge."};
    case SIL_BREAK_ANGLE_LOW:
        return (code_words){.word = "break-angle-low",
                            .figure = DEGREES,
                            .subject = "Break angle over the saddle",
                            .meaning = "The strings press too little on the saddle: weak tone, "
                                       "and a string that rattles or wanders on it. Cut a "
                                       "ramp for each string from its pin hole toward the "
                                       "saddle. The holes of a tie bridge are drilled lower by a "
                                       "repairer."};
    case SIL_NECK_ANGLE:
        return (code_words){.word = "neck-angle",
                            .subject = "The saddle cannot come down far enough, even for the "
                                       "top of the range",
                            .meaning = "The neck's angle is at fault, and no work on the saddle "
                                       "would cure it."};
    case SIL_CLIMATE:
        return (code_words){.word = "climate",
                            .figure = PERCENT,
                            .subject = "Humidity",
                            .meaning = "Tops and necks move with it: bring it back inside its "
                                       "limits, then measure again."};
    case SIL_BRIDGE_LIFTED:
        return (code_words){
            .word = "bridge-lifted",
            .subject = "The bridge is lifting",
            .meaning = "Have a qualified repairer glue it first: that changes every height."};
    case SIL_BRACES_LOOSE:
        return (code_words){
            .word = "braces-loose",
            .subject = "A brace is loose",
            .meaning = "Have a qualified repairer glue it first: the top moves when it is glued."};
    case SIL_NOT_TUNED:
        return (code_words){.word = "not-tuned",
                            .subject = "The strings were not at pitch",
                            .meaning =
                                "The neck bends with the tension: tune, then measure again."};
    case SIL_READINGS_DISAGREE:
        return (code_words){.word = "readings-disagree", .sentence = say_gaps_apart};
    case SIL_TOOL_COARSE:
        return (code_words){.word = "tool-coarse",
                            .figure = LENGTH,
                            .subject = "Measuring error",
                            .meaning = "More than the cut leaves room for: no first pass is safe "
                                       "with these tools. Measure with a finer tool."};
    case SIL_FORECAST:
        return (code_words){.word = "forecast",
                            .subject = "Figures past this work are a forecast",
                            .meaning = "Measure everything again after it, and only then cut."};
    case SIL_ADJUST_LIMIT:
        return (code_words){
            .word = "adjust-limit",
            .figure = LENGTH,
            .subject = "Travel the saddle needs",
            .meaning = "More than it is likely to have left: look at the neck's angle first."};
    case SIL_EDGE_NARROW:
        return (code_words){
            .word = "edge-narrow",
            .figure = LENGTH,
            .subject = "Outer string to the board's edge",
            .meaning = "Little room: the string slips off the board when pulled sideways."};
    case SIL_TWIST:
        return (code_words){.word = "twist", .sentence = say_twist};
    case SIL_TECHNIQUE:
        return (code_words){
            .word = "technique",
            .subject = "Heard to buzz, though it should ring clear",
            .meaning = "Press the string squarely, close behind the fret, and listen again."};
    case SIL_UNEXPLAINED:
        return (code_words){.word = "unexplained",
                            .subject = "The readings don't explain this buzz",
                            .meaning =
                                "Look in this order: tuning, old strings, the front edges of nut "
                                "slot and saddle, loose parts, a fret rocker across the next "
                                "three frets, technique."};
    case SIL_TOO_CLOSE:
        return (code_words){
            .word = "too-close",
            .subject = "Too close to call: heard to buzz, and by the readings it just rings clear",
            .meaning = "Read relief, gap and action again with the finest tool there is, press "
                       "the string squarely, and listen again."};
    case SIL_SADDLE_LOOSE:
        return (code_words){.word = "saddle-loose",
                            .subject = "The saddle is loose, leans or rocks",
                            .meaning = "Every action read over it is false."};
    case SIL_ATTACK:
        return (code_words){.word = "attack",
                            .figure = NEWTONS,
                            .subject = "Hardest pluck that rings clean",
                            .meaning = "With every reading at its target it would still buzz under "
                                       "this pick: raise the targets, or pick lighter.",
                            .sentence = say_attack};
    case SIL_STRING_UNKNOWN:
        return (code_words){
            .word = "string-unknown",
            .subject = "Tension not known",
            .meaning = "Give its note or pitch, and the core of a wound string (or its mass): "
                       "without them nobody can say what buzzes and what plays in tune."};
    case SIL_STRING_STIFF:
        return (code_words){
            .word = "string-stiff",
            .subject = "Very stiff for its length",
            .meaning = "Its compensation is past what the formulas are good for: trust a tuner."};
    case SIL_OFF_SADDLE:
        return (code_words){.word = "off-saddle", .sentence = say_off_saddle};
    case SIL_OFF_FORECAST:
        return (code_words){.word = "off-forecast", .sentence = say_off_forecast};
    case SIL_ROD_UNKNOWN:
        return (code_words){.word = "rod-unknown",
                            .subject = "The sheet does not say whether there is a truss rod",
                            .meaning = "If there is one, set the relief first: nut and saddle may "
                                       "then need nothing, so both wait."};
    case SIL_WRONG_WAY:
        return (code_words){.word = "wrong-way", .sentence = say_wrong_way};
    case SIL_MOVED:
        return (code_words){.word = "moved", .sentence = say_moved};
    case SIL_ZERO_FRET_LOW:
        return (code_words){
            .word = "zero-fret-low",
            .figure = LENGTH,
            .subject = "Gap at the 1st fret",
            .meaning = "The zero fret is too low: the open string rattles on the 1st fret. The "
                       "nut slots behind it only guide: filing or filling them changes nothing."};
    case SIL_ZERO_FRET_HIGH:
        return (code_words){.word = "zero-fret-high",
                            .figure = LENGTH,
                            .subject = "Gap at the 1st fret",
                            .meaning =
                                "The zero fret is too high: hard to press down, and sharp at "
                                "the first frets. The nut slots behind it only guide: filing "
                                "them changes nothing."};
    case SIL_CORE_ASSUMED:
        return (code_words){
            .word = "core-assumed",
            .subject = "Core not given, so a usual one is assumed",
            .meaning = "Buzz and intonation are worked out with it, and nothing is cut to it: give "
                       "the core to be sure."};
    case SIL_SADDLE_UNREAD:
        return (code_words){.word = "saddle-unread",
                            .subject =
                                "How far the saddle stands out of the bridge was not measured",
                            .meaning = "Measure it before anything is cut."};
    case SIL_SADDLE_MOVED:
        return (code_words){.word = "saddle-moved", .sentence = say_saddle_moved};
    case SIL_AIM_RAISED:
        return (code_words){.word = "aim-raised", .sentence = say_aim_raised};
    case SIL_AIM_SHORT:
        return (code_words){.word = "aim-short", .sentence = say_aim_short};
    case SIL_SHORT_BY_BOW:
        return (code_words){.word = "short-by-bow",
                            .figure = LENGTH,
                            .subject = "Saddle height lost to the neck's bow, which no truss rod "
                                       "can take out",
                            .meaning = "Have a qualified repairer straighten the neck before the "
                                       "saddle or the neck's angle is judged."};
    case SIL_SHORT_BY_BRIDGE:
        return (code_words){.word = "short-by-bridge",
                            .subject = "The bridge reaches the end of its travel before the "
                                       "strings are in range",
                            .meaning = "First look at its notches, then at its feet, and only then "
                                       "at the neck's angle."};
    case SIL_AT_EDGE:
        return (code_words){.word = "at-edge",
                            .figure = LENGTH,
                            .meaning = "At the edge of its range: if it is outside at all, it is "
                                       "by less than the reading may be wrong. Leave it."};
    case SIL_CARRIED:
        return (code_words){.word = "carried", .sentence = say_carried};
    case SIL_READING_ODD:
        return (code_words){.word = "reading-odd", .sentence = say_reading_odd};
    case SIL_SADDLE_CURVE:
        return (code_words){
            .word = "saddle-curve",
            .figure = LENGTH,
            .subject = "Action off a straight line across the strings",
            .meaning = "Others are off it, too, so it is the saddle's curve and not a slip in "
                       "writing: compare the saddle's top with the board's radius."};
    case SIL_BRIDGE_SAG:
        return (code_words){.word = "bridge-sag", .sentence = say_sag};
    case SIL_TUNE_OUT:
        return (code_words){.word = "tune-out",
                            .figure = CENTS,
                            .subject = "Cents at the 12th fret",
                            .meaning = ""}; /* say_tune_out adds what follows from it */
    case SIL_TUNE_LEFT:
        return (code_words){.word = "tune-left",
                            .figure = CENTS,
                            .subject = "Cents at the 12th fret once the bridge is moved",
                            .meaning =
                                "Moved in one piece, a bridge cannot suit every string. A saddle "
                                "filed string by string can."};
    case SIL_TUNE_SHORT:
        return (code_words){.word = "peak-short", .sentence = say_peak_short};
    case SIL_TUNE_UNUSED:
        return (code_words){
            .word = "cents-unused",
            .subject = "Cents were read from worn strings",
            .meaning = "Worn strings play false: put on new ones and read the cents again."};
    case SIL_MAKE_NUT:
        return (code_words){.word = "make-nut",
                            .subject = "A new nut is made from a blank",
                            .meaning =
                                "The depth of its slots follows from their targets, the relief "
                                "and the frets: no reading of the old nut is needed."};
    case SIL_MAKE_SADDLE:
        return (code_words){.word = "make-saddle",
                            .subject = "A new saddle is made from a blank",
                            .meaning = "It is left a little high at first. Once measured with the "
                                       "strings on, it is finished like any other saddle."};
    case SIL_RELIEF_AS_TARGET:
        return (code_words){
            .word = "relief-as-target",
            .figure = LENGTH,
            .subject = "No relief was measured at pitch, so its target stands for it",
            .meaning = "The feeler stacks for a nut hardly depend on the relief. Measure it once "
                       "the strings are on."};
    case SIL_NUT_AS_TARGET:
        return (code_words){
            .word = "nut-as-target",
            .subject = "No gap at the 1st fret was measured, so the nut is taken to be in order",
            .meaning =
                "So the new saddle is left a little higher. Measure the gaps with the strings "
                "on, before it is finished."};
    case SIL_NUT_OVER_DENT:
        return (code_words){
            .word = "nut-over-dent",
            .figure = LENGTH,
            .subject = "A new nut is made over a worn 1st fret",
            .meaning = "The slot is cut as if the fret were sound, so its gap reads "
                       "larger until that fret is replaced. Where the frets are levelled, measure "
                       "the nut again."};
    case SIL_IMPOSSIBLE:
        return (code_words){.word = "impossible", .sentence = say_impossible};
    case SIL_UNDER_FRETS:
        return (code_words){.word = "under-frets",
                            .figure = LENGTH,
                            .subject =
                                "After the earlier steps the string would end up under the frets",
                            .meaning = "No string can lie there. Likely the relief or the action "
                                       "was misread, so measure both "
                                       "again before you start."};
    case SIL_READING_ORDER:
        return (code_words){.word = "reading-order", .sentence = say_reading_order};
    case SIL_CODES:
        break;
    }
    return (code_words){.subject = "", .meaning = ""};
}

const char *sil_code_word(sil_code code)
{
    return code_words_of(code).word;
}

const char *code_meaning_of(sil_code code, sil_level level)
{
    code_words words = code_words_of(code);
    if (level == SIL_LEVEL_STOP && words.meaning_stop) {
        return words.meaning_stop;
    }
    return level >= SIL_LEVEL_ACT && words.meaning_act ? words.meaning_act : words.meaning;
}
