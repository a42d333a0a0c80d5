#include "solve/eliminate.h"

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>

struct list {
    int *items;
    size_t count;
};

/* A node is first a variable with neighbours and cliques; once eliminated it is a clique itself. */
struct quotient {
    struct arena *arena;
    const int *sizes;
    size_t count;
    struct list *near;    /* neighbours not yet reached through a clique */
    struct list *cliques; /* that a variable belongs to */
    struct list *members; /* of a clique when it was made */
    bool *gone, *absorbed;
    int *degree;
    int *mark, stamp; /* who is in the clique being made */
    int64_t *outside,
        outside_stamp;           /* unknowns of a clique outside the one being made, over that */
    int *head, *next, *previous; /* variables by degree */
    int least, most;
};

static void unlink_node(struct quotient *q, int node) {
    int before = q->previous[node], after = q->next[node];
    if (before >= 0)
        q->next[before] = after;
    else
        q->head[q->degree[node]] = after;
    if (after >= 0)
        q->previous[after] = before;
}

static void link_node(struct quotient *q, int node, int degree) {
    if (degree > q->most)
        degree = q->most;
    q->degree[node] = degree;
    q->previous[node] = -1;
    q->next[node] = q->head[degree];
    if (q->next[node] >= 0)
        q->previous[q->next[node]] = node;
    q->head[degree] = node;
    if (degree < q->least)
        q->least = degree;
}

static struct list neighbours(struct quotient *q, const struct graph *graph, int node, int *room) {
    struct list list = {.items = room};
    q->stamp++;
    q->mark[node] = q->stamp;
    for (size_t k = graph->first[node]; k < graph->first[node + 1]; k++) {
        int other = graph->to[k];
        if (q->mark[other] == q->stamp || q->sizes[other] == 0)
            continue;
        q->mark[other] = q->stamp;
        list.items[list.count++] = other;
    }
    return list;
}

static struct quotient quotient_of(struct arena *arena, const struct graph *graph,
                                   const int *sizes) {
    size_t n = graph->count, unknowns = 0;
    for (size_t i = 0; i < n; i++)
        unknowns += (size_t)sizes[i];
    struct quotient q = {.arena = arena,
                         .sizes = sizes,
                         .count = n,
                         .near = ARENA_ARRAY(arena, struct list, n),
                         .cliques = ARENA_ARRAY(arena, struct list, n),
                         .members = ARENA_ARRAY(arena, struct list, n),
                         .gone = ARENA_ARRAY(arena, bool, n),
                         .absorbed = ARENA_ARRAY(arena, bool, n),
                         .degree = ARENA_ARRAY(arena, int, n),
                         .mark = ARENA_ARRAY(arena, int, n),
                         .outside = ARENA_ARRAY(arena, int64_t, n),
                         .outside_stamp = 1,
                         .head = ARENA_ARRAY(arena, int, unknowns + 1),
                         .next = ARENA_ARRAY(arena, int, n),
                         .previous = ARENA_ARRAY(arena, int, n),
                         .most = (int)unknowns};
    int *room = ARENA_ARRAY(arena, int, graph->first[n]);
    int *clique_room = ARENA_ARRAY(arena, int, graph->first[n]);
    for (size_t d = 0; d <= unknowns; d++)
        q.head[d] = -1;
    for (size_t i = n; i-- > 0;) {
        if (sizes[i] == 0)
            continue;
        q.near[i] = neighbours(&q, graph, (int)i, room + graph->first[i]);
        /* never in more cliques than it had neighbours: each took one of them away */
        q.cliques[i].items = clique_room + graph->first[i];
        int degree = 0;
        for (size_t k = 0; k < q.near[i].count; k++)
            degree += sizes[q.near[i].items[k]];
        link_node(&q, (int)i, degree);
    }
    return q;
}

static int take_least(struct quotient *q) {
    while (q->head[q->least] < 0)
        q->least++;
    int node = q->head[q->least];
    unlink_node(q, node);
    return node;
}

static size_t add_members(struct quotient *q, const struct list *from, int *members, size_t count) {
    for (size_t k = 0; k < from->count; k++) {
        int node = from->items[k];
        if (q->gone[node] || q->mark[node] == q->stamp)
            continue;
        q->mark[node] = q->stamp;
        members[count++] = node;
    }
    return count;
}

/* All that the pivot reaches becomes one clique; those that it belonged to are part of it now. */
static void make_clique(struct quotient *q, int pivot) {
    size_t most = q->near[pivot].count, count;
    for (size_t k = 0; k < q->cliques[pivot].count; k++)
        most += q->members[q->cliques[pivot].items[k]].count;
    int *members = arena_room(q->arena, most, sizeof *members);
    q->stamp++;
    q->gone[pivot] = true;
    count = add_members(q, &q->near[pivot], members, 0);
    for (size_t k = 0; k < q->cliques[pivot].count; k++) {
        int clique = q->cliques[pivot].items[k];
        count = add_members(q, &q->members[clique], members, count);
        q->absorbed[clique] = true;
    }
    q->members[pivot] = (struct list){members, count};
}

static int unknowns_in(const struct quotient *q, const struct list *list) {
    int sum = 0;
    for (size_t k = 0; k < list->count; k++)
        if (!q->gone[list->items[k]])
            sum += q->sizes[list->items[k]];
    return sum;
}

/* For every other clique that a member of the new one belongs to: its unknowns outside of it. */
static void look_outside(struct quotient *q, int pivot) {
    q->outside_stamp += q->most + 1;
    for (size_t k = 0; k < q->members[pivot].count; k++) {
        int node = q->members[pivot].items[k];
        for (size_t c = 0; c < q->cliques[node].count; c++) {
            int clique = q->cliques[node].items[c];
            if (q->absorbed[clique])
                continue;
            if (q->outside[clique] < q->outside_stamp)
                q->outside[clique] = q->outside_stamp + unknowns_in(q, &q->members[clique]);
            q->outside[clique] -= q->sizes[node];
        }
    }
}

/* Forget what the new clique covers; returns a bound on the degree outside of it. */
static int prune(struct quotient *q, int node, int pivot) {
    struct list *near = &q->near[node], *cliques = &q->cliques[node];
    size_t kept = 0;
    int degree = 0;
    for (size_t k = 0; k < near->count; k++) {
        int other = near->items[k];
        if (q->gone[other] || q->mark[other] == q->stamp)
            continue;
        near->items[kept++] = other;
        degree += q->sizes[other];
    }
    near->count = kept;
    kept = 0;
    for (size_t k = 0; k < cliques->count; k++) {
        int clique = cliques->items[k];
        int outside = (int)(q->outside[clique] - q->outside_stamp);
        if (q->absorbed[clique] || outside == 0)
            continue;
        cliques->items[kept++] = clique;
        degree += outside;
    }
    cliques->items[kept++] = pivot;
    cliques->count = kept;
    return degree;
}

/* One pivot, and the members of its clique that reach nothing else. Writes them to `out`. */
static size_t eliminate_next(struct quotient *q, int *out) {
    int pivot = take_least(q);
    size_t taken = 0;
    out[taken++] = pivot;
    make_clique(q, pivot);
    look_outside(q, pivot);
    struct list *members = &q->members[pivot];
    int inside = unknowns_in(q, members);
    for (size_t k = 0; k < members->count; k++) {
        int node = members->items[k];
        unlink_node(q, node);
        int outside = prune(q, node, pivot);
        link_node(q, node, outside + inside - q->sizes[node]);
        if (outside > 0 || q->cliques[node].count > 1)
            continue;
        unlink_node(q, node);
        out[taken++] = node;
    }
    for (size_t k = 1; k < taken; k++) {
        q->gone[out[k]] = true;
        q->members[out[k]] = *members;
    }
    return taken;
}

/* ---- the tree ---- */

static int ascending(const void *left, const void *right) {
    int a = *(const int *)left, b = *(const int *)right;
    return (a > b) - (a < b);
}

/* Branches before what they hang on. `parent` by step of elimination, always later. Returns the
 * step that comes k-th. */
static int *branches_first(struct arena *arena, const int *parent, size_t count) {
    int *first = ARENA_ARRAY(arena, int, count), *next = ARENA_ARRAY(arena, int, count);
    int *steps = ARENA_ARRAY(arena, int, count), *stack = ARENA_ARRAY(arena, int, count);
    for (size_t k = 0; k < count; k++)
        first[k] = next[k] = -1;
    for (size_t k = count; k-- > 0;)
        if (parent[k] >= 0) {
            next[k] = first[parent[k]];
            first[parent[k]] = (int)k;
        }
    size_t done = 0;
    for (size_t root = 0; root < count; root++) {
        if (parent[root] >= 0)
            continue;
        size_t depth = 0;
        stack[depth++] = (int)root;
        while (depth > 0) {
            int step = stack[depth - 1], branch = first[step];
            if (branch >= 0) {
                first[step] = next[branch];
                stack[depth++] = branch;
            } else {
                steps[done++] = step;
                depth--;
            }
        }
    }
    return steps;
}

/* Places of what a node reaches; those eliminated together with it but before are left out. */
static void list_below(struct elimination *found, const struct quotient *q, size_t k) {
    const struct list *members = &q->members[found->order[k]];
    int *below = arena_room(q->arena, members->count, sizeof *below);
    size_t count = 0;
    for (size_t m = 0; m < members->count; m++)
        if (found->place[members->items[m]] > (int)k)
            below[count++] = found->place[members->items[m]];
    qsort(below, count, sizeof *below, ascending);
    found->below[k] = below;
    found->below_count[k] = count;
    found->parent[k] = count ? below[0] : -1;
}

struct elimination elimination_of(struct arena *arena, const struct graph *graph,
                                  const int *sizes) {
    struct quotient q = quotient_of(arena, graph, sizes);
    size_t count = 0;
    for (size_t i = 0; i < q.count; i++)
        count += sizes[i] > 0;
    struct elimination found = {.count = count,
                                .order = ARENA_ARRAY(arena, int, count),
                                .place = ARENA_ARRAY(arena, int, q.count),
                                .parent = ARENA_ARRAY(arena, int, count),
                                .below = ARENA_ARRAY(arena, int *, count),
                                .below_count = ARENA_ARRAY(arena, size_t, count)};
    int *steps = ARENA_ARRAY(arena, int, count); /* nodes as eliminated */
    for (size_t done = 0; done < count;)
        done += eliminate_next(&q, steps + done);
    for (size_t i = 0; i < q.count; i++)
        found.place[i] = -1;
    for (size_t k = 0; k < count; k++)
        found.place[steps[k]] = (int)k;
    int *parent = ARENA_ARRAY(arena, int, count);
    for (size_t k = 0; k < count; k++) {
        const struct list *members = &q.members[steps[k]];
        parent[k] = -1;
        for (size_t m = 0; m < members->count; m++) {
            int step = found.place[members->items[m]];
            if (step > (int)k && (parent[k] < 0 || step < parent[k]))
                parent[k] = step;
        }
    }
    int *by_branch = branches_first(arena, parent, count);
    for (size_t k = 0; k < count; k++)
        found.order[k] = steps[by_branch[k]];
    for (size_t k = 0; k < count; k++)
        found.place[found.order[k]] = (int)k;
    for (size_t k = 0; k < count; k++)
        list_below(&found, &q, k);
    return found;
}
