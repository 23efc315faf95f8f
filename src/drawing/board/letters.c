/* SPDX-License-Identifier: MIT */
#include "letters.h"

#include <sillet/drawing.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_SFNT_NAMES_H
#include FT_TRUETYPE_TABLES_H
#include FT_TRUETYPE_TAGS_H

#include "../../text/text.h"

enum { FACES = 2, REMEMBERED = 256, MISSING_MAX = 16, PATH_SIZE = 1024 };

/* The font files to look for in a font folder, the preferred one first. */
static const char *const lettering[] = {"truetype/osifont/osifont.ttf", "osifont/osifont.ttf",
                                        "osifont.ttf", NULL};
static const char *const stand_in[] = {"truetype/dejavu/DejaVuSans.ttf", "dejavu/DejaVuSans.ttf",
                                       "DejaVuSans.ttf", NULL};

typedef struct glyph {
    bool known;
    FT_UInt index;
    long advance, left, bottom, right, top; /* font units */
} glyph;

typedef struct font {
    char path[PATH_SIZE];
    FT_Face ft;
    double cap; /* capital height, font units */
    glyph seen[REMEMBERED];
} font;

struct draw_letters {
    FT_Library ft;
    font faces[FACES];
    bool looked;              /* the second face has been looked for */
    bool no_memory;           /* FreeType ran out of memory: ignore its results from then on */
    bool refused, substitute; /* $SILLET_FACE cannot be used; the lettering is a substitute */
    uint32_t missing[MISSING_MAX];
    int missing_count; /* may exceed MISSING_MAX: the rest was not kept */
};

/* Whether a call of FreeType succeeded. If it failed for want of memory, that is remembered. */
static bool done(draw_letters *letters, FT_Error error)
{
    letters->no_memory = letters->no_memory || error == FT_Err_Out_Of_Memory;
    return error == 0;
}

/* Without enough memory to read a face's names, FreeType still opens the face and reports no
 * error. The Microsoft platform (3) has the family under name 1, and a table that is really
 * without names is 6 bytes long. */
static bool lost_its_family(FT_Face ft)
{
    FT_ULong size = 0;
    FT_SfntName name;
    FT_UInt count = FT_Get_Sfnt_Name_Count(ft);
    bool named = count == 0 && FT_Load_Sfnt_Table(ft, TTAG_name, 0, NULL, &size) == 0 && size > 6;
    for (FT_UInt i = 0; i < count; i++) {
        named = named ||
                (FT_Get_Sfnt_Name(ft, i, &name) == 0 && name.platform_id == 3 && name.name_id == 1);
    }
    return named && ft->family_name == NULL;
}

/* A face can be used if it has capitals and TrueType outlines, the only ones that can be
 * embedded. */
static bool open_face(draw_letters *letters, font *face, const char *path)
{
    if (strlen(path) >= PATH_SIZE || !done(letters, FT_New_Face(letters->ft, path, 0, &face->ft))) {
        face->ft = NULL;
        return false;
    }
    letters->no_memory = letters->no_memory || lost_its_family(face->ft);
    FT_ULong outlines = 0;
    bool fit = done(letters, FT_Load_Sfnt_Table(face->ft, TTAG_glyf, 0, NULL, &outlines)) &&
               done(letters, FT_Select_Charmap(face->ft, FT_ENCODING_UNICODE)) &&
               done(letters, FT_Load_Char(face->ft, 'H', FT_LOAD_NO_SCALE));
    face->cap = fit ? (double)face->ft->glyph->metrics.horiBearingY : 0;
    if (face->cap <= 0) {
        FT_Done_Face(face->ft);
        face->ft = NULL;
        return false;
    }
    memcpy(face->path, path, strlen(path) + 1);
    return true;
}

static bool open_from(draw_letters *letters, font *face, const char *folder, size_t length,
                      const char *under, const char *const *names)
{
    char path[PATH_SIZE];
    for (; *names != NULL; names++) {
        int size = snprintf(path, sizeof path, "%.*s%s/%s", (int)length, folder, under, *names);
        if (size > 0 && (size_t)size < sizeof path && open_face(letters, face, path)) {
            return true;
        }
    }
    return false;
}

/* The user's own fonts come first, then the system's, in the order of the XDG base directories. */
static bool find_face(draw_letters *letters, font *face, const char *const *names)
{
    const char *home = getenv("HOME"), *own = getenv("XDG_DATA_HOME"),
               *all = getenv("XDG_DATA_DIRS");
    if (own != NULL && *own != '\0' &&
        open_from(letters, face, own, strlen(own), "/fonts", names)) {
        return true;
    }
    if (home != NULL && *home != '\0' &&
        (open_from(letters, face, home, strlen(home), "/.local/share/fonts", names) ||
         open_from(letters, face, home, strlen(home), "/.fonts", names))) {
        return true;
    }
    if (all == NULL || *all == '\0') {
        all = "/usr/local/share:/usr/share";
    }
    while (*all != '\0') {
        size_t length = strcspn(all, ":");
        if (length > 0 && open_from(letters, face, all, length, "/fonts", names)) {
            return true;
        }
        all += length + (all[length] == ':');
    }
    return false;
}

static font *stand_in_face(draw_letters *letters)
{
    font *face = &letters->faces[1];
    if (!letters->looked) {
        find_face(letters, face, stand_in);
    }
    letters->looked = true;
    return face->ft != NULL ? face : NULL;
}

draw_letters *draw_letters_open(void)
{
    draw_letters *letters = calloc(1, sizeof *letters);
    if (letters == NULL || !done(letters, FT_Init_FreeType(&letters->ft))) {
        free(letters);
        return NULL;
    }
    const char *wanted = getenv("SILLET_FACE");
    bool asked = wanted != NULL && *wanted != '\0';
    if (asked && open_face(letters, &letters->faces[0], wanted)) {
        return letters;
    }
    letters->refused = asked;
    if (find_face(letters, &letters->faces[0], lettering)) {
        return letters;
    }
    letters->substitute = true;
    letters->looked = true;
    find_face(letters, &letters->faces[0], stand_in);
    return letters;
}

sil_status draw_letters_fault(const draw_letters *letters)
{
    return letters == NULL || letters->no_memory ? SIL_NO_MEMORY
           : letters->faces[0].ft == NULL        ? SIL_NO_FACE
                                                 : SIL_DONE;
}

void draw_letters_close(draw_letters *letters)
{
    if (letters == NULL) {
        return;
    }
    FT_Done_FreeType(letters->ft); /* this frees its faces too */
    free(letters);
}

const char *draw_letters_path(const draw_letters *letters, int face)
{
    return letters->faces[face].ft != NULL ? letters->faces[face].path : NULL;
}

const char *draw_letters_name(const draw_letters *letters, int face)
{
    FT_Face ft = letters->faces[face].ft;
    return ft != NULL && ft->family_name != NULL ? ft->family_name : "";
}

double draw_letters_scale(const draw_letters *letters, int face)
{
    return letters->faces[face].cap / letters->faces[face].ft->units_per_EM;
}

static glyph load(draw_letters *letters, font *face, uint32_t code)
{
    glyph g = {.known = true, .index = FT_Get_Char_Index(face->ft, code)};
    if (g.index != 0 && done(letters, FT_Load_Glyph(face->ft, g.index, FT_LOAD_NO_SCALE))) {
        const FT_Glyph_Metrics *m = &face->ft->glyph->metrics;
        g.advance = m->horiAdvance;
        g.left = m->horiBearingX;
        g.right = m->horiBearingX + m->width;
        g.top = m->horiBearingY;
        g.bottom = m->horiBearingY - m->height;
    }
    return g;
}

static glyph look(draw_letters *letters, font *face, uint32_t code)
{
    if (code >= REMEMBERED) {
        return load(letters, face, code);
    }
    if (!face->seen[code].known) {
        face->seen[code] = load(letters, face, code);
    }
    return face->seen[code];
}

int draw_letters_face(draw_letters *letters, uint32_t code)
{
    if (code > 0xFFFF) { /* the PDF writer cannot write text beyond the basic plane */
        return -1;
    }
    if (look(letters, &letters->faces[0], code).index != 0) {
        return 0;
    }
    font *second = stand_in_face(letters);
    return second != NULL && look(letters, second, code).index != 0 ? 1 : -1;
}

/* Spells out a character that no face has. Returned: the length. */
static int spell_out(uint32_t code, char *out, size_t size)
{
    return snprintf(out, size, "U+%04X", (unsigned)code);
}

double draw_letters_advance(draw_letters *letters, uint32_t code, double height)
{
    int which = draw_letters_face(letters, code);
    if (which < 0) {
        char spelled[16];
        spell_out(code, spelled, sizeof spelled);
        return draw_letters_ink(letters, spelled, height).advance;
    }
    font *face = &letters->faces[which];
    return (double)look(letters, face, code).advance * height / face->cap;
}

draw_ink draw_letters_ink(draw_letters *letters, const char *words, double height)
{
    draw_ink ink = {0};
    bool any = false;
    for (uint32_t code; (code = text_next(&words)) != 0;) {
        int which = draw_letters_face(letters, code);
        font *face = &letters->faces[which < 0 ? 0 : which];
        glyph g = look(letters, face, code);
        double unit = height / face->cap;
        if (g.right > g.left && g.top > g.bottom) {
            double left = ink.advance + (double)g.left * unit;
            double right = ink.advance + (double)g.right * unit;
            double bottom = (double)g.bottom * unit, top = (double)g.top * unit;
            ink.left = any && ink.left < left ? ink.left : left;
            ink.right = any && ink.right > right ? ink.right : right;
            ink.bottom = any && ink.bottom < bottom ? ink.bottom : bottom;
            ink.top = any && ink.top > top ? ink.top : top;
            any = true;
        }
        ink.advance += (double)g.advance * unit;
    }
    return ink;
}

static void remember_missing(draw_letters *letters, uint32_t code)
{
    int kept = letters->missing_count < MISSING_MAX ? letters->missing_count : MISSING_MAX;
    for (int i = 0; i < kept; i++) {
        if (letters->missing[i] == code) {
            return;
        }
    }
    if (letters->missing_count < MISSING_MAX) {
        letters->missing[letters->missing_count] = code;
    }
    letters->missing_count++;
}

size_t draw_letters_spell(draw_letters *letters, const char *words, char *out, size_t size)
{
    size_t length = 0;
    bool room = size > 0;
    for (uint32_t code; (code = text_next(&words)) != 0;) {
        char one[16];
        int n;
        if (code < 0x20 || (code >= 0x7F && code < 0xA0)) {
            code = ' ';
        }
        if (draw_letters_face(letters, code) >= 0) {
            n = text_letter(code, one);
        } else {
            n = spell_out(code, one, sizeof one);
            remember_missing(letters, code);
        }
        room = room && length + (size_t)n < size;
        if (room) {
            memcpy(out + length, one, (size_t)n);
        }
        length += (size_t)n;
        if (room) {
            out[length] = '\0';
        }
    }
    if (length == 0 && size > 0) {
        out[0] = '\0';
    }
    return length;
}

int draw_letters_warnings(const draw_letters *letters)
{
    return letters->refused + letters->substitute + (letters->missing_count > 0);
}

static void tell_missing(const draw_letters *letters, text *words)
{
    int kept = letters->missing_count < MISSING_MAX ? letters->missing_count : MISSING_MAX;
    text_put(words, "no face at hand has ");
    for (int i = 0; i < kept; i++) {
        text_add(words, "%sU+%04X", i > 0 ? ", " : "", (unsigned)letters->missing[i]);
    }
    text_put(words, letters->missing_count > MISSING_MAX ? " and others" : "");
    text_put(words, "; printed by number");
}

void draw_letters_warning(const draw_letters *letters, int index, char *out, size_t size)
{
    text words = {0};
    if (letters->refused && index == 0) {
        text_add(&words, "SILLET_FACE names no TrueType face that can be read; set in %s",
                 letters->faces[0].path);
    } else if (letters->substitute && index == letters->refused) {
        text_add(&words, "no ISO 3098 face found (osifont); set in %s", letters->faces[0].path);
    } else {
        tell_missing(letters, &words);
    }
    size_t length = size > 0 ? text_prefix(text_read(&words), size - 1) : 0;
    if (size > 0) {
        memcpy(out, text_read(&words), length);
        out[length] = '\0';
    }
    text_free(&words);
}
