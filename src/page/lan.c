/* SPDX-License-Identifier: MIT */
/* The local network: which addresses are in it, and what is handed out there. */
#include <arpa/inet.h>
#include <string.h>

#include "reply.h"

/* The first bits of each private network, and how many they are. */
static const struct {
    uint32_t first;
    int bits;
} networks[] = {
    {0x0A000000, 8},  /* 10.0.0.0, RFC 1918 */
    {0xAC100000, 12}, /* 172.16.0.0, RFC 1918 */
    {0xC0A80000, 16}, /* 192.168.0.0, RFC 1918 */
    {0xA9FE0000, 16}, /* 169.254.0.0, one link: RFC 3927 */
    {0x7F000000, 8},  /* 127.0.0.0, this machine: RFC 1122 */
};

bool web_lan_is_private(uint32_t address)
{
    bool found = false;
    for (size_t i = 0; i < sizeof networks / sizeof *networks; i++) {
        found = found || (address ^ networks[i].first) >> (32 - networks[i].bits) == 0;
    }
    return found;
}

bool web_lan_read(const char *text, uint32_t *address)
{
    struct in_addr read;
    if (inet_pton(AF_INET, text, &read) != 1) {
        return false;
    }
    *address = ntohl(read.s_addr);
    return web_lan_is_private(*address);
}

bool web_file(const web_site *site, web_reply *reply)
{
    if (!site->file) {
        return false;
    }
    reply->status = 200;
    reply->type = "text/html; charset=utf-8";
    reply->bytes = site->file;
    reply->size = site->file_size;
    reply->own_policy = true;
    web_tag(reply->bytes, reply->size, reply->tag);
    return true;
}

void web_hand_out(const web_site *site, const web_request *request, web_reply *reply)
{
    web_target target;
    bool get = strcmp(request->method, "GET") == 0 || strcmp(request->method, "HEAD") == 0;
    if (!get || !web_target_read(request->target, &target) || strcmp(target.path, "/") != 0 ||
        !web_file(site, reply)) {
        web_say(reply, 404, "nothing is there");
    }
}
