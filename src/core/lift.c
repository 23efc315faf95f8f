/* SPDX-License-Identifier: MIT */
/* A stiff string over the edges of its slot. See docs/arithmetic.md, "The nut". */
#include <sillet/core/nut.h>

static double slope(double degrees)
{
    return tan(degrees * 3.14159265358979323846 / 180.0);
}

/* Away from the edges that it touches, a beam under tension obeys EI y'''' = T y''. It runs in
 * straight pieces, rounded off by k lambda/2 exp(-|x|/lambda) around an edge over which it turns by
 * a slope of k. Over the front edge it turns by `front`, over the back edge by the rest of `all`,
 * and it touches both:
 *
 *     lift - lambda/2 (front + back e) = 0
 *     lift - front length - lambda/2 (back + front e) = -length fall        e = exp(-length/lambda)
 *
 * An edge can only push. Where one of the two turns comes out below 0, the string does not touch
 * that edge, and turns over the other alone. It bends the same way all along, so it does not touch
 * the floor between the edges. */
double sil_slot_lift(const sil_slot_bend *bend)
{
    double lambda = sqrt(bend->stiffness_n_mm2 / bend->tension);
    double fall = slope(bend->fall_deg);
    double all = fmax(slope(bend->behind_deg), fall); /* fmax gives fall where the other is a NaN */
    double length = bend->length;
    if (!(lambda > 0.0) || !sil_known(fall)) {
        return SIL_UNKNOWN;
    }
    if (!(length > 0.0)) {
        return lambda * fall / 2.0;
    }
    double e = exp(-length / lambda);
    double front = (length * fall - lambda / 2.0 * all * (1.0 - e)) / (length - lambda * (1.0 - e));
    if (!(front > 0.0)) {
        return lambda / 2.0 * all - length * fall; /* over the back edge alone */
    }
    front = fmin(front, all); /* all of it: over the front edge alone */
    return lambda / 2.0 * (front + (all - front) * e);
}
