/* SPDX-License-Identifier: MIT */
/* The kinds of instrument a sheet can name. */
#include "reply.h"

void web_profiles(const web_site *site, const web_target *target, const web_request *request,
                  web_reply *reply)
{
    char **names;
    int count;
    (void)site;
    (void)target;
    (void)request;
    if (sil_profiles_list(&names, &count) != SIL_DONE) {
        web_say(reply, 500, "no folder of profiles found; $SILLET_PROFILES can name one");
        return;
    }
    json j = {0};
    json_at array = json_array(&j);
    for (int k = 0; k < count; k++) {
        json_add_word(array, names[k]);
    }
    sil_profiles_free(names, count);
    web_give_json(reply, 200, &j);
}
