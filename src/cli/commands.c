/* SPDX-License-Identifier: MIT */
/* The commands and their options in one table. It is used to read arguments and to print help.
 * The words of an option are in the order of the library's enumerators. */
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
         "Prints a measuring sheet for a kind of instrument, with every figure the profile can\n"
         "give, and a ~ where you fill in what you read. Leave the ~ for what you did not\n"
         "measure: the plan will say what it needs.\n"
         "With --make it is a dozen lines for a new part, and nothing else.",
     .options = {{"--make", "nut|saddle", "A short sheet for a nut or saddle made from a blank.",
                  false}},
     .examples = "sillet start steel-string-acoustic > job.yaml\n"
                 "sillet start steel-string-acoustic --make nut > nut.yaml"},
    {.name = "plan",
     .operand = "SHEET",
     .many = true,
     .purpose = "what is wrong, in which order to put it right, how much",
     .about =
         "Prints the bench plan of a sheet on one screen: how each stage is, what to do next\n"
         "and how much, the steps after it, and what was found. With --full it has every step\n"
         "in full, the figures of nut and saddle, what will buzz and what plays in tune.\n"
         "For several sheets, or all in a folder (.yaml, .yml, .json), it prints a line each:\n"
         "what to do next and what nut and saddle are waiting for. A sheet with mistakes does\n"
         "not stop the rest.",
     .options = {{"--full", NULL, "The whole plan, with every step, note and table.", false},
                 {"--json", NULL,
                  "The result for programs, on one line. For several sheets a line each:\n"
                  "{\"sheet\":.., \"exit\":.., \"result\":..}",
                  false},
                 UNITS("The unit lengths are shown in; unless given, the sheet's."),
                 {"--stage", "now|rod|frets|nut|saddle|tune",
                  "Only the findings and steps of one stage, and what stops all work.", false},
                 {"--sort", "sheet|waits",
                  "The order of a table of sheets: as given, a folder's by name; or by what they\n"
                  "wait for, and the others by what is next.",
                  false}},
     .examples = "sillet plan job.yaml\n"
                 "sillet plan job.yaml --full\n"
                 "sillet plan job.yaml --stage nut --units in\n"
                 "sillet plan jobs/ --sort waits\n"
                 "sillet plan --json jobs/ > results.jsonl"},
    {.name = "draw",
     .operand = "SHEET",
     .purpose = "the same on paper, full size, to cut by",
     .about =
         "Draws the plan: a bench card with the next step's figures large, and the bench plan\n"
         "with boxes to tick. Nut and saddle follow at full size and magnified with every\n"
         "dimension, templates and blanks, as far as they are worked on. It also has where notes\n"
         "buzz or play out of tune. A part that must wait is drawn without a line to cut to.\n"
         "Print at 100 % and measure the rulers.",
     .options =
         {{"-o", "OUT",
           "The file, whole or not at all: .pdf, the pack; .svg or .dxf, the 1:1 outlines of\n"
           "nut and saddle and nothing else; .stl, the finished parts as solids. - is standard\n"
           "output.",
           true},
          {"--part", "all|nut|saddle", "One part alone.", false},
          {"--sheet", "NAME",
           "One sheet of the pack, as .pdf or .svg: card, bench, nut, saddle, ..; a wrong name\n"
           "lists which there are. owner is a page for the owner in everyday words.",
           false},
          {"--all", NULL, "Sheets of parts that are left alone, too.", false},
          {"--paper", "A4|A3|Letter", "The paper's size; A4 unless given.", false},
          UNITS("The unit lengths are shown in; unless given, the sheet's."),
          {"--decimal", "point|comma", "The decimal mark; point unless given.", false},
          {"--as", "pdf|svg|dxf|stl", "The format, if OUT's name does not show it.", false}},
     .examples = "sillet draw job.yaml -o pack.pdf\n"
                 "sillet draw job.yaml -o card.pdf --sheet card\n"
                 "sillet draw job.yaml -o nut.pdf --part nut --paper Letter\n"
                 "sillet draw job.yaml -o saddle.dxf --part saddle"},
    {.name = "sheet",
     .operand = "PROFILE|SHEET",
     .purpose = "a measuring sheet on paper, to fill in at the bench",
     .about = "Draws every reading to take, in the order of the sheet 'start' prints. Each has a\n"
              "picture of where to hold and where to look, its range, and room for two visits.\n"
              "Made from a sheet, it has what that sheet knows filled in.",
     .options = {{"-o", "OUT", "The .pdf, whole or not at all. - is standard output.", true},
                 {"--paper", "A4|A3|Letter", "A4 unless given.", false},
                 UNITS("The unit lengths are shown in; unless given, the sheet's.")},
     .examples = "sillet sheet steel-string-acoustic -o blank.pdf\n"
                 "sillet sheet job.yaml -o again.pdf --paper Letter"},
    {.name = "serve",
     .purpose = "the same in a browser, on this machine alone",
     .about =
         "Shows a page where you fill in a sheet and see its plan and drawings change while you\n"
         "type. Only this machine can reach it, and it reaches nothing else. It prints its\n"
         "address; Ctrl-C ends it.",
     .options =
         {{"--port", "PORT", "Where it listens; 7340 unless given, or one that is free.", false},
          {"--folder", "FOLDER",
           "The folder of its sheets; nothing outside is read or written. Unless given, the\n"
           "one it is started in.",
           false},
          {"--lan", "ADDRESS",
           "Hands out the page as one file, which works without a network, to a phone or a\n"
           "tablet: this machine's address in a private network, as 192.168.1.20. Nothing else\n"
           "is there, no folder and no sheet.",
           false},
          {"--open", NULL, "Opens it in the desktop's browser.", false}},
     .examples = "sillet serve --folder jobs"},
    {.name = "saddle",
     .purpose = "one string: how far to lower the saddle",
     .about =
         "Needs no sheet. From one string's action at the 12th fret, as it is and as you want it,\n"
         "it works out how far the saddle must come down there. That is about twice the\n"
         "difference.",
     .options = {{"--scale", "LENGTH", "Scale of the instrument, without compensation.", true},
                 {"--action", "LENGTH", "Action at the 12th fret, string open, as read.", true},
                 {"--want", "LENGTH", "The action you want.", true},
                 {"--setback", "LENGTH",
                  "How much compensation lengthens the string; 0 unless given.", false},
                 UNITS("The unit of the answer; mm unless given."),
                 {"--json", NULL, "The answer for programs, in mm.", false}},
     .examples = "sillet saddle --scale 25.5in --action 2.6mm --want 2.2mm"},
    {.name = "nut",
     .purpose = "one string: how deep to file its nut slot",
     .about =
         "Needs no sheet. From one string's gap at the 1st fret, as it is and as you want it,\n"
         "it works out how deep to file its nut slot.",
     .options = {{"--scale", "LENGTH", "Scale of the instrument, without compensation.", true},
                 {"--first", "LENGTH", "The gap at the 1st fret, as read.", true},
                 {"--want", "LENGTH", "The gap you want.", true},
                 {"--held", "3|2|open",
                  "How you read it: the string lying on the 3rd fret (3, unless given), on the\n"
                  "2nd, or open.",
                  false},
                 UNITS("The unit of the answer; mm unless given."),
                 {"--json", NULL, "The answer for programs, in mm.", false}},
     .examples = "sillet nut --scale 645mm --first 0.2mm --want 0.05mm"},
    {.name = "tune",
     .purpose = "one string: how far to move its saddle along",
     .about =
         "Needs no sheet: how far one string's saddle must move, and which way. The cents are "
         "read\n"
         "at the 12th fret, against the octave of the open string. Set relief, nut and action\n"
         "first: they change it.",
     .options = {{"--scale", "LENGTH", "Scale of the instrument, without compensation.", true},
                 {"--cents", "CENTS", "As read at the 12th fret: 12 is sharp, -7 is flat.", true},
                 {"--setback", "LENGTH",
                  "How much compensation lengthens the string; 0 unless given.", false},
                 {"--pitch", "LENGTH", "Travel of one turn of its intonation screw, for the turns.",
                  false},
                 UNITS("The unit of the answer; mm unless given."),
                 {"--json", NULL, "The answer for programs, in mm.", false}},
     .examples = "sillet tune --scale 25.5in --cents 12 --pitch 0.5mm"},
    {.name = "tools",
     .operand = "FOLDER",
     .purpose = "what your own tools prove to read to",
     .about =
         "Looks through a folder of sheets for what was read at two visits and not worked between\n"
         "them: the two readings differ only by what the tool reads to. With 12 such pairs or\n"
         "more it says how closely a tool reads, against what the sheets give it, and prints\n"
         "the line for shop.yaml. It needs the humidity at both visits, within 5 %.",
     .options = {UNITS("The unit of the answer; mm unless given."),
                 {"--json", NULL, "The answer for programs, in mm, on one line.", false}},
     .examples = "sillet tools jobs/"},
    {.name = "profiles",
     .purpose = "the kinds of instrument a sheet can name",
     .about = "Lists the names a sheet can give after profile:. They are files in the folder that\n"
              "$SILLET_PROFILES names, otherwise in the one installed with the program."},
    {.name = NULL}};

const cli_command *cli_find_command(const char *name)
{
    const cli_command *command = cli_commands;
    while (command->name && strcmp(command->name, name) != 0) {
        command++;
    }
    return command->name ? command : NULL;
}
