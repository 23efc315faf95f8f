/* SPDX-License-Identifier: MIT */
/* Texts that are kept together in blocks of memory and freed together. */
#include <ctype.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text.h"

enum { BLOCK = 16 * 1024 };

struct text_block {
    text_block *older;
    size_t size;
    max_align_t start[];
};

static bool grow(text_store *store, size_t size)
{
    size_t room = size > BLOCK ? size : BLOCK;
    text_block *block = malloc(sizeof *block + room);
    if (!block) {
        store->failed = true;
        return false;
    }
    block->older = store->newest;
    block->size = room;
    store->newest = block;
    store->used = 0;
    return true;
}

/* Bytes left in the newest block. */
static size_t left(const text_store *store)
{
    return store->newest ? store->newest->size - store->used : 0;
}

static char *here(const text_store *store)
{
    return (char *)store->newest->start + store->used;
}

/* Marks bytes as used. The next ones begin aligned. */
static void used(text_store *store, size_t size)
{
    const size_t step = sizeof(max_align_t);
    size_t whole = (size + step - 1) / step * step;
    store->used += whole < left(store) ? whole : left(store);
}

void *text_store_room(text_store *store, size_t size)
{
    if (left(store) < size && !grow(store, size)) {
        return NULL;
    }
    void *taken = here(store);
    used(store, size);
    return taken;
}

const char *text_keep_bytes(text_store *store, const char *bytes, size_t size)
{
    char *copy = text_store_room(store, size + 1);
    if (!copy) {
        return "";
    }
    memcpy(copy, bytes, size);
    copy[size] = '\0';
    return copy;
}

const char *text_keep_capital(text_store *store, const char *words)
{
    size_t length = strlen(words);
    char *copy = text_store_room(store, length + 1);
    if (!copy) {
        return "";
    }
    memcpy(copy, words, length + 1);
    copy[0] = (char)toupper((unsigned char)copy[0]);
    return copy;
}

const char *text_keep_list(text_store *store, const char *format, va_list arguments)
{
    va_list again;
    va_copy(again, arguments);
    size_t room = left(store);
    int wanted = vsnprintf(room ? here(store) : NULL, room, format, arguments);
    const char *kept = "";
    if (wanted >= 0 && (size_t)wanted < room) {
        kept = here(store);
        used(store, (size_t)wanted + 1);
    } else if (wanted >= 0) {
        char *taken = text_store_room(store, (size_t)wanted + 1);
        kept = taken ? taken : "";
        if (taken) {
            vsnprintf(taken, (size_t)wanted + 1, format, again);
        }
    }
    store->failed = store->failed || wanted < 0;
    va_end(again);
    return kept;
}

const char *text_keep(text_store *store, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    const char *kept = text_keep_list(store, format, arguments);
    va_end(arguments);
    return kept;
}

const char *text_keep_made(text_store *store, text *made)
{
    const char *kept = text_keep_bytes(store, text_read(made), made->failed ? 0 : made->length);
    store->failed = store->failed || made->failed;
    text_free(made);
    return kept;
}

void text_store_free(text_store *store)
{
    while (store->newest) {
        text_block *older = store->newest->older;
        free(store->newest);
        store->newest = older;
    }
    *store = (text_store){0};
}
