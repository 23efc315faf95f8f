/* SPDX-License-Identifier: MIT */
/* DXF of release AC1021, the first whose text is UTF-8. The file has one paper, in millimetres.
 *
 * The lines of the drawing are entities of model space. Each is on the layer of its kind, and the
 * layer sets the colour, pen and dashes. The rest is the minimum that a program needs to read the
 * file without repairing it: the tables, the two required blocks and layouts, and a handle for
 * every object.
 */
#include <sillet/drawing.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "out.h"
#include "writer.h"

/* The fixed parts have their handles written in their texts below. */
enum { MODEL_SPACE = 0x17, FIRST_LAYER = 0x40, FIRST_DASH = 0x60, FIRST_ENTITY = 0x100 };

typedef struct dxf {
    text entities;
    draw_letters *letters;
    const write_file_about *about;
    draw_box paper;
    int handle; /* the handle of the next entity */
} dxf;

static write_plain_figure mm(double value)
{
    return write_plain(value, 6);
}

/* Writes groups of a code and its value, given as "0 LINE;8 outline;10 2.5". In the file, a
 * group is two lines. */
__attribute__((format(printf, 2, 3))) static void put(text *out, const char *format, ...)
{
    size_t from = out->length;
    va_list list;
    va_start(list, format);
    text_add_list(out, format, list);
    va_end(list);
    bool code = true;
    for (size_t i = from; i < out->length; i++) {
        char *at = &out->bytes[i];
        bool ends = *at == ';', parts = *at == ' ' && code;
        *at = ends || parts ? '\n' : *at;
        code = ends || (code && !parts);
    }
    text_put(out, "\n");
}

/* Writes the group of a text separately, because the text may contain a character that ends a
 * group above. A caret starts a control character in DXF and two percent signs start a symbol,
 * so both are escaped. */
static void put_text(text *out, const char *words)
{
    text_put(out, "1\n");
    for (; *words != '\0'; words++) {
        bool pair = words[0] == '%' && words[1] == '%';
        text_add(out, "%s%c%s", pair ? "%%" : "", *words, *words == '^' ? " " : "");
    }
    text_put(out, "\n");
}

static void *dxf_open(draw_letters *letters, const write_file_about *about)
{
    dxf *d = calloc(1, sizeof *d);
    if (d != NULL) {
        d->letters = letters;
        d->about = about;
        d->handle = FIRST_ENTITY;
    }
    return d;
}

static void dxf_paper(void *self, draw_box paper)
{
    dxf *d = self;
    d->paper = paper;
}

static void put_entity(dxf *d, const char *name, const draw_shape *shape, const char *kind)
{
    put(&d->entities, "0 %s;5 %X;330 %X;100 AcDbEntity;8 %s;100 %s", name, (unsigned)d->handle++,
        MODEL_SPACE, draw_layer_look(shape->layer)->word, kind);
}

static void dxf_path(void *self, const draw_shape *shape, const draw_point *points)
{
    dxf *d = self;
    if (shape->count == 2) {
        put_entity(d, "LINE", shape, "AcDbLine");
        put(&d->entities, "10 %s;20 %s;30 0;11 %s;21 %s;31 0", mm(points[0].x).text,
            mm(points[0].y).text, mm(points[1].x).text, mm(points[1].y).text);
        return;
    }
    put_entity(d, "LWPOLYLINE", shape, "AcDbPolyline");
    put(&d->entities, "90 %d;70 %d;43 0", shape->count, shape->closed);
    for (int i = 0; i < shape->count; i++) {
        put(&d->entities, "10 %s;20 %s", mm(points[i].x).text, mm(points[i].y).text);
    }
}

/* The bulge has more figures than a length: an arc of a large radius is nearly straight. */
static void dxf_outline(void *self, const draw_shape *shape, const draw_corner *corners)
{
    dxf *d = self;
    put_entity(d, "LWPOLYLINE", shape, "AcDbPolyline");
    put(&d->entities, "90 %d;70 1;43 0", shape->count);
    for (int i = 0; i < shape->count; i++) {
        put(&d->entities, "10 %s;20 %s", mm(corners[i].x).text, mm(corners[i].y).text);
        if (corners[i].bulge != 0) {
            put(&d->entities, "42 %s", write_plain(corners[i].bulge, 9).text);
        }
    }
}

static void dxf_arc(void *self, const draw_shape *shape)
{
    dxf *d = self;
    bool circle = shape->to - shape->from >= 360;
    put_entity(d, circle ? "CIRCLE" : "ARC", shape, "AcDbCircle");
    put(&d->entities, "10 %s;20 %s;30 0;40 %s", mm(shape->at.x).text, mm(shape->at.y).text,
        mm(shape->size).text);
    if (!circle) {
        put(&d->entities, "100 AcDbArc;50 %s;51 %s", mm(shape->from).text, mm(shape->to).text);
    }
}

static void dxf_text(void *self, const draw_shape *shape, const char *words)
{
    dxf *d = self;
    write_plain_figure x = mm(shape->at.x), y = mm(shape->at.y);
    put_entity(d, "TEXT", shape, "AcDbText");
    put(&d->entities, "10 %s;20 %s;30 0;40 %s", x.text, y.text, mm(shape->size).text);
    put_text(&d->entities, words);
    put(&d->entities, "50 %s;7 Standard;72 %d;11 %s;21 %s;31 0;100 AcDbText", mm(shape->from).text,
        shape->anchor == DRAW_LEFT     ? 0
        : shape->anchor == DRAW_MIDDLE ? 1
                                       : 2,
        x.text, y.text);
}

static void put_header(const dxf *d, text *out)
{
    put(out, "0 SECTION;2 HEADER;9 $ACADVER;1 AC1021;9 $DWGCODEPAGE;3 ANSI_1252;"
             "9 $INSUNITS;70 4;9 $MEASUREMENT;70 1;9 $LUNITS;70 2;9 $LUPREC;70 4");
    put(out, "9 $EXTMIN;10 %s;20 %s;30 0;9 $EXTMAX;10 %s;20 %s;30 0", mm(d->paper.left).text,
        mm(d->paper.bottom).text, mm(d->paper.right).text, mm(d->paper.top).text);
    put(out,
        "9 $LTSCALE;40 1;9 $TEXTSTYLE;7 Standard;9 $CLAYER;8 0;9 $PSTYLEMODE;290 1;"
        "9 $HANDSEED;5 %X;0 ENDSEC;0 SECTION;2 CLASSES;0 ENDSEC",
        (unsigned)d->handle);
}

static void put_view(const dxf *d, text *out)
{
    double width = draw_box_width(d->paper), height = draw_box_height(d->paper);
    put(out, "0 TABLE;2 VPORT;5 1;330 0;100 AcDbSymbolTable;70 1;0 VPORT;5 25;330 1;"
             "100 AcDbSymbolTableRecord;100 AcDbViewportTableRecord;2 *Active;70 0;10 0;20 0;"
             "11 1;21 1");
    put(out,
        "12 %s;22 %s;13 0;23 0;14 10;24 10;15 10;25 10;16 0;26 0;36 1;17 0;27 0;37 0;40 %s;"
        "41 %s;42 50;43 0;44 0;50 0;51 0;71 0;72 1000;73 1;74 3;75 0;76 0;77 0;78 0;0 ENDTAB",
        mm(d->paper.left + width / 2).text, mm(d->paper.bottom + height / 2).text,
        mm(height * 1.1).text, mm(width / height).text);
}

static void put_dash(text *out, int layer)
{
    const draw_look *look = draw_layer_look((draw_layer)layer);
    double total = 0;
    int count = 0;
    while (count < 4 && look->dash[count] > 0) {
        total += look->dash[count++];
    }
    if (count == 0) {
        return;
    }
    put(out,
        "0 LTYPE;5 %X;330 2;100 AcDbSymbolTableRecord;100 AcDbLinetypeTableRecord;2 %s;70 0;"
        "3 %s;72 65;73 %d;40 %s",
        (unsigned)(FIRST_DASH + layer), look->word, look->word, count, mm(total).text);
    for (int i = 0; i < count; i++) {
        put(out, "49 %s;74 0", mm(i % 2 == 0 ? look->dash[i] : -look->dash[i]).text);
    }
}

static void put_dashes(text *out)
{
    static const char *const plain[] = {"ByBlock", "ByLayer", "Continuous"};
    put(out, "0 TABLE;2 LTYPE;5 2;330 0;100 AcDbSymbolTable;70 %d", 3 + DRAW_LAYERS);
    for (int i = 0; i < 3; i++) {
        put(out,
            "0 LTYPE;5 %X;330 2;100 AcDbSymbolTableRecord;100 AcDbLinetypeTableRecord;2 %s;"
            "70 0;3 ;72 65;73 0;40 0",
            (unsigned)(0x26 + i), plain[i]);
    }
    for (int layer = 0; layer < DRAW_LAYERS; layer++) {
        put_dash(out, layer);
    }
    put(out, "0 ENDTAB");
}

/* Programs show colour 7 black on white and white on black. */
static void put_layer(const dxf *d, text *out, int handle, const char *name, const draw_look *look)
{
    bool red = look != NULL && look->red > look->green;
    put(out,
        "0 LAYER;5 %X;330 3;100 AcDbSymbolTableRecord;100 AcDbLayerTableRecord;2 %s;70 0;"
        "62 %d;6 %s;370 %d;390 13",
        (unsigned)handle, name, red ? 1 : 7,
        look != NULL && look->dash[0] > 0 ? look->word : "Continuous",
        look != NULL ? (int)(write_pen_width(d->about, look) * 100 + 0.5) : -3);
}

static void put_layers(const dxf *d, text *out)
{
    put(out, "0 TABLE;2 LAYER;5 3;330 0;100 AcDbSymbolTable;70 %d", 1 + DRAW_LAYERS);
    put_layer(d, out, 0x29, "0", NULL);
    for (int layer = 0; layer < DRAW_LAYERS; layer++) {
        const draw_look *look = draw_layer_look((draw_layer)layer);
        put_layer(d, out, FIRST_LAYER + layer, look->word, look);
    }
    put(out, "0 ENDTAB");
}

static const char *face_file(const dxf *d)
{
    const char *path = draw_letters_path(d->letters, 0), *slash = strrchr(path, '/');
    return strchr(path, ';') != NULL ? "" : slash != NULL ? slash + 1 : path;
}

static void put_tables(const dxf *d, text *out)
{
    put(out, "0 SECTION;2 TABLES");
    put_view(d, out);
    put_dashes(out);
    put_layers(d, out);
    put(out,
        "0 TABLE;2 STYLE;5 4;330 0;100 AcDbSymbolTable;70 1;0 STYLE;5 2A;330 4;"
        "100 AcDbSymbolTableRecord;100 AcDbTextStyleTableRecord;2 Standard;70 0;40 0;41 1;"
        "50 0;71 0;42 2.5;3 %s;4 ;0 ENDTAB",
        face_file(d));
    put(out, "0 TABLE;2 VIEW;5 5;330 0;100 AcDbSymbolTable;70 0;0 ENDTAB;"
             "0 TABLE;2 UCS;5 6;330 0;100 AcDbSymbolTable;70 0;0 ENDTAB;"
             "0 TABLE;2 APPID;5 7;330 0;100 AcDbSymbolTable;70 1;0 APPID;5 2B;330 7;"
             "100 AcDbSymbolTableRecord;100 AcDbRegAppTableRecord;2 ACAD;70 0;0 ENDTAB");
    put(out, "0 TABLE;2 DIMSTYLE;5 8;330 0;100 AcDbSymbolTable;70 1;100 AcDbDimStyleTable;"
             "0 DIMSTYLE;105 2C;330 8;100 AcDbSymbolTableRecord;100 AcDbDimStyleTableRecord;"
             "2 Standard;70 0;0 ENDTAB");
    put(out, "0 TABLE;2 BLOCK_RECORD;5 9;330 0;100 AcDbSymbolTable;70 2;"
             "0 BLOCK_RECORD;5 17;330 9;100 AcDbSymbolTableRecord;100 AcDbBlockTableRecord;"
             "2 *Model_Space;340 1A;70 4;280 1;281 0;"
             "0 BLOCK_RECORD;5 1B;330 9;100 AcDbSymbolTableRecord;100 AcDbBlockTableRecord;"
             "2 *Paper_Space;340 1E;70 0;280 1;281 0;0 ENDTAB;0 ENDSEC");
}

static void put_block(text *out, const char *name, unsigned record, unsigned begin)
{
    put(out,
        "0 BLOCK;5 %X;330 %X;100 AcDbEntity;8 0;100 AcDbBlockBegin;2 %s;70 0;10 0;20 0;30 0;"
        "3 %s;1 ;0 ENDBLK;5 %X;330 %X;100 AcDbEntity;8 0;100 AcDbBlockEnd",
        begin, record, name, name, begin + 1, record);
}

static void put_layout(const dxf *d, text *out, const char *name, int tab)
{
    put(out,
        "0 LAYOUT;5 %X;330 D;100 AcDbPlotSettings;1 ;2 ;4 ;6 ;40 0;41 0;42 0;43 0;44 %s;45 %s;"
        "46 0;47 0;48 0;49 0;140 0;141 0;142 1;143 1;70 %d;72 1;73 0;74 5;7 ;75 16;147 1;"
        "148 0;149 0",
        tab == 0 ? 0x1AU : 0x1EU, mm(draw_box_width(d->paper)).text,
        mm(draw_box_height(d->paper)).text, tab == 0 ? 1024 : 0);
    put(out,
        "100 AcDbLayout;1 %s;70 1;71 %d;10 0;20 0;11 %s;21 %s;12 0;22 0;32 0;14 %s;24 %s;34 0;"
        "15 %s;25 %s;35 0;146 0;13 0;23 0;33 0;16 1;26 0;36 0;17 0;27 1;37 0;76 0;330 %X",
        name, tab, mm(draw_box_width(d->paper)).text, mm(draw_box_height(d->paper)).text,
        mm(d->paper.left).text, mm(d->paper.bottom).text, mm(d->paper.right).text,
        mm(d->paper.top).text, tab == 0 ? 0x17U : 0x1BU);
}

static void put_objects(const dxf *d, text *out)
{
    put(out, "0 SECTION;2 OBJECTS;0 DICTIONARY;5 A;330 0;100 AcDbDictionary;281 1;"
             "3 ACAD_GROUP;350 C;3 ACAD_LAYOUT;350 D;3 ACAD_PLOTSTYLENAME;350 12;"
             "0 DICTIONARY;5 C;330 A;100 AcDbDictionary;281 1;"
             "0 DICTIONARY;5 D;330 A;100 AcDbDictionary;281 1;3 Model;350 1A;3 Layout1;350 1E;"
             "0 ACDBDICTIONARYWDFLT;5 12;330 A;100 AcDbDictionary;281 1;3 Normal;350 13;"
             "100 AcDbDictionaryWithDefault;340 13;0 ACDBPLACEHOLDER;5 13;330 12");
    put_layout(d, out, "Model", 0);
    put_layout(d, out, "Layout1", 1);
    put(out, "0 ENDSEC;0 EOF");
}

static sil_status dxf_close(void *self, char **bytes, size_t *size)
{
    dxf *d = self;
    text out = {0};
    put_header(d, &out);
    put_tables(d, &out);
    put(&out, "0 SECTION;2 BLOCKS");
    put_block(&out, "*Model_Space", MODEL_SPACE, 0x18);
    put_block(&out, "*Paper_Space", 0x1B, 0x1C);
    put(&out, "0 ENDSEC;0 SECTION;2 ENTITIES");
    text_put_bytes(&out, text_read(&d->entities), d->entities.length);
    out.failed = out.failed || d->entities.failed;
    text_free(&d->entities);
    put(&out, "0 ENDSEC");
    put_objects(d, &out);
    free(d);
    return write_take(&out, bytes, size);
}

const write_format write_dxf = {dxf_open, dxf_paper, dxf_path, dxf_outline,
                                dxf_arc,  dxf_text,  dxf_close};
