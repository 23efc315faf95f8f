/* SPDX-License-Identifier: MIT */
/* The least-squares circle of a saddle's top. It starts from a parabola and improves it by
 * Gauss-Newton steps on the radial misfit. */
#include <sillet/core/saddle.h>

static const double most_radius =
    3000.0; /* no tool can tell a flatter curve from a straight line */

enum { STEPS_MAX = 100 };

/* A circle given by its highest point (z, top) and its radius. For a flat arc these hardly depend
 * on one another, which cannot be said of its centre and radius. */
typedef struct circle {
    double z, top, radius;
} circle;

/* Solves a 3 x 3 system by elimination with row pivots; false where it is singular. */
static bool solve3(double m[3][4], double *answer)
{
    for (int k = 0; k < 3; k++) {
        int best = k;
        for (int r = k + 1; r < 3; r++) {
            best = fabs(m[r][k]) > fabs(m[best][k]) ? r : best;
        }
        for (int c = 0; c < 4; c++) {
            double kept = m[k][c];
            m[k][c] = m[best][c];
            m[best][c] = kept;
        }
        if (m[k][k] == 0.0) {
            return false;
        }
        for (int r = k + 1; r < 3; r++) {
            double share = m[r][k] / m[k][k];
            for (int c = k; c < 4; c++) {
                m[r][c] -= share * m[k][c];
            }
        }
    }
    for (int k = 2; k >= 0; k--) {
        answer[k] = m[k][3];
        for (int c = k + 1; c < 3; c++) {
            answer[k] -= m[k][c] * answer[c];
        }
        answer[k] /= m[k][k];
    }
    return true;
}

/* One Gauss-Newton step from a circle. */
static bool find_step(circle c, int count, const double *z, const double *y, double *step)
{
    double m[3][4] = {{0.0}};
    for (int i = 0; i < count; i++) {
        double dz = z[i] - c.z;
        double dy = y[i] - c.top + c.radius;
        double r = hypot(dz, dy);
        /* 1 - dy/r without cancellation: dz^2 / (r (r + dy)) */
        const double row[4] = {-dz / r, -dy / r, -dz * dz / (r * (r + dy)), -(r - c.radius)};
        for (int p = 0; p < 3; p++) {
            for (int q = 0; q < 4; q++) {
                m[p][q] += row[p] * row[q];
            }
        }
    }
    return solve3(m, step);
}

/* The parabola y = a + b z + c z^2 through the points by least squares, and the circle that fits
 * its top. A flat arc is so close to it that a few steps are enough. */
static bool begin(int count, const double *z, const double *y, circle *c)
{
    double m[3][4] = {{0.0}};
    for (int i = 0; i < count; i++) {
        const double row[4] = {1.0, z[i], z[i] * z[i], y[i]};
        for (int p = 0; p < 3; p++) {
            for (int q = 0; q < 4; q++) {
                m[p][q] += row[p] * row[q];
            }
        }
    }
    double a[3];
    if (!solve3(m, a) || !(a[2] < 0.0)) {
        return false;
    }
    c->radius = -1.0 / (2.0 * a[2]);
    c->z = a[1] * c->radius;
    c->top = a[0] + a[1] * c->z / 2.0;
    return true;
}

double sil_top_radius(int count, const double *z, const double *height)
{
    circle c;
    if (count < 3 || !begin(count, z, height, &c)) {
        return SIL_UNKNOWN;
    }
    for (int k = 0; k < STEPS_MAX; k++) {
        double step[3];
        if (!find_step(c, count, z, height, step)) {
            break;
        }
        c.z += step[0];
        c.top += step[1];
        c.radius += step[2];
        if (fabs(step[2]) < 1e-9 * c.radius) {
            break;
        }
    }
    return c.radius > 0.0 && c.radius <= most_radius ? c.radius : SIL_UNKNOWN;
}
