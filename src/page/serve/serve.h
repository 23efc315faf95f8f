/* SPDX-License-Identifier: MIT */
/* The server around the page: a socket that only this machine can reach, and limits on requests. */
#ifndef SILLET_SERVE_H
#define SILLET_SERVE_H

#include "../web.h"

typedef struct web_server web_server;

/* server_block_signals: signals to end wait for server_watch. Call it before any thread is
 * started. */
void server_block_signals(void);

/* server_start: answers on threads of its own; site must outlive it. The socket then belongs to it.
 * Returned: NULL with errno set if it cannot start */
web_server *server_start(const web_site *site, int listener);

/* server_watch: returns when this program is asked to end. Until then it closes connections whose
 * request takes too long. */
void server_watch(web_server *server);
void server_stop(web_server *server);

#endif
