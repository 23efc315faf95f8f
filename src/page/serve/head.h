/* SPDX-License-Identifier: MIT */
/* The head of a request, judged by RFC 9112 before the library that serves sees it, which lets
 * through what two readers could take for two different requests. */
#ifndef SILLET_SERVE_HEAD_H
#define SILLET_SERVE_HEAD_H

#include <stddef.h>

enum { HEAD_MAX = 16 * 1024 }; /* bytes of a request line and its headers */

typedef enum head_verdict {
    HEAD_GOOD,
    HEAD_MORE,  /* good so far, but not whole yet */
    HEAD_BAD,   /* 400 */
    HEAD_LARGE, /* 431 */
} head_verdict;

/* head_judge: what to do with a request.
 * Given:  bytes, size  what has come of it, any bytes at all; what follows the head is not looked at
 */
head_verdict head_judge(const char *bytes, size_t size);

#endif
