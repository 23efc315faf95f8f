/* SPDX-License-Identifier: MIT */
/* The commands and their options, all in one table: the reader of arguments goes by it, and help
 * is printed from it. The words of an option stand in the order of the library's enumerators. */
#include <stddef.h>
#include <string.h>

#include "cli.h"

#define UNITS(means)                                                                               \
    {                                                                                              \
        "--units", "mm|in", means, false                                                           \
    }

const cli_command cli_commands[] = {
    {.name = "start",
     .operand = "PROFILE",
     .purpose = "a measuring sheet to fill in",
     .about =
         "Prints a measuring sheet for a kind of instrument: every figure the profile can give\n"
         "is there, and a ~ stands where you are to read one. What stays ~ is not given, and\n"
         "the plan says what to measure.",
     .examples = "sillet start steel-string-acoustic > job.yaml"},
    {.name = "plan",
     .operand = "SHEET",
     .many = true,
     .purpose = "what is wrong, in which order to put it right, how much",
     .about = "Prints the bench plan of a sheet: what was found, the steps in order with their\n"
              "amounts and what to read after each, the figures of nut and saddle, what will buzz\n"
              "and whether it will play in tune.\n"
              "Of several sheets, or of all in a folder (.yaml, .yml, .json), it prints a line\n"
              "each: what to do next and what nut and saddle wait for. A sheet that is wrong does\n"
              "not stop the rest.",
     .options = {{"--json", NULL,
                  "The result for programs, on one line. Of several sheets a line each:\n"
                  "{\"sheet\":.., \"exit\":.., \"result\":..}",
                  false},
                 UNITS("What a person is told lengths in; unless given, as the sheet."),
                 {"--stage", "now|rod|frets|nut|saddle",
                  "Only the findings and steps of one stage, and what stops all work.", false}},
     .examples = "sillet plan job.yaml\n"
                 "sillet plan job.yaml --stage nut --units in\n"
                 "sillet plan jobs/\n"
                 "sillet plan --json jobs/ > results.jsonl"},
    {.name = "draw",
     .operand = "SHEET",
     .purpose = "the same on paper, full size, to cut by",
     .about =
         "Draws the plan: the bench plan with boxes to tick, nut and saddle at full size and\n"
         "magnified with every dimension, templates to glue on, blanks to order, and where notes\n"
         "buzz or play out of tune. A part that must wait has no line anyone could cut to. Print\n"
         "at 100 % and measure the rulers.",
     .options =
         {{"-o", "OUT",
           "The file, whole or not at all: .pdf, the pack; .svg or .dxf, the 1:1 outlines of\n"
           "nut and saddle and nothing else. - is standard output.",
           true},
          {"--part", "all|nut|saddle", "One part alone.", false},
          {"--sheet", "NAME",
           "That one sheet of the pack, as .svg: bench, nut, saddle, ..; a wrong name tells\n"
           "which there are.",
           false},
          {"--paper", "A4|A3|Letter", "Of sheets; A4 unless given.", false},
          UNITS("What lengths are told in; unless given, as the sheet."),
          {"--decimal", "point|comma", "The mark in figures; point unless given.", false},
          {"--as", "pdf|svg|dxf", "What OUT is to be, where its name does not tell.", false}},
     .examples = "sillet draw job.yaml -o pack.pdf\n"
                 "sillet draw job.yaml -o nut.pdf --part nut --paper Letter\n"
                 "sillet draw job.yaml -o saddle.dxf --part saddle"},
    {.name = "sheet",
     .operand = "PROFILE|SHEET",
     .purpose = "a measuring sheet on paper, to fill in at the bench",
     .about = "Draws every reading there is to take, in the order of a started sheet: a figure of\n"
              "where to hold and where to look, what is wanted beside each blank, room for two\n"
              "visits. Of a sheet, what it knows already stands in its place.",
     .options = {{"-o", "OUT", "The .pdf, whole or not at all. - is standard output.", true},
                 {"--paper", "A4|A3|Letter", "A4 unless given.", false},
                 UNITS("What lengths are told in; unless given, as the sheet.")},
     .examples = "sillet sheet steel-string-acoustic -o blank.pdf\n"
                 "sillet sheet job.yaml -o again.pdf --paper Letter"},
    {.name = "serve",
     .purpose = "the same in a browser, on this machine alone",
     .about =
         "Shows a page to fill a sheet in and see its plan and drawings change while you type.\n"
         "Nobody else can reach it, and it reaches nothing else. Prints its address; Ctrl-C ends\n"
         "it.",
     .options =
         {{"--port", "PORT", "Where it listens; 7340 unless given, or one that is free.", false},
          {"--folder", "FOLDER",
           "Where its sheets are; nothing outside is read or written. Unless given, the one\n"
           "it is started in.",
           false},
          {"--open", NULL, "Opens it in the desktop's browser.", false}},
     .examples = "sillet serve --folder jobs"},
    {.name = "saddle",
     .purpose = "one string: how far to lower the saddle",
     .about =
         "No sheet: one string's action at the 12th fret as it is and as you want it gives how\n"
         "far the saddle must come down there, about twice the difference.",
     .options = {{"--scale", "LENGTH", "Of the instrument, without compensation.", true},
                 {"--action", "LENGTH", "At the 12th fret, string open, as read.", true},
                 {"--want", "LENGTH", "The action wanted.", true},
                 {"--setback", "LENGTH",
                  "What compensation makes the string longer by; 0 unless given.", false},
                 UNITS("What the answer is told in; mm unless given."),
                 {"--json", NULL, "The answer for programs, in mm.", false}},
     .examples = "sillet saddle --scale 25.5in --action 2.6mm --want 2.2mm"},
    {.name = "nut",
     .purpose = "one string: how deep to file its slot",
     .about = "No sheet: one string's gap at the 1st fret as it is and as you want it gives how\n"
              "deep to file its slot.",
     .options = {{"--scale", "LENGTH", "Of the instrument, without compensation.", true},
                 {"--first", "LENGTH", "The gap at the 1st fret, as read.", true},
                 {"--want", "LENGTH", "The gap wanted.", true},
                 {"--held", "3|2|open",
                  "How it is read: the string lying on the 3rd fret (3, unless given), on the\n"
                  "2nd, or open.",
                  false},
                 UNITS("What the answer is told in; mm unless given."),
                 {"--json", NULL, "The answer for programs, in mm.", false}},
     .examples = "sillet nut --scale 645mm --first 0.2mm --want 0.05mm"},
    {.name = "profiles",
     .purpose = "the kinds of instrument a sheet can name",
     .about = "Lists the names a sheet can give behind profile:. They are files in the folder\n"
              "$SILLET_PROFILES names, else in the one installed with the program."},
    {.name = NULL}};

const cli_command *cli_find_command(const char *name)
{
    const cli_command *command = cli_commands;
    while (command->name && strcmp(command->name, name) != 0) {
        command++;
    }
    return command->name ? command : NULL;
}
