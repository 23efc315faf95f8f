/* SPDX-License-Identifier: MIT */
/* The page's program as a module within the page: what its script calls. A text goes in and out as
 * bytes in the module's memory. */
#ifndef SILLET_ANYWHERE_H
#define SILLET_ANYWHERE_H

#include <stddef.h>

/* module_room: room for a request. NULL without memory. */
char *module_room(size_t size);

/* module_ask: answers a request, and frees the last answer and the room.
 * Given:    room  from module_room: method, path and body, one after the other, the first two each
 *                 ended by a NUL
 *           size  of it all, bytes
 * Returned: the answer's status, as web_compute has it; 400 if the two NULs are not there */
int module_ask(char *room, size_t size);

/* The answer to the last request. */
const char *module_type(void);
const char *module_bytes(void);
size_t module_size(void);

#endif
