/* SPDX-License-Identifier: MIT */
/* PDF, made with libharu.
 *
 * A character is written in a one-byte encoding if there is one for it. The file is then a tenth as
 * large and takes a twentieth of the time that libharu's Unicode fonts need, which are used for all
 * other characters. The document is first saved to memory, because libharu does not report a full
 * disk.
 */
#include <hpdf.h>
#include <sillet/drawing.h>
#include <stdlib.h>
#include <string.h>

#include "../../text/text.h"
#include "lent.h"
#include "writer.h"

static const double point = 72 / 25.4; /* PDF points in a millimetre */

enum { FACES = 2, TABLES = 4, ENCODINGS = TABLES + 1, UNICODE = TABLES, RUN_SIZE = 512 };

static const char *const encodings[ENCODINGS] = {"CP1252", "ISO8859-2", "ISO8859-5", "ISO8859-7",
                                                 "UTF-8"};

typedef struct pdf {
    HPDF_Doc doc;
    HPDF_Page page;
    write_lender lender;
    draw_letters *letters;
    const write_file_about *about;
    const char *name[FACES];
    HPDF_Font font[FACES][ENCODINGS];
    HPDF_UNICODE table[TABLES][256]; /* the character of each byte; 0 for none */
    bool table_read[TABLES], unicode_ready;
    int layer; /* the layer whose pen is set on the paper, or -1 */
    bool bold;
} pdf;

/* What a piece of work needs; each uses only its own part. */
typedef struct task {
    pdf *p;
    draw_box paper;
    const draw_shape *shape;
    const draw_point *points;
    const char *words;
    char *bytes;
    HPDF_UINT32 size;
} task;

/* Once libharu has failed, it must not be called again. */
static void end_work(HPDF_STATUS error, HPDF_STATUS detail, void *self)
{
    pdf *p = self;
    (void)detail;
    write_lender_end_work(&p->lender, error == HPDF_FAILD_TO_ALLOC_MEM ? SIL_NO_MEMORY : SIL_FAULT);
}

static void set_info(pdf *p, HPDF_InfoType type, const char *words)
{
    if (words != NULL) {
        HPDF_SetInfoAttr(p->doc, type, words);
    }
}

static void use_unicode(pdf *p)
{
    if (!p->unicode_ready) {
        HPDF_UseUTFEncodings(p->doc);
    }
    p->unicode_ready = true;
}

static void begin_document(void *with)
{
    const task *t = with;
    pdf *p = t->p;
    const write_file_about *about = p->about;
    p->doc = HPDF_NewEx(end_work, write_lend, write_give_back, 0, p);
    use_unicode(p);
    HPDF_SetCompressionMode(p->doc, HPDF_COMP_ALL);
    HPDF_SetViewerPreference(p->doc, HPDF_PRINT_SCALING_NONE);
    HPDF_SetCurrentEncoder(p->doc, "UTF-8"); /* of the document's information, not of its texts */
    set_info(p, HPDF_INFO_TITLE, about->title);
    set_info(p, HPDF_INFO_AUTHOR, about->author);
    set_info(p, HPDF_INFO_SUBJECT, about->subject);
    set_info(p, HPDF_INFO_CREATOR, "sillet");
    if (about->year > 0) {
        HPDF_Date date = {about->year, about->month, about->day, 0, 0, 0, 'Z', 0, 0};
        HPDF_SetInfoDateAttr(p->doc, HPDF_INFO_CREATION_DATE, date);
    }
}

static void begin_paper(void *with)
{
    const task *t = with;
    pdf *p = t->p;
    p->page = HPDF_AddPage(p->doc);
    p->layer = -1;
    p->bold = false;
    draw_box paper = t->paper;
    HPDF_Page_SetWidth(p->page, (HPDF_REAL)(draw_box_width(paper) * point));
    HPDF_Page_SetHeight(p->page, (HPDF_REAL)(draw_box_height(paper) * point));
    if (paper.left != 0 || paper.bottom != 0) { /* in libharu, a paper begins at 0, 0 */
        HPDF_Page_Concat(p->page, 1, 0, 0, 1, (HPDF_REAL)(-paper.left * point),
                         (HPDF_REAL)(-paper.bottom * point));
    }
}

/* libharu only accepts dashes in whole points. */
static void set_dash(pdf *p, const double *dash)
{
    HPDF_UINT16 points[4];
    HPDF_UINT count = 0;
    for (; count < 4 && dash[count] > 0; count++) {
        double whole = dash[count] * point + 0.5;
        points[count] = whole < 1 ? 1 : (HPDF_UINT16)whole;
    }
    HPDF_Page_SetDash(p->page, count > 0 ? points : NULL, count, 0);
}

/* Words of warning are stroked as well as filled, which makes them bold. */
static void set_weight(pdf *p, bool bold)
{
    if (bold != p->bold) {
        HPDF_Page_SetTextRenderingMode(p->page, bold ? HPDF_FILL_THEN_STROKE : HPDF_FILL);
    }
    p->bold = bold;
}

static void set_pen(pdf *p, draw_layer layer)
{
    if (p->layer == (int)layer) {
        return;
    }
    const draw_look *look = draw_layer_look(layer);
    HPDF_REAL r = (HPDF_REAL)look->red, g = (HPDF_REAL)look->green, b = (HPDF_REAL)look->blue;
    HPDF_Page_SetLineWidth(p->page, (HPDF_REAL)(write_pen_width(p->about, look) * point));
    HPDF_Page_SetRGBStroke(p->page, r, g, b);
    HPDF_Page_SetRGBFill(p->page, r, g, b);
    set_dash(p, look->dash);
    set_weight(p, layer == DRAW_WARNING);
    if (p->layer < 0) {
        HPDF_Page_SetLineJoin(p->page, HPDF_ROUND_JOIN);
    }
    p->layer = (int)layer;
}

static void put_path(void *with)
{
    const task *t = with;
    pdf *p = t->p;
    const draw_shape *shape = t->shape;
    const draw_point *points = t->points;
    set_pen(p, shape->layer);
    for (int i = 0; i < shape->count; i++) {
        HPDF_REAL x = (HPDF_REAL)(points[i].x * point), y = (HPDF_REAL)(points[i].y * point);
        if (i == 0) {
            HPDF_Page_MoveTo(p->page, x, y);
        } else {
            HPDF_Page_LineTo(p->page, x, y);
        }
    }
    if (shape->filled) {
        HPDF_Page_Fill(p->page);
    } else if (shape->closed) {
        HPDF_Page_ClosePathStroke(p->page);
    } else {
        HPDF_Page_Stroke(p->page);
    }
}

static void put_arc(void *with)
{
    const task *t = with;
    pdf *p = t->p;
    const draw_shape *shape = t->shape;
    double from = shape->from, to = shape->to;
    HPDF_REAL x = (HPDF_REAL)(shape->at.x * point), y = (HPDF_REAL)(shape->at.y * point);
    HPDF_REAL r = (HPDF_REAL)(shape->size * point);
    set_pen(p, shape->layer);
    if (to - from >= 360) {
        HPDF_Page_Circle(p->page, x, y, r);
    } else { /* libharu measures angles from the top, clockwise */
        HPDF_Page_Arc(p->page, x, y, r, (HPDF_REAL)(90 - to), (HPDF_REAL)(90 - from));
    }
    HPDF_Page_Stroke(p->page);
}

/* The byte for a character in an encoding, 0 for none. */
static int byte_for(pdf *p, int encoding, uint32_t code)
{
    HPDF_UNICODE *table = p->table[encoding];
    if (code < 0x80) {
        return (int)code;
    }
    if (!p->table_read[encoding]) {
        HPDF_Encoder encoder = HPDF_GetEncoder(p->doc, encodings[encoding]);
        for (int byte = 0x80; encoder != NULL && byte < 0x100; byte++) {
            table[byte] = HPDF_Encoder_GetUnicode(encoder, (HPDF_UINT16)byte);
        }
        p->table_read[encoding] = true;
    }
    for (int byte = 0x80; byte < 0x100; byte++) {
        if (table[byte] == code) {
            return byte;
        }
    }
    return 0;
}

/* A one-byte encoding identifies a glyph by its name. Three Greek letters share their names with
 * the signs of increment, ohm and micro (Adobe Glyph List), and a reader then shows the sign. */
static bool shares_its_name(uint32_t code)
{
    return code == 0x394 || code == 0x3A9 || code == 0x3BC;
}

static int encoding_for(pdf *p, uint32_t code)
{
    if (shares_its_name(code)) {
        return UNICODE;
    }
    for (int encoding = 0; encoding < TABLES; encoding++) {
        if (byte_for(p, encoding, code) != 0) {
            return encoding;
        }
    }
    return UNICODE;
}

static HPDF_Font font_for(pdf *p, int face, int encoding)
{
    HPDF_Font *font = &p->font[face][encoding];
    if (p->name[face] == NULL) {
        p->name[face] =
            HPDF_LoadTTFontFromFile(p->doc, draw_letters_path(p->letters, face), HPDF_TRUE);
    }
    if (*font == NULL && p->name[face] != NULL) {
        *font = HPDF_GetFont(p->doc, p->name[face], encodings[encoding]);
    }
    return *font;
}

/* A run of text in one face and one encoding, and where it starts along its line. */
typedef struct run {
    int face, encoding, length;
    char bytes[RUN_SIZE];
} run;

static void show_run(pdf *p, run *r, double height)
{
    if (r->length == 0) {
        return;
    }
    HPDF_Font font = font_for(p, r->face, r->encoding);
    double size = height / draw_letters_scale(p->letters, r->face) * point;
    r->bytes[r->length] = '\0';
    HPDF_Page_SetFontAndSize(p->page, font, (HPDF_REAL)size);
    HPDF_Page_ShowText(p->page, r->bytes);
    r->length = 0;
}

static void set_matrix(pdf *p, draw_point start, double along, double direction)
{
    bool up = direction == 90;
    double x = (start.x + (up ? 0 : along)) * point, y = (start.y + (up ? along : 0)) * point;
    HPDF_REAL c = up ? 0 : 1, s = up ? 1 : 0;
    HPDF_Page_SetTextMatrix(p->page, c, s, -s, c, (HPDF_REAL)x, (HPDF_REAL)y);
}

/* Where the first letter starts on the base line. */
static draw_point start_of(const draw_shape *words)
{
    double back = words->anchor == DRAW_LEFT     ? 0
                  : words->anchor == DRAW_MIDDLE ? words->advance / 2
                                                 : words->advance;
    return words->from == 90 ? (draw_point){words->at.x, words->at.y - back}
                             : (draw_point){words->at.x - back, words->at.y};
}

static void put_text(void *with)
{
    const task *t = with;
    pdf *p = t->p;
    const draw_shape *shape = t->shape;
    const char *words = t->words;
    run r = {0};
    draw_point start = start_of(shape);
    double along = 0, height = shape->size, direction = shape->from;
    set_pen(p, shape->layer);
    HPDF_Page_BeginText(p->page);
    for (uint32_t code; (code = text_next(&words)) != 0;) {
        int face = draw_letters_face(p->letters, code);
        int encoding = encoding_for(p, code);
        bool goes_on = r.length > 0 && face == r.face && r.length + 5 < RUN_SIZE &&
                       (encoding == r.encoding ||
                        (r.encoding != UNICODE && byte_for(p, r.encoding, code) != 0));
        if (!goes_on) {
            show_run(p, &r, height);
            r.face = face;
            r.encoding = encoding;
            set_matrix(p, start, along, direction);
        }
        if (r.encoding == UNICODE) {
            r.length += text_letter(code, r.bytes + r.length);
        } else {
            r.bytes[r.length++] = (char)byte_for(p, r.encoding, code);
        }
        along += draw_letters_advance(p->letters, code, height);
    }
    show_run(p, &r, height);
    HPDF_Page_EndText(p->page);
}

/* Copies the whole document into a block of memory, if there is enough. */
static void save_document(void *with)
{
    task *t = with;
    HPDF_SaveToStream(t->p->doc);
    t->size = HPDF_GetStreamSize(t->p->doc);
    t->bytes = malloc(t->size); /* the caller of the writer frees it */
    if (t->bytes == NULL) {
        write_lender_end_work(&t->p->lender, SIL_NO_MEMORY);
    }
    HPDF_UINT32 read = t->size;
    HPDF_ReadFromStream(t->p->doc, (HPDF_BYTE *)t->bytes, &read);
    if (read != t->size) {
        write_lender_end_work(&t->p->lender, SIL_FAULT);
    }
}

/* --- the writer ------------------------------------------------------------------------------- */

static void *pdf_open(draw_letters *letters, const write_file_about *about)
{
    pdf *p = calloc(1, sizeof *p);
    if (p == NULL) {
        return NULL;
    }
    p->letters = letters;
    p->about = about;
    write_lender_begin(&p->lender);
    write_lender_work(&p->lender, begin_document, &(task){.p = p});
    return p;
}

static void pdf_paper(void *self, draw_box paper)
{
    pdf *p = self;
    write_lender_work(&p->lender, begin_paper, &(task){.p = p, .paper = paper});
}

static void pdf_path(void *self, const draw_shape *shape, const draw_point *points)
{
    pdf *p = self;
    write_lender_work(&p->lender, put_path, &(task){.p = p, .shape = shape, .points = points});
}

static void pdf_arc(void *self, const draw_shape *shape)
{
    pdf *p = self;
    write_lender_work(&p->lender, put_arc, &(task){.p = p, .shape = shape});
}

static void pdf_text(void *self, const draw_shape *shape, const char *words)
{
    pdf *p = self;
    write_lender_work(&p->lender, put_text, &(task){.p = p, .shape = shape, .words = words});
}

static sil_status pdf_close(void *self, char **bytes, size_t *size)
{
    pdf *p = self;
    task t = {.p = p};
    if (write_lender_work(&p->lender, save_document, &t)) {
        *bytes = t.bytes;
        *size = t.size;
        HPDF_Free(p->doc); /* also closes the font files; not safe with a broken document */
    } else {
        free(t.bytes);
    }
    sil_status error = p->lender.error;
    write_lender_take_back(&p->lender);
    free(p);
    return error;
}

const write_format write_pdf = {pdf_open, pdf_paper, pdf_path, NULL, pdf_arc, pdf_text, pdf_close};
