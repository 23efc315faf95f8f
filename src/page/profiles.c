/* SPDX-License-Identifier: MIT */
/* The kinds of instrument a sheet can name. */
#include "reply.h"

static bool add_name(cJSON *array, const char *name)
{
    cJSON *item = cJSON_CreateString(name);
    if (cJSON_AddItemToArray(array, item)) {
        return true;
    }
    cJSON_Delete(item);
    return false;
}

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
    cJSON *array = cJSON_CreateArray();
    for (int k = 0; array && k < count; k++) {
        if (!add_name(array, names[k])) {
            cJSON_Delete(array);
            array = NULL;
        }
    }
    sil_profiles_free(names, count);
    web_give_json(reply, 200, array);
}
