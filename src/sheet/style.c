/* SPDX-License-Identifier: MIT */
/* A style of playing: targets and attack by name. */
#include <string.h>

#include "fill.h"
#include "profile.h"

/* What the file under root says of a style; NULL where it does not have it. */
static sheet_node *style_in(const sheet_node *root, const sheet_node *name)
{
    const sheet_node *styles = sheet_node_under(root, "styles");
    sheet_node *style = styles ? sheet_node_under(styles, name->text) : NULL;
    return style && style->shape == SHEET_MAPPING ? style : NULL;
}

sheet_node *sheet_style_gather(sil_sheet *sheet, const sheet_node *name, sheet_node *const *levels,
                               int count)
{
    sheet_node *made = NULL;
    for (int k = 0; k < count; k++) {
        const sheet_node *style = style_in(levels[k], name);
        sheet_node *copy = style ? sheet_tree_copy(sheet, style, NULL) : NULL;
        sheet_node *part = copy ? sheet_take(sheet, sizeof *part) : NULL;
        if (!part) {
            continue;
        }
        *part = (sheet_node){
            .shape = SHEET_MAPPING, .given = true, .at = style->at, .source = style->source};
        sheet_node_move(copy, "targets", part);
        sheet_node_move(copy, "attack", part);
        if (made) {
            sheet_tree_merge(made, part);
        } else {
            made = part;
        }
    }
    return made;
}

/* "fingers, all-round or slide": the names of all styles. */
static void put_names(text *t, const sheet_node *styles)
{
    for (const sheet_node *style = styles->first; style; style = style->next) {
        const char *joint = style == styles->first ? "" : style->next ? ", " : " or ";
        text_add(t, "%s%s", joint, sheet_quote_of(style->key, style->key_length).text);
    }
}

static const char *nearest_name(const sheet_node *styles, const sheet_node *node)
{
    const char *nearest = NULL;
    int nearness = 99;
    for (const sheet_node *style = styles->first; style; style = style->next) {
        int apart = sheet_nearness(node->text, node->length, style->key);
        if (apart < nearness && sheet_near(apart, node->length)) {
            nearest = style->key;
            nearness = apart;
        }
    }
    return nearest;
}

void sheet_fill_style(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    const char **kept = job_field_place(field, base);
    const sheet_node *styles = sheet_node_under(filler->root, "styles");
    if (!sheet_expect(filler, node, SHEET_SCALAR)) {
        return;
    }
    *kept = node->text;
    if (styles && sheet_node_under(styles, node->text)) {
        return;
    }
    if (!styles || styles->shape != SHEET_MAPPING || !styles->first) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node,
                         "neither this sheet nor its profile has styles: give targets and attack");
        return;
    }
    text names = {0};
    put_names(&names, styles);
    const char *near = nearest_name(styles, node);
    sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted %s%s%s%s", text_read(&names),
                     near ? "; did you mean " : "",
                     near ? sheet_quote_of(near, strlen(near)).text : "", near ? "?" : "");
    filler->sheet->store.failed = filler->sheet->store.failed || names.failed;
    text_free(&names);
}

/* The style chosen is filled in as the job's targets and attack; of the others, too, it is told
 * what is wrong with them. */
void sheet_fill_styles(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    const sheet_node *chosen = sheet_node_under(filler->root, "style");
    (void)base;
    if (!sheet_expect(filler, node, SHEET_MAPPING)) {
        return;
    }
    for (sheet_node *style = node->first; style; style = style->next) {
        job_style other;
        bool is_chosen = chosen && chosen->given && chosen->shape == SHEET_SCALAR &&
                         strcmp(chosen->text, style->key) == 0;
        if (!style->given || !sheet_expect(filler, style, SHEET_MAPPING)) {
            continue;
        }
        if (is_chosen) {
            sheet_check_keys(filler, style, field->of);
        } else {
            memset(&other, 0, sizeof other);
            job_table_clear(field->of, &other);
            sheet_fill_table(filler, style, field->of, &other);
        }
    }
}
