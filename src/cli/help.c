/* SPDX-License-Identifier: MIT */
/* Help, printed from the table of commands. */
#include <stdio.h>
#include <string.h>

#include "cli.h"

void cli_help(void)
{
    printf("sillet " SILLET_VERSION
           ": from a few readings at the bench to what is wrong, in which order to\n"
           "put it right, and exactly how much to cut.\n\n");
    for (const cli_command *command = cli_commands; command->name; command++) {
        char use[40];
        snprintf(use, sizeof use, "sillet %s %s%s", command->name,
                 command->operand ? command->operand : "", command->many ? ".." : "");
        printf("  %-26s  %s\n", use, command->purpose);
    }
    printf(
        "\n"
        "Begin with a sheet, fill in what you read, and plan:\n"
        "  sillet start steel-string-acoustic > job.yaml\n"
        "  sillet plan job.yaml\n"
        "\n"
        "A sheet is a YAML file; - is standard input. Results go to standard output, everything\n"
        "else to standard error. Exit: 0 done, also when the plan says stop; 1 mistakes in the\n"
        "sheet; 2 wrong use; 3 a file or the system failed.\n"
        "\n"
        "'sillet COMMAND --help' describes each command, 'man sillet' all of them.\n"
        "'sillet --version' prints the version.\n");
}

/* Prints the lines of a text with an indent. The first line starts where the cursor is. */
static void print_lines(const char *text, int indent)
{
    for (const char *at = text; *at; at++) {
        putchar(*at);
        if (*at == '\n') {
            printf("%*s", indent, "");
        }
    }
    putchar('\n');
}

static void print_use(const cli_command *command)
{
    int column = printf("sillet %s", command->name);
    if (command->operand) {
        column += printf(" %s%s", command->operand, command->many ? ".." : "");
    }
    for (const cli_option *option = command->options; option->name; option++) {
        char word[80];
        snprintf(word, sizeof word, option->wanted ? "%s%s%s" : "[%s%s%s]", option->name,
                 option->value ? " " : "", option->value ? option->value : "");
        if (column + 1 + (int)strlen(word) > 80) {
            column = printf("\n      ") - 1;
        }
        column += printf(" %s", word);
    }
    printf("\n\n");
}

void cli_help_command(const cli_command *command)
{
    print_use(command);
    print_lines(command->about, 0);
    for (const cli_option *option = command->options; option->name; option++) {
        printf("%s  %s%s%s\n      ", option == command->options ? "\n" : "", option->name,
               option->value ? " " : "", option->value ? option->value : "");
        print_lines(option->means, 6);
    }
    if (command->examples) {
        printf("\nFor example\n  ");
        print_lines(command->examples, 2);
    }
}
