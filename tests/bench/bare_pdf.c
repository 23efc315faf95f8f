/* SPDX-License-Identifier: MIT */
/* The yardstick for drawing: libharu alone, embedding a face and putting as many marks on as many
 * pages as it is told. Nothing is read, planned, measured or laid out.
 *
 *   bare_pdf OUT FACE PAGES PATHS LINES CURVES TEXTS LETTERS     (all counts over all pages)
 */
#include <hpdf.h>
#include <stdio.h>
#include <stdlib.h>

static const char words[] =
    "Sand off the base of the saddle, straight from end to end: 1.11 mm (first), 0.45 at string 6; "
    "Queue JKXYZ 237890 % + / PVBTGHMLWERUIO File to feelers; Never force a truss rod. DCNAF 2:1 ";

static void stop(HPDF_STATUS error, HPDF_STATUS detail, void *with)
{
    (void)with;
    fprintf(stderr, "libharu: error %04lx, detail %lu\n", error, detail);
    exit(1);
}

/* A figure like those of a drawing: many digits, never the same twice running. */
static HPDF_REAL figure(void)
{
    static unsigned long state = 1;
    state = state * 6364136223846793005UL + 1442695040888963407UL;
    return (HPDF_REAL)((double)(state >> 40) / (1 << 24) * 560.0);
}

static void put_paths(HPDF_Page page, long paths, long lines, long curves)
{
    for (long i = 0; i < paths; i++) {
        long curve = (i + 1) * curves / paths - i * curves / paths;
        long line = (i + 1) * lines / paths - i * lines / paths;
        HPDF_REAL x = figure();
        HPDF_Page_MoveTo(page, x, figure());
        for (; line > 0; line--) { /* most lines of a drawing run up or across */
            HPDF_Page_LineTo(page, x, figure());
        }
        for (; curve > 0; curve--) {
            HPDF_Page_CurveTo(page, figure(), figure(), figure(), figure(), figure(), figure());
        }
        HPDF_Page_Stroke(page);
    }
}

static void put_texts(HPDF_Page page, HPDF_Font font, long texts, long letters)
{
    char text[1024];
    size_t at = 0;
    for (long i = 0; i < texts; i++) {
        long length = (i + 1) * letters / texts - i * letters / texts;
        for (long k = 0; k < length; k++) {
            text[k] = words[at];
            at = (at + 1) % (sizeof words - 1);
        }
        text[length] = '\0';
        HPDF_Page_BeginText(page);
        HPDF_Page_SetTextMatrix(page, 1, 0, 0, 1, figure(), figure());
        HPDF_Page_SetFontAndSize(page, font, 9.6F);
        HPDF_Page_ShowText(page, text);
        HPDF_Page_EndText(page);
    }
}

int main(int argc, char **argv)
{
    if (argc != 9) {
        fputs("bare_pdf OUT FACE PAGES PATHS LINES CURVES TEXTS LETTERS\n", stderr);
        return 2;
    }
    long count[6];
    for (int i = 0; i < 6; i++) {
        count[i] = strtol(argv[i + 3], NULL, 10);
    }
    long pages = count[0];
    HPDF_Doc doc = HPDF_New(stop, NULL);
    HPDF_SetCompressionMode(doc, HPDF_COMP_ALL);
    HPDF_Font font = HPDF_GetFont(doc, HPDF_LoadTTFontFromFile(doc, argv[2], HPDF_TRUE), "CP1252");
    for (long i = 0; i < pages; i++) {
        HPDF_Page page = HPDF_AddPage(doc);
        HPDF_Page_SetLineWidth(page, 0.7F);
        put_paths(page, count[1] / pages, count[2] / pages, count[3] / pages);
        put_texts(page, font, count[4] / pages, count[5] / pages);
    }
    HPDF_SaveToFile(doc, argv[1]);
    HPDF_Free(doc);
    return 0;
}
