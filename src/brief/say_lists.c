/* SPDX-License-Identifier: MIT */
/* Lists of strings for the sentences at nut and saddle, what these say of both, and of findings that
 * have a sentence of their own their strings and their limit. */
#include "say.h"

/* Less than this is too little to take off, mm. */
static const double least_pass = 0.01;

tell_list say_slots(const brief *b, sil_verdict verdict)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = b->nut.slot[i].verdict == verdict;
    }
    return list;
}

tell_list say_slots_with(const brief *b, tell_list list, say_slot_figure *figure)
{
    for (int i = 0; i < list.count; i++) {
        list.figure[i] = figure(&b->nut.slot[i]);
    }
    return list;
}

tell_list say_strings_with(const brief *b, tell_list list, say_bearing_figure *figure)
{
    for (int i = 0; i < list.count; i++) {
        list.figure[i] = figure(&b->saddle.string[i]);
    }
    return list;
}

tell_list say_take_coarse(tell_list *first, const double *hold)
{
    tell_list coarse = *first;
    for (int i = 0; i < first->count; i++) {
        bool little = first->chosen[i] && first->figure[i].exact < least_pass;
        coarse.chosen[i] = little && !sil_known(hold[i]);
        first->chosen[i] = first->chosen[i] && !little;
    }
    return coarse;
}

void say_first_and_final(const char *size, const char *of_first, const tell_list *first,
                         const tell_list *final, telling *t)
{
    tell_each(t, of_first, first);
    tell_unit(t);
    tell(t, ". Take off no more until you have strung up and measured. The final %s is ", size);
    tell_each(t, size, final);
    tell_unit(t);
}

void say_next_string(const sil_finding *f, int k, telling *t)
{
    tell(t, k == 0 ? ": " : "; ");
    if (t->b->strings > 1) {
        tell(t, "string ");
        tell_string(t, f[k].string);
        tell(t, " ");
    }
}

void say_at_most(const sil_finding *f, telling *t)
{
    tell(t, " (at most ");
    tell_length(t, "high", -1, figure_nearest(t->b, f->high));
    tell(t, ")");
}
