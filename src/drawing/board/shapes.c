/* SPDX-License-Identifier: MIT */
#include "shapes.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double degree = 0.017453292519943295;
static const draw_box nothing = {(double)INFINITY, (double)INFINITY, -(double)INFINITY,
                                 -(double)INFINITY};

draw_shapes *draw_shapes_new(draw_letters *letters)
{
    draw_shapes *list = calloc(1, sizeof *list);
    if (list != NULL) {
        list->letters = letters;
        list->box = nothing;
    }
    return list;
}

void draw_shapes_free(draw_shapes *list)
{
    if (list == NULL) {
        return;
    }
    free(list->shapes);
    free(list->points);
    free(list->corners);
    free(list->bytes);
    free(list);
}

draw_box draw_box_around(draw_box a, draw_box b)
{
    return (draw_box){fmin(a.left, b.left), fmin(a.bottom, b.bottom), fmax(a.right, b.right),
                      fmax(a.top, b.top)};
}

draw_box draw_shapes_box(const draw_shapes *list)
{
    return list != NULL ? list->box : (draw_box){0};
}

static bool usable(draw_shapes *list)
{
    return list != NULL && !list->no_memory && !list->no_number;
}

/* Makes room for more items. If memory runs out, the list records the fault. */
static bool grow(draw_shapes *list, void **items, int *room, int count, int more, size_t size)
{
    if (count + more <= *room) {
        return true;
    }
    int wanted = *room * 2 > count + more ? *room * 2 : count + more + 32;
    void *larger = realloc(*items, (size_t)wanted * size);
    if (larger == NULL) {
        list->no_memory = true;
        return false;
    }
    *items = larger;
    *room = wanted;
    return true;
}

static draw_shape *new_shape(draw_shapes *list, draw_shape shape)
{
    const draw_box *b = &shape.box;
    if (!isfinite(b->left + b->bottom + b->right + b->top)) {
        list->no_number = true;
        return NULL;
    }
    void *items = list->shapes;
    if (!grow(list, &items, &list->room, list->count, 1, sizeof shape)) {
        return NULL;
    }
    list->shapes = items;
    list->box = draw_box_around(list->box, shape.box);
    shape.string = list->string;
    list->shapes[list->count] = shape;
    return &list->shapes[list->count++];
}

static void add_path(draw_shapes *list, draw_layer layer, const draw_point *points, int count,
                     bool closed, bool filled)
{
    if (!usable(list) || count < 1) {
        return;
    }
    void *items = list->points;
    if (!grow(list, &items, &list->point_room, list->point_count, count, sizeof *points)) {
        return;
    }
    list->points = items;
    draw_box box = nothing;
    for (int i = 0; i < count; i++) {
        if (!isfinite(points[i].x) || !isfinite(points[i].y)) {
            list->no_number = true;
            return;
        }
        list->points[list->point_count + i] = points[i];
        box = draw_box_around(box, (draw_box){points[i].x, points[i].y, points[i].x, points[i].y});
    }
    draw_shape path = {.kind = DRAW_SHAPE_PATH,
                       .layer = layer,
                       .first = list->point_count,
                       .count = count,
                       .closed = closed,
                       .filled = filled,
                       .box = box};
    if (new_shape(list, path) != NULL) {
        list->point_count += count;
    }
}

void draw_of(draw_shapes *list, int string)
{
    if (list != NULL) {
        list->string = string;
    }
}

void draw_path(draw_shapes *list, draw_layer layer, const draw_point *points, int count,
               bool closed)
{
    add_path(list, layer, points, count, closed, false);
}

void draw_fill(draw_shapes *list, draw_layer layer, const draw_point *points, int count)
{
    add_path(list, layer, points, count, true, true);
}

void draw_line(draw_shapes *list, draw_layer layer, draw_point a, draw_point b)
{
    add_path(list, layer, (const draw_point[]){a, b}, 2, false, false);
}

void draw_rectangle(draw_shapes *list, draw_layer layer, draw_box box)
{
    const draw_point corners[] = {
        {box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}};
    add_path(list, layer, corners, 4, true, false);
}

void draw_arc(draw_shapes *list, draw_layer layer, draw_point centre, double radius, double from,
              double to)
{
    if (!usable(list)) {
        return;
    }
    double r = radius;
    draw_point a = {centre.x + r * cos(from * degree), centre.y + r * sin(from * degree)};
    draw_point b = {centre.x + r * cos(to * degree), centre.y + r * sin(to * degree)};
    draw_box box = {fmin(a.x, b.x), fmin(a.y, b.y), fmax(a.x, b.x), fmax(a.y, b.y)};
    for (int quarter = (int)ceil(from / 90); quarter * 90 <= to; quarter++) {
        double x = centre.x + r * cos(quarter * 90 * degree);
        double y = centre.y + r * sin(quarter * 90 * degree);
        box = draw_box_around(box, (draw_box){x, y, x, y});
    }
    new_shape(list, (draw_shape){.kind = DRAW_SHAPE_ARC,
                                 .layer = layer,
                                 .at = centre,
                                 .size = r,
                                 .from = from,
                                 .to = to,
                                 .box = box});
}

/* The extent of the way from one corner to the next. */
static draw_box edge_box(draw_corner a, draw_corner b)
{
    draw_box box = {fmin(a.x, b.x), fmin(a.y, b.y), fmax(a.x, b.x), fmax(a.y, b.y)};
    if (a.bulge == 0) {
        return box;
    }
    part_arc arc = part_arc_to(a, b);
    double from = fmin(arc.from, arc.from + arc.turn), to = fmax(arc.from, arc.from + arc.turn);
    const double quarter = 90 * degree;
    for (int k = (int)ceil(from / quarter); k * quarter <= to; k++) {
        double x = arc.x + arc.radius * cos(k * quarter), y = arc.y + arc.radius * sin(k * quarter);
        box = draw_box_around(box, (draw_box){x, y, x, y});
    }
    return box;
}

void draw_outline(draw_shapes *list, draw_layer layer, const draw_corner *corners, int count)
{
    if (!usable(list) || count < 2) {
        return;
    }
    void *items = list->corners;
    if (!grow(list, &items, &list->corner_room, list->corner_count, count, sizeof *corners)) {
        return;
    }
    list->corners = items;
    draw_box box = nothing;
    for (int i = 0; i < count; i++) {
        draw_corner next = corners[(i + 1) % count];
        list->no_number = list->no_number || !isfinite(corners[i].x + corners[i].y + next.bulge);
        list->corners[list->corner_count + i] = corners[i];
        box = list->no_number ? box : draw_box_around(box, edge_box(corners[i], next));
    }
    draw_shape outline = {.kind = DRAW_SHAPE_OUTLINE,
                          .layer = layer,
                          .first = list->corner_count,
                          .count = count,
                          .closed = true,
                          .box = box};
    if (!list->no_number && new_shape(list, outline) != NULL) {
        list->corner_count += count;
    }
}

void draw_circle(draw_shapes *list, draw_layer layer, draw_point centre, double radius)
{
    draw_arc(list, layer, centre, radius, 0, 360);
}

static int rising(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* Turned by 45 degrees, the lining is level. Each line is cut at the polygon's edges and drawn
 * between every second pair of cuts. All lines are on one grid, so that neighbouring areas
 * match. */
void draw_hatch(draw_shapes *list, const draw_point *points, int count, double spacing)
{
    enum { MOST = 64 };
    const double s = sqrt(0.5), slope = spacing < 0 ? -1 : 1, step = fabs(spacing);
    double low = (double)INFINITY, high = -(double)INFINITY;
    for (int i = 0; i < count; i++) {
        double v = s * (points[i].y - slope * points[i].x);
        low = fmin(low, v);
        high = fmax(high, v);
    }
    if (!isfinite(low + high + step) || step <= 0) {
        return;
    }
    for (int k = (int)ceil(low / step); k * step < high; k++) {
        double v = k * step;
        double meet[MOST];
        int met = 0;
        for (int i = 0; i < count && met < MOST; i++) {
            draw_point p = points[i], q = points[(i + 1) % count];
            double vp = s * (p.y - slope * p.x), vq = s * (q.y - slope * q.x);
            if ((vp <= v) == (vq <= v)) {
                continue;
            }
            double up = s * (p.x + slope * p.y), uq = s * (q.x + slope * q.y);
            meet[met++] = up + (uq - up) * (v - vp) / (vq - vp);
        }
        qsort(meet, (size_t)met, sizeof meet[0], rising);
        for (int i = 0; i + 1 < met; i += 2) {
            draw_point a = {s * (meet[i] - slope * v), s * (slope * meet[i] + v)};
            draw_point b = {s * (meet[i + 1] - slope * v), s * (slope * meet[i + 1] + v)};
            draw_line(list, DRAW_HATCH, a, b);
        }
    }
}

/* The extent of a text's ink around its anchor, turned into the text's direction. */
static draw_box text_box(draw_ink ink, draw_point at, draw_anchor anchor, double direction)
{
    double start = anchor == DRAW_LEFT     ? 0
                   : anchor == DRAW_MIDDLE ? -ink.advance / 2
                                           : -ink.advance;
    double c = cos(direction * degree), s = sin(direction * degree);
    const double along[] = {start + ink.left, start + ink.right}, up[] = {ink.bottom, ink.top};
    draw_box box = nothing;
    for (int i = 0; i < 4; i++) {
        double u = along[i % 2], v = up[i / 2];
        double x = at.x + u * c - v * s, y = at.y + u * s + v * c;
        box = draw_box_around(box, (draw_box){x, y, x, y});
    }
    return box;
}

void draw_text(draw_shapes *list, draw_layer layer, draw_point at, double height,
               draw_anchor anchor, double direction, const char *words)
{
    if (!usable(list) || words == NULL || *words == '\0') {
        return;
    }
    int length = (int)draw_letters_spell(list->letters, words, NULL, 0);
    void *items = list->bytes;
    if (!grow(list, &items, &list->byte_room, list->byte_count, length + 1, 1)) {
        return;
    }
    list->bytes = items;
    char *bytes = list->bytes + list->byte_count;
    draw_letters_spell(list->letters, words, bytes, (size_t)length + 1);
    draw_ink ink = draw_letters_ink(list->letters, bytes, height);
    draw_shape shape = {.kind = DRAW_SHAPE_TEXT,
                        .layer = layer,
                        .first = list->byte_count,
                        .count = length,
                        .at = at,
                        .size = height,
                        .from = direction,
                        .anchor = anchor,
                        .advance = ink.advance,
                        .box = text_box(ink, at, anchor, direction)};
    if (new_shape(list, shape) != NULL) {
        list->byte_count += length + 1;
    }
}

double draw_text_width(const draw_shapes *list, const char *words, double height)
{
    return list != NULL ? draw_letters_ink(list->letters, words, height).advance : 0;
}

void draw_shapes_strut(draw_shapes *list, draw_box box)
{
    if (list != NULL) {
        list->box = draw_box_around(list->box, box);
    }
}

static draw_box moved(draw_box box, double dx, double dy)
{
    return (draw_box){box.left + dx, box.bottom + dy, box.right + dx, box.top + dy};
}

void draw_shapes_add(draw_shapes *list, const draw_shapes *other, double dx, double dy)
{
    if (!usable(list)) {
        return;
    }
    if (other == NULL) {
        list->no_memory = true;
        return;
    }
    void *shapes = list->shapes, *points = list->points, *bytes = list->bytes;
    void *corners = list->corners;
    bool room = grow(list, &shapes, &list->room, list->count, other->count, sizeof(draw_shape)) &&
                grow(list, &points, &list->point_room, list->point_count, other->point_count,
                     sizeof(draw_point)) &&
                grow(list, &corners, &list->corner_room, list->corner_count, other->corner_count,
                     sizeof(draw_corner)) &&
                grow(list, &bytes, &list->byte_room, list->byte_count, other->byte_count, 1);
    list->shapes = shapes;
    list->points = points;
    list->corners = corners;
    list->bytes = bytes;
    list->no_memory = list->no_memory || other->no_memory;
    list->no_number = list->no_number || other->no_number;
    if (!room) {
        return;
    }
    for (int i = 0; i < other->count; i++) {
        draw_shape shape = other->shapes[i];
        shape.first += shape.kind == DRAW_SHAPE_TEXT      ? list->byte_count
                       : shape.kind == DRAW_SHAPE_OUTLINE ? list->corner_count
                                                          : list->point_count;
        shape.at = (draw_point){shape.at.x + dx, shape.at.y + dy};
        shape.box = moved(shape.box, dx, dy);
        list->shapes[list->count++] = shape;
    }
    for (int i = 0; i < other->point_count; i++) {
        list->points[list->point_count++] =
            (draw_point){other->points[i].x + dx, other->points[i].y + dy};
    }
    for (int i = 0; i < other->corner_count; i++) {
        draw_corner corner = other->corners[i];
        list->corners[list->corner_count++] =
            (draw_corner){corner.x + dx, corner.y + dy, corner.bulge};
    }
    if (other->byte_count > 0) {
        memcpy(list->bytes + list->byte_count, other->bytes, (size_t)other->byte_count);
    }
    list->byte_count += other->byte_count;
    if (other->box.left <= other->box.right) {
        list->box = draw_box_around(list->box, moved(other->box, dx, dy));
    }
}
