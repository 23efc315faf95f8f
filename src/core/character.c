/* SPDX-License-Identifier: MIT */
#include <sillet/core/units.h>

size_t sil_character(const char *text, size_t size, unsigned long *code)
{
    static const unsigned char least[] = {0, 0, 0xC2, 0xE0, 0xF0};
    const unsigned char *p = (const unsigned char *)text;
    size_t length = p[0] < 0x80 ? 1 : p[0] < 0xE0 ? 2 : p[0] < 0xF0 ? 3 : 4;
    if (length > size || p[0] < least[length] || p[0] > 0xF4) {
        return 0;
    }
    *code = length == 1 ? p[0] : p[0] & (0xFFU >> (length + 1));
    for (size_t i = 1; i < length; i++) {
        if ((p[i] & 0xC0) != 0x80) {
            return 0;
        }
        *code = *code << 6 | (p[i] & 0x3FU);
    }
    bool surrogate = *code >= 0xD800 && *code <= 0xDFFF;
    bool overlong = (length == 3 && *code < 0x800) || (length == 4 && *code < 0x10000);
    return surrogate || overlong || *code > 0x10FFFF ? 0 : length;
}
