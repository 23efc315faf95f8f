/* SPDX-License-Identifier: MIT */
/* Figures and texts as they stand on a sheet. */
#include "draft.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

sil_words sil_say(const char *format, ...)
{
    sil_words words;
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

void sil_set_decimals(const sil_draft *draft, char *text)
{
    for (size_t i = 1; draft->decimal_comma && text[0] != '\0' && text[i] != '\0'; i++) {
        if (text[i] == '.' && is_digit(text[i - 1]) && is_digit(text[i + 1])) {
            text[i] = ',';
        }
    }
}

sil_words sil_say_number(const sil_draft *draft, double value, int decimals)
{
    sil_words words;
    sil_number_write(words.text, sizeof words.text, value, decimals);
    sil_set_decimals(draft, words.text);
    return words;
}

static sil_words say_mm(const sil_draft *draft, double mm, int decimals)
{
    sil_words words;
    sil_length_write(words.text, sizeof words.text, mm, draft->unit, decimals);
    sil_set_decimals(draft, words.text);
    return words;
}

static sil_words say_figure(const sil_draft *draft, double mm, sil_rounding way)
{
    sil_words words;
    sil_figure_write(words.text, sizeof words.text, mm, draft->unit, way);
    sil_set_decimals(draft, words.text);
    return words;
}

sil_words sil_say_length(const sil_draft *draft, double mm)
{
    return say_figure(draft, mm, SIL_NEAREST);
}

sil_words sil_say_cut(const sil_draft *draft, double mm)
{
    return say_figure(draft, mm, SIL_DOWN);
}

sil_words sil_say_stop(const sil_draft *draft, double mm)
{
    return say_figure(draft, mm, SIL_UP);
}

sil_words sil_say_size(const sil_draft *draft, double mm)
{
    return say_mm(draft, mm, 1);
}

sil_words sil_say_radius(const sil_draft *draft, double mm)
{
    return say_mm(draft, mm, 0);
}

sil_words sil_say_scale(double scale)
{
    return scale >= 1 ? sil_say("%.0f:1", scale) : sil_say("1:%.0f", 1 / scale);
}

sil_words sil_say_note(const sil_draft *draft, int string)
{
    const char *note = draft->plan->job->strings[string].note;
    return sil_say("%.8s", note != NULL ? note : "-");
}

sil_words sil_say_which(const sil_draft *draft, const char *noun, const bool *meant)
{
    sil_words numbers = {""};
    int said = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        if (meant[i]) {
            numbers = sil_say("%.60s%s%d", numbers.text, said++ > 0 ? ", " : "", i + 1);
        }
    }
    return said > 0 ? sil_say("%.16s%s %.60s", noun, said > 1 ? "s" : "", numbers.text) : numbers;
}

const char *sil_unit_name(const sil_draft *draft)
{
    return draft->unit == SIL_MM ? "mm" : "in";
}

sil_place sil_place_part(const sil_draft *draft, double length, double scale)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    return left ? (sil_place){length * scale, 0, -scale, scale} : (sil_place){0, 0, scale, scale};
}

double sil_on_nut(const sil_draft *draft, int string)
{
    return draft->plan->job->nut.width / 2 + draft->plan->bench.board.nut_z[string];
}

double sil_on_saddle(const sil_draft *draft, int string)
{
    return draft->plan->job->saddle.length / 2 + draft->plan->bench.board.saddle_z[string];
}

int sil_string_seen(const sil_draft *draft, int place)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    return left ? place : draft->plan->job->string_count - 1 - place;
}

void sil_draw_note(sil_shapes *list, double x, double y, const char *text)
{
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x, y}, SIL_NOTE, SIL_LEFT, 0, text);
}

double sil_draw_key(sil_shapes *list, double x, double y, sil_layer layer, const char *words)
{
    const double line = 12, start = line + 2.5;
    sil_draw_line(list, layer, (sil_point){x, y + SIL_NOTE / 2},
                  (sil_point){x + line, y + SIL_NOTE / 2});
    sil_draw_note(list, x + start, y, words);
    return x + start + sil_text_width(list, words, SIL_NOTE);
}

enum { LINE_SIZE = 512 };

/* How many bytes of a text go on one line: up to the last space that fits; a word longer than the
 * line is broken where it must be. */
static size_t line_length(const sil_shapes *list, const char *text, double height, double width)
{
    size_t fits = 0, space = 0;
    double x = 0;
    for (const char *at = text, *next = text; *at != '\0' && *at != '\n'; at = next) {
        uint32_t code = sil_utf8_next(&next);
        size_t length = (size_t)(next - text);
        x += sil_letters_advance(list->letters, code, height);
        if (code == ' ') {
            space = (size_t)(at - text);
        } else if (length >= LINE_SIZE || x > width) {
            return space > 0 ? space : fits > 0 ? fits : length;
        }
        fits = length;
    }
    return fits;
}

const char *sil_draw_line_of(sil_shapes *list, double x, double y, double width, double height,
                             const char *text)
{
    char line[LINE_SIZE];
    if (list == NULL) {
        return "";
    }
    size_t length = line_length(list, text, height, width);
    memcpy(line, text, length);
    line[length] = '\0';
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x, y}, height, SIL_LEFT, 0, line);
    text += length;
    return text + strspn(text, " \n");
}

double sil_draw_paragraph(sil_shapes *list, double x, double top, double width, double height,
                          const char *text)
{
    double y = top - height;
    for (bool first = true; *text != '\0'; first = false) {
        if (!first) {
            y -= 1.8 * height;
        }
        text = sil_draw_line_of(list, x, y, width, height, text);
    }
    return y;
}

sil_words sil_text_fit(const sil_shapes *list, const char *text, double height, double width)
{
    static const char dots[] = "...";
    sil_words words = {""};
    if (list == NULL) {
        return words;
    }
    bool whole = strlen(text) < sizeof words.text;
    if (whole && sil_text_width(list, text, height) <= width) {
        return sil_say("%s", text);
    }
    size_t length = 0;
    double x = sil_text_width(list, dots, height);
    for (const char *at = text; *at != '\0';) {
        x += sil_letters_advance(list->letters, sil_utf8_next(&at), height);
        if (x > width || (size_t)(at - text) + sizeof dots > sizeof words.text) {
            break;
        }
        length = (size_t)(at - text);
    }
    memcpy(words.text, text, length);
    memcpy(words.text + length, dots, sizeof dots);
    return words;
}
