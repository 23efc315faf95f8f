/* SPDX-License-Identifier: MIT */
/* The yardstick for `plan`: a bare libyaml program that reads one sheet's events and does nothing. */
#include <stdio.h>
#include <yaml.h>

int main(int argc, char **argv)
{
    FILE *file = argc == 2 ? fopen(argv[1], "rb") : NULL;
    yaml_parser_t parser;
    if (!file || !yaml_parser_initialize(&parser)) {
        return 1;
    }
    yaml_parser_set_input_file(&parser, file);
    int events = 0;
    for (int done = 0; !done; events++) {
        yaml_event_t event;
        if (!yaml_parser_parse(&parser, &event)) {
            return 1;
        }
        done = event.type == YAML_STREAM_END_EVENT;
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
    fclose(file);
    printf("%d events\n", events);
    return 0;
}
