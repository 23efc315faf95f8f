/* SPDX-License-Identifier: MIT */
/* SVG: one page, a user unit a millimetre, a group a layer.
 *
 * The groups of lines are turned over as a whole, so that their coordinates are the drawing's own,
 * y up. Texts stand in groups of their own and count down, as SVG does, so that they are not turned
 * over too. A text is anchored at the point it belongs to, whatever face a viewer sets it in:
 * viewers kern, and some know nothing of textLength.
 */
#include <math.h>
#include <sillet/drawing.h>
#include <stdlib.h>
#include <string.h>

#include "out.h"
#include "writer.h"

typedef struct svg {
    sil_out out;
    sil_letters *letters;
    const sil_file_about *about;
    int layer; /* of the group that is open, or -1 */
    bool of_text;
} svg;

static sil_plain_figure mm(double value)
{
    return sil_plain(value, 4);
}

static void put_escaped(sil_out *out, const char *text)
{
    for (uint32_t code; (code = sil_utf8_next(&text)) != 0;) {
        char bytes[5] = {0};
        sil_utf8_put(code, bytes);
        switch (code) {
        case '&':
            sil_out_put(out, "&amp;");
            break;
        case '<':
            sil_out_put(out, "&lt;");
            break;
        case '>':
            sil_out_put(out, "&gt;");
            break;
        case '"':
            sil_out_put(out, "&quot;");
            break;
        default: /* what XML 1.0 has no place for is left out (section 2.2) */
            if (code >= 0x20 && code != 0xFFFE && code != 0xFFFF) {
                sil_out_put(out, "%s", bytes);
            }
        }
    }
}

static void *svg_open(sil_letters *letters, const sil_file_about *about)
{
    svg *s = calloc(1, sizeof *s);
    if (s != NULL) {
        s->letters = letters;
        s->about = about;
        s->layer = -1;
    }
    return s;
}

static void svg_page(void *self, sil_box paper)
{
    svg *s = self;
    sil_plain_figure width = mm(sil_box_width(paper)), height = mm(sil_box_height(paper));
    sil_out_put(&s->out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    sil_out_put(&s->out,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"%smm\" "
                "height=\"%smm\" viewBox=\"%s %s %s %s\">\n<title>",
                width.text, height.text, mm(paper.left).text, mm(-paper.top).text, width.text,
                height.text);
    put_escaped(&s->out, s->about->title);
    sil_out_put(&s->out, "</title>\n");
}

static void put_colour(sil_out *out, const sil_look *look)
{
    sil_out_put(out, "#%02x%02x%02x", (unsigned)(look->red * 255 + 0.5),
                (unsigned)(look->green * 255 + 0.5), (unsigned)(look->blue * 255 + 0.5));
}

static void close_group(svg *s)
{
    if (s->layer >= 0) {
        sil_out_put(&s->out, "</g>\n");
    }
    s->layer = -1;
}

static void put_dash(sil_out *out, const double *dash)
{
    for (int i = 0; i < 4 && dash[i] > 0; i++) {
        sil_out_put(out, "%s%s", i == 0 ? "\" stroke-dasharray=\"" : " ", mm(dash[i]).text);
    }
}

/* Quotes and backslashes have no place in the name of a family. */
static void put_families(svg *s, int first)
{
    for (int face = first; face < 2; face++) {
        const char *name = sil_letters_name(s->letters, face);
        if (*name != '\0' && strpbrk(name, "'\\") == NULL) {
            sil_out_put(&s->out, "'");
            put_escaped(&s->out, name);
            sil_out_put(&s->out, "', ");
        }
    }
    sil_out_put(&s->out, "sans-serif");
}

/* A layer's lines and its texts are groups of their own where it has both; the layer's word is the
 * id of the first. */
static void open_group(svg *s, sil_layer layer, bool of_text)
{
    const sil_look *look = sil_layer_look(layer);
    if (s->layer == (int)layer && s->of_text == of_text) {
        return;
    }
    bool again = s->layer == (int)layer;
    close_group(s);
    s->layer = (int)layer;
    s->of_text = of_text;
    sil_out_put(&s->out, "<g %s=\"%s", again ? "class" : "id", look->word);
    if (of_text) { /* words of warning are stroked as well as filled */
        sil_out_put(&s->out, "\" xml:space=\"preserve\" style=\"font-kerning:none\" fill=\"");
        put_colour(&s->out, look);
        if (layer == SIL_LAYER_WARNING) {
            sil_out_put(&s->out, "\" stroke-width=\"%s\" stroke=\"", mm(look->width).text);
            put_colour(&s->out, look);
        }
        sil_out_put(&s->out, "\" font-family=\"");
        put_families(s, 0);
    } else {
        sil_out_put(&s->out,
                    "\" transform=\"scale(1 -1)\" fill=\"none\" stroke-width=\"%s\" "
                    "stroke-linejoin=\"round\" stroke=\"",
                    mm(sil_pen_width(s->about, look)).text);
        put_colour(&s->out, look);
        put_dash(&s->out, look->dash);
    }
    sil_out_put(&s->out, "\">\n");
}

static void put_string(svg *s, const sil_shape *shape)
{
    if (shape->string > 0) {
        sil_out_put(&s->out, " data-string=\"%d\"", shape->string);
    }
}

static void svg_path(void *self, const sil_shape *shape, const sil_point *points)
{
    svg *s = self;
    open_group(s, shape->layer, false);
    sil_out_put(&s->out, "<path");
    put_string(s, shape);
    if (shape->filled) {
        sil_out_put(&s->out, " stroke=\"none\" fill=\"");
        put_colour(&s->out, sil_layer_look(shape->layer));
        sil_out_put(&s->out, "\"");
    }
    for (int i = 0; i < shape->count; i++) {
        sil_out_put(&s->out, "%s%s %s",
                    i == 0   ? " d=\"M"
                    : i == 1 ? "L"
                             : " ",
                    mm(points[i].x).text, mm(points[i].y).text);
    }
    sil_out_put(&s->out, "%s\"/>\n", shape->closed ? "Z" : "");
}

static void svg_arc(void *self, const sil_shape *shape)
{
    const double degree = 0.017453292519943295;
    svg *s = self;
    double r = shape->size, x = shape->at.x, y = shape->at.y;
    double from = shape->from * degree, to = shape->to * degree;
    open_group(s, shape->layer, false);
    sil_out_put(&s->out, "<%s", shape->to - shape->from >= 360 ? "circle" : "path");
    put_string(s, shape);
    if (shape->to - shape->from >= 360) {
        sil_out_put(&s->out, " cx=\"%s\" cy=\"%s\" r=\"%s\"/>\n", mm(x).text, mm(y).text,
                    mm(r).text);
        return;
    }
    sil_out_put(&s->out, " d=\"M%s %s", mm(x + r * cos(from)).text, mm(y + r * sin(from)).text);
    sil_out_put(&s->out, "A%s %s 0 %d 1 %s %s\"/>\n", mm(r).text, mm(r).text,
                shape->to - shape->from > 180, mm(x + r * cos(to)).text, mm(y + r * sin(to)).text);
}

/* Runs of one face; the stand-in is set at the size that gives it the same capitals. */
static void put_runs(svg *s, const char *text, double height)
{
    int face = 0;
    for (const char *at = text; *at != '\0';) {
        uint32_t code = sil_utf8_next(&at);
        char bytes[5] = {0};
        int wanted = sil_letters_face(s->letters, code) > 0;
        if (wanted != face) {
            if (wanted > 0) {
                sil_out_put(&s->out, "<tspan font-family=\"");
                put_families(s, 1);
                sil_out_put(&s->out, "\" font-size=\"%s\">",
                            mm(height / sil_letters_scale(s->letters, 1)).text);
            } else {
                sil_out_put(&s->out, "</tspan>");
            }
            face = wanted;
        }
        sil_utf8_put(code, bytes);
        put_escaped(&s->out, bytes);
    }
    sil_out_put(&s->out, "%s", face > 0 ? "</tspan>" : "");
}

static void svg_text(void *self, const sil_shape *shape, const char *text)
{
    static const char *const anchors[] = {[SIL_LEFT] = "",
                                          [SIL_MIDDLE] = " text-anchor=\"middle\"",
                                          [SIL_RIGHT] = " text-anchor=\"end\""};
    svg *s = self;
    sil_plain_figure x = mm(shape->at.x), y = mm(-shape->at.y);
    open_group(s, shape->layer, true);
    sil_out_put(&s->out, "<text");
    put_string(s, shape);
    sil_out_put(&s->out, " x=\"%s\" y=\"%s\" font-size=\"%s\"%s", x.text, y.text,
                mm(shape->size / sil_letters_scale(s->letters, 0)).text, anchors[shape->anchor]);
    if (shape->from != 0) {
        sil_out_put(&s->out, " transform=\"rotate(%s %s %s)\"", mm(-shape->from).text, x.text,
                    y.text);
    }
    sil_out_put(&s->out, ">");
    put_runs(s, text, shape->size);
    sil_out_put(&s->out, "</text>\n");
}

static int svg_close(void *self, char **bytes, size_t *size)
{
    svg *s = self;
    close_group(s);
    sil_out_put(&s->out, "</svg>\n");
    int error = sil_out_take(&s->out, bytes, size);
    free(s);
    return error;
}

const sil_writer sil_writer_svg = {svg_open, svg_page, svg_path, svg_arc, svg_text, svg_close};
