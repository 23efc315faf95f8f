/* SPDX-License-Identifier: MIT */
/* The feelers that are told for a stack are those that a search of every choice finds. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "briefed.h"

/* Of the blades of a common set, as in brief/leaves.c, up to three that are the thinnest to make up a
 * stack; of those the fewest, of these the one with the thickest leaf, and the others as even as can be. */
static int leaves_of(const double *blade, int blades, double stack, double *leaf)
{
    double least = INFINITY, score = INFINITY;
    int found = 0;
    for (int a = 0; a < blades; a++) {
        for (int b = -1; b < a; b++) {
            for (int c = -1; c < (b < 0 ? 0 : b); c++) {
                const double of[] = {blade[a], b < 0 ? 0 : blade[b], c < 0 ? 0 : blade[c]};
                int count = 1 + (b >= 0) + (c >= 0);
                double sum = of[0] + of[1] + of[2];
                double rank = 1e6 * count - 1e3 * of[0] + of[1];
                if (sum < stack - 1e-9 || sum > least + 1e-9 ||
                    (sum > least - 1e-9 && rank >= score)) {
                    continue;
                }
                least = sum;
                score = rank;
                found = count;
                memcpy(leaf, of, sizeof of);
            }
        }
    }
    return least <= stack + 0.02 + 1e-9 ? found : 0;
}

/* Thinnest first, mm. */
static int blades_of(sil_unit unit, double *blade)
{
    static const double thin_mm[] = {0.03, 0.04}, thin_inch[] = {0.0015 * 25.4};
    bool mm = unit == SIL_MM;
    int count = mm ? 2 : 1;
    memcpy(blade, mm ? thin_mm : thin_inch, sizeof *blade * (size_t)count);
    for (int step = mm ? 1 : 2; step <= (mm ? 20 : 25); step++) {
        blade[count++] = step * (mm ? 0.05 : 0.0254);
    }
    return count;
}

/* The leaves told make up the stack as it is told, over it by 0.02 mm at most and never under; they
 * are told in the order they lie in. Returned: how many slots have any. */
static int see_leaves(const brief *b, double mm)
{
    int seen = 0;
    double blade[32];
    int blades = blades_of(b->unit, blade);
    for (int i = 0; i < b->strings; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        char joined[64] = "";
        double sum = 0.0;
        for (int k = 0; k < slot->leaves; k++) {
            size_t used = strlen(joined);
            snprintf(joined + used, sizeof joined - used, "%s%s", k > 0 ? " + " : "",
                     slot->leaf[k].shown);
            sum += strtod(slot->leaf[k].shown, NULL) * mm;
        }
        assert_string_equal(slot->leaf_words, joined);
        double leaf[3], stack = strtod(slot->stack_now.shown, NULL) * mm;
        assert_int_equal(slot->leaves,
                         brief_known(slot->stack_now) ? leaves_of(blade, blades, stack, leaf) : 0);
        for (int k = 0; k < slot->leaves; k++) {
            near(slot->leaf[k].exact, leaf[k], 1e-9);
        }
        if (slot->leaves > 0) {
            assert_true(sum >= stack - 1e-9 && sum <= stack + 0.02 + 1e-9);
            seen++;
        }
    }
    return seen;
}

static void leaves_make_up_the_stack(void **state)
{
    (void)state;
    uint64_t seed = 5;
    int seen[2] = {0, 0};
    for (int job = 0; job < JOBS; job++) {
        brief_free(next_brief(&seed, job));
        for (int unit = SIL_MM; unit <= SIL_INCH; unit++) {
            brief *b = brief_make(&plan, (sil_unit)unit);
            seen[unit == SIL_INCH] += see_leaves(b, unit == SIL_INCH ? 25.4 : 1.0);
            brief_free(b);
        }
    }
    assert_true(seen[0] > 100);
    assert_true(seen[1] > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(leaves_make_up_the_stack),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
