/* SPDX-License-Identifier: MIT */
/* The door of the server: it lets in only those whose request's head is in order. Nobody waits here
 * for anybody else, and no thread for a slow one. */
#ifndef SILLET_SERVE_DOOR_H
#define SILLET_SERVE_DOOR_H

#include <stdbool.h>
#include <sys/socket.h>

enum {
    CONNECTIONS_MAX = 500, /* at the door and inside */
    HEAD_SECONDS = 10      /* seconds for a head to come */
};

typedef struct door door;

/* Takes a connection whose request has come as far as its head, none of it read yet. The socket is
 * then the taker's. */
typedef bool door_give(void *with, int socket, const struct sockaddr *from, socklen_t length);

/* door_listen: a listening socket on 127.0.0.1.
 * Given:    port  0: any that is free
 * Returned: port  the one taken
 * Status:   the socket, or -1 with errno set
 */
int door_listen(int *port);

/* door_new: a door that is shut still. The listening socket then belongs to it.
 * Returned: NULL with errno set if there is no memory */
door *door_new(int listener, door_give *give, void *with);

/* door_open: lets people in, on a thread of its own. False with errno set if it cannot. */
bool door_open(door *d);

/* door_left: one of those let in has gone. */
void door_left(door *d);

/* door_shut: lets nobody in any more. Those inside may still leave. */
void door_shut(door *d);
void door_free(door *d);

#endif
