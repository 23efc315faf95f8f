/* SPDX-License-Identifier: MIT */
/* Lays out the frets of a board: straight lines through the frets of the two outer strings, which
 * every string between crosses where it lies. See docs/arithmetic.md, "Fans". */
#include <sillet/core/board.h>

/* A straight line in plan, x along the centre line for a place z across. */
typedef struct straight {
    double x, z;  /* a point of it */
    double slope; /* change of x for 1 mm across */
} straight;

static double at(straight line, double z)
{
    return line.x + line.slope * (z - line.z);
}

static straight through(double x, double z, double other_x, double other_z)
{
    return (straight){x, z, other_x == x ? 0.0 : (other_x - x) / (other_z - z)};
}

/* The line across the board where a share of each outer scale lies behind it: 0 is the nut, 1 the
 * line the saddle would stand on without setback, and between them are the frets. */
static straight across(const sil_board *board, double share)
{
    double x[2], z[2];
    for (int end = 0; end < 2; end++) {
        int i = end == 0 ? 0 : board->strings - 1;
        double own = board->scale[i] * share;
        x[end] = board->nut_x[i] + own;
        z[end] = sil_string_z(board, i, own);
    }
    return through(x[0], z[0], x[1], z[1]);
}

/* Where the string crosses a line, from its own nut. z of the string is linear in that distance, so
 * this is one linear equation. */
static double crossing(const sil_board *board, int i, straight line)
{
    double lean = (board->saddle_z[i] - board->nut_z[i]) / board->saddle_x[i];
    return (at(line, board->nut_z[i]) - board->nut_x[i]) / (1.0 - line.slope * lean);
}

/* The scale of an inner string: it ends its setback past the line where the scales end, and the way
 * it takes there depends on where it ends. That makes an equation of the second degree:
 * S = a + b S/(S + setback), a the line's place at the string's nut, b what the line gains by the
 * time it reaches the string's place at the saddle. */
static double inner_scale(const sil_board *board, int i, straight line, double setback)
{
    double a = at(line, board->nut_z[i]) - board->nut_x[i];
    double b = line.slope * (board->saddle_z[i] - board->nut_z[i]);
    double half = (a + b - setback) / 2.0;
    return half + sqrt(half * half + a * setback);
}

/* How far a straight part across the outer strings is slanted from square. */
static double slant(double treble_x, double bass_x, double treble_z, double bass_z)
{
    return atan2(bass_x - treble_x, treble_z - bass_z);
}

static void lay_slants(sil_board *board)
{
    int bass = board->strings - 1;
    const double *nut = board->nut_x, *scale = board->scale;
    board->nut_slant = board->saddle_slant = 0.0;
    if (bass > 0) {
        board->nut_slant = slant(nut[0], nut[bass], board->nut_z[0], board->nut_z[bass]);
        board->saddle_slant = slant(nut[0] + scale[0], nut[bass] + scale[bass], board->saddle_z[0],
                                    board->saddle_z[bass]);
    }
}

/* The last fret to lay. Action is given at fret 12 even where the board has fewer. */
static int last_laid(const sil_board *board)
{
    return board->frets < 12 ? 12 : board->frets;
}

static void lay_drops(sil_board *board)
{
    for (int i = 0; i < board->strings; i++) {
        for (int n = 0; n <= last_laid(board); n++) {
            double radius = sil_board_radius(board, sil_axis_x(board, i, n));
            double z = sil_string_z(board, i, board->fret_x[i][n]);
            board->drop[i][n] = sil_radius_drop(radius, z);
        }
    }
}

/* One scale: every fret is square, and every string has the same places. */
static void lay_square(sil_board *board, double scale, const double *setback)
{
    for (int n = 0; n <= last_laid(board); n++) {
        board->spine_x[n] = sil_fret_place(scale, n);
    }
    for (int i = 0; i < board->strings; i++) {
        board->scale[i] = scale;
        board->saddle_x[i] = scale + setback[i];
        board->nut_x[i] = 0.0;
        for (int n = 0; n <= last_laid(board); n++) {
            board->fret_x[i][n] = board->spine_x[n];
        }
    }
}

/* The outer strings: their frets are given by their scales, and level at the square fret. Measured
 * from where the nut crosses the centre line. */
static void lay_outer(sil_board *board, const sil_fan *fan, const double *setback)
{
    int bass = board->strings - 1;
    double from_square[2] = {-sil_fret_place(fan->treble, fan->square),
                             -sil_fret_place(fan->bass, fan->square)};
    straight nut = through(from_square[0], board->nut_z[0], from_square[1], board->nut_z[bass]);
    for (int end = 0; end < 2; end++) {
        int i = end == 0 ? 0 : bass;
        board->nut_x[i] = from_square[end] - at(nut, 0.0);
        board->scale[i] = end == 0 ? fan->treble : fan->bass;
        board->saddle_x[i] = board->scale[i] + setback[i];
    }
}

static void lay_inner(sil_board *board, const double *setback)
{
    straight nut = across(board, 0.0), end = across(board, 1.0);
    for (int i = 1; i < board->strings - 1; i++) {
        board->nut_x[i] = at(nut, board->nut_z[i]);
        board->scale[i] = inner_scale(board, i, end, setback[i]);
        board->saddle_x[i] = board->scale[i] + setback[i];
    }
}

static void lay_frets(sil_board *board)
{
    int bass = board->strings - 1;
    for (int n = 0; n <= last_laid(board); n++) {
        straight fret = across(board, sil_fret_place(1.0, n));
        board->spine_x[n] = at(fret, 0.0);
        for (int i = 0; i <= bass; i++) {
            bool outer = i == 0 || i == bass;
            board->fret_x[i][n] =
                outer ? sil_fret_place(board->scale[i], n) : crossing(board, i, fret);
        }
    }
}

void sil_board_fan(sil_board *board, const sil_fan *fan, const double *setback)
{
    if (board->strings < 2 || fan->treble == fan->bass) {
        lay_square(board, fan->treble, setback);
    } else {
        lay_outer(board, fan, setback);
        lay_inner(board, setback);
        lay_frets(board);
    }
    lay_drops(board);
    lay_slants(board);
}

void sil_board_lay(sil_board *board, double scale, const double *setback)
{
    for (int i = 0; i < board->strings; i++) {
        board->course[i] = i;
    }
    sil_board_fan(board, &(sil_fan){scale, scale, 0}, setback);
}
