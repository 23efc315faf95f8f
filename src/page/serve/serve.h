/* SPDX-License-Identifier: MIT */
/* The server around the page: a socket of this machine alone, and limits on what comes through. */
#ifndef SILLET_SERVE_H
#define SILLET_SERVE_H

#include "../web.h"

typedef struct web_server web_server;

/* server_listen: a listening socket on 127.0.0.1.
 * Given:    port  0: any that is free
 * Returned: port  the one taken
 * Status:   the socket, or -1 with errno set
 */
int server_listen(int *port);

/* server_block_signals: asks to end wait for server_watch. To be called before any thread is. */
void server_block_signals(void);

/* server_start: answers on threads of its own; site must outlive it. The socket becomes its own.
 * Returned: NULL with errno set where it cannot
 */
web_server *server_start(const web_site *site, int listener);

/* server_watch: returns when this program is asked to end; until then shows the door to whoever
 * takes too long over a request. */
void server_watch(web_server *server);
void server_stop(web_server *server);

#endif
