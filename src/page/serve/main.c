/* SPDX-License-Identifier: MIT */
/* sillet-serve: the bench page, on this machine alone. A program of its own, run by sillet serve,
 * because its libraries take longer to load than a plan takes to make. */
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "../../cli/cli.h"
#include "door.h"
#include "serve.h"

/* Tried when no port is named, so that the address stays the same from day to day. */
enum { PORT_USUAL = 7340 };

typedef struct options {
    int port; /* -1: not given */
    const char *folder;
    bool open;
} options;

static bool read_port(const char *text, int *port)
{
    size_t length = strlen(text);
    if (length == 0 || length > 5 || text[strspn(text, "0123456789")] != '\0') {
        return false;
    }
    *port = (int)strtol(text, NULL, 10);
    return *port <= 65535;
}

static int read_options(int argc, char **argv, options *o)
{
    cli_arguments a;
    int code = cli_read_arguments("serve", argc, argv, &a);
    if (code != CLI_GO_ON) {
        return code;
    }
    const char *port = cli_given(&a, "--port");
    const char *folder = cli_given(&a, "--folder");
    *o = (options){-1, folder ? folder : ".", cli_given(&a, "--open")};
    return port && !read_port(port, &o->port)
               ? cli_misused("--port takes a number up to 65535, not '%s'", port)
               : CLI_GO_ON;
}

/* Opens the page in the desktop's browser. If there is none, the address has been printed
 * anyway. */
static void show(const char *address)
{
    pid_t child = fork();
    if (child == 0) {
        sigset_t none;
        sigemptyset(&none);
        sigprocmask(SIG_SETMASK, &none, NULL);
        signal(SIGPIPE, SIG_DFL);
        signal(SIGHUP, SIG_DFL);
        if (fork() == 0) {
            execlp("xdg-open", "xdg-open", address, (char *)NULL);
            perror("sillet: serve: --open: xdg-open");
        }
        _exit(0);
    }
    while (child > 0 && waitpid(child, NULL, 0) < 0 && errno == EINTR) {
    }
}

static int serve(const web_site *site, int listener, bool open)
{
    char address[64];
    web_server *running = server_start(site, listener);
    if (!running) {
        return cli_failed("serve: cannot start: %s", strerror(errno));
    }
    web_address(site, address, sizeof address);
    printf("The bench page is at %s\nSheets are in %s. Ctrl-C ends it.\n", address,
           site->folder_name);
    if (fflush(stdout) != 0) {
        int error = errno;
        server_stop(running);
        return cli_failed("standard output: %s", strerror(error));
    }
    if (open) {
        show(address);
    }
    server_watch(running);
    server_stop(running);
    return CLI_DONE;
}

static int run(int argc, char **argv)
{
    options o;
    int code = read_options(argc, argv, &o);
    if (code != CLI_GO_ON) {
        return code;
    }
    web_site site = {.folder_name = o.folder};
    site.folder = open(o.folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (site.folder < 0) {
        return cli_failed("serve: %s: %s", o.folder, strerror(errno));
    }
    site.port = o.port < 0 ? PORT_USUAL : o.port;
    int listener = door_listen(&site.port);
    if (listener < 0 && errno == EADDRINUSE && o.port < 0) {
        site.port = 0; /* any that is free */
        listener = door_listen(&site.port);
    }
    if (listener < 0) {
        return cli_failed("serve: cannot listen on port %d of this machine: %s", site.port,
                          strerror(errno));
    }
    server_block_signals();
    code = serve(&site, listener, o.open);
    close(site.folder);
    return code;
}

int main(int argc, char **argv)
{
    return cli_close_output(run(argc, argv));
}
