/* SPDX-License-Identifier: MIT */
/* What is told of a saddle that is cut or made: how much in this pass and after it, and how thick. */
#include <stdlib.h>
#include <string.h>

#include <sillet/sillet.h>

#include "briefed.h"

static int dressed_at_once;

/* What a dressed top keeps for later; nothing where less is left than a file takes. */
static void look_at_dressing(const brief *b)
{
    for (int i = 0; i < b->strings; i++) {
        double all = sil_dressed_off(b->plan, i), left = all - b->plan->saddle.dress_first[i];
        if (all > 0.0) {
            near(b->saddle.string[i].dress_left.exact, left < 0.005 ? 0.0 : left, 1e-9);
            dressed_at_once += left < 0.005;
        }
    }
}

/* What comes off the bottom: a pass of under a hundredth is none, and where it leaves less than a
 * file can take it takes all. */
static void the_bottom_is_told_by_what_comes_off(void **state)
{
    (void)state;
    uint64_t seed = 82;
    int sanded = 0, passes = 0;
    for (int job = 0; job < 3 * JOBS; job++) {
        brief *b = next_brief(&seed, job);
        const part_saddle *part = &b->saddle_part;
        double first[2], all[2];
        for (int end = 0; end < 2; end++) {
            double x = end == 0 ? part->length : 0;
            first[end] = part_base_at(part, part->base_first, x);
            all[end] = part_base_at(part, part->base_all, x);
            near(b->saddle.base_first[end].exact, first[end], part->base ? 1e-9 : (double)INFINITY);
        }
        double left = fmax(all[0] - first[0], all[1] - first[1]);
        assert_int_equal(b->saddle.base, part->base);
        assert_int_equal(b->saddle.takes_first, part->base && fmax(first[0], first[1]) >= 0.01);
        bool takes = part->base && fmax(all[0], all[1]) >= 0.01;
        assert_int_equal(b->saddle.sands_later, takes && !b->saddle.takes_first);
        assert_int_equal(b->saddle.dresses_later, takes && !b->saddle.one_pass);
        assert_true(!part->base || b->saddle.one_pass == (left < 0.005));
        for (int end = 0; end < 2 && part->base; end++) {
            near(b->saddle.base_all[end].exact, b->saddle.one_pass ? first[end] : all[end], 1e-9);
            passes += b->saddle.one_pass;
        }
        look_at_dressing(b);
        bool sands = b->saddle.remedy == SIL_SADDLE_SAND && !b->saddle.sands_later;
        bool feet = b->saddle.working == SIL_WORKING_FEET;
        if (sands && (part->base || b->saddle.dressed)) {
            assert_int_equal(strstr(b->saddle.headline, "feet") != NULL, part->base && feet);
            assert_int_equal(strstr(b->saddle.headline, "bottom") != NULL, part->base && !feet);
        }
        sanded += part->base;
        brief_free(b);
    }
    assert_true(sanded > 30 && passes > 0 && dressed_at_once > 0);
}

/* Plans that leave 0.003 mm after the first pass: too little for another. */
static void what_is_too_little_for_a_pass_goes_with_the_first(void **state)
{
    (void)state;
    const double rest = 0.003;
    uint64_t seed = 87;
    int sanded = 0, dressed = 0;
    for (int job = 0; job < JOBS; job++) {
        brief_free(next_brief(&seed, job));
        plan.saddle.cut = plan.saddle.cut_first;
        plan.saddle.cut.b0 += rest;
        for (int i = 0; i < plan.job->string_count; i++) {
            plan.saddle.dress_first[i] = plan.saddle.dress[i] - rest;
        }
        brief *b = brief_make(&plan, SIL_MM);
        for (int end = 0; end < 2 && b->saddle.base; end++) {
            assert_true(b->saddle.one_pass);
            near(b->saddle.base_all[end].exact, b->saddle.base_first[end].exact, 1e-12);
            sanded++;
        }
        for (int i = 0; i < b->strings; i++) {
            if (brief_known(b->saddle.string[i].dress_left)) {
                near(b->saddle.string[i].dress_left.exact, 0.0, 1e-12);
                dressed++;
            }
        }
        brief_free(b);
    }
    assert_true(sanded > 20 && dressed > 10);
}

/* The slot that is straight and nearest to where the strings play in tune: a saddle set in it reaches all
 * of them if it is as thick as twice the farthest of them lies off, square to the slot. */
static void a_saddle_thick_enough_reaches_every_string(void **state)
{
    (void)state;
    uint64_t seed = 86;
    int thicker = 0, slanted = 0;
    for (int job = 0; job < JOBS; job++) {
        brief *b = next_brief(&seed, job);
        double most = 0.0, slant = plan.bench.board.saddle_slant;
        bool known = true;
        for (int i = 0; i < b->strings; i++) {
            double z = plan.bench.board.saddle_z[i];
            double wanted = sil_line_at(plan.slot_as_built, z) + plan.compensation[i].off_slot;
            known = known && sil_known(plan.compensation[i].off_slot);
            most = fmax(most, fabs(wanted - sil_line_at(plan.slot_best, z)));
        }
        double needs = 2.0 * most * cos(slant);
        bool too_thin = needs > plan.job->saddle.thickness + 1e-6;
        if (known) {
            assert_int_equal(brief_known(b->saddle.best_thickness), too_thin);
            if (too_thin) {
                near(b->saddle.best_thickness.exact, needs, 1e-9);
                thicker++;
            }
        }
        const double degrees = 57.29577951308232;
        double lean = fabs(b->saddle_part.slant) * degrees;
        assert_int_equal(brief_known(b->saddle.lean), lean >= 0.05);
        if (lean >= 0.05) {
            near(atof(b->saddle.lean.shown), lean, 0.0501);
            slanted++;
        }
        brief_free(b);
    }
    assert_true(thicker > 10 && slanted > 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_bottom_is_told_by_what_comes_off),
        cmocka_unit_test(what_is_too_little_for_a_pass_goes_with_the_first),
        cmocka_unit_test(a_saddle_thick_enough_reaches_every_string),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
