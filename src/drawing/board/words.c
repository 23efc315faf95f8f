/* SPDX-License-Identifier: MIT */
/* Figures and texts as they stand on a sheet. */
#include "draft.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

draw_words draw_say(const char *format, ...)
{
    draw_words words;
    va_list list;
    va_start(list, format);
    vsnprintf(words.text, sizeof words.text, format, list);
    va_end(list);
    return words;
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

void draw_set_decimals(const draw_draft *draft, char *text)
{
    for (size_t i = 1; draft->decimal_comma && text[0] != '\0' && text[i] != '\0'; i++) {
        if (text[i] == '.' && is_digit(text[i - 1]) && is_digit(text[i + 1])) {
            text[i] = ',';
        }
    }
}

draw_words draw_say_number(const draw_draft *draft, double value, int decimals)
{
    draw_words words;
    sil_number_write(words.text, sizeof words.text, value, decimals);
    draw_set_decimals(draft, words.text);
    return words;
}

static draw_words say_mm(const draw_draft *draft, double mm, int decimals)
{
    draw_words words;
    sil_length_write(words.text, sizeof words.text, mm, draft->unit, decimals);
    draw_set_decimals(draft, words.text);
    return words;
}

static draw_words say_figure(const draw_draft *draft, double mm, sil_rounding way)
{
    draw_words words;
    sil_figure_write(words.text, sizeof words.text, mm, draft->unit, way);
    draw_set_decimals(draft, words.text);
    return words;
}

draw_words draw_say_length(const draw_draft *draft, double mm)
{
    return say_figure(draft, mm, SIL_NEAREST);
}

draw_words draw_say_cut(const draw_draft *draft, double mm)
{
    return say_figure(draft, mm, SIL_DOWN);
}

draw_words draw_say_stop(const draw_draft *draft, double mm)
{
    return say_figure(draft, mm, SIL_UP);
}

draw_words draw_say_size(const draw_draft *draft, double mm)
{
    return say_mm(draft, mm, 1);
}

draw_words draw_say_radius(const draw_draft *draft, double mm)
{
    return say_mm(draft, mm, 0);
}

draw_words draw_say_scale(double scale)
{
    return scale >= 1 ? draw_say("%.0f:1", scale) : draw_say("1:%.0f", 1 / scale);
}

draw_words draw_say_note(const draw_draft *draft, int string)
{
    const char *note = draft->plan->job->strings[string].note;
    return draw_say("%.8s", note != NULL ? note : "-");
}

draw_words draw_say_which(const draw_draft *draft, const char *noun, const bool *meant)
{
    draw_words numbers = {""};
    int said = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        if (meant[i]) {
            numbers = draw_say("%.60s%s%d", numbers.text, said++ > 0 ? ", " : "", i + 1);
        }
    }
    return said > 0 ? draw_say("%.16s%s %.60s", noun, said > 1 ? "s" : "", numbers.text) : numbers;
}

const char *draw_unit_name(const draw_draft *draft)
{
    return draft->unit == SIL_MM ? "mm" : "in";
}

draw_place draw_place_part(const draw_draft *draft, double length, double scale)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    return left ? (draw_place){length * scale, 0, -scale, scale} : (draw_place){0, 0, scale, scale};
}

double draw_on_nut(const draw_draft *draft, int string)
{
    return draft->plan->job->nut.width / 2 + draft->plan->bench.board.nut_z[string];
}

double draw_on_saddle(const draw_draft *draft, int string)
{
    return draft->plan->job->saddle.length / 2 + draft->plan->bench.board.saddle_z[string];
}

int draw_string_seen(const draw_draft *draft, int place)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    return left ? place : draft->plan->job->string_count - 1 - place;
}

void draw_note(draw_shapes *list, double x, double y, const char *text)
{
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, DRAW_NOTE, DRAW_LEFT, 0, text);
}

double draw_key(draw_shapes *list, double x, double y, draw_layer layer, const char *words)
{
    const double line = 12, start = line + 2.5;
    draw_line(list, layer, (draw_point){x, y + DRAW_NOTE / 2},
              (draw_point){x + line, y + DRAW_NOTE / 2});
    draw_note(list, x + start, y, words);
    return x + start + draw_text_width(list, words, DRAW_NOTE);
}

enum { LINE_SIZE = 512 };

/* How many bytes of a text go on one line: up to the last space that fits; a word longer than the
 * line is broken where it must be. */
static size_t line_length(const draw_shapes *list, const char *text, double height, double width)
{
    size_t fits = 0, space = 0;
    double x = 0;
    for (const char *at = text, *next = text; *at != '\0' && *at != '\n'; at = next) {
        uint32_t code = draw_utf8_next(&next);
        size_t length = (size_t)(next - text);
        x += draw_letters_advance(list->letters, code, height);
        if (code == ' ') {
            space = (size_t)(at - text);
        } else if (length >= LINE_SIZE || x > width) {
            return space > 0 ? space : fits > 0 ? fits : length;
        }
        fits = length;
    }
    return fits;
}

const char *draw_line_of(draw_shapes *list, double x, double y, double width, double height,
                         const char *text)
{
    char line[LINE_SIZE];
    if (list == NULL) {
        return "";
    }
    size_t length = line_length(list, text, height, width);
    memcpy(line, text, length);
    line[length] = '\0';
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, height, DRAW_LEFT, 0, line);
    text += length;
    return text + strspn(text, " \n");
}

double draw_paragraph(draw_shapes *list, double x, double top, double width, double height,
                      const char *text)
{
    double y = top - height;
    for (bool first = true; *text != '\0'; first = false) {
        if (!first) {
            y -= 1.8 * height;
        }
        text = draw_line_of(list, x, y, width, height, text);
    }
    return y;
}

draw_words draw_text_fit(const draw_shapes *list, const char *text, double height, double width)
{
    static const char dots[] = "...";
    draw_words words = {""};
    if (list == NULL) {
        return words;
    }
    bool whole = strlen(text) < sizeof words.text;
    if (whole && draw_text_width(list, text, height) <= width) {
        return draw_say("%s", text);
    }
    size_t length = 0;
    double x = draw_text_width(list, dots, height);
    for (const char *at = text; *at != '\0';) {
        x += draw_letters_advance(list->letters, draw_utf8_next(&at), height);
        if (x > width || (size_t)(at - text) + sizeof dots > sizeof words.text) {
            break;
        }
        length = (size_t)(at - text);
    }
    memcpy(words.text, text, length);
    memcpy(words.text + length, dots, sizeof dots);
    return words;
}
