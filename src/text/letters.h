/* SPDX-License-Identifier: MIT */
#ifndef SILLET_TEXT_LETTERS_H
#define SILLET_TEXT_LETTERS_H

#include <stddef.h>

/* letter_size: bytes of the letter at the front of a text that is not empty; a broken one is taken
 * byte by byte. */
size_t letter_size(const char *words);

#endif
