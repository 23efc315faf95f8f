/* SPDX-License-Identifier: MIT */
/* How the papers of one name are filled: on as few papers as their content needs, and with no last
 * paper that is nearly empty. */
#include "papers.h"

/* A last paper that is filled less than this looks like a leftover. */
static const double least_filled = 0.38;

/* The least share of its room that content takes when it is drawn densely. Where even that would not
 * save a paper, it is not tried. */
static const double densest = 0.65;

typedef struct filled {
    int papers;
    double last, all; /* how much of the last of them, and of all, is filled; 1 is a full paper */
} filled;

/* How far down the room of a paper its content goes: 0..1. */
static double share(const sil_drawing *drawing, int paper)
{
    const draw_paper *it = &drawing->papers[paper];
    draw_room room = draw_paper_room(drawing, &it->heading, 0);
    double low =
        it->shapes != NULL && it->shapes->count > 0 ? draw_shapes_box(it->shapes).bottom : room.top;
    return (room.top - low) / (room.top - room.bottom);
}

static filled draw_once(sil_drawing *drawing, paper_filler *draw, int before, bool dense,
                        double lift)
{
    draw_flow_drop(drawing, before);
    drawing->draft.dense = dense;
    drawing->lift = lift;
    draw(drawing);
    drawing->draft.dense = false;
    drawing->lift = 0;
    filled f = {.papers = drawing->paper_count - before};
    for (int paper = before; paper < drawing->paper_count; paper++) {
        f.last = share(drawing, paper);
        f.all += f.last;
    }
    return f;
}

static bool leaves_over(filled f)
{
    return f.papers > 1 && f.last < least_filled;
}

/* Leaves more and more room at the foot of the papers, so that what does not fit goes on to the last
 * one, until that is no leftover. */
static void spread(sil_drawing *drawing, paper_filler *draw, int before, bool dense, int papers)
{
    const int step = 8, most = 120; /* mm */
    for (int lift = step; lift <= most && !drawing->no_memory; lift += step) {
        filled f = draw_once(drawing, draw, before, dense, lift);
        if (f.papers > papers) {
            break;
        }
        if (!leaves_over(f)) {
            return;
        }
    }
    draw_once(drawing, draw, before, dense, 0);
}

void paper_fill(sil_drawing *drawing, paper_filler *draw)
{
    int before = drawing->paper_count;
    filled ample = draw_once(drawing, draw, before, false, 0), chosen = ample;
    bool dense = false;
    if (ample.papers > 1 && densest * ample.all <= ample.papers - 1) {
        filled close = draw_once(drawing, draw, before, true, 0);
        dense = close.papers < ample.papers;
        chosen = dense ? close : draw_once(drawing, draw, before, false, 0);
    }
    if (leaves_over(chosen)) {
        spread(drawing, draw, before, dense, chosen.papers);
    }
}
