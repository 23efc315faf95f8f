/* SPDX-License-Identifier: MIT */
/* The server around the page. A client that sends slowly or not at all takes up one of five hundred
 * places but no thread, and is cut off when its time is up. */
#include <errno.h>
#include <microhttpd.h>
#include <pthread.h>
#include <signal.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/socket.h>
#include <time.h>
#include <unistd.h>

#include "body.h"
#include "door.h"
#include "head.h"
#include "serve.h"

enum {
    THREADS = 2,
    IDLE_SECONDS = 10,   /* seconds without a byte */
    REQUEST_SECONDS = 15 /* seconds for a request and its answer, however many bytes come */
};

/* A client that is connected, and since when its present request has been waited for. */
typedef struct guest {
    int socket;
    time_t since;
    struct guest *next, **link;
} guest;

struct web_server {
    const web_site *site;
    struct MHD_Daemon *daemon;
    door *entrance;
    pthread_mutex_t door; /* guards the list; a socket is closed only after leaving it */
    guest *guests;
};

/* A request as it comes in. */
typedef struct incoming {
    char *target;
    body body;
    bool begun;
} incoming;

static time_t seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return now.tv_sec;
}

static void open_door(web_server *server, struct MHD_Connection *connection, void **context)
{
    const union MHD_ConnectionInfo *about =
        MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
    guest *visit = calloc(1, sizeof *visit);
    *context = visit;
    if (!visit || !about) {
        return;
    }
    visit->socket = about->connect_fd;
    visit->since = seconds_now();
    pthread_mutex_lock(&server->door);
    visit->next = server->guests;
    visit->link = &server->guests;
    if (visit->next) {
        visit->next->link = &visit->next;
    }
    server->guests = visit;
    pthread_mutex_unlock(&server->door);
}

static void close_door(web_server *server, guest *visit)
{
    if (visit) {
        pthread_mutex_lock(&server->door);
        if (visit->link) {
            *visit->link = visit->next;
        }
        if (visit->next) {
            visit->next->link = visit->link;
        }
        pthread_mutex_unlock(&server->door);
    }
    free(visit);
}

static void note_connection(void *with, struct MHD_Connection *connection, void **context,
                            enum MHD_ConnectionNotificationCode code)
{
    web_server *server = with;
    if (code == MHD_CONNECTION_NOTIFY_STARTED) {
        open_door(server, connection, context);
    } else {
        close_door(server, *context);
        door_left(server->entrance);
        *context = NULL;
    }
}

static void show_out_late(web_server *server)
{
    time_t now = seconds_now();
    pthread_mutex_lock(&server->door);
    for (guest *visit = server->guests; visit; visit = visit->next) {
        if (now - visit->since > REQUEST_SECONDS) {
            shutdown(visit->socket, SHUT_RDWR);
        }
    }
    pthread_mutex_unlock(&server->door);
}

/* Called first for a request, with its target as sent. */
static void *note_target(void *with, const char *target, struct MHD_Connection *connection)
{
    (void)with;
    (void)connection;
    incoming *arrival = calloc(1, sizeof *arrival);
    if (arrival) {
        arrival->target = strdup(target);
    }
    return arrival;
}

static void note_end(void *with, struct MHD_Connection *connection, void **context,
                     enum MHD_RequestTerminationCode code)
{
    web_server *server = with;
    incoming *arrival = *context;
    const union MHD_ConnectionInfo *about =
        MHD_get_connection_info(connection, MHD_CONNECTION_INFO_SOCKET_CONTEXT);
    guest *visit = about ? about->socket_context : NULL;
    (void)code;
    if (visit) {
        pthread_mutex_lock(&server->door);
        visit->since = seconds_now();
        pthread_mutex_unlock(&server->door);
    }
    if (arrival) {
        free(arrival->target);
        body_free(&arrival->body);
        free(arrival);
    }
    *context = NULL;
}

/* The headers that the page needs. One that was sent twice is passed on as a value that cannot be
 * right. */
typedef struct header {
    const char *name;
    const char *value;
    int count;
} header;

enum { HOST, ORIGIN, IF_MATCH, IF_NONE_MATCH, CONTENT_LENGTH, HEADERS };

static enum MHD_Result take_header(void *with, enum MHD_ValueKind kind, const char *name,
                                   const char *value)
{
    header *headers = with;
    (void)kind;
    for (int i = 0; i < HEADERS; i++) {
        if (strcasecmp(headers[i].name, name) == 0) {
            headers[i].value = headers[i].count++ == 0 && value ? value : "";
        }
    }
    return MHD_YES;
}

static void take_headers(struct MHD_Connection *connection, header headers[HEADERS])
{
    static const header none[HEADERS] = {
        {"Host", NULL, 0},          {"Origin", NULL, 0},         {"If-Match", NULL, 0},
        {"If-None-Match", NULL, 0}, {"Content-Length", NULL, 0},
    };
    memcpy(headers, none, sizeof none);
    MHD_get_connection_values(connection, MHD_HEADER_KIND, take_header, headers);
    if (headers[HOST].count != 1) {
        headers[HOST].value = NULL;
    }
}

/* The bytes of an answer while they are sent. */
typedef struct sent {
    char *bytes;
    size_t size;
} sent;

static void forget_sent(void *with)
{
    sent *bytes = with;
    held_less(HELD_ANSWER, bytes->size, 0);
    free(bytes->bytes);
    free(bytes);
}

/* A response that owns the reply's bytes, NULL without room for them. */
static struct MHD_Response *lend(web_reply *reply)
{
    sent *bytes = malloc(sizeof *bytes);
    if (!bytes || !held_more(HELD_ANSWER, 0, reply->size)) {
        free(bytes);
        return NULL;
    }
    *bytes = (sent){reply->held, reply->size};
    struct MHD_Response *response = MHD_create_response_from_buffer_with_free_callback_cls(
        reply->size, reply->held, forget_sent, bytes);
    if (!response) {
        held_less(HELD_ANSWER, bytes->size, 0);
        free(bytes);
    }
    return response;
}

static const char crowded[] = "too much is being sent and fetched at once; ask again";

static struct MHD_Response *make_response(web_reply *reply)
{
    struct MHD_Response *response = reply->held ? lend(reply) : NULL;
    if (!response && reply->held) {
        web_reply_free(reply);
        memset(reply, 0, sizeof *reply);
        web_say(reply, 503, crowded);
    }
    return response ? response
                    : MHD_create_response_from_buffer(reply->size, (void *)reply->bytes,
                                                      MHD_RESPMEM_PERSISTENT);
}

static enum MHD_Result send_reply(struct MHD_Connection *connection, web_reply *reply)
{
    struct MHD_Response *response = make_response(reply);
    if (!response) {
        return MHD_NO;
    }
    for (int i = 0; i < web_header_count; i++) {
        MHD_add_response_header(response, web_headers[i].name, web_headers[i].value);
    }
    /* One request a connection: the next one would come in without having passed the door. */
    MHD_add_response_header(response, "Connection", "close");
    MHD_add_response_header(response, "Content-Type", reply->type);
    if (reply->tag[0]) {
        MHD_add_response_header(response, "ETag", reply->tag);
    }
    if (reply->allow) {
        MHD_add_response_header(response, "Allow", reply->allow);
    }
    enum MHD_Result result = MHD_queue_response(connection, (unsigned)reply->status, response);
    MHD_destroy_response(response);
    return result;
}

static enum MHD_Result answer(const web_server *server, struct MHD_Connection *connection,
                              const char *method, incoming *arrival)
{
    header headers[HEADERS];
    web_reply reply;
    take_headers(connection, headers);
    const web_request request = {
        .method = method,
        .target = arrival->target ? arrival->target : "",
        .host = headers[HOST].value,
        .origin = headers[ORIGIN].value,
        .if_match = headers[IF_MATCH].value,
        .if_none_match = headers[IF_NONE_MATCH].value,
        .body = arrival->body.bytes,
        .size = arrival->body.over ? WEB_BODY_MAX + 1 : arrival->body.size, /* it says why not */
    };
    if (arrival->body.crowded) {
        memset(&reply, 0, sizeof reply);
        web_say(&reply, 503, crowded);
    } else {
        web_answer(server->site, &request, &reply);
    }
    body_free(&arrival->body);
    return send_reply(connection, &reply);
}

/* Whether a request announces more bytes than it may send. */
static bool announces_too_much(struct MHD_Connection *connection)
{
    header headers[HEADERS];
    take_headers(connection, headers);
    const char *length = headers[CONTENT_LENGTH].value;
    return length && strtoull(length, NULL, 10) > WEB_BODY_MAX;
}

static enum MHD_Result handle(void *with, struct MHD_Connection *connection, const char *url,
                              const char *method, const char *version, const char *bytes,
                              size_t *size, void **context)
{
    incoming *arrival = *context;
    (void)url;
    (void)version;
    if (!arrival) {
        return MHD_NO;
    }
    if (!arrival->begun) {
        arrival->begun = true;
        arrival->body.over = announces_too_much(connection);
        return arrival->body.over ? answer(with, connection, method, arrival) : MHD_YES;
    }
    if (*size > 0) {
        bool more = body_take(&arrival->body, bytes, *size);
        *size = 0;
        return more ? MHD_YES : MHD_NO;
    }
    return answer(with, connection, method, arrival);
}

static void ends(sigset_t *set)
{
    sigemptyset(set);
    sigaddset(set, SIGINT);
    sigaddset(set, SIGTERM);
}

void server_block_signals(void)
{
    sigset_t set;
    ends(&set);
    sigprocmask(SIG_BLOCK, &set, NULL);
    signal(SIGPIPE, SIG_IGN); /* a client that has gone is no reason to end, */
    signal(SIGHUP, SIG_IGN);  /* nor is the terminal it was started in */
}

static bool give_in(void *with, int socket, const struct sockaddr *from, socklen_t length)
{
    web_server *server = with;
    return MHD_add_connection(server->daemon, socket, from, length) == MHD_YES;
}

web_server *server_start(const web_site *site, int listener)
{
    web_server *server = calloc(1, sizeof *server);
    if (!server) {
        return NULL;
    }
    server->site = site;
    server->entrance = door_new(listener, give_in, server);
    pthread_mutex_init(&server->door, NULL);
    /* The door keeps the count. Each thread may have all of them, however they are shared out. */
    server->daemon = MHD_start_daemon(
        MHD_USE_EPOLL_INTERNAL_THREAD | MHD_USE_ITC | MHD_USE_NO_LISTEN_SOCKET, 0, NULL, NULL,
        handle, server, MHD_OPTION_THREAD_POOL_SIZE, (unsigned)THREADS, MHD_OPTION_CONNECTION_LIMIT,
        (unsigned)(THREADS * CONNECTIONS_MAX), MHD_OPTION_CONNECTION_TIMEOUT,
        (unsigned)IDLE_SECONDS, MHD_OPTION_CONNECTION_MEMORY_LIMIT, (size_t)HEAD_MAX,
        MHD_OPTION_STRICT_FOR_CLIENT, 1, MHD_OPTION_URI_LOG_CALLBACK, note_target, server,
        MHD_OPTION_NOTIFY_CONNECTION, note_connection, server, MHD_OPTION_NOTIFY_COMPLETED,
        note_end, server, MHD_OPTION_END);
    if (server->entrance && server->daemon && door_open(server->entrance)) {
        return server;
    }
    int error = errno;
    if (server->daemon) {
        MHD_stop_daemon(server->daemon);
    }
    if (server->entrance) {
        door_free(server->entrance);
    }
    free(server);
    errno = error;
    return NULL;
}

void server_watch(web_server *server)
{
    const struct timespec second = {1, 0};
    sigset_t set;
    ends(&set);
    while (sigtimedwait(&set, NULL, &second) < 0) {
        show_out_late(server);
    }
}

void server_stop(web_server *server)
{
    door_shut(server->entrance);
    MHD_stop_daemon(server->daemon);
    door_free(server->entrance);
    pthread_mutex_destroy(&server->door);
    free(server);
}
