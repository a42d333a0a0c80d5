#include "cut/tight.h"

#include "cut/holders.h"

#include <string.h>

enum { SETS_MOST = 30000, SLOTS = 1 << 16, JOINS_MOST = 20000000, STEPS_MOST = 2000000 };

/* A set of plates with its holders; sets of as many plates form a level. */
struct set {
    uint8_t *number; /* of each plate */
    double area;     /* of its plates */
    struct holders holders;
};
struct level {
    struct set **items;
    size_t count, capacity;
};

struct tight {
    struct arena *arena;
    const struct plates *plates;
    double room, may_lose; /* of a sheet, and altogether */
    struct level *levels;  /* by how many plates */
    size_t plate_count;
    struct set **slots; /* by a hash of the numbers */
    size_t sets;
    long joins, steps;
};

static double area_of(const struct holder *holder) {
    return (double)holder->width * (double)holder->height;
}

/* ---- sets ---- */

/* The slot of a set with these numbers, or the free one where it belongs. */
static struct set **slot_of(const struct tight *tight, const uint8_t *number) {
    uint64_t hash = 14695981039346656037u; /* FNV-1a */
    for (size_t p = 0; p < tight->plates->count; p++)
        hash = (hash ^ number[p]) * 1099511628211u;
    size_t slot = (size_t)((hash ^ hash >> 32) % SLOTS);
    while (tight->slots[slot] &&
           memcmp(tight->slots[slot]->number, number, tight->plates->count) != 0)
        slot = (slot + 1) % SLOTS;
    return &tight->slots[slot];
}

static struct set *set_new(struct tight *tight, struct set **slot, const uint8_t *number) {
    const struct plates *plates = tight->plates;
    struct set *set = ARENA_NEW(tight->arena, struct set);
    set->number = ARENA_ARRAY(tight->arena, uint8_t, plates->count);
    memcpy(set->number, number, plates->count);
    size_t count = 0;
    for (size_t p = 0; p < plates->count; p++) {
        count += number[p];
        set->area += number[p] * (double)plates->items[p].width * (double)plates->items[p].height;
    }
    tight->sets++;
    *slot = set;
    ARRAY_PUSH(tight->arena, &tight->levels[count], set);
    return set;
}

/* The numbers of both; false where they are more than the demand. */
static bool add(const struct tight *tight, const struct set *one, const struct set *two,
                uint8_t *number) {
    for (size_t p = 0; p < tight->plates->count; p++) {
        int sum = one->number[p] + two->number[p];
        if (sum > tight->plates->items[p].demand)
            return false;
        number[p] = (uint8_t)sum;
    }
    return true;
}

/* ---- joining ---- */

static void join(struct tight *tight, const struct set *one, const struct set *two,
                 uint8_t *number) {
    struct set **slot = NULL;
    for (size_t i = 0; i < one->holders.count; i++)
        for (size_t j = 0; j < two->holders.count; j++)
            for (int above = 0; above < 2; above++) {
                struct holder holder =
                    holder_of_two(one->holders.items[i], two->holders.items[j], above);
                if (holder.width > tight->plates->width || holder.height > tight->plates->height ||
                    area_of(&holder) - one->area - two->area > tight->may_lose)
                    continue;
                if (!slot)
                    slot = slot_of(tight, number);
                if (!*slot)
                    set_new(tight, slot, number);
                holders_offer(tight->arena, tight->plates, &(*slot)->holders, holder);
            }
}

static bool is_full(const struct tight *tight) {
    return tight->sets > SETS_MOST || tight->joins > JOINS_MOST;
}

static void join_levels(struct tight *tight, size_t one, size_t two, uint8_t *number) {
    const struct level *a = &tight->levels[one], *b = &tight->levels[two];
    for (size_t i = 0; i < a->count && !is_full(tight); i++)
        for (size_t j = one == two ? i : 0; j < b->count && !is_full(tight); j++) {
            const struct set *first = a->items[i], *second = b->items[j];
            tight->joins++;
            if (first->area + second->area <= tight->room * (1.0 + 1e-12) &&
                add(tight, first, second, number)) {
                tight->joins += (long)(first->holders.count * second->holders.count);
                join(tight, first, second, number);
            }
        }
}

static void join_all(struct tight *tight) {
    uint8_t *number = ARENA_ARRAY(tight->arena, uint8_t, tight->plates->count);
    for (size_t p = 0; p < tight->plates->count; p++) {
        number[p] = 1;
        struct set *set = set_new(tight, slot_of(tight, number), number);
        holders_of_plate(tight->arena, tight->plates, p, &set->holders);
        number[p] = 0;
    }
    for (size_t count = 2; count <= tight->plate_count; count++)
        for (size_t one = 1; one <= count / 2; one++)
            join_levels(tight, one, count - one, number);
}

/* ---- sheets that make all plates ---- */

struct choice {
    struct tight *tight;
    int *left; /* of each plate */
    const struct set **chosen;
    size_t count;
    double may_lose;
};

static bool choose(struct choice *choice);

static bool choose_set(struct choice *choice, const struct set *set, size_t first) {
    const struct plates *plates = choice->tight->plates;
    double lost = choice->tight->room - set->area;
    if (!set->number[first] || lost > choice->may_lose)
        return false;
    for (size_t p = 0; p < plates->count; p++)
        if (set->number[p] > choice->left[p])
            return false;
    for (size_t p = 0; p < plates->count; p++)
        choice->left[p] -= set->number[p];
    choice->may_lose -= lost;
    choice->chosen[choice->count++] = set;
    if (choose(choice))
        return true;
    choice->count--;
    choice->may_lose += lost;
    for (size_t p = 0; p < plates->count; p++)
        choice->left[p] += set->number[p];
    return false;
}

/* A sheet for the first plate left, then for what is left beside it. */
static bool choose(struct choice *choice) {
    struct tight *tight = choice->tight;
    size_t first = 0;
    while (first < tight->plates->count && !choice->left[first])
        first++;
    if (first == tight->plates->count)
        return true;
    for (size_t count = tight->plate_count; count > 0; count--)
        for (size_t k = 0; k < tight->levels[count].count; k++) {
            if (++tight->steps > STEPS_MOST)
                return false;
            if (choose_set(choice, tight->levels[count].items[k], first))
                return true;
        }
    return false;
}

static bool set_out(struct arena *arena, const struct plates *plates, int sheets,
                    struct tight *tight) {
    *tight = (struct tight){
        .arena = arena, .plates = plates, .room = (double)plates->width * (double)plates->height};
    /* whole square nanometres are more than doubles hold; what is lost to that is of no size */
    tight->may_lose = tight->room * (sheets + 1e-9);
    for (size_t p = 0; p < plates->count; p++) {
        const struct plate *plate = &plates->items[p];
        if (plate->demand > UINT8_MAX)
            return false;
        tight->plate_count += (size_t)plate->demand;
        tight->may_lose -= plate->demand * (double)plate->width * (double)plate->height;
    }
    tight->levels = ARENA_ARRAY(arena, struct level, tight->plate_count + 1);
    tight->slots = ARENA_ARRAY(arena, struct set *, SLOTS);
    return true;
}

enum tight_outcome tight_sheets(struct arena *arena, const struct plates *plates, int sheets,
                                struct sheets_layout *layout) {
    struct tight tight;
    if (!set_out(arena, plates, sheets, &tight))
        return TIGHT_UNDECIDED;
    join_all(&tight);
    struct choice choice = {.tight = &tight,
                            .left = ARENA_ARRAY(arena, int, plates->count),
                            .chosen = ARENA_ARRAY(arena, const struct set *, tight.plate_count),
                            .may_lose = tight.may_lose};
    for (size_t p = 0; p < plates->count; p++)
        choice.left[p] = plates->items[p].demand;
    if (!choose(&choice))
        return is_full(&tight) || tight.steps > STEPS_MOST ? TIGHT_UNDECIDED : TIGHT_NONE;
    for (size_t k = 0; k < choice.count; k++)
        ARRAY_PUSH(arena, layout, holder_sheet(arena, choice.chosen[k]->holders.items[0]));
    return TIGHT_FOUND;
}
