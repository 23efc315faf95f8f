/* SPDX-License-Identifier: MIT */
#ifndef SILLET_VERSION_H
#define SILLET_VERSION_H

/* Of the program, the library and the result; the Makefile reads it from here. */
#define SIL_VERSION "0.1.0"

#endif
