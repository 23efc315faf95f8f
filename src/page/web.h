/* SPDX-License-Identifier: MIT */
/* The bench page: what it answers to a request. It knows nothing of the server around it. */
#ifndef SILLET_PAGE_H
#define SILLET_PAGE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* What the page works on. */
typedef struct web_site {
    int port;                /* port it is reached at, on this machine alone */
    int folder;              /* the folder of sheets, open; -1: none */
    const char *folder_name; /* name of the folder, to show */
    const char *file;        /* the page as one file, file_size bytes; NULL: there is none */
    size_t file_size;
    const char *lan; /* own address in the local network, at which the file alone is handed out;
                        NULL: the page itself, to this machine alone */
} web_site;

enum { WEB_BODY_MAX = 256 * 1024, WEB_TARGET_MAX = 2048, WEB_TAG_MAX = 48 };

/* A request as it came. Texts NUL-terminated; NULL: not given. */
typedef struct web_request {
    const char *method;
    const char *target; /* path and query, as sent */
    const char *host;   /* NULL unless exactly one came */
    const char *origin;
    const char *if_match, *if_none_match;
    const char *body; /* size bytes */
    size_t size;
} web_request;

typedef struct web_reply {
    int status;
    const char *type;  /* of the bytes; fixed text */
    const char *allow; /* with 405: the methods allowed; otherwise NULL */
    const char *bytes;
    size_t size;
    char *held;            /* the bytes, if they are to be freed */
    char tag[WEB_TAG_MAX]; /* ETag, or "" */
    bool own_policy;       /* the bytes are a page with a policy of its own within */
} web_reply;

/* web_answer: answers a request.
 * Given:    site     what it works on
 *           request  any bytes at all
 * Returned: reply    to be freed with web_reply_free
 * Status:   in reply: 200, 201 or 304; 400 not understood; 403 not for this page; 404, 405; 409 no
 *           folder; 412 and 428 the sheet is another than was read; 413; 422 the sheet is wrong,
 *           with its complaints; 500 the system failed us, as where a profile
 *           cannot be read; what is asked only to be read back has that among its complaints;
 *           503 the folder stays locked by another program
 * Notes:    a request whose Host is not this page's own, or whose Origin is another's, touches
 *           nothing. Several threads may ask at once.
 */
void web_answer(const web_site *site, const web_request *request, web_reply *reply);
void web_reply_free(web_reply *reply);

/* web_compute: answers what is computed from the request alone: /read, /plan, /draw, /profiles and
 * /fields. It asks neither who asks nor from where.
 * Given:    folder   open, in which the files lie that a sheet names, and shop.yaml; -1: there is none
 *           request  as web_answer
 * Returned: reply    as web_answer
 * Status:   in reply: 200; 400, 404, 405, 413, 422, 500 as there
 */
void web_compute(int folder, const web_request *request, web_reply *reply);

/* web_address: the address a browser opens the page at, or the file. */
void web_address(const web_site *site, char *out, size_t size);

/* web_say: fills an empty reply with a status and plain words, which are a constant. */
void web_say(web_reply *reply, int status, const char *words);

/* Headers of every answer: nothing may be loaded from elsewhere, no other page may show this one,
 * and no type is guessed. */
typedef struct web_header {
    const char *name, *value;
} web_header;
extern const web_header web_headers[];
extern const int web_header_count;

/* web_header_value: what such a header says with a reply. */
const char *web_header_value(const web_header *header, const web_reply *reply);

/* web_lan_read: an address of a private network, as 192.168.1.20: of RFC 1918, of one link (RFC
 * 3927), or of this machine itself.
 * Returned: address  in host byte order
 * Status:   false for anything else */
bool web_lan_read(const char *text, uint32_t *address);
bool web_lan_is_private(uint32_t address);

#endif
