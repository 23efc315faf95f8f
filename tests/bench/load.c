/* SPDX-License-Identifier: MIT */
/* Asks a server on this machine, over many connections at once, and says how it bore it.
 *
 *   load PORT CONNECTIONS REQUESTS TARGET FILE     POSTs FILE to TARGET; each caller asks again, on a
 *                                                  connection of its own, as soon as it is answered
 *
 * Prints: requests a second, the 99th percentile of their times in ms, bytes of an answer's body.
 */
#include <arpa/inet.h>
#include <errno.h>
#include <netinet/in.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/epoll.h>
#include <sys/socket.h>
#include <time.h>
#include <unistd.h>

enum { ANSWER_MAX = 1 << 20, CONNECTIONS_MAX = 1000 };

typedef struct caller {
    int socket;
    double since;
    size_t got, wanted; /* of the answer; wanted 0: its head is not whole yet */
    char head[4096];
} caller;

static char question[ANSWER_MAX];
static size_t question_size, body_size;

static double now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec + 1e-9 * (double)time.tv_nsec;
}

static void stop(const char *why)
{
    perror(why);
    exit(1);
}

static void read_question(int port, const char *target, const char *path)
{
    static char body[ANSWER_MAX / 2];
    FILE *file = fopen(path, "rb");
    size_t size = file ? fread(body, 1, sizeof body, file) : 0;
    if (size == 0) {
        stop(path);
    }
    fclose(file);
    int head = snprintf(question, sizeof question / 2,
                        "POST %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nContent-Length: %zu\r\n\r\n",
                        target, port, size);
    memcpy(question + head, body, size);
    question_size = (size_t)head + size;
}

static void connect_to(caller *talk, int port, int waiting)
{
    struct epoll_event event = {.events = EPOLLIN, .data.ptr = talk};
    const struct linger at_once = {1, 0}; /* so that no port waits to be used again */
    struct sockaddr_in place = {.sin_family = AF_INET, .sin_port = htons((unsigned short)port)};
    place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    talk->socket = socket(AF_INET, SOCK_STREAM, 0);
    if (connect(talk->socket, (struct sockaddr *)&place, sizeof place) != 0) {
        stop("connect");
    }
    setsockopt(talk->socket, SOL_SOCKET, SO_LINGER, &at_once, sizeof at_once);
    epoll_ctl(waiting, EPOLL_CTL_ADD, talk->socket, &event);
}

/* A question is small: it goes into the socket's buffer whole. */
static void ask(caller *talk)
{
    talk->since = now();
    talk->got = talk->wanted = 0;
    if (write(talk->socket, question, question_size) != (ssize_t)question_size) {
        stop("write");
    }
}

/* Whether the answer is whole now. */
static int hear(caller *talk)
{
    static char bytes[1 << 16];
    ssize_t more = read(talk->socket, bytes, sizeof bytes);
    if (more <= 0) {
        stop("read");
    }
    if (talk->wanted == 0) {
        size_t kept = talk->got < sizeof talk->head - 1 ? sizeof talk->head - 1 - talk->got : 0;
        kept = kept < (size_t)more ? kept : (size_t)more;
        memcpy(talk->head + talk->got, bytes, kept);
        talk->head[talk->got + kept] = '\0';
        char *end = strstr(talk->head, "\r\n\r\n");
        char *length = strstr(talk->head, "Content-Length: ");
        if (end && length) {
            if (strncmp(talk->head, "HTTP/1.1 200 ", 13) != 0) {
                stop(talk->head);
            }
            body_size = strtoul(length + strlen("Content-Length: "), NULL, 10);
            talk->wanted = (size_t)(end + 4 - talk->head) + body_size;
        }
    }
    talk->got += (size_t)more;
    return talk->wanted > 0 && talk->got >= talk->wanted;
}

static int by_size(const void *left, const void *right)
{
    const double *a = left, *b = right;
    return (*a > *b) - (*a < *b);
}

int main(int argc, char **argv)
{
    static caller talks[CONNECTIONS_MAX];
    if (argc != 6) {
        return 2;
    }
    int port = atoi(argv[1]), connections = atoi(argv[2]);
    long requests = atol(argv[3]), asked = 0, done = 0;
    double *times = malloc(sizeof *times * (size_t)requests);
    int waiting = epoll_create1(0);
    if (!times || connections > CONNECTIONS_MAX) {
        return 2;
    }
    read_question(port, argv[4], argv[5]);
    double began = now();
    for (int i = 0; i < connections; i++) {
        connect_to(&talks[i], port, waiting);
        ask(&talks[i]);
        asked++;
    }
    while (done < requests) {
        struct epoll_event events[64];
        int count = epoll_wait(waiting, events, 64, 30000);
        if (count <= 0) {
            stop("nothing came for half a minute");
        }
        for (int i = 0; i < count; i++) {
            caller *talk = events[i].data.ptr;
            if (hear(talk) && done < requests) {
                times[done++] = now() - talk->since;
                close(talk->socket);
                if (asked < requests) {
                    connect_to(talk, port, waiting);
                    ask(talk);
                    asked++;
                }
            }
        }
    }
    double took = now() - began;
    qsort(times, (size_t)requests, sizeof *times, by_size);
    printf("%.1f %.3f %zu\n", (double)requests / took,
           1000.0 * times[(size_t)(0.99 * (double)requests)], body_size);
    free(times);
    return 0;
}
