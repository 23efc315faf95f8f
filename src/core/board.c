/* SPDX-License-Identifier: MIT */
/* The board: frets, neck, crowns. See docs/arithmetic.md, "The crown line". */
#include <sillet/core/board.h>

bool sil_board_bends(const sil_board *board)
{
    return board->join > 2;
}

double sil_fret_place(double scale, int fret)
{
    return scale * (1.0 - exp2(-fret / 12.0));
}

double sil_radius_drop(double radius, double z)
{
    if (isinf(radius)) {
        return 0.0;
    }
    return z * z / (radius + sqrt((radius - z) * (radius + z)));
}

double sil_board_radius(const sil_board *board, double x)
{
    if (isinf(board->radius_nut) || isinf(board->radius_end)) {
        return (double)INFINITY;
    }
    double share = x / board->spine_x[board->frets];
    return board->radius_nut + (board->radius_end - board->radius_nut) * share;
}

double sil_string_z(const sil_board *board, int string, double x)
{
    double nut = board->nut_z[string];
    return nut + (board->saddle_z[string] - nut) * x / board->saddle_x[string];
}

double sil_course_share(const int *course, int strings, int string)
{
    int last = course[strings - 1];
    return last > 0 ? (double)course[string] / last : 0.0;
}

double sil_axis_x(const sil_board *board, int string, int fret)
{
    return string < 0 ? board->spine_x[fret] : board->nut_x[string] + board->fret_x[string][fret];
}

double sil_saddle_axis_x(const sil_board *board, int string)
{
    return board->nut_x[string] + board->saddle_x[string];
}

/* Depth of the crown line below the chord for a bend of 1, mm^2. A bend scales this shape. */
static double sag_shape(const sil_board *board, double x)
{
    double first = board->spine_x[1];
    double join = board->spine_x[board->join];
    return x <= join ? (x - first) * (join - x) : -(join - first) * (x - join);
}

/* Depth below the chord that does not come from the bend: the fall-away built in over the body. */
static double sag_built(const sil_board *board, double x)
{
    double join = board->spine_x[board->join];
    if (x <= join) {
        return 0.0;
    }
    double span = board->spine_x[board->frets] - join;
    return span > 0.0 ? board->fallaway * (x - join) / span : 0.0;
}

double sil_sag(const sil_board *board, double bend, double x)
{
    return bend * sag_shape(board, x) + sag_built(board, x);
}

/* Height of a crown on a straight neck; x: its place along the centre line. */
static double straight_at(const sil_board *board, const sil_crowns *crowns, int string, int fret,
                          double x)
{
    double height = -sag_built(board, x);
    if (string < 0) {
        return height;
    }
    return height - board->drop[string][fret] + (crowns ? crowns->off[string][fret] : 0.0);
}

static double straight_crown(const sil_board *board, const sil_crowns *crowns, int string, int fret)
{
    return straight_at(board, crowns, string, fret, sil_axis_x(board, string, fret));
}

double sil_crown_height(const sil_board *board, const sil_fit *fit, int string, int fret)
{
    double x = sil_axis_x(board, string, fret);
    return straight_at(board, &fit->crowns, string, fret, x) - fit->bend * sag_shape(board, x);
}

/* A quantity at fret `over`, less the value that a straight line from fret `low` to fret `high` has
 * there, under a string or on the centre line. */
static double off_the_line(const sil_board *board, const sil_relief_reading *reading, int string,
                           double low, double over, double high)
{
    double x_low = sil_axis_x(board, string, reading->low);
    double share = (sil_axis_x(board, string, reading->over) - x_low) /
                   (sil_axis_x(board, string, reading->high) - x_low);
    return over - (low + (high - low) * share);
}

double sil_bend_from_relief(const sil_board *board, const sil_crowns *crowns,
                            const sil_relief_reading *reading)
{
    if (!sil_board_bends(board)) {
        return 0.0;
    }
    if (!sil_known(reading->gap)) {
        return SIL_UNKNOWN;
    }
    int string = reading->straightedge ? -1 : reading->string;
    double straight =
        off_the_line(board, reading, string, straight_crown(board, crowns, string, reading->low),
                     straight_crown(board, crowns, string, reading->over),
                     straight_crown(board, crowns, string, reading->high));
    double shape = off_the_line(board, reading, string,
                                sag_shape(board, sil_axis_x(board, string, reading->low)),
                                sag_shape(board, sil_axis_x(board, string, reading->over)),
                                sag_shape(board, sil_axis_x(board, string, reading->high)));
    return (reading->gap + straight) / shape;
}

double sil_relief(const sil_board *board, double bend)
{
    if (!sil_board_bends(board)) {
        return 0.0;
    }
    return bend * sag_shape(board, board->spine_x[board->relief_at]);
}

double sil_bend(const sil_board *board, double relief)
{
    if (!sil_board_bends(board)) {
        return 0.0;
    }
    return relief / sag_shape(board, board->spine_x[board->relief_at]);
}
