/* SPDX-License-Identifier: MIT */
/* Reads a request's head line by line. Numbers in brackets are sections of RFC 9112. */
#include "head.h"

#include <stdbool.h>
#include <string.h>
#include <strings.h>

/* A text within the head. */
typedef struct span {
    const char *at;
    size_t size;
} span;

/* What has been seen of the headers that say where a request ends and whom it is for. */
typedef struct seen {
    int hosts, lengths, codings;
    bool old; /* HTTP/1.0 */
} seen;

/* A character of a method or a header's name (RFC 9110, 5.6.2). */
static bool is_token(char c)
{
    bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    return letter || (c != '\0' && strchr("!#$%&'*+-.^_`|~", c));
}

static size_t token(span line)
{
    size_t length = 0;
    while (length < line.size && is_token(line.at[length])) {
        length++;
    }
    return length;
}

static bool has_control(span line)
{
    for (size_t i = 0; i < line.size; i++) {
        unsigned char c = (unsigned char)line.at[i];
        if ((c < 0x20 && c != '\t') || c == 0x7F) {
            return true;
        }
    }
    return false;
}

static bool is(span text, const char *word)
{
    return text.size == strlen(word) && strncasecmp(text.at, word, text.size) == 0;
}

/* Method, target and version, one blank between two (3). Another version is the library's to
 * refuse. */
static bool judge_request(span line, seen *so_far)
{
    static const char version[] = "HTTP/";
    size_t method = token(line);
    const char *last = line.at + line.size;
    while (last > line.at && last[-1] != ' ') {
        last--;
    }
    span tail = {last, (size_t)(line.at + line.size - last)};
    span target = {line.at + method + 1, 0};
    if (method == 0 || method + 1 >= line.size || line.at[method] != ' ' || last <= target.at + 1) {
        return false;
    }
    target.size = (size_t)(last - 1 - target.at);
    so_far->old = is(tail, "HTTP/1.0");
    return !memchr(target.at, ' ', target.size) && !memchr(target.at, '\t', target.size) &&
           tail.size >= sizeof version && strncmp(tail.at, version, sizeof version - 1) == 0;
}

static span trimmed(span value)
{
    while (value.size > 0 && (value.at[0] == ' ' || value.at[0] == '\t')) {
        value.at++;
        value.size--;
    }
    while (value.size > 0 &&
           (value.at[value.size - 1] == ' ' || value.at[value.size - 1] == '\t')) {
        value.size--;
    }
    return value;
}

static bool is_number(span value)
{
    enum { DIGITS_MAX = 18 }; /* so that it fits */
    size_t digits = 0;
    while (digits < value.size && value.at[digits] >= '0' && value.at[digits] <= '9') {
        digits++;
    }
    return digits > 0 && digits == value.size && digits <= DIGITS_MAX;
}

/* A name, a colon right after it, a value (5.1). A line that begins with a blank, and would go on
 * with the one before (5.2), has no name. */
static bool judge_field(span line, seen *so_far)
{
    size_t length = token(line);
    if (length == 0 || length == line.size || line.at[length] != ':') {
        return false;
    }
    span name = {line.at, length};
    span value = trimmed((span){line.at + length + 1, line.size - length - 1});
    if (is(name, "Host")) {
        return ++so_far->hosts == 1; /* (3.2) */
    }
    if (is(name, "Content-Length")) {
        return ++so_far->lengths == 1 && is_number(value); /* (6.3) */
    }
    if (is(name, "Transfer-Encoding")) {
        return ++so_far->codings == 1 && is(value, "chunked"); /* (6.1) */
    }
    return true;
}

/* One length for one body; an older HTTP knows no coding of transfers (6.1). */
static bool judge_whole(const seen *so_far)
{
    return so_far->codings == 0 || (so_far->lengths == 0 && !so_far->old);
}

/* The line at the beginning of a text, without its end; *whole: its end has come. False for an end
 * other than CR LF (2.2). */
static bool take_line(span text, span *line, bool *whole)
{
    size_t length = 0;
    while (length < text.size && text.at[length] != '\r' && text.at[length] != '\n') {
        length++;
    }
    *line = (span){text.at, length};
    *whole = length + 1 < text.size;
    return length == text.size ||
           (text.at[length] == '\r' && (length + 1 == text.size || text.at[length + 1] == '\n'));
}

head_verdict head_judge(const char *bytes, size_t size)
{
    seen so_far = {0};
    span rest = {bytes, size < HEAD_MAX ? size : HEAD_MAX};
    for (int lines = 0;;) {
        span line;
        bool whole;
        if (!take_line(rest, &line, &whole) || has_control(line)) {
            return HEAD_BAD;
        }
        if (!whole) {
            return size < HEAD_MAX ? HEAD_MORE : HEAD_LARGE;
        }
        if (line.size == 0 && lines > 0) {
            return judge_whole(&so_far) ? HEAD_GOOD : HEAD_BAD;
        }
        if (line.size > 0 && /* empty lines before a request are passed over (2.2) */
            !(lines++ == 0 ? judge_request(line, &so_far) : judge_field(line, &so_far))) {
            return HEAD_BAD;
        }
        rest.at += line.size + 2;
        rest.size -= line.size + 2;
    }
}
