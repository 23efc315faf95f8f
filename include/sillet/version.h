/* SPDX-License-Identifier: MIT */
#ifndef SILLET_VERSION_H
#define SILLET_VERSION_H

/* Of the program, the library and the result; the Makefile reads it from here. In numbers, so that
 * a program can ask when it is built; docs/library.md says what a step of each promises. */
#define SILLET_VERSION "0.2.0"
#define SILLET_VERSION_MAJOR 0
#define SILLET_VERSION_MINOR 2
#define SILLET_VERSION_PATCH 0

#endif
