/* SPDX-License-Identifier: MIT */
/* Complaints: what was found, what should be there, and where. */
#include "tree.h"

#include <string.h>

void *sheet_take(sil_sheet *sheet, size_t size)
{
    void *taken = text_store_room(&sheet->store, size);
    return taken ? memset(taken, 0, size) : NULL;
}

char *sheet_text(sil_sheet *sheet, const char *words, size_t length)
{
    char *copy = sheet_take(sheet, length + 1);
    if (copy) {
        memcpy(copy, words, length);
    }
    return copy;
}

sheet_quote sheet_quote_of(const char *words, size_t length)
{
    enum { SHOWN = 40 };
    sheet_quote quote;
    size_t used = 0;
    while (used < length && used < SHOWN) {
        unsigned long code;
        size_t step = sil_character(words + used, length - used, &code);
        if (step == 0) {
            break;
        }
        memcpy(quote.text + used, words + used, step);
        if (code < 0x20) {
            quote.text[used] = ' ';
        }
        used += step;
    }
    memcpy(quote.text + used, used < length ? "..." : "\0\0\0", 4);
    return quote;
}

/* libyaml ends a line at LF, CR, CR LF, and at U+2028 and U+2029. */
static size_t line_break(const char *at, const char *end)
{
    if (*at == '\n') {
        return 1;
    }
    if (*at == '\r') {
        return at + 1 < end && at[1] == '\n' ? 2 : 1;
    }
    bool separator =
        end - at >= 3 && memcmp(at, "\xE2\x80", 2) == 0 && (at[2] == '\xA8' || at[2] == '\xA9');
    return separator ? 3 : 0;
}

static int count_breaks(const sheet_source *source, size_t *starts)
{
    int lines = 0;
    const char *end = source->bytes + source->size;
    for (const char *at = source->bytes; at < end;) {
        size_t length = line_break(at, end);
        at += length > 0 ? length : 1;
        if (length > 0) {
            lines++;
            if (starts) {
                starts[lines] = (size_t)(at - source->bytes);
            }
        }
    }
    return lines;
}

static bool lay_lines(sil_sheet *sheet, sheet_source *source)
{
    int count = count_breaks(source, NULL) + 1;
    source->line_starts = sheet_take(sheet, sizeof(size_t) * ((size_t)count + 1));
    source->lines = sheet_take(sheet, sizeof(char *) * (size_t)count);
    if (!source->line_starts || !source->lines) {
        return false;
    }
    count_breaks(source, source->line_starts);
    source->line_starts[count] = source->size;
    source->line_count = count;
    return true;
}

/* A NUL would end the text, so its picture, U+2400, is kept instead. */
static const char *copy_line(sil_sheet *sheet, const char *start, size_t length)
{
    size_t nuls = 0;
    for (size_t i = 0; i < length; i++) {
        nuls += start[i] == '\0';
    }
    char *copy = sheet_take(sheet, length + 2 * nuls + 1), *to = copy;
    for (size_t i = 0; copy && i < length; i++) {
        if (start[i] == '\0') {
            *to++ = '\xE2';
            *to++ = '\x90';
            *to++ = '\x80';
        } else {
            *to++ = start[i];
        }
    }
    return copy;
}

const char *sheet_source_line(sil_sheet *sheet, sheet_source *source, int line)
{
    if (!source->bytes || (!source->lines && !lay_lines(sheet, source)) || line < 1 ||
        line > source->line_count) {
        return NULL;
    }
    const char **kept = &source->lines[line - 1];
    if (!*kept) {
        const char *start = source->bytes + source->line_starts[line - 1];
        const char *end = source->bytes + source->line_starts[line];
        size_t length = 0;
        while (start + length < end && line_break(start + length, end) == 0) {
            length++;
        }
        *kept = copy_line(sheet, start, length);
    }
    return *kept;
}

static void keep_words(sil_sheet *sheet, sheet_source *source, sheet_mark mark,
                       sil_severity severity, const char *words)
{
    sheet_told *told = sheet_take(sheet, sizeof *told);
    char *copy = sheet_text(sheet, words, strlen(words));
    if (!told || !copy) {
        return;
    }
    told->source = source;
    told->order = sheet->told_count++;
    told->complaint = (sil_complaint){
        .severity = severity,
        .file = source->name,
        .line = mark.line,
        .column = mark.column,
        .text = copy,
        .source = sheet_source_line(sheet, source, mark.line),
    };
    if (sheet->last) {
        sheet->last->next = told;
    } else {
        sheet->first = told;
    }
    sheet->last = told;
}

/* Takes the words. */
static void keep(sil_sheet *sheet, sil_severity severity, sheet_source *source, sheet_mark mark,
                 text *words)
{
    if (severity == SIL_ERROR) {
        bool first = source->errors++ == 0 || mark.line < source->first_error;
        source->first_error = first ? mark.line : source->first_error;
        sheet->errors++;
    }
    sheet->store.failed = sheet->store.failed || words->failed;
    if (sheet->told_count < SHEET_TOLD_MAX) {
        bool last = sheet->told_count == SHEET_TOLD_MAX - 1;
        keep_words(sheet, source, mark, severity,
                   last ? "there are more mistakes than are shown here" : text_read(words));
    }
    text_free(words);
}

void sheet_tell_at(sil_sheet *sheet, sil_severity severity, sheet_source *source, sheet_mark mark,
                   const char *format, ...)
{
    text words = {0};
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    keep(sheet, severity, source, mark, &words);
}

void sheet_tell_value(sil_sheet *sheet, sil_severity severity, sheet_node *node, const char *format,
                      ...)
{
    text words = {0};
    sheet_quote key = sheet_quote_of(node->key ? node->key : "the sheet",
                                     node->key ? node->key_length : strlen("the sheet"));
    sheet_quote found = {""};
    if (node->shape == SHEET_SCALAR) {
        found = sheet_quote_of(node->text, node->length);
    }
    text_add(&words, "%s%s%s: ", key.text, found.text[0] ? " " : "", found.text);
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&words, format, arguments);
    va_end(arguments);
    keep(sheet, severity, node->source, node->at, &words);
    char told = (char)(1 + (int)severity);
    node->told = node->told > told ? node->told : told;
}

sheet_told_mark sheet_told_so_far(const sil_sheet *sheet)
{
    return (sheet_told_mark){sheet->last, sheet->told_count, sheet->errors};
}

void sheet_told_take_back(sil_sheet *sheet, sheet_told_mark mark, sheet_source *source)
{
    sheet->last = mark.last;
    sheet->told_count = mark.told_count;
    sheet->errors = mark.errors;
    source->errors = 0;
    if (mark.last) {
        mark.last->next = NULL;
    } else {
        sheet->first = NULL;
    }
}

static int least(int a, int b)
{
    return a < b ? a : b;
}

/* Optimal string alignment (Damerau). Three rows of its table are enough. */
int sheet_nearness(const char *word, size_t length, const char *known)
{
    enum { LONGEST = 32, FAR = 99 };
    int rows[3][LONGEST + 1];
    size_t width = strlen(known);
    if (length > LONGEST || width > LONGEST) {
        return FAR;
    }
    int *before = rows[0], *above = rows[1], *row = rows[2];
    for (size_t j = 0; j <= width; j++) {
        above[j] = (int)j;
    }
    for (size_t i = 1; i <= length; i++) {
        row[0] = (int)i;
        for (size_t j = 1; j <= width; j++) {
            int changed = above[j - 1] + (word[i - 1] != known[j - 1]);
            row[j] = least(changed, least(above[j], row[j - 1]) + 1);
            if (i > 1 && j > 1 && word[i - 1] == known[j - 2] && word[i - 2] == known[j - 1]) {
                row[j] = least(row[j], before[j - 2] + 1);
            }
        }
        int *spare = before;
        before = above;
        above = row;
        row = spare;
    }
    return above[width];
}

bool sheet_near(int nearness, size_t length)
{
    return nearness <= 1 || nearness <= (int)(length / 3);
}
