#include "brace/search.h"

#include <math.h>
#include <string.h>

#define INDEPENDENT 1e-6   /* share of a candidate's elongations that must be new */
#define WORK_MOST 2e9      /* operations: sets of many braces are tried in smaller number */
#define STEPS_MOST 2000000 /* of the walk through the sets, dead ends included */

struct search {
    struct arena *arena;
    const struct search_input *input;
    struct search_result *result;
    int *chosen;
    size_t size;
    size_t most;    /* sets that may be tried for lean */
    double *basis;  /* rows: independent elongations of the chosen, one after another */
    size_t *pivots; /* leading way of each basis row */
    size_t steps;
    bool exhausted; /* a limit was reached */
};

/* Reduce a candidate's elongations by the basis; true with the rest appended where it is new. */
static bool extend(struct search *search, size_t rank, int candidate) {
    size_t ways = search->input->ways;
    double *row = &search->basis[rank * ways];
    const double *own = &search->input->elongations[(size_t)candidate * ways];
    double before = 0.0, after = 0.0;
    for (size_t w = 0; w < ways; w++) {
        row[w] = own[w];
        before = fmax(before, fabs(own[w]));
    }
    for (size_t r = 0; r < rank; r++) {
        const double *other = &search->basis[r * ways];
        double share = row[search->pivots[r]] / other[search->pivots[r]];
        for (size_t w = 0; w < ways; w++)
            row[w] -= share * other[w];
        row[search->pivots[r]] = 0.0;
    }
    for (size_t w = 0; w < ways; w++)
        if (fabs(row[w]) > after) {
            after = fabs(row[w]);
            search->pivots[rank] = w;
        }
    return before > 1e-9 && after > INDEPENDENT * before;
}

static void try_set(struct search *search) {
    struct search_result *result = search->result;
    if (result->solved >= search->most) {
        search->exhausted = true;
        return;
    }
    result->solved++;
    result->holds = true;
    struct trial_result lean =
        trial_run(search->arena, search->input->trial, search->chosen, search->size, NULL);
    bool soft = !lean.stands || !(lean.worst <= 1.0);
    /* a later set must be better by more than round-off to come before file order */
    if (soft || (result->found && lean.worst >= result->lean.worst * (1.0 - 1e-9)))
        return;
    result->found = true;
    result->lean = lean;
    memcpy(result->set, search->chosen, search->size * sizeof *result->set);
}

/* All sets of search->size candidates from `next` on, in file order; `rank` of those chosen. */
static void descend(struct search *search, size_t depth, size_t rank, int next) {
    size_t left = search->size - depth;
    if (search->exhausted || search->input->ways - rank > left)
        return;
    if (++search->steps > STEPS_MOST) {
        search->exhausted = true;
        return;
    }
    if (left == 0) {
        try_set(search);
        return;
    }
    int last = (int)search->input->trial->count - (int)left;
    for (int c = next; c <= last && !search->exhausted; c++) {
        if (!search->input->allowed[c])
            continue;
        bool fresh = rank < search->input->ways && extend(search, rank, c);
        search->chosen[depth] = c;
        descend(search, depth + 1, rank + fresh, c + 1);
    }
}

/* Do all allowed candidates together stop every way? */
static bool can_hold(struct search *search) {
    size_t rank = 0;
    for (size_t c = 0; c < search->input->trial->count && rank < search->input->ways; c++)
        if (search->input->allowed[c])
            rank += extend(search, rank, (int)c);
    return rank == search->input->ways;
}

static size_t most_sets(size_t terms) {
    double work = (double)terms * (double)terms * (double)terms + 1.0;
    double most = WORK_MOST / work;
    return most < SEARCH_MOST ? (size_t)fmax(most, 1.0) : SEARCH_MOST;
}

struct search_result search_fewest(struct arena *arena, const struct search_input *input) {
    size_t count = input->trial->count, ways = input->ways;
    struct search_result result = {.set = ARENA_ARRAY(arena, int, count)};
    struct search search = {.arena = arena,
                            .input = input,
                            .result = &result,
                            .chosen = ARENA_ARRAY(arena, int, count),
                            .basis = ARENA_ARRAY(arena, double, (ways + 1) * (ways + 1)),
                            .pivots = ARENA_ARRAY(arena, size_t, ways + 1)};
    if (!can_hold(&search)) {
        result.proved = true;
        return result;
    }
    for (size_t size = ways; size <= count; size++) {
        search.size = size;
        search.most = most_sets(input->trial->springs + size);
        descend(&search, 0, 0, 0);
        result.number = size;
        result.proved = !search.exhausted;
        if (result.found || search.exhausted)
            return result;
    }
    return result;
}
