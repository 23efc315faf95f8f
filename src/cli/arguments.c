/* SPDX-License-Identifier: MIT */
/* Reads the arguments after a command, by the command's row in the table. */
#include <assert.h>
#include <ctype.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"

static int find_option(const cli_command *command, const char *name, size_t length)
{
    for (int k = 0; command->options[k].name; k++) {
        const char *known = command->options[k].name;
        if (strlen(known) == length && strncmp(known, name, length) == 0) {
            return k;
        }
    }
    return -1;
}

/* The index of a word in "mm|in", or -1. */
static int find_word(const char *words, const char *word)
{
    size_t length = strlen(word);
    for (int place = 0; words; place++) {
        const char *end = strchr(words, '|');
        size_t size = end ? (size_t)(end - words) : strlen(words);
        if (size == length && strncmp(words, word, size) == 0) {
            return place;
        }
        words = end ? end + 1 : NULL;
    }
    return -1;
}

/* A value in capitals names what to give; otherwise it lists the words themselves. */
static bool is_choice(const char *value)
{
    return strchr(value, '|') || !isupper((unsigned char)value[0]);
}

/* "--stage takes now, rod, frets, nut or saddle" */
static int refuse_word(const cli_option *option)
{
    char words[256] = "";
    size_t used = 0;
    for (const char *at = option->value; *at; at++) {
        const char *joint = strchr(at + 1, '|') ? ", " : " or ";
        used += *at == '|' ? (size_t)snprintf(words + used, sizeof words - used, "%s", joint)
                           : (size_t)snprintf(words + used, sizeof words - used, "%c", *at);
    }
    return cli_misused("%s takes %s", option->name, words);
}

const char *cli_given(const cli_arguments *a, const char *option)
{
    int k = find_option(a->command, option, strlen(option));
    assert(k >= 0);
    return a->values[k];
}

/* Reads the option at argv[*at], and its value if it has one: the next argument, or what follows a
 * "=". */
static int read_option(cli_arguments *a, int argc, char **argv, int *at)
{
    const char *word = argv[*at];
    const char *equals = strncmp(word, "--", 2) == 0 ? strchr(word, '=') : NULL;
    int k = find_option(a->command, word, equals ? (size_t)(equals - word) : strlen(word));
    if (k < 0) {
        return cli_misused("%s knows no option '%s'", a->command->name, word);
    }
    const cli_option *option = &a->command->options[k];
    if (!option->value) {
        a->values[k] = option->name;
        return equals ? cli_misused("%s takes nothing behind it", option->name) : CLI_GO_ON;
    }
    const char *value = equals ? equals + 1 : *at + 1 < argc ? argv[++*at] : NULL;
    if (is_choice(option->value)) {
        if (!value || find_word(option->value, value) < 0) {
            return refuse_word(option);
        }
    } else if (!value) {
        return cli_misused("%s wants a value behind it: %s", option->name, option->value);
    }
    a->values[k] = value;
    return CLI_GO_ON;
}

/* "profile or sheet" for PROFILE|SHEET. */
static const char *noun(const cli_command *command, char out[64])
{
    size_t used = 0;
    for (const char *at = command->operand; *at; at++) {
        int letter = tolower((unsigned char)*at);
        used += *at == '|' ? (size_t)snprintf(out + used, 64 - used, " or ")
                           : (size_t)snprintf(out + used, 64 - used, "%c", letter);
    }
    return out;
}

static int check_operands(const cli_arguments *a)
{
    const cli_command *command = a->command;
    char word[64];
    if (!command->operand && a->operand_count > 0) {
        return cli_misused("%s takes nothing behind it, not '%s'", command->name, a->operands[0]);
    }
    if (command->operand && a->operand_count == 0) {
        return cli_misused("%s wants a %s: sillet %s %s", command->name, noun(command, word),
                           command->name, command->operand);
    }
    if (!command->many && a->operand_count > 1) {
        return cli_misused("%s takes one %s; '%s' is one more", command->name, noun(command, word),
                           a->operands[1]);
    }
    char missing[128] = "";
    size_t used = 0;
    for (const cli_option *option = command->options; option->name; option++) {
        if (option->wanted && !cli_given(a, option->name)) {
            used += (size_t)snprintf(missing + used, sizeof missing - used, "%s%s",
                                     used > 0 ? ", " : "", option->name);
        }
    }
    return used == 0 ? CLI_GO_ON : cli_misused("%s also wants %s", command->name, missing);
}

int cli_read_arguments(const char *command, int argc, char **argv, cli_arguments *a)
{
    *a = (cli_arguments){.command = cli_find_command(command), .operands = argv};
    assert(a->command);
    bool options_end = false;
    for (int i = 1; i < argc; i++) {
        if (options_end || argv[i][0] != '-' || argv[i][1] == '\0') {
            a->operands[a->operand_count++] = argv[i];
        } else if (strcmp(argv[i], "--") == 0) {
            options_end = true;
        } else if (strcmp(argv[i], "--help") == 0) {
            cli_help_command(a->command);
            return CLI_DONE;
        } else {
            int code = read_option(a, argc, argv, &i);
            if (code != CLI_GO_ON) {
                return code;
            }
        }
    }
    return check_operands(a);
}

int cli_choice(const cli_arguments *a, const char *option, int so_far)
{
    int k = find_option(a->command, option, strlen(option));
    assert(k >= 0);
    return a->values[k] ? find_word(a->command->options[k].value, a->values[k]) : so_far;
}
