/* SPDX-License-Identifier: MIT */
/* Accepts connections and looks at what comes without taking it (MSG_PEEK), until the head of the
 * request is whole. */
#include "door.h"

#include <arpa/inet.h>
#include <errno.h>
#include <fcntl.h>
#include <netinet/in.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/epoll.h>
#include <sys/eventfd.h>
#include <time.h>
#include <unistd.h>

#include "../web.h"
#include "head.h"

enum {
    EVENTS = 64,
    TICK_MS = 500,      /* between looks at the clock */
    FULL_MS = 20,       /* between looks whether there is a place again */
    LEAVING_SECONDS = 2 /* for one who is refused to read why */
};

/* Somebody at the door. */
typedef struct caller {
    int socket; /* -1: a free place */
    bool leaving;
    time_t since;
    struct sockaddr_in from;
} caller;

struct door {
    int listener, events, end; /* end: written to when the door is to be closed */
    bool listening;
    pthread_t thread;
    door_give *give;
    void *with;
    atomic_int inside;
    int waiting;
    caller callers[CONNECTIONS_MAX];
    char head[HEAD_MAX];
};

int door_listen(int *port)
{
    struct sockaddr_in place = {.sin_family = AF_INET, .sin_port = htons((uint16_t)*port)};
    socklen_t length = sizeof place;
    const int yes = 1, kept = 32 * 1024;
    place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    int listener = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0);
    if (listener < 0) {
        return -1;
    }
    setsockopt(listener, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    /* Its connections have the same. Otherwise the system keeps megabytes for each who never
     * reads. */
    setsockopt(listener, SOL_SOCKET, SO_SNDBUF, &kept, sizeof kept);
    setsockopt(listener, SOL_SOCKET, SO_RCVBUF, &kept, sizeof kept);
    if (bind(listener, (struct sockaddr *)&place, length) != 0 ||
        listen(listener, CONNECTIONS_MAX) != 0 ||
        getsockname(listener, (struct sockaddr *)&place, &length) != 0) {
        int error = errno;
        close(listener);
        errno = error;
        return -1;
    }
    *port = ntohs(place.sin_port);
    return listener;
}

static time_t seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return now.tv_sec;
}

static void forget(door *d, caller *who)
{
    close(who->socket);
    who->socket = -1;
    d->waiting--;
}

static void let_in(door *d, caller *who)
{
    epoll_ctl(d->events, EPOLL_CTL_DEL, who->socket, NULL);
    atomic_fetch_add(&d->inside, 1);
    if (!d->give(d->with, who->socket, (struct sockaddr *)&who->from, sizeof who->from)) {
        atomic_fetch_sub(&d->inside, 1);
    }
    who->socket = -1;
    d->waiting--;
}

/* Takes what has come and drops it. False once the other end is closed. */
static bool drain(door *d, const caller *who)
{
    ssize_t size;
    do {
        size = recv(who->socket, d->head, sizeof d->head, MSG_DONTWAIT);
    } while (size > 0);
    return size < 0 && (errno == EAGAIN || errno == EINTR);
}

/* Says why a request is not answered. Whoever still sends is listened to for a little while, or the
 * answer would be lost with the connection. */
static void refuse(door *d, caller *who, head_verdict verdict)
{
    char words[2048];
    int used =
        snprintf(words, sizeof words, "HTTP/1.1 %s\r\nConnection: close\r\n",
                 verdict == HEAD_LARGE ? "431 Request Header Fields Too Large" : "400 Bad Request");
    for (int i = 0; i < web_header_count; i++) {
        used += snprintf(words + used, sizeof words - (size_t)used, "%s: %s\r\n",
                         web_headers[i].name, web_headers[i].value);
    }
    used += snprintf(words + used, sizeof words - (size_t)used, "Content-Length: 0\r\n\r\n");
    send(who->socket, words, (size_t)used, MSG_DONTWAIT | MSG_NOSIGNAL);
    shutdown(who->socket, SHUT_WR);
    who->leaving = true;
    who->since = seconds_now();
    if (!drain(d, who)) {
        forget(d, who);
    }
}

static void look_at(door *d, caller *who)
{
    if (who->leaving) {
        if (!drain(d, who)) {
            forget(d, who);
        }
        return;
    }
    ssize_t size = recv(who->socket, d->head, sizeof d->head, MSG_PEEK | MSG_DONTWAIT);
    if (size < 0 && (errno == EAGAIN || errno == EINTR)) {
        return;
    }
    if (size <= 0) {
        forget(d, who);
        return;
    }
    switch (head_judge(d->head, (size_t)size)) {
    case HEAD_GOOD:
        let_in(d, who);
        break;
    case HEAD_MORE:
        break; /* epoll tells when more comes */
    case HEAD_BAD:
        refuse(d, who, HEAD_BAD);
        break;
    case HEAD_LARGE:
        refuse(d, who, HEAD_LARGE);
        break;
    }
}

static bool is_full(door *d)
{
    return d->waiting + atomic_load(&d->inside) >= CONNECTIONS_MAX;
}

/* Whoever comes while all places are taken waits in the system's queue. */
static void listen_or_not(door *d, bool listening)
{
    struct epoll_event event = {.events = listening ? EPOLLIN : 0, .data.ptr = &d->listener};
    epoll_ctl(d->events, EPOLL_CTL_MOD, d->listener, &event);
    d->listening = listening;
}

static caller *free_place(door *d)
{
    caller *who = d->callers;
    while (who->socket >= 0) {
        who++;
    }
    return who;
}

static void welcome(door *d)
{
    const struct timespec a_while = {0, FULL_MS * 1000000L};
    while (!is_full(d)) {
        struct sockaddr_in from;
        socklen_t length = sizeof from;
        int socket = accept(d->listener, (struct sockaddr *)&from, &length);
        if (socket < 0) {
            if (errno != EAGAIN && errno != EINTR) {
                nanosleep(&a_while, NULL); /* no descriptor or no memory is left at present */
            }
            return;
        }
        fcntl(socket, F_SETFD, FD_CLOEXEC);
        caller *who = free_place(d);
        *who = (caller){.socket = socket, .since = seconds_now(), .from = from};
        d->waiting++;
        struct epoll_event event = {.events = EPOLLIN | EPOLLRDHUP | EPOLLET, .data.ptr = who};
        if (epoll_ctl(d->events, EPOLL_CTL_ADD, socket, &event) != 0) {
            forget(d, who);
        }
    }
    listen_or_not(d, false);
}

static void show_out_late(door *d)
{
    time_t now = seconds_now();
    for (caller *who = d->callers; who < d->callers + CONNECTIONS_MAX; who++) {
        if (who->socket >= 0 &&
            now - who->since > (who->leaving ? LEAVING_SECONDS : HEAD_SECONDS)) {
            forget(d, who);
        }
    }
}

static void *keep(void *with)
{
    door *d = with;
    struct epoll_event events[EVENTS];
    for (time_t looked = seconds_now();;) {
        int count = epoll_wait(d->events, events, EVENTS, d->listening ? TICK_MS : FULL_MS);
        for (int i = 0; i < count; i++) {
            void *what = events[i].data.ptr;
            if (what == &d->end) {
                return NULL;
            }
            if (what == &d->listener) {
                welcome(d);
            } else if (((caller *)what)->socket >= 0) {
                look_at(d, what);
            }
        }
        if (!d->listening && !is_full(d)) {
            listen_or_not(d, true);
        }
        if (seconds_now() != looked) {
            looked = seconds_now();
            show_out_late(d);
        }
    }
}

/* What has been opened is closed by door_free. */
static bool begin(door *d)
{
    struct epoll_event listen_event = {.events = EPOLLIN, .data.ptr = &d->listener};
    struct epoll_event end_event = {.events = EPOLLIN, .data.ptr = &d->end};
    d->events = epoll_create1(EPOLL_CLOEXEC);
    d->end = eventfd(0, EFD_CLOEXEC);
    d->listening = true;
    return d->events >= 0 && d->end >= 0 &&
           epoll_ctl(d->events, EPOLL_CTL_ADD, d->listener, &listen_event) == 0 &&
           epoll_ctl(d->events, EPOLL_CTL_ADD, d->end, &end_event) == 0;
}

void door_free(door *d)
{
    for (caller *who = d->callers; who < d->callers + CONNECTIONS_MAX; who++) {
        if (who->socket >= 0) {
            forget(d, who);
        }
    }
    if (d->events >= 0) {
        close(d->events);
    }
    if (d->end >= 0) {
        close(d->end);
    }
    close(d->listener);
    free(d);
}

door *door_new(int listener, door_give *give, void *with)
{
    door *d = calloc(1, sizeof *d);
    if (!d) {
        close(listener);
        return NULL;
    }
    d->listener = listener;
    d->events = d->end = -1;
    d->give = give;
    d->with = with;
    for (caller *who = d->callers; who < d->callers + CONNECTIONS_MAX; who++) {
        who->socket = -1;
    }
    return d;
}

bool door_open(door *d)
{
    int error = begin(d) ? pthread_create(&d->thread, NULL, keep, d) : errno;
    errno = error;
    return error == 0;
}

void door_left(door *d)
{
    atomic_fetch_sub(&d->inside, 1);
}

void door_shut(door *d)
{
    const uint64_t one = 1;
    while (write(d->end, &one, sizeof one) < 0 && errno == EINTR) {
    }
    pthread_join(d->thread, NULL);
}
