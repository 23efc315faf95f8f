/* SPDX-License-Identifier: MIT */
/* What is kept of requests and answers while they travel, and how much of it there may be in all. */
#ifndef SILLET_SERVE_BODY_H
#define SILLET_SERVE_BODY_H

#include "../web.h"

/* Bodies of requests, and answers on their way. */
typedef enum held_kind { HELD_BODY, HELD_ANSWER, HELD_KINDS } held_kind;

/* held_more: counts memory that a request or an answer is about to hold. A small one is always let
 * in, so that those who hoard large ones keep out no sheet and no plan.
 * held_less: counts it out again.
 * Given:  from, to  bytes it holds now and is to hold
 * Status: held_more: false if it would be too much; then nothing is counted
 */
bool held_more(held_kind kind, size_t from, size_t to);
void held_less(held_kind kind, size_t from, size_t to);

/* The body of a request as it comes in. */
typedef struct body {
    char *bytes;
    size_t size, room;
    bool over;    /* larger than a body may be */
    bool crowded; /* others hold so much that there is no room for it */
    size_t dropped;
} body;

/* body_take: keeps the next bytes, up to the limit. Once they are too many, they are dropped.
 * Status: false if nothing more should come at all */
bool body_take(body *b, const char *bytes, size_t size);
void body_free(body *b);

#endif
