/* SPDX-License-Identifier: MIT */
/* The page's own files, within the program: nothing to lose, nothing to load from elsewhere. */
#include <string.h>

#include "reply.h"

/* The bytes of a file of src/page/assets, put here by the assembler. */
#define EMBED(name, file)                                                                          \
    __asm__(".section .rodata\n"                                                                   \
            ".global page_asset_" #name "\n"                                                       \
            ".global page_asset_" #name "_end\n"                                                   \
            "page_asset_" #name ":\n"                                                              \
            ".incbin \"src/page/assets/" file "\"\n"                                               \
            "page_asset_" #name "_end:\n"                                                          \
            ".previous\n");                                                                        \
    extern const char page_asset_##name[], page_asset_##name##_end[]

EMBED(index, "index.html");
EMBED(style, "style.css");
EMBED(icon, "icon.svg");
EMBED(main, "main.js");
EMBED(sheet, "sheet.js");
EMBED(fields, "fields.js");
EMBED(form, "form.js");
EMBED(figure, "figure.js");
EMBED(plan, "plan.js");
EMBED(folder, "folder.js");
EMBED(taps, "taps.js");
EMBED(dom, "dom.js");

typedef struct asset {
    const char *path, *type, *start, *end;
} asset;

#define HTML "text/html; charset=utf-8"
#define SCRIPT "text/javascript; charset=utf-8"

static const asset assets[] = {
    {"/", HTML, page_asset_index, page_asset_index_end},
    {"/style.css", "text/css; charset=utf-8", page_asset_style, page_asset_style_end},
    {"/icon.svg", "image/svg+xml", page_asset_icon, page_asset_icon_end},
    {"/main.js", SCRIPT, page_asset_main, page_asset_main_end},
    {"/sheet.js", SCRIPT, page_asset_sheet, page_asset_sheet_end},
    {"/fields.js", SCRIPT, page_asset_fields, page_asset_fields_end},
    {"/form.js", SCRIPT, page_asset_form, page_asset_form_end},
    {"/figure.js", SCRIPT, page_asset_figure, page_asset_figure_end},
    {"/plan.js", SCRIPT, page_asset_plan, page_asset_plan_end},
    {"/folder.js", SCRIPT, page_asset_folder, page_asset_folder_end},
    {"/taps.js", SCRIPT, page_asset_taps, page_asset_taps_end},
    {"/dom.js", SCRIPT, page_asset_dom, page_asset_dom_end},
};

bool page_asset(const char *path, page_reply *reply)
{
    for (size_t i = 0; i < sizeof assets / sizeof *assets; i++) {
        if (strcmp(path, assets[i].path) == 0) {
            reply->status = 200;
            reply->type = assets[i].type;
            reply->bytes = assets[i].start;
            reply->size = (size_t)(assets[i].end - assets[i].start);
            page_tag(reply->bytes, reply->size, reply->tag);
            return true;
        }
    }
    return false;
}
