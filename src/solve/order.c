#include "solve/order.h"

#include <stdbool.h>
#include <stdlib.h>

struct graph graph_of_pairs(struct arena *arena, size_t nodes, const int (*pairs)[2],
                            size_t count) {
    struct graph graph = {.count = nodes,
                          .first = ARENA_ARRAY(arena, size_t, nodes + 1),
                          .to = ARENA_ARRAY(arena, int, 2 * count)};
    for (size_t k = 0; k < count; k++)
        if (pairs[k][0] != pairs[k][1])
            for (int side = 0; side < 2; side++)
                graph.first[pairs[k][side] + 1]++;
    for (size_t n = 0; n < nodes; n++)
        graph.first[n + 1] += graph.first[n];
    size_t *next = ARENA_ARRAY(arena, size_t, nodes + 1);
    for (size_t n = 0; n < nodes; n++)
        next[n] = graph.first[n];
    for (size_t k = 0; k < count; k++)
        if (pairs[k][0] != pairs[k][1])
            for (int side = 0; side < 2; side++)
                graph.to[next[pairs[k][side]]++] = pairs[k][1 - side];
    return graph;
}

static size_t degree(const struct graph *graph, int node) {
    return graph->first[node + 1] - graph->first[node];
}

struct walk {
    int *queue; /* nodes in the order reached */
    int *level; /* of a node in this walk; -1 not reached */
    size_t reached;
    int depth;
};

/* Breadth first from `start`; `level` of untouched nodes must be -1. */
static void breadth_first(const struct graph *graph, struct walk *walk, int start) {
    walk->queue[0] = start;
    walk->level[start] = 0;
    walk->reached = 1;
    for (size_t head = 0; head < walk->reached; head++) {
        int node = walk->queue[head];
        for (size_t k = graph->first[node]; k < graph->first[node + 1]; k++) {
            int next = graph->to[k];
            if (walk->level[next] < 0) {
                walk->level[next] = walk->level[node] + 1;
                walk->queue[walk->reached++] = next;
            }
        }
    }
    walk->depth = walk->level[walk->queue[walk->reached - 1]];
}

static void forget(struct walk *walk) {
    for (size_t k = 0; k < walk->reached; k++)
        walk->level[walk->queue[k]] = -1;
}

/* A node at the far side of its part of the graph. */
static int far_node(const struct graph *graph, struct walk *walk, int start) {
    int depth = -1;
    for (;;) {
        breadth_first(graph, walk, start);
        int last = walk->level[walk->queue[walk->reached - 1]];
        int next = walk->queue[walk->reached - 1];
        for (size_t k = walk->reached; k-- > 0 && walk->level[walk->queue[k]] == last;)
            if (degree(graph, walk->queue[k]) <= degree(graph, next))
                next = walk->queue[k];
        bool deeper = walk->depth > depth;
        depth = walk->depth;
        forget(walk);
        if (!deeper)
            return start;
        start = next;
    }
}

struct by_degree {
    size_t degree;
    int node;
};

static int compare_degree(const void *left, const void *right) {
    const struct by_degree *a = left, *b = right;
    if (a->degree != b->degree)
        return a->degree < b->degree ? -1 : 1;
    return (a->node > b->node) - (a->node < b->node);
}

int *order_band(struct arena *arena, const struct graph *graph) {
    size_t count = graph->count;
    int *order = ARENA_ARRAY(arena, int, count);
    bool *numbered = ARENA_ARRAY(arena, bool, count);
    struct walk walk = {.queue = ARENA_ARRAY(arena, int, count),
                        .level = ARENA_ARRAY(arena, int, count)};
    struct by_degree *fresh = ARENA_ARRAY(arena, struct by_degree, count);
    for (size_t n = 0; n < count; n++)
        walk.level[n] = -1;
    size_t done = 0;
    for (size_t seed = 0; seed < count; seed++) {
        if (numbered[seed])
            continue;
        int start = far_node(graph, &walk, (int)seed);
        order[done] = start;
        numbered[start] = true;
        size_t tail = done + 1;
        for (size_t head = done; head < tail; head++) {
            size_t found = 0;
            for (size_t k = graph->first[order[head]]; k < graph->first[order[head] + 1]; k++) {
                int next = graph->to[k];
                if (!numbered[next]) {
                    numbered[next] = true;
                    fresh[found++] = (struct by_degree){degree(graph, next), next};
                }
            }
            qsort(fresh, found, sizeof *fresh, compare_degree);
            for (size_t k = 0; k < found; k++)
                order[tail++] = fresh[k].node;
        }
        done = tail;
    }
    for (size_t k = 0; k < count / 2; k++) {
        int swap = order[k];
        order[k] = order[count - 1 - k];
        order[count - 1 - k] = swap;
    }
    return order;
}
