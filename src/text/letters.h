/* SPDX-License-Identifier: MIT */
#ifndef SILLET_TEXT_LETTERS_H
#define SILLET_TEXT_LETTERS_H

#include <stddef.h>

/* letter_size: how many bytes the letter at the start of a text has. The text must not be empty.
 * Where it is not valid UTF-8, each byte counts as a letter. */
size_t letter_size(const char *words);

#endif
