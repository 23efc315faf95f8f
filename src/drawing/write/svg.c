/* SPDX-License-Identifier: MIT */
/* SVG with one paper. A user unit is a millimetre, and each layer is a group.
 *
 * The groups of lines are turned over as a whole, so that their coordinates are those of the
 * drawing, y up. Texts have groups of their own, with y down as in SVG, so that they are not turned
 * over. A text is anchored at the point it belongs to, whatever face a viewer shows it in: viewers
 * apply kerning, and some do not support textLength.
 */
#include <math.h>
#include <sillet/drawing.h>
#include <stdlib.h>
#include <string.h>

#include "out.h"
#include "writer.h"

typedef struct svg {
    text out;
    draw_letters *letters;
    const write_file_about *about;
    int layer; /* the layer of the open group, or -1 */
    bool of_text;
} svg;

static write_plain_figure mm(double value)
{
    return write_plain(value, 4);
}

static void put_escaped(text *out, const char *words)
{
    for (uint32_t code; (code = text_next(&words)) != 0;) {
        char bytes[5] = {0};
        text_letter(code, bytes);
        switch (code) {
        case '&':
            text_put(out, "&amp;");
            break;
        case '<':
            text_put(out, "&lt;");
            break;
        case '>':
            text_put(out, "&gt;");
            break;
        case '"':
            text_put(out, "&quot;");
            break;
        default: /* characters that XML 1.0 does not allow are left out (section 2.2) */
            if (code >= 0x20 && code != 0xFFFE && code != 0xFFFF) {
                text_put(out, bytes);
            }
        }
    }
}

static void *svg_open(draw_letters *letters, const write_file_about *about)
{
    svg *s = calloc(1, sizeof *s);
    if (s != NULL) {
        s->letters = letters;
        s->about = about;
        s->layer = -1;
    }
    return s;
}

static void svg_paper(void *self, draw_box paper)
{
    svg *s = self;
    write_plain_figure width = mm(draw_box_width(paper)), height = mm(draw_box_height(paper));
    text_put(&s->out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text_add(&s->out,
             "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"%smm\" "
             "height=\"%smm\" viewBox=\"%s %s %s %s\">\n<title>",
             width.text, height.text, mm(paper.left).text, mm(-paper.top).text, width.text,
             height.text);
    put_escaped(&s->out, s->about->title);
    text_put(&s->out, "</title>\n");
}

static void put_colour(text *out, const draw_look *look)
{
    text_add(out, "#%02x%02x%02x", (unsigned)(look->red * 255 + 0.5),
             (unsigned)(look->green * 255 + 0.5), (unsigned)(look->blue * 255 + 0.5));
}

static void close_group(svg *s)
{
    if (s->layer >= 0) {
        text_put(&s->out, "</g>\n");
    }
    s->layer = -1;
}

static void put_dash(text *out, const double *dash)
{
    for (int i = 0; i < 4 && dash[i] > 0; i++) {
        text_add(out, "%s%s", i == 0 ? "\" stroke-dasharray=\"" : " ", mm(dash[i]).text);
    }
}

/* Leaves out quotes and backslashes, which the name of a family must not contain. */
static void put_families(svg *s, int first)
{
    for (int face = first; face < 2; face++) {
        const char *name = draw_letters_name(s->letters, face);
        if (*name != '\0' && strpbrk(name, "'\\") == NULL) {
            text_put(&s->out, "'");
            put_escaped(&s->out, name);
            text_put(&s->out, "', ");
        }
    }
    text_put(&s->out, "sans-serif");
}

/* If a layer has both lines and texts, each of them gets its own group. The layer's word is the
 * id of the first. */
static void open_group(svg *s, draw_layer layer, bool of_text)
{
    const draw_look *look = draw_layer_look(layer);
    if (s->layer == (int)layer && s->of_text == of_text) {
        return;
    }
    bool again = s->layer == (int)layer;
    close_group(s);
    s->layer = (int)layer;
    s->of_text = of_text;
    text_add(&s->out, "<g %s=\"%s", again ? "class" : "id", look->word);
    if (of_text) { /* words of warning are stroked too, which makes them bold */
        text_put(&s->out, "\" xml:space=\"preserve\" style=\"font-kerning:none\" fill=\"");
        put_colour(&s->out, look);
        if (layer == DRAW_WARNING) {
            text_add(&s->out, "\" stroke-width=\"%s\" stroke=\"", mm(look->width).text);
            put_colour(&s->out, look);
        }
        text_put(&s->out, "\" font-family=\"");
        put_families(s, 0);
    } else {
        text_add(&s->out,
                 "\" transform=\"scale(1 -1)\" fill=\"none\" stroke-width=\"%s\" "
                 "stroke-linejoin=\"round\" stroke=\"",
                 mm(write_pen_width(s->about, look)).text);
        put_colour(&s->out, look);
        put_dash(&s->out, look->dash);
    }
    text_put(&s->out, "\">\n");
}

static void put_string(svg *s, const draw_shape *shape)
{
    if (shape->string > 0) {
        text_add(&s->out, " data-string=\"%d\"", shape->string);
    }
}

static void svg_path(void *self, const draw_shape *shape, const draw_point *points)
{
    svg *s = self;
    open_group(s, shape->layer, false);
    text_put(&s->out, "<path");
    put_string(s, shape);
    if (shape->filled) {
        text_put(&s->out, " stroke=\"none\" fill=\"");
        put_colour(&s->out, draw_layer_look(shape->layer));
        text_put(&s->out, "\"");
    }
    for (int i = 0; i < shape->count; i++) {
        text_add(&s->out, "%s%s %s",
                 i == 0   ? " d=\"M"
                 : i == 1 ? "L"
                          : " ",
                 mm(points[i].x).text, mm(points[i].y).text);
    }
    text_add(&s->out, "%s\"/>\n", shape->closed ? "Z" : "");
}

/* An outline has finer figures: where an arc is nearly a half circle, its radius is nearly half its
 * chord, and from the little between them a reader works out how far it turns. */
static write_plain_figure fine(double value)
{
    return write_plain(value, 6);
}

static void put_edge(svg *s, draw_corner corner, draw_corner next)
{
    if (corner.bulge == 0) {
        text_add(&s->out, "L%s %s", fine(next.x).text, fine(next.y).text);
        return;
    }
    write_plain_figure r = fine(part_arc_to(corner, next).radius);
    text_add(&s->out, "A%s %s 0 %d %d %s %s", r.text, r.text, fabs(corner.bulge) > 1,
             corner.bulge > 0, fine(next.x).text, fine(next.y).text);
}

static void svg_outline(void *self, const draw_shape *shape, const draw_corner *corners)
{
    svg *s = self;
    open_group(s, shape->layer, false);
    text_put(&s->out, "<path");
    put_string(s, shape);
    text_add(&s->out, " d=\"M%s %s", fine(corners[0].x).text, fine(corners[0].y).text);
    for (int i = 0; i < shape->count; i++) {
        if (i + 1 < shape->count || corners[i].bulge != 0) { /* Z draws a straight last line */
            put_edge(s, corners[i], corners[(i + 1) % shape->count]);
        }
    }
    text_put(&s->out, "Z\"/>\n");
}

static void svg_arc(void *self, const draw_shape *shape)
{
    const double degree = 0.017453292519943295;
    svg *s = self;
    double r = shape->size, x = shape->at.x, y = shape->at.y;
    double from = shape->from * degree, to = shape->to * degree;
    open_group(s, shape->layer, false);
    text_add(&s->out, "<%s", shape->to - shape->from >= 360 ? "circle" : "path");
    put_string(s, shape);
    if (shape->to - shape->from >= 360) {
        text_add(&s->out, " cx=\"%s\" cy=\"%s\" r=\"%s\"/>\n", mm(x).text, mm(y).text, mm(r).text);
        return;
    }
    text_add(&s->out, " d=\"M%s %s", mm(x + r * cos(from)).text, mm(y + r * sin(from)).text);
    text_add(&s->out, "A%s %s 0 %d 1 %s %s\"/>\n", mm(r).text, mm(r).text,
             shape->to - shape->from > 180, mm(x + r * cos(to)).text, mm(y + r * sin(to)).text);
}

/* Writes runs of one face. The second face is scaled so that its capitals are as high as those
 * of the first. */
static void put_runs(svg *s, const char *words, double height)
{
    int face = 0;
    for (const char *at = words; *at != '\0';) {
        uint32_t code = text_next(&at);
        char bytes[5] = {0};
        int wanted = draw_letters_face(s->letters, code) > 0;
        if (wanted != face) {
            if (wanted > 0) {
                text_put(&s->out, "<tspan font-family=\"");
                put_families(s, 1);
                text_add(&s->out, "\" font-size=\"%s\">",
                         mm(height / draw_letters_scale(s->letters, 1)).text);
            } else {
                text_put(&s->out, "</tspan>");
            }
            face = wanted;
        }
        text_letter(code, bytes);
        put_escaped(&s->out, bytes);
    }
    text_put(&s->out, face > 0 ? "</tspan>" : "");
}

static void svg_text(void *self, const draw_shape *shape, const char *words)
{
    static const char *const anchors[] = {[DRAW_LEFT] = "",
                                          [DRAW_MIDDLE] = " text-anchor=\"middle\"",
                                          [DRAW_RIGHT] = " text-anchor=\"end\""};
    svg *s = self;
    write_plain_figure x = mm(shape->at.x), y = mm(-shape->at.y);
    open_group(s, shape->layer, true);
    text_put(&s->out, "<text");
    put_string(s, shape);
    text_add(&s->out, " x=\"%s\" y=\"%s\" font-size=\"%s\"%s", x.text, y.text,
             mm(shape->size / draw_letters_scale(s->letters, 0)).text, anchors[shape->anchor]);
    if (shape->from != 0) {
        text_add(&s->out, " transform=\"rotate(%s %s %s)\"", mm(-shape->from).text, x.text, y.text);
    }
    text_put(&s->out, ">");
    put_runs(s, words, shape->size);
    text_put(&s->out, "</text>\n");
}

static sil_status svg_close(void *self, char **bytes, size_t *size)
{
    svg *s = self;
    close_group(s);
    text_put(&s->out, "</svg>\n");
    sil_status error = write_take(&s->out, bytes, size);
    free(s);
    return error;
}

const write_format write_svg = {svg_open, svg_paper, svg_path, svg_outline,
                                svg_arc,  svg_text,  svg_close};
