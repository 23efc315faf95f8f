/* SPDX-License-Identifier: MIT */
/* Figures and texts as they are written on a paper. */
#include "draft.h"

#include <string.h>

const char *draw_say(const draw_draft *draft, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    const char *kept = text_keep_list(draft->store, format, arguments);
    va_end(arguments);
    return kept;
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

const char *draw_set_decimals(const draw_draft *draft, const char *words)
{
    size_t size = strlen(words);
    char *set = draft->decimal_comma ? text_store_room(draft->store, size + 1) : NULL;
    if (!set) {
        return words;
    }
    memcpy(set, words, size + 1);
    for (size_t i = 1; i + 1 < size; i++) {
        if (set[i] == '.' && is_digit(set[i - 1]) && is_digit(set[i + 1])) {
            set[i] = ',';
        }
    }
    return set;
}

const char *draw_figure(const draw_draft *draft, brief_figure figure)
{
    return draw_set_decimals(draft,
                             text_keep_bytes(draft->store, figure.shown, strlen(figure.shown)));
}

const char *draw_action(const draw_draft *draft, brief_figure figure)
{
    const char *words = draw_figure(draft, figure);
    return figure.marks[0] != '\0' ? draw_say(draft, "%s (%s)", words, figure.marks) : words;
}

const char *draw_limits(const draw_draft *draft, brief_figure figure)
{
    return draw_set_decimals(draft,
                             text_keep_bytes(draft->store, figure.limits, strlen(figure.limits)));
}

const char *draw_dimension(const draw_draft *draft, brief_figure figure)
{
    const char *words = draw_figure(draft, figure);
    return figure.limits[0] != '\0' ? draw_say(draft, "%s %s", words, draw_limits(draft, figure))
           : figure.reference && brief_known(figure) ? draw_say(draft, "(%s)", words)
                                                     : words;
}

const char *draw_known_figure(const draw_draft *draft, brief_figure figure)
{
    return brief_known(figure) ? draw_figure(draft, figure) : "";
}

const char *draw_range(const draw_draft *draft, const brief_range *range)
{
    return draw_say(draft, "%s\u2013%s", draw_figure(draft, range->low),
                    draw_figure(draft, range->high));
}

const char *draw_say_scale(const draw_draft *draft, double scale)
{
    return scale >= 1 ? draw_say(draft, "%.0f:1", scale) : draw_say(draft, "1:%.0f", 1 / scale);
}

const char *draw_say_note(const draw_draft *draft, int string)
{
    const char *note = draft->plan->job->strings[string].note;
    return note ? note : "-";
}

const char *draw_say_which(const draw_draft *draft, const char *noun, const bool *meant)
{
    const char *numbers = "";
    int said = 0, strings = draft->brief->strings;
    for (int i = 0; i < strings; i++) {
        if (meant[i]) {
            numbers = draw_say(draft, "%s%s%d", numbers, said++ > 0 ? ", " : "", i + 1);
        }
    }
    if (said > 1 && said == strings) {
        return draw_say(draft, "all %ss", noun);
    }
    return said > 0 ? draw_say(draft, "%s%s %s", noun, said > 1 ? "s" : "", numbers) : "";
}

bool draw_left_handed(const draw_draft *draft)
{
    return draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
}

draw_place draw_place_part(const draw_draft *draft, double length, double scale)
{
    return draw_left_handed(draft) ? (draw_place){length * scale, 0, -scale, scale}
                                   : (draw_place){0, 0, scale, scale};
}

void draw_place_points(draw_place place, draw_point *points, int count)
{
    for (int i = 0; i < count; i++) {
        points[i] = draw_at(place, points[i].x, points[i].y);
    }
}

void draw_place_corners(draw_place place, draw_corner *corners, int count)
{
    for (int i = 0; i < count; i++) {
        draw_point at = draw_at(place, corners[i].x, corners[i].y);
        double bulge = place.across * place.up < 0 ? -corners[i].bulge : corners[i].bulge;
        corners[i] = (draw_corner){at.x, at.y, bulge};
    }
}

int draw_string_seen(const draw_draft *draft, int place)
{
    return draw_left_handed(draft) ? place : draft->brief->strings - 1 - place;
}

void draw_note(draw_shapes *list, double x, double y, const char *words)
{
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, DRAW_NOTE, DRAW_LEFT, 0, words);
}

void draw_number(draw_shapes *list, draw_point at, double height, draw_anchor anchor, int number)
{
    char digits[16];
    sil_number_write(digits, sizeof digits, number, 0);
    draw_text(list, DRAW_TEXT, at, height, anchor, 0, digits);
}

double draw_key(draw_shapes *list, double x, double y, draw_layer layer, const char *words)
{
    const double line = 12, start = line + 2.5;
    draw_line(list, layer, (draw_point){x, y + DRAW_NOTE / 2},
              (draw_point){x + line, y + DRAW_NOTE / 2});
    draw_note(list, x + start, y, words);
    return x + start + draw_text_width(list, words, DRAW_NOTE);
}

/* How many bytes of a text fit on one line: up to the last space that fits. A word longer than
 * the line is broken. */
static size_t line_length(const draw_shapes *list, const char *words, double height, double width)
{
    size_t fits = 0, space = 0;
    double x = 0;
    for (const char *at = words, *next = words; *at != '\0' && *at != '\n'; at = next) {
        uint32_t code = text_next(&next);
        size_t length = (size_t)(next - words);
        x += draw_letters_advance(list->letters, code, height);
        if (code == ' ' && text_may_break(words, at)) {
            space = (size_t)(at - words);
        } else if (x > width) {
            return space > 0 ? space : fits > 0 ? fits : length;
        }
        fits = length;
    }
    return fits;
}

const char *draw_line_of(draw_shapes *list, double x, double y, double width, double height,
                         const char *words)
{
    text line = {0};
    if (list == NULL) {
        return "";
    }
    size_t length = line_length(list, words, height, width);
    text_put_bytes(&line, words, length);
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, height, DRAW_LEFT, 0, text_read(&line));
    list->no_memory = list->no_memory || line.failed;
    text_free(&line);
    words += length;
    return words + strspn(words, " \n");
}

static double put_lines(draw_shapes *list, double x, double top, double width, double height,
                        double apart, const char *words)
{
    double y = top - height;
    for (bool first = true; *words != '\0'; first = false) {
        if (!first) {
            y -= apart * height;
        }
        words = draw_line_of(list, x, y, width, height, words);
    }
    return y;
}

double draw_paragraph(draw_shapes *list, double x, double top, double width, double height,
                      const char *words)
{
    return put_lines(list, x, top, width, height, 1.8, words);
}

double draw_notes(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                  const char *words)
{
    return put_lines(list, x, top, width, DRAW_NOTE, draft->dense ? 1.65 : 1.8, words);
}

const char *draw_text_fit(const draw_draft *draft, const draw_shapes *list, const char *words,
                          double height, double width)
{
    static const char dots[] = "...";
    if (list == NULL || words == NULL || draw_text_width(list, words, height) <= width) {
        return words;
    }
    const char *end = words, *next = words;
    double x = draw_text_width(list, dots, height);
    for (uint32_t code; (code = text_next(&next)) != 0; end = next) {
        x += draw_letters_advance(list->letters, code, height);
        if (x > width) {
            break;
        }
    }
    return draw_say(draft, "%.*s%s", (int)(end - words), words, dots);
}
