/* frame/point_tree.h - points in space, found by their distance from a straight piece.
 *
 * A box tree: building takes n log n steps, a search visits only boxes that the piece passes, so
 * that frames of 200 000 joints are looked through without comparing every pair.
 */
#ifndef FRAME_POINT_TREE_H
#define FRAME_POINT_TREE_H

#include "base/arena.h"

#include <stddef.h>

struct point_tree;

/* `points[k]` are kept by reference; `chosen` are the numbers of those that take part. */
struct point_tree *point_tree_new(struct arena *arena, const double *const *points,
                                  const int *chosen, size_t count);

/* A point with a number below `below` within `reach` of the piece from `a` to `b`; -1 where there
 * is none. For trees that nothing was taken out of. */
int point_tree_find(const struct point_tree *tree, const double a[3], const double b[3],
                    double reach, int below);

/* Visit every point within `reach` of the piece, in no set order. For trees that nothing was taken
 * out of. */
void point_tree_each(const struct point_tree *tree, const double a[3], const double b[3],
                     double reach, void (*visit)(void *with, int point), void *with);

/* Take out every point within `reach` of the piece, marking it in `taken[point]`. */
void point_tree_take(struct point_tree *tree, const double a[3], const double b[3], double reach,
                     char *taken);

#endif
