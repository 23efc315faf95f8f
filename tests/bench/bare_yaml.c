/* SPDX-License-Identifier: MIT */
/* The yardstick for `plan`: a bare libyaml program that reads the events of sheets and does
 * nothing. */
#include <stdio.h>
#include <yaml.h>

/* The number of events, or -1. */
static int read_events(const char *path)
{
    FILE *file = fopen(path, "rb");
    yaml_parser_t parser;
    if (!file || !yaml_parser_initialize(&parser)) {
        return -1;
    }
    yaml_parser_set_input_file(&parser, file);
    int events = 0;
    for (int done = 0; !done; events++) {
        yaml_event_t event;
        if (!yaml_parser_parse(&parser, &event)) {
            return -1;
        }
        done = event.type == YAML_STREAM_END_EVENT;
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
    fclose(file);
    return events;
}

int main(int argc, char **argv)
{
    int all = 0;
    for (int i = 1; i < argc; i++) {
        int events = read_events(argv[i]);
        if (events < 0) {
            return 1;
        }
        all += events;
    }
    printf("%d events\n", all);
    return all > 0 ? 0 : 1;
}
