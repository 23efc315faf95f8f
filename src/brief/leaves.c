/* SPDX-License-Identifier: MIT */
/* The feelers that make up a stack. */
#include <stdlib.h>

#include "within.h"

enum { BLADES_MAX = 32 };

/* A set of feelers, thinnest first, mm. Common sets, no source: in millimetres every 0.05 up to 1 and
 * one each of 0.03 and 0.04; in inches every thousandth from 0.002 to 0.025, and 0.0015. */
static int blades_of(sil_unit unit, double *blade)
{
    int count = 0;
    if (unit == SIL_INCH) {
        blade[count++] = 0.0015 * 25.4;
        for (int thousandths = 2; thousandths <= 25; thousandths++) {
            blade[count++] = thousandths * 0.001 * 25.4;
        }
        return count;
    }
    blade[count++] = 0.03;
    blade[count++] = 0.04;
    for (int step = 1; step <= 20; step++) {
        blade[count++] = step * 0.05;
    }
    return count;
}

/* A choice of blades, each once: its places in the set, or -1, and its thickness. */
typedef struct choice {
    int place[BRIEF_BLADES];
    double sum;
} choice;

/* Of the choices that are at least as thick as the stack, the thinnest; of equal ones, that with the
 * fewest leaves, then that with the thickest, whose others are as even as can be. */
static choice best_of(const double *blade, int count, double stack)
{
    const double equal = 1e-9;
    choice best = {{-1, -1, -1}, (double)INFINITY};
    for (int a = count - 1; a >= 0; a--) {
        for (int b = -1; b < a; b++) {
            if (b >= 0 && blade[a] + 2 * blade[b] < stack - equal) {
                continue; /* a third leaf is thinner still, and does not make it up */
            }
            for (int c = -1; c < (b < 0 ? 0 : b); c++) {
                double sum = blade[a] + (b < 0 ? 0 : blade[b]) + (c < 0 ? 0 : blade[c]);
                if (sum > best.sum + equal) {
                    break; /* a thicker third leaf is only farther over */
                }
                int leaves = 1 + (b >= 0) + (c >= 0);
                int least = 1 + (best.place[1] >= 0) + (best.place[2] >= 0);
                if (sum >= stack - equal && (sum < best.sum - equal || leaves < least)) {
                    best = (choice){{a, b, c}, sum};
                }
            }
        }
    }
    return best;
}

void brief_fill_leaves(brief *b, brief_slot *slot)
{
    const double most_over = 0.02; /* as far as a stack may be off */
    double blade[BLADES_MAX];
    double stack =
        strtod(slot->stack_now.shown, NULL) * (b->unit == SIL_INCH ? 25.4 : 1); /* as rounded up */
    slot->leaf_words = "";
    if (!brief_known(slot->stack_now)) {
        return;
    }
    choice best = best_of(blade, blades_of(b->unit, blade), stack);
    if (!(best.sum <= stack + most_over + 1e-9)) {
        return;
    }
    for (int i = 0; i < BRIEF_BLADES && best.place[i] >= 0; i++) {
        slot->leaf[i] = figure_nearest(b, blade[best.place[i]]);
        slot->leaf_words =
            i == 0 ? text_keep(&b->store, "%s", slot->leaf[i].shown)
                   : text_keep(&b->store, "%s + %s", slot->leaf_words, slot->leaf[i].shown);
        slot->leaves = i + 1;
    }
}
