/* SPDX-License-Identifier: MIT */
/* The yardstick for the page: libmicrohttpd alone, set up alike, taking a body and answering as
 * many bytes as it is told, always the same.
 *
 *   bare_http BYTES     prints the port; ends with its standard input
 */
#include <arpa/inet.h>
#include <microhttpd.h>
#include <netinet/in.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>

typedef struct constant {
    char *bytes;
    size_t size;
} constant;

static enum MHD_Result answer(void *with, struct MHD_Connection *connection, const char *url,
                              const char *method, const char *version, const char *bytes,
                              size_t *size, void **context)
{
    static int begun;
    const constant *same = with;
    (void)url;
    (void)method;
    (void)version;
    (void)bytes;
    if (!*context || *size > 0) {
        *context = &begun;
        *size = 0;
        return MHD_YES;
    }
    *context = NULL;
    struct MHD_Response *response =
        MHD_create_response_from_buffer(same->size, same->bytes, MHD_RESPMEM_PERSISTENT);
    enum MHD_Result result = MHD_queue_response(connection, MHD_HTTP_OK, response);
    MHD_destroy_response(response);
    return result;
}

int main(int argc, char **argv)
{
    constant same = {NULL, argc == 2 ? (size_t)strtoul(argv[1], NULL, 10) : 0};
    struct sockaddr_in place = {.sin_family = AF_INET};
    place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    same.bytes = malloc(same.size + 1);
    if (argc != 2 || !same.bytes) {
        return 2;
    }
    memset(same.bytes, 'x', same.size);
    struct MHD_Daemon *daemon = MHD_start_daemon(
        MHD_USE_EPOLL_INTERNAL_THREAD, 0, NULL, NULL, answer, &same, MHD_OPTION_SOCK_ADDR, &place,
        MHD_OPTION_THREAD_POOL_SIZE, 2U, MHD_OPTION_CONNECTION_LIMIT, 500U, MHD_OPTION_END);
    if (!daemon) {
        return 3;
    }
    printf("%d\n", MHD_get_daemon_info(daemon, MHD_DAEMON_INFO_BIND_PORT)->port);
    fflush(stdout);
    getchar();
    MHD_stop_daemon(daemon);
    free(same.bytes);
    return 0;
}
