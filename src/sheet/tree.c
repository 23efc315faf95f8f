/* SPDX-License-Identifier: MIT */
/* Turns libyaml's events into nodes. The parser grows slow on deep brackets, so the depth is
 * checked at every event; aliases are never followed. */
#include "tree.h"

#include <string.h>
#include <yaml.h>

typedef struct builder {
    sil_sheet *sheet;
    sheet_source *source;
    sheet_node *root;
    sheet_node *open[SIL_SHEET_DEPTH_MAX]; /* collections not yet closed */
    int depth;
    sheet_node key;     /* key of the innermost mapping; only its text and place matter */
    bool key_waits;     /* it has no value yet */
    bool key_refused;   /* its value is to be skipped */
    sheet_node *folded; /* the last scalar, if it ran over several lines */
    int documents;
    bool stopped;
} builder;

static sheet_mark mark_of(yaml_mark_t mark)
{
    return (sheet_mark){(int)mark.line + 1, (int)mark.column + 1};
}

static void stop(builder *build, yaml_mark_t mark, const char *why)
{
    sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark_of(mark), "%s", why);
    build->stopped = true;
    build->source->cut = true;
}

static bool is_null(const char *words, size_t length)
{
    return length == 0 || (length == 1 && words[0] == '~') ||
           (length == 4 && memcmp(words, "null", 4) == 0);
}

/* Escapes in quoted texts can produce characters that are not allowed in a sheet. */
static bool has_control(const char *words, size_t length)
{
    for (size_t i = 0; i < length; i++) {
        unsigned char c = (unsigned char)words[i];
        bool plain = c >= 0x20 && c != 0x7F && c != 0xC2;
        bool c1 = c == 0xC2 && i + 1 < length && (unsigned char)words[i + 1] < 0xA0;
        if (!plain && c != '\n' && c != '\t' && (c != 0xC2 || c1)) {
            return true;
        }
    }
    return false;
}

static sheet_node *new_node(builder *build, sheet_shape shape, const yaml_event_t *event)
{
    sheet_node *node = sheet_take(build->sheet, sizeof *node);
    if (!node) {
        build->stopped = true;
        return NULL;
    }
    node->shape = shape;
    node->given = true;
    node->source = build->source;
    node->at = mark_of(event->start_mark);
    return node;
}

static void set_text(builder *build, sheet_node *node, const yaml_event_t *event)
{
    const char *words = (const char *)event->data.scalar.value;
    size_t length = event->data.scalar.length;
    bool escapes = event->data.scalar.style == YAML_DOUBLE_QUOTED_SCALAR_STYLE;
    if (escapes && has_control(words, length)) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, node->at,
                      "a control character in a text");
        node->told = 1 + SIL_ERROR;
        length = 0;
    }
    node->text = sheet_text(build->sheet, words, length);
    node->length = length;
    node->given = !is_null(words, length);
    build->stopped = build->stopped || !node->text;
}

void sheet_node_add(sheet_node *up, sheet_node *child)
{
    if (up->last) {
        up->last->next = child;
    } else {
        up->first = child;
    }
    up->last = child;
    up->count++;
}

sheet_node *sheet_node_find(const sheet_node *mapping, const char *key, size_t length)
{
    for (sheet_node *node = mapping->first; node; node = node->next) {
        if (node->key_length == length && memcmp(node->key, key, length) == 0) {
            return node;
        }
    }
    return NULL;
}

sheet_node *sheet_node_under(const sheet_node *node, const char *key)
{
    return node->shape == SHEET_MAPPING ? sheet_node_find(node, key, strlen(key)) : NULL;
}

/* A key; its value follows. */
static void take_key(builder *build, const yaml_event_t *event)
{
    sheet_node *mapping = build->open[build->depth - 1];
    sheet_node *key = &build->key;
    *key = (sheet_node){.at = mark_of(event->start_mark)};
    build->key_waits = true;
    build->key_refused = true;
    set_text(build, key, event);
    if (key->told || build->stopped) {
        return;
    }
    const sheet_node *before = sheet_node_find(mapping, key->text, key->length);
    if (key->length == 2 && memcmp(key->text, "<<", 2) == 0) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, key->at, "merge keys are not read");
    } else if (before) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, key->at,
                      "%s is given twice, first on line %d",
                      sheet_quote_of(key->text, key->length).text, before->key_at.line);
    } else if (mapping->count >= SHEET_KEYS_MAX) {
        stop(build, event->start_mark, "too many keys in one mapping");
    } else {
        build->key_refused = false;
    }
}

/* Puts a finished or just opened node where it belongs. */
static void place(builder *build, sheet_node *node)
{
    sheet_node *up = build->depth > 0 ? build->open[build->depth - 1] : NULL;
    if (!up) {
        build->root = node;
        return;
    }
    if (up->shape == SHEET_SEQUENCE) {
        node->key = up->key;
        node->key_length = up->key_length;
        node->key_at = node->at;
        sheet_node_add(up, node);
        return;
    }
    node->key = build->key.text;
    node->key_length = build->key.length;
    node->key_at = build->key.at;
    if (!build->key_refused) {
        sheet_node_add(up, node);
    }
    build->key_waits = false;
}

static bool wants_key(const builder *build)
{
    return build->depth > 0 && build->open[build->depth - 1]->shape == SHEET_MAPPING &&
           !build->key_waits;
}

/* Reports anchors and tags, and skips them. */
static void refuse_marks(builder *build, const yaml_event_t *event, const yaml_char_t *anchor,
                         const yaml_char_t *tag)
{
    if (anchor) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark_of(event->start_mark),
                      "anchors (&) are not read");
    }
    if (tag) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark_of(event->start_mark),
                      "tags (!) are not read");
    }
}

static void take_scalar(builder *build, const yaml_event_t *event)
{
    refuse_marks(build, event, event->data.scalar.anchor, event->data.scalar.tag);
    if (wants_key(build)) {
        take_key(build, event);
        return;
    }
    sheet_node *node = new_node(build, SHEET_SCALAR, event);
    if (node) {
        set_text(build, node, event);
        place(build, node);
        build->folded = event->start_mark.line != event->end_mark.line ? node : NULL;
    }
}

static void take_alias(builder *build, const yaml_event_t *event)
{
    if (wants_key(build)) {
        stop(build, event->start_mark, "aliases (*) are not read");
        return;
    }
    sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark_of(event->start_mark),
                  "aliases (*) are not read");
    sheet_node *node = new_node(build, SHEET_SCALAR, event);
    if (node) {
        node->text = "";
        node->given = false;
        node->told = 1 + SIL_ERROR;
        place(build, node);
    }
}

static void open_collection(builder *build, sheet_shape shape, const yaml_event_t *event)
{
    if (wants_key(build)) {
        stop(build, event->start_mark, "wanted a word as a key");
        return;
    }
    if (build->depth == SIL_SHEET_DEPTH_MAX) {
        stop(build, event->start_mark, "more than 16 deep");
        return;
    }
    sheet_node *node = new_node(build, shape, event);
    if (node) {
        place(build, node);
        build->open[build->depth++] = node;
    }
}

static void start_document(builder *build, const yaml_event_t *event)
{
    bool directives = event->data.document_start.version_directive ||
                      event->data.document_start.tag_directives.start !=
                          event->data.document_start.tag_directives.end;
    if (build->documents++ > 0) {
        stop(build, event->start_mark, "a second document: a sheet is only one");
    } else if (directives) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark_of(event->start_mark),
                      "directives (%%) are not read");
    }
}

static void take_event(builder *build, const yaml_event_t *event)
{
    switch (event->type) {
    case YAML_DOCUMENT_START_EVENT:
        start_document(build, event);
        break;
    case YAML_SCALAR_EVENT:
        take_scalar(build, event);
        break;
    case YAML_ALIAS_EVENT:
        take_alias(build, event);
        break;
    case YAML_MAPPING_START_EVENT:
        refuse_marks(build, event, event->data.mapping_start.anchor, event->data.mapping_start.tag);
        open_collection(build, SHEET_MAPPING, event);
        break;
    case YAML_SEQUENCE_START_EVENT:
        refuse_marks(build, event, event->data.sequence_start.anchor,
                     event->data.sequence_start.tag);
        open_collection(build, SHEET_SEQUENCE, event);
        break;
    case YAML_MAPPING_END_EVENT:
    case YAML_SEQUENCE_END_EVENT:
        build->depth--;
        break;
    case YAML_STREAM_END_EVENT:
        build->stopped = true;
        break;
    default:
        break;
    }
}

static bool at_end(const sheet_source *source, const char *line, sheet_mark mark)
{
    int characters = 0;
    for (; line && *line; line++) {
        characters += ((unsigned char)*line & 0xC0) != 0x80;
    }
    return mark.line >= source->line_count && mark.column > characters;
}

/* If the file ends early, the place to show is where the unclosed part begins. */
static sheet_mark opened_at(const builder *build, const yaml_parser_t *parser)
{
    bool begun = parser->context && parser->context_mark.index < parser->problem_mark.index;
    if (begun) {
        return mark_of(parser->context_mark);
    }
    return build->depth > 0 ? build->open[build->depth - 1]->at : mark_of(parser->problem_mark);
}

/* Reports what libyaml found wrong, in its words and at its place. */
static void tell_yaml(builder *build, const yaml_parser_t *parser)
{
    if (build->source->cut) {
        return; /* it stumbled where the source was cut, which has been reported */
    }
    sheet_mark mark = mark_of(parser->problem_mark);
    const char *line = sheet_source_line(build->sheet, build->source, mark.line);
    bool tab = line && strncmp(line + strspn(line, " "), "\t", 1) == 0;
    const char *problem = parser->problem ? parser->problem : "it cannot be read";
    if (at_end(build->source, line, mark)) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, opened_at(build, parser),
                      "not YAML: %s; what begins here is never closed", problem);
    } else if (parser->context && parser->context_mark.line != parser->problem_mark.line) {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark, "not YAML: %s, %s of line %d",
                      problem, parser->context, (int)parser->context_mark.line + 1);
    } else {
        sheet_tell_at(build->sheet, SIL_ERROR, build->source, mark, "not YAML: %s%s", problem,
                      tab ? "; a tab: indent with spaces" : "");
    }
    build->source->cut = true;
}

/* Marks everything that was still open when the file broke off as incomplete. A text that ran over
 * several lines up to there has most likely swallowed what follows. */
static void mark_cut(builder *build)
{
    for (sheet_node *node = build->root; node; node = node->last) {
        node->cut = true;
    }
    if (build->folded) {
        build->folded->given = false;
    }
}

sheet_node *sheet_tree_read(sil_sheet *sheet, sheet_source *source)
{
    builder build = {.sheet = sheet, .source = source};
    yaml_parser_t parser;
    if (!yaml_parser_initialize(&parser)) {
        sheet->store.failed = true;
        return NULL;
    }
    yaml_parser_set_encoding(&parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&parser, (const unsigned char *)source->bytes, source->size);
    while (!build.stopped) {
        yaml_event_t event;
        if (!yaml_parser_parse(&parser, &event)) {
            sheet->store.failed = sheet->store.failed || parser.error == YAML_MEMORY_ERROR;
            tell_yaml(&build, &parser);
            break;
        }
        take_event(&build, &event);
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
    if (source->cut) {
        mark_cut(&build);
    }
    return sheet->store.failed ? NULL : build.root; /* without memory a node may lack its text */
}
