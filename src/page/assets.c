/* SPDX-License-Identifier: MIT */
/* The page's own files are inside the program, so none can be missing and none is loaded from
 * elsewhere. */
#include <string.h>

#include "reply.h"

/* The bytes of a file of src/page/assets, put here by the assembler. */
#define EMBED(name, file)                                                                          \
    __asm__(".section .rodata\n"                                                                   \
            ".global web_asset_" #name "\n"                                                        \
            ".global web_asset_" #name "_end\n"                                                    \
            "web_asset_" #name ":\n"                                                               \
            ".incbin \"src/page/assets/" file "\"\n"                                               \
            "web_asset_" #name "_end:\n"                                                           \
            ".previous\n");                                                                        \
    extern const char web_asset_##name[], web_asset_##name##_end[]

EMBED(index, "index.html");
EMBED(style, "style.css");
EMBED(icon, "icon.svg");
EMBED(main, "main.js");
EMBED(answers, "answers.js");
EMBED(sheet, "sheet.js");
EMBED(fields, "fields.js");
EMBED(form, "form.js");
EMBED(figure, "figure.js");
EMBED(plan, "plan.js");
EMBED(drafts, "drafts.js");
EMBED(saving, "saving.js");
EMBED(glance, "glance.js");
EMBED(leads, "leads.js");
EMBED(keypad, "keypad.js");
EMBED(kept, "kept.js");
EMBED(taking, "taking.js");
EMBED(tapped, "tapped.js");
EMBED(visits, "visits.js");
EMBED(others, "others.js");
EMBED(folder, "folder.js");
EMBED(taps, "taps.js");
EMBED(dom, "dom.js");
EMBED(ask, "ask.js");
EMBED(send, "send.js");

typedef struct asset {
    const char *path, *type, *start, *end;
} asset;

#define HTML "text/html; charset=utf-8"
#define SCRIPT "text/javascript; charset=utf-8"

static const asset assets[] = {
    {"/", HTML, web_asset_index, web_asset_index_end},
    {"/style.css", "text/css; charset=utf-8", web_asset_style, web_asset_style_end},
    {"/icon.svg", "image/svg+xml", web_asset_icon, web_asset_icon_end},
    {"/main.js", SCRIPT, web_asset_main, web_asset_main_end},
    {"/answers.js", SCRIPT, web_asset_answers, web_asset_answers_end},
    {"/sheet.js", SCRIPT, web_asset_sheet, web_asset_sheet_end},
    {"/fields.js", SCRIPT, web_asset_fields, web_asset_fields_end},
    {"/form.js", SCRIPT, web_asset_form, web_asset_form_end},
    {"/figure.js", SCRIPT, web_asset_figure, web_asset_figure_end},
    {"/plan.js", SCRIPT, web_asset_plan, web_asset_plan_end},
    {"/drafts.js", SCRIPT, web_asset_drafts, web_asset_drafts_end},
    {"/saving.js", SCRIPT, web_asset_saving, web_asset_saving_end},
    {"/glance.js", SCRIPT, web_asset_glance, web_asset_glance_end},
    {"/leads.js", SCRIPT, web_asset_leads, web_asset_leads_end},
    {"/keypad.js", SCRIPT, web_asset_keypad, web_asset_keypad_end},
    {"/kept.js", SCRIPT, web_asset_kept, web_asset_kept_end},
    {"/taking.js", SCRIPT, web_asset_taking, web_asset_taking_end},
    {"/tapped.js", SCRIPT, web_asset_tapped, web_asset_tapped_end},
    {"/visits.js", SCRIPT, web_asset_visits, web_asset_visits_end},
    {"/others.js", SCRIPT, web_asset_others, web_asset_others_end},
    {"/folder.js", SCRIPT, web_asset_folder, web_asset_folder_end},
    {"/taps.js", SCRIPT, web_asset_taps, web_asset_taps_end},
    {"/dom.js", SCRIPT, web_asset_dom, web_asset_dom_end},
    {"/ask.js", SCRIPT, web_asset_ask, web_asset_ask_end},
    {"/send.js", SCRIPT, web_asset_send, web_asset_send_end},
};

bool web_asset(const char *path, web_reply *reply)
{
    for (size_t i = 0; i < sizeof assets / sizeof *assets; i++) {
        if (strcmp(path, assets[i].path) == 0) {
            reply->status = 200;
            reply->type = assets[i].type;
            reply->bytes = assets[i].start;
            reply->size = (size_t)(assets[i].end - assets[i].start);
            web_tag(reply->bytes, reply->size, reply->tag);
            return true;
        }
    }
    return false;
}
