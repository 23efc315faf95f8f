/* SPDX-License-Identifier: MIT */
/* Puts answers together, and reads addresses. */
#include "reply.h"

#include <inttypes.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void web_say(web_reply *reply, int status, const char *words)
{
    reply->status = status;
    reply->type = "text/plain; charset=utf-8";
    reply->bytes = words;
    reply->size = strlen(words);
}

void web_give(web_reply *reply, const char *type, char *held, size_t size)
{
    reply->status = 200;
    reply->type = type;
    reply->bytes = held;
    reply->held = held;
    reply->size = size;
}

void web_give_json(web_reply *reply, int status, json *j)
{
    char *text = json_end(j);
    if (!text) {
        web_say(reply, 500, "out of memory");
        return;
    }
    web_give(reply, "application/json", text, strlen(text));
    reply->status = status;
}

void web_reply_free(web_reply *reply)
{
    free(reply->held);
    reply->held = NULL;
}

/* FNV-1a, 64 bits, and the size. It tells versions of a file apart; it need not withstand a forger,
 * who could just as well write the file. */
void web_tag(const char *bytes, size_t size, char tag[WEB_TAG_MAX])
{
    uint64_t hash = 0xCBF29CE484222325U;
    for (size_t i = 0; i < size; i++) {
        hash = (hash ^ (unsigned char)bytes[i]) * 0x100000001B3U;
    }
    snprintf(tag, WEB_TAG_MAX, "\"%016" PRIx64 "-%zx\"", hash, size);
}

bool web_is_text(const char *bytes, size_t size)
{
    for (size_t used = 0; used < size;) {
        unsigned long code = 0;
        size_t length = sil_character(bytes + used, size - used, &code);
        if (length == 0 || code < 0x20 || (code >= 0x7F && code < 0xA0)) {
            return false;
        }
        used += length;
    }
    return true;
}

static int digit(char c)
{
    static const char digits[] = "0123456789abcdef";
    char low = c >= 'A' && c <= 'F' ? (char)(c - 'A' + 'a') : c;
    const char *at = c == '\0' ? NULL : strchr(digits, low);
    return at ? (int)(at - digits) : -1;
}

/* Unescapes a text: %41 is A. False if an escape is wrong, or the result does not fit or is not
 * text. */
static bool unescape(const char *from, size_t length, char *to, size_t size)
{
    size_t used = 0;
    for (size_t i = 0; i < length; i++) {
        char c = from[i];
        if (c == '%') {
            int high = length - i > 2 ? digit(from[i + 1]) : -1;
            int low = high < 0 ? -1 : digit(from[i + 2]);
            if (low < 0) {
                return false;
            }
            c = (char)(16 * high + low);
            i += 2;
        }
        if (used + 1 >= size) {
            return false;
        }
        to[used++] = c;
    }
    to[used] = '\0';
    return web_is_text(to, used);
}

bool web_target_read(const char *sent, web_target *target)
{
    size_t length = strcspn(sent, "?");
    const char *query = sent[length] == '?' ? sent + length + 1 : "";
    if (sent[0] != '/' || strlen(query) >= sizeof target->query) {
        return false;
    }
    memcpy(target->query, query, strlen(query) + 1);
    return unescape(sent, length, target->path, sizeof target->path);
}

bool web_option(const web_target *target, const char *name, char *value, size_t size)
{
    size_t length = strlen(name);
    value[0] = '\0';
    for (const char *at = target->query; *at;) {
        size_t whole = strcspn(at, "&");
        if (whole > length && strncmp(at, name, length) == 0 && at[length] == '=') {
            return unescape(at + length + 1, whole - length - 1, value, size);
        }
        at += whole + (at[whole] == '&');
    }
    return true;
}
