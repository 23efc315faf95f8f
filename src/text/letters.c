/* SPDX-License-Identifier: MIT */
/* Letters in UTF-8 texts. */
#include "letters.h"

#include <string.h>

#include <sillet/core/units.h>

#include "text.h"

size_t letter_size(const char *words)
{
    unsigned long code;
    size_t size = sil_character(words, 4, &code);
    return size > 0 ? size : 1;
}

int text_letters(const char *words, size_t size)
{
    int letters = 0;
    for (size_t i = 0; i < size; i++) {
        letters += ((unsigned char)words[i] & 0xC0) != 0x80;
    }
    return letters;
}

size_t text_prefix(const char *words, size_t limit)
{
    size_t size = 0;
    while (words[size] != '\0' && size + letter_size(words + size) <= limit) {
        size += letter_size(words + size);
    }
    return size;
}

uint32_t text_next(const char **words)
{
    const uint32_t broken = 0xFFFD;
    unsigned long code = 0;
    unsigned char first = (unsigned char)**words;
    if (first < 0x80) { /* one byte, as most letters are */
        *words += first > 0;
        return first;
    }
    size_t size = sil_character(*words, 4, &code);
    *words += size > 0 ? size : 1;
    return size > 0 ? (uint32_t)code : broken;
}

int text_letter(uint32_t code, char *out)
{
    int more = code < 0x80 ? 0 : code < 0x800 ? 1 : code < 0x10000 ? 2 : 3;
    static const unsigned char lead[] = {0, 0xC0, 0xE0, 0xF0};
    out[0] = (char)(lead[more] | code >> (6 * more));
    for (int i = 1; i <= more; i++) {
        out[i] = (char)(0x80 | (code >> (6 * (more - i)) & 0x3F));
    }
    return more + 1;
}
