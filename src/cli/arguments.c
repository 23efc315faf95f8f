/* SPDX-License-Identifier: MIT */
/* Reads the arguments of a command, as its row in the table describes them. */
#include <assert.h>
#include <ctype.h>
#include <string.h>
#include <strings.h>

#include "../text/text.h"
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

/* The index of a word in a list such as "mm|in", in capitals or small letters, or -1. */
static int find_word(const char *words, const char *word)
{
    size_t length = strlen(word);
    for (int place = 0; words; place++) {
        const char *end = strchr(words, '|');
        size_t size = end ? (size_t)(end - words) : strlen(words);
        if (size == length && strncasecmp(words, word, size) == 0) {
            return place;
        }
        words = end ? end + 1 : NULL;
    }
    return -1;
}

/* Whether a value is one of the words listed. A value in capitals is instead a name for what to
 * give. */
static bool is_choice(const char *value)
{
    return strchr(value, '|') || !isupper((unsigned char)value[0]);
}

/* Reports a wrong word: "--stage takes now, rod, frets, nut or saddle". */
static int refuse_word(const cli_option *option)
{
    text words = {0};
    for (const char *at = option->value; *at; at++) {
        if (*at == '|') {
            text_put(&words, strchr(at + 1, '|') ? ", " : " or ");
        } else {
            text_put_bytes(&words, at, 1);
        }
    }
    int code = cli_misused("%s takes %s", option->name, text_read(&words));
    text_free(&words);
    return code;
}

const char *cli_given(const cli_arguments *a, const char *option)
{
    int k = find_option(a->command, option, strlen(option));
    assert(k >= 0);
    return a->values[k];
}

/* Reads the option at argv[*at], and its value if it has one: the next argument, or the text
 * after "=". */
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

/* An operand in words: "profile or sheet" for PROFILE|SHEET. */
static text noun(const cli_command *command)
{
    text words = {0};
    for (const char *at = command->operand; at && *at; at++) {
        char letter = (char)tolower((unsigned char)*at);
        text_put_bytes(&words, letter == '|' ? " or " : &letter, letter == '|' ? 4 : 1);
    }
    return words;
}

static int check_wanted(const cli_arguments *a)
{
    text missing = {0};
    int code = CLI_GO_ON;
    for (const cli_option *option = a->command->options; option->name; option++) {
        if (option->wanted && !cli_given(a, option->name)) {
            text_add(&missing, "%s%s", missing.length > 0 ? ", " : "", option->name);
            code = CLI_USAGE;
        }
    }
    if (code != CLI_GO_ON) {
        cli_misused("%s also wants %s", a->command->name, text_read(&missing));
    }
    text_free(&missing);
    return code;
}

static int check_operands(const cli_arguments *a)
{
    const cli_command *command = a->command;
    text word = noun(command);
    int code = CLI_GO_ON;
    if (!command->operand && a->operand_count > 0) {
        code = cli_misused("%s takes nothing behind it, not '%s'", command->name, a->operands[0]);
    } else if (command->operand && a->operand_count == 0) {
        code = cli_misused("%s wants a %s: sillet %s %s", command->name, text_read(&word),
                           command->name, command->operand);
    } else if (!command->many && a->operand_count > 1) {
        code = cli_misused("%s takes one %s; '%s' is one more", command->name, text_read(&word),
                           a->operands[1]);
    }
    text_free(&word);
    return code == CLI_GO_ON ? check_wanted(a) : code;
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
