/* SPDX-License-Identifier: MIT */
/* WebAssembly cannot leave several functions at once. Here only want of memory, or a document that
 * libharu cannot go on with, would make the program do so: then it stops, and the page's script
 * starts it again. */
#ifndef SILLET_PORT_SETJMP_H
#define SILLET_PORT_SETJMP_H

typedef int jmp_buf[1];

static inline int setjmp(jmp_buf to)
{
    (void)to;
    return 0;
}

static inline _Noreturn void longjmp(jmp_buf to, int value)
{
    (void)to;
    (void)value;
    __builtin_trap();
}

#endif
