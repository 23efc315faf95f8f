/* SPDX-License-Identifier: MIT */
/* The width of a pen. */
#include <math.h>

#include "writer.h"

double write_pen_width(const write_file_about *about, const draw_look *look)
{
    double width = about->hairlines ? look->hair : look->width;
    return about->widest > 0 ? fmin(about->widest, width) : width;
}
