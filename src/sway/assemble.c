#include "sway/assemble.h"

#include "solve/modes.h"

#include <string.h>

static const int plane_dofs[PLANE_COUNT][4] = {{1, 5, 7, 11}, {2, 4, 8, 10}};
/* a turn about +y slopes w downwards */
static const double plane_sign[PLANE_COUNT] = {1.0, -1.0};

void piece_elastic(const struct piece *piece, double k[ELEMENT_DOFS][ELEMENT_DOFS]) {
    memset(k, 0, ELEMENT_DOFS * sizeof *k);
    double along[2] = {piece->EA / piece->length, piece->GJ / piece->length};
    for (int part = 0; part < 2; part++) {
        int a = 3 * part, b = a + 6;
        k[a][a] = k[b][b] = along[part];
        k[a][b] = k[b][a] = -along[part];
    }
    for (int plane = 0; plane < PLANE_COUNT; plane++)
        element_bending(k, plane_dofs[plane], piece->EI[plane], piece->phi[plane], piece->length,
                        plane_sign[plane]);
}

void piece_geometric(const struct piece *piece, double N, double k[ELEMENT_DOFS][ELEMENT_DOFS]) {
    memset(k, 0, ELEMENT_DOFS * sizeof *k);
    double L = piece->length;
    for (int plane = 0; plane < PLANE_COUNT; plane++) {
        const int *dof = plane_dofs[plane];
        double phi = piece->phi[plane], sign = plane_sign[plane];
        if (piece->straight[plane] && !piece->alone)
            continue; /* its chord is added for the whole segment */
        if (piece->straight[plane] || !(piece->EI[plane] > 0.0)) {
            k[dof[0]][dof[0]] = k[dof[2]][dof[2]] = N / L;
            k[dof[0]][dof[2]] = k[dof[2]][dof[0]] = -N / L;
            continue;
        }
        double s = N / (L * (1.0 + phi) * (1.0 + phi));
        double c1 = 6.0 / 5.0 + 2.0 * phi + phi * phi;
        double c2 = (2.0 / 15.0 + phi / 6.0 + phi * phi / 12.0) * L * L;
        double c3 = (1.0 / 30.0 + phi / 6.0 + phi * phi / 12.0) * L * L;
        double t = sign * L / 10.0;
        const double part[4][4] = {
            {c1, t, -c1, t}, {t, c2, -t, -c3}, {-c1, -t, c1, -t}, {t, -c3, -t, c2}};
        for (int i = 0; i < 4; i++)
            for (int j = 0; j < 4; j++)
                k[dof[i]][dof[j]] = s * part[i][j];
    }
}

double piece_axial(const struct pieces *pieces, const struct piece *piece,
                   const double (*axial)[2]) {
    const double *N = axial[piece->segment];
    double whole = pieces->setting->model->segments[piece->segment].length;
    return N[0] + (N[1] - N[0]) * (piece->start + piece->length / 2.0) / whole;
}

/* Add value x (a times b), a and b sums of unknowns, lower triangle. */
static void add_product(const struct sparse *matrix, double value, const struct reach *a,
                        const struct reach *b) {
    for (int i = 0; i < a->count; i++)
        for (int j = 0; j < b->count; j++)
            if (a->unknown[i] >= b->unknown[j])
                *sparse_at(matrix, (size_t)a->unknown[i], (size_t)b->unknown[j]) +=
                    value * a->share[i] * b->share[j];
}

static void add_piece(const struct sparse *matrix, const struct piece *piece,
                      double k[ELEMENT_DOFS][ELEMENT_DOFS]) {
    /* what each movement is tied to: its own plane, or its fellow at the other end */
    static const int bound[6][4] = {{0, 6}, {1, 5, 7, 11}, {2, 4, 8, 10},
                                    {3, 9}, {2, 4, 8, 10}, {1, 5, 7, 11}};
    for (int i = 0; i < ELEMENT_DOFS; i++)
        for (int b = 0; b < (i % 3 == 0 ? 2 : 4); b++) {
            int j = bound[i % 6][b];
            if (k[i][j] != 0.0)
                add_product(matrix, k[i][j], &piece->ends[i], &piece->ends[j]);
        }
}

static void add_spring(const struct sparse *matrix, const struct spring *spring) {
    for (int i = 0; i < spring->count; i++)
        for (int j = 0; j < spring->count; j++)
            if (spring->unknown[i] >= spring->unknown[j])
                *sparse_at(matrix, (size_t)spring->unknown[i], (size_t)spring->unknown[j]) +=
                    spring->stiffness * spring->share[i] * spring->share[j];
}

struct sparse assemble_elastic(struct arena *arena, const struct pieces *pieces) {
    struct sparse matrix = sparse_new(arena, pieces->blocks);
    double k[ELEMENT_DOFS][ELEMENT_DOFS];
    for (size_t p = 0; p < pieces->count; p++) {
        piece_elastic(&pieces->items[p], k);
        add_piece(&matrix, &pieces->items[p], k);
    }
    for (size_t s = 0; s < pieces->spring_count; s++)
        add_spring(&matrix, &pieces->springs[s]);
    size_t *which = ARENA_ARRAY(arena, size_t, pieces->unknowns);
    double *springs = ARENA_ARRAY(arena, double, pieces->unknowns);
    modes_hold_turns(arena, &matrix, pieces->turning, which, springs);
    return matrix;
}

/* A segment that stays straight in a plane: what the force along it does to its chord. */
static void add_chord(const struct sparse *matrix, const struct pieces *pieces,
                      const struct piece *first, const double (*axial)[2], double factor) {
    const struct piece *last = first;
    while (last + 1 < pieces->items + pieces->count && last[1].segment == first->segment)
        last++;
    double L = pieces->setting->model->segments[first->segment].length;
    double pull = factor * (axial[first->segment][0] + axial[first->segment][1]) / (2.0 * L);
    for (int plane = 0; plane < PLANE_COUNT; plane++) {
        if (!first->straight[plane])
            continue;
        const struct reach *a = &first->ends[plane_dofs[plane][0]];
        const struct reach *b = &last->ends[plane_dofs[plane][2]];
        add_product(matrix, pull, a, a);
        add_product(matrix, pull, b, b);
        add_product(matrix, -pull, a, b);
        add_product(matrix, -pull, b, a);
    }
}

void assemble_add_geometric(const struct sparse *matrix, const struct pieces *pieces,
                            const double (*axial)[2], double factor) {
    double k[ELEMENT_DOFS][ELEMENT_DOFS];
    for (size_t p = 0; p < pieces->count; p++) {
        double N = factor * piece_axial(pieces, &pieces->items[p], axial);
        if (pieces->items[p].start == 0.0 && !pieces->items[p].alone)
            add_chord(matrix, pieces, &pieces->items[p], axial, factor);
        if (N == 0.0)
            continue;
        piece_geometric(&pieces->items[p], N, k);
        add_piece(matrix, &pieces->items[p], k);
    }
}

struct sparse assemble_geometric(struct arena *arena, const struct pieces *pieces,
                                 const double (*axial)[2]) {
    struct sparse matrix = sparse_new(arena, pieces->blocks);
    assemble_add_geometric(&matrix, pieces, axial, 1.0);
    return matrix;
}
