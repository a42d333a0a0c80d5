#include "bracing/faces.h"

#include "base/vector.h"

#include <math.h>

#define ALIGNED 0.9998 /* cosine of about one degree: the same plane, or level */
#define UPRIGHT 0.35   /* sine of about 20 degrees out of plumb */

/* Union-find over the cells; the root is the first cell of its face. */
static size_t root_of(size_t *parent, size_t k) {
    while (parent[k] != k)
        k = parent[k] = parent[parent[k]];
    return k;
}

static void unite(size_t *parent, size_t a, size_t b) {
    a = root_of(parent, a);
    b = root_of(parent, b);
    if (a < b)
        parent[b] = a;
    else
        parent[a] = b;
}

static void cell_normal(const struct net *net, const struct cell *cell, double normal[3]) {
    double a[3], b[3];
    vector_between(net_at(net, cell->joints[0]), net_at(net, cell->joints[2]), a);
    vector_between(net_at(net, cell->joints[1]), net_at(net, cell->joints[3]), b);
    vector_cross(a, b, normal);
    vector_unit(normal);
}

static bool coplanar(const struct net *net, const struct cell *one, const double normal[3],
                     const struct cell *other, const double other_normal[3]) {
    if (!(fabs(vector_dot(normal, other_normal)) > ALIGNED))
        return false;
    for (int k = 0; k < 4; k++) {
        double to[3];
        vector_between(net_at(net, one->joints[0]), net_at(net, other->joints[k]), to);
        if (!(fabs(vector_dot(to, normal)) <= CELL_FLAT))
            return false;
    }
    return true;
}

/* Cells by joint: items[first[j]] ... items[first[j + 1] - 1]. */
struct by_joint {
    size_t *first, *items;
};

static struct by_joint sort_by_joint(struct arena *arena, const struct cells *cells) {
    size_t joints = cells->model->frame->joints.count;
    struct by_joint by = {ARENA_ARRAY(arena, size_t, joints + 1),
                          ARENA_ARRAY(arena, size_t, 4 * cells->count)};
    size_t *next = ARENA_ARRAY(arena, size_t, joints + 1);
    for (size_t k = 0; k < cells->count; k++)
        for (int c = 0; c < 4; c++)
            by.first[cells->items[k].joints[c] + 1]++;
    for (size_t j = 0; j < joints; j++)
        by.first[j + 1] += by.first[j];
    for (size_t j = 0; j < joints; j++)
        next[j] = by.first[j];
    for (size_t k = 0; k < cells->count; k++)
        for (int c = 0; c < 4; c++)
            by.items[next[cells->items[k].joints[c]]++] = k;
    return by;
}

/* To the right, to the back, up: the sense in which people look at a face. */
static void turn_to(double v[3], const double wanted[3]) {
    if (vector_dot(v, wanted) < 0.0)
        for (int c = 0; c < 3; c++)
            v[c] = -v[c];
}

static void lay_axes(struct face *face) {
    static const double right[3] = {1.0, 1e-3, 0.0}, back[3] = {1e-3, 1.0, 0.0},
                        up[3] = {0.0, 0.0, 1.0};
    const double *n = face->normal;
    double steep = fabs(n[2]);
    face->kind = steep > ALIGNED ? FACE_LEVEL : steep < UPRIGHT ? FACE_UPRIGHT : FACE_SLOPED;
    if (face->kind == FACE_LEVEL) {
        turn_to(face->normal, up);
        vector_cross(back, n, face->across);
        vector_unit(face->across);
        vector_cross(n, face->across, face->upward);
        return;
    }
    turn_to(face->normal, face->kind == FACE_SLOPED ? up : fabs(n[1]) > fabs(n[0]) ? back : right);
    vector_cross(up, n, face->across);
    vector_unit(face->across);
    turn_to(face->across, fabs(face->across[0]) > fabs(face->across[1]) ? right : back);
    vector_cross(n, face->across, face->upward);
    turn_to(face->upward, up);
    vector_unit(face->upward);
}

void faces_gather(struct arena *arena, const struct net *net, struct cells *cells) {
    size_t *parent = ARENA_ARRAY(arena, size_t, cells->count);
    double(*normals)[3] = arena_take(arena, cells->count, sizeof *normals);
    int *members = ARENA_ARRAY(arena, int, cells->count);
    struct by_joint by = sort_by_joint(arena, cells);
    for (size_t k = 0; k < cells->count; k++) {
        parent[k] = k;
        cell_normal(net, &cells->items[k], normals[k]);
    }
    for (size_t j = 0; j < cells->model->frame->joints.count; j++)
        for (size_t i = by.first[j]; i < by.first[j + 1]; i++)
            for (size_t k = i + 1; k < by.first[j + 1]; k++) {
                size_t a = by.items[i], b = by.items[k];
                if (root_of(parent, a) != root_of(parent, b) &&
                    coplanar(net, &cells->items[a], normals[a], &cells->items[b], normals[b]))
                    unite(parent, a, b);
            }
    cells->faces = ARENA_ARRAY(arena, struct face, cells->count);
    for (size_t k = 0; k < cells->count; k++) {
        size_t root = root_of(parent, k);
        if (root == k) {
            cells->items[k].face = (int)cells->face_count;
            for (int c = 0; c < 3; c++)
                cells->faces[cells->face_count].normal[c] = normals[k][c];
            lay_axes(&cells->faces[cells->face_count++]);
        }
        int face = cells->items[k].face = cells->items[root].face;
        members[face] += 4;
        for (int corner = 0; corner < 4; corner++)
            for (int c = 0; c < 3; c++)
                cells->faces[face].at[c] += net_at(net, cells->items[k].joints[corner])[c];
    }
    for (size_t f = 0; f < cells->face_count; f++)
        for (int c = 0; c < 3; c++)
            cells->faces[f].at[c] /= members[f];
}
