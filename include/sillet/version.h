/* SPDX-License-Identifier: MIT */
#ifndef SILLET_VERSION_H
#define SILLET_VERSION_H

/* The version of the program, the library and the result. The Makefile reads it from here. It is
 * also given as numbers, so that a program can test it when it is compiled. docs/library.md says
 * what may change when each number goes up. */
#define SILLET_VERSION "0.2.0"
#define SILLET_VERSION_MAJOR 0
#define SILLET_VERSION_MINOR 2
#define SILLET_VERSION_PATCH 0

#endif
