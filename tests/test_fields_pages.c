/* SPDX-License-Identifier: MIT */
/* The documents that list the keys of a sheet agree with the table of its fields. */
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/fields.h>

#include "near.h"

static bool find(const char *path)
{
    sil_field field;
    return sil_field_find(path, &field);
}

static char *read_page(const char *path)
{
    enum { MOST = 256 * 1024 };
    char *text = calloc(1, MOST);
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    assert_true(fread(text, 1, MOST - 1, file) > 0);
    fclose(file);
    return text;
}

static bool in_word(char c)
{
    return islower((unsigned char)c) || isdigit((unsigned char)c) || c == '_' || c == '-';
}

/* Whether a word stands in backticks between two places. */
static bool in_code(const char *from, const char *to, const char *word)
{
    size_t length = strlen(word);
    bool code = false;
    for (const char *at = from; at < to; at++) {
        if (*at == '`') {
            code = !code;
            at += strspn(at, "`") - 1;
        } else if (in_word(*at)) {
            size_t whole = 0;
            while (in_word(at[whole])) {
                whole++;
            }
            if (code && whole == length && strncmp(at, word, length) == 0) {
                return true;
            }
            at += whole - 1;
        }
    }
    return false;
}

/* Where the page tells of a part: behind its name in bold, else anywhere. */
static const char *section_of(const char *page, const char *part, const char **end)
{
    char name[80];
    snprintf(name, sizeof name, "\n**%s**", part);
    const char *from = strstr(page, name);
    if (!from) {
        *end = page + strlen(page);
        return page;
    }
    from += strlen(name);
    const char *bold = strstr(from, "\n**"), *chapter = strstr(from, "\n## ");
    *end = bold && (!chapter || bold < chapter) ? bold : chapter;
    assert_non_null(*end);
    return from;
}

static void part_of(const char *path, char part[64])
{
    snprintf(part, 64, "%.*s", (int)strcspn(path, "."), path);
}

static void the_sheets_page_names_every_key(void **state)
{
    char *page = read_page("docs/sheet.md");
    (void)state;
    for (int k = 0; k < sil_field_count(); k++) {
        const char *path = sil_field_at(k).path, *end;
        char part[64], bold[72];
        part_of(path, part);
        snprintf(bold, sizeof bold, "\n**%s**", part);
        const char *dot = strrchr(path, '.'), *from = section_of(page, part, &end);
        bool named =
            dot ? in_code(from, end, dot + 1) : strstr(page, bold) || in_code(from, end, part);
        if (!named) {
            fail_msg("docs/sheet.md does not name %s", path);
        }
    }
    free(page);
}

/* What stands for a key: the last key of a path, or a word of a choice. */
static bool is_known(const char *word)
{
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        const char *dot = strrchr(field.path, '.');
        if (strcmp(dot ? dot + 1 : field.path, word) == 0) {
            return true;
        }
        for (int i = 0; i < field.choice_count; i++) {
            if (strcmp(field.choices[i].word, word) == 0) {
                return true;
            }
        }
    }
    return false;
}

/* Keys within the value of a field: of its two ends, of a target, of a travel. */
static const char *const inner_keys[] = {"treble", "bass", "nut",  "end",  "down",
                                         "low",    "aim",  "high", "held", "up"};

static void look_at_word(const char *word)
{
    for (size_t i = 0; i < sizeof inner_keys / sizeof *inner_keys; i++) {
        if (strcmp(word, inner_keys[i]) == 0) {
            return;
        }
    }
    bool yes_or_no = strcmp(word, "true") == 0 || strcmp(word, "false") == 0; /* taken for them */
    if (!yes_or_no && !is_known(word)) {
        fail_msg("docs/sheet.md names %s, which no sheet has", word);
    }
}

/* A word alone in backticks, and one in them with a colon behind it, is a key or the word of a
 * choice. A letter alone is no key. Returned: how many there are. */
static int look_through(const char *from, const char *to)
{
    int count = 0;
    bool code = false;
    for (const char *at = from; at < to; at++) {
        char word[64];
        size_t length = 0;
        while (in_word(at[length]) && length < sizeof word - 1) {
            word[length] = at[length];
            length++;
        }
        word[length] = '\0';
        bool alone = at[-1] == '`' && at[length] == '`';
        if (code && length > 1 && islower((unsigned char)*at) && (alone || at[length] == ':')) {
            look_at_word(word);
            count++;
        }
        code = code != (*at == '`');
        at += length > 0 ? length - 1 : 0;
    }
    return count;
}

static void the_sheets_page_names_no_other_key(void **state)
{
    char *page = read_page("docs/sheet.md");
    const char *keys = strstr(page, "\n## Keys");
    (void)state;
    assert_non_null(keys);
    assert_true(look_through(keys, page + strlen(page)) > 150);
    assert_true(is_known("zero-fret") && is_known("post_spread"));
    assert_false(is_known("colour") || is_known("post"));
    free(page);
}

/* A path of a sheet in backticks, lists counted or not, anywhere in the pages. */
static void paths_in_the_pages_are_fields(void **state)
{
    static const char *const pages[] = {"docs/sheet.md", "docs/page.md", "docs/drawing.md"};
    int count = 0;
    (void)state;
    for (size_t p = 0; p < sizeof pages / sizeof *pages; p++) {
        char *page = read_page(pages[p]);
        for (char *at = strchr(page, '`'); at; at = strchr(at + 1, '`')) {
            char path[128] = "", part[64];
            size_t used = 0, length = strspn(at + 1, "abcdefghijklmnopqrstuvwxyz_.0123456789");
            for (size_t i = 0; i < length && i < sizeof path - 1; i++) {
                bool number = at[1 + i] == '.' && isdigit((unsigned char)at[2 + i]);
                i += number ? 1 + strspn(at + 2 + i, "0123456789") : 0;
                if (i < length) {
                    path[used++] = at[1 + i];
                    path[used] = '\0';
                }
            }
            part_of(path, part);
            bool file = strcmp(path, "shop.yaml") == 0;
            if (strchr(path, '.') && !file && find(part)) {
                count++;
                if (!find(path)) {
                    fail_msg("%s names %s, which no sheet has", pages[p], path);
                }
            }
        }
        free(page);
    }
    assert_true(count > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_sheets_page_names_every_key),
        cmocka_unit_test(the_sheets_page_names_no_other_key),
        cmocka_unit_test(paths_in_the_pages_are_fields),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
