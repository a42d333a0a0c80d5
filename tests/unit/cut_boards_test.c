/* Boards: published cutting stock problems, plans against an exhaustive search, and what must hold
 * of every plan. */
#include "cut/boards.h"

#include "cut/bounds.h"
#include "cut/first_fit.h"
#include "cut/knapsack.h"
#include "cut/rounding.h"
#include "in_arena.h"
#include "second_frame.h"

#include <gsl/gsl_errno.h>
#include <stdbool.h>
#include <string.h>

static void set_up_quietly(void) {
    gsl_set_error_handler_off();
    set_up();
}
TestSuite(boards, .init = set_up_quietly, .fini = tear_down);

/* Pieces + kerf + off-cut + trims = stock on every board; each piece is there once. */
static void is_sound(const struct board_task *task, const struct board_plan *plan,
                     const char *name) {
    bool *seen = ARENA_ARRAY(arena, bool, task->count);
    int64_t cost = 0;
    size_t pieces = 0;
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct board *board = &plan->boards[b];
        int64_t sum = 2 * task->trim + (int64_t)(board->count - 1) * task->kerf;
        for (size_t k = 0; k < board->count; k++) {
            int piece = board->pieces[k];
            cr_assert(!seen[piece], "%s: piece %d is cut twice", name, piece);
            seen[piece] = true;
            pieces++;
            sum += task->lengths[piece];
        }
        cr_assert(board->left >= 0 && sum + board->left == task->stocks[board->stock].length,
                  "%s: board %zu does not add up", name, b);
        cost += task->stocks[board->stock].cost;
    }
    for (size_t k = 0; k < plan->too_long_count; k++)
        cr_assert(!seen[plan->too_long[k]], "%s: too long and cut", name);
    cr_assert(pieces + plan->too_long_count == task->count, "%s: a piece is lost", name);
    cr_assert(cost == plan->cost && plan->bound <= plan->cost, "%s: cost", name);
    cr_assert(plan->proved == (plan->bound == plan->cost && !plan->too_long_count), "%s: proved",
              name);
}

static struct board_plan cut_all(const struct board_task *task, const char *name) {
    struct board_plan plan = boards_cut(arena, task);
    is_sound(task, &plan, name);
    return plan;
}

/* ---- published problems: Chvatal 1983, an encyclopedia's paper rolls, a manual's rolls, exercises
 * of textbooks, Johnson's case where first fit fails; optima as published or by two methods ---- */

enum { KINDS_MOST = 13 };
struct problem_row {
    const char *name;
    int64_t stock, kerf;
    int64_t lengths[KINDS_MOST];
    int counts[KINDS_MOST];
    int64_t fewest;
};
static const struct problem_row rows[] = {
    {"Chvatal", 100, 0, {45, 36, 31, 14}, {97, 610, 395, 211}, 453},
    {"paper rolls",
     5600,
     0,
     {1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200},
     {22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20},
     73},
    /* 17, 21, 22.5, 24, 29.5 of 94: halves */
    {"manual rolls", 188, 0, {34, 42, 45, 48, 59}, {150, 96, 48, 108, 227}, 161},
    {"boards A", 20, 0, {10, 8, 4, 3}, {70, 15, 25, 50}, 54},
    {"boards B", 25, 0, {11, 9, 7}, {300, 1200, 5000}, 2167},
    {"boards C", 25, 0, {10, 9, 7}, {300, 1200, 700}, 775},
    {"boards D", 17, 0, {9, 5, 3}, {15, 20, 25}, 19},
    {"where first fit fails", 100, 0, {51, 27, 26, 23}, {6, 6, 6, 12}, 9},
    {"without kerf", 2400, 0, {600, 800, 1200}, {8, 6, 2}, 5},
    {"with kerf", 2400, 3, {600, 800, 1200}, {8, 6, 2}, 6},
    /* 44/3 + 33/4 + 12/11 pieces a board fill 1.96 boards, yet two do not do (known: the relaxation
     * rounded up is one short) */
    {"a gap of one", 132, 0, {44, 33, 12}, {2, 3, 6}, 3}};

Test(boards, published_optima) {
    for (size_t r = 0; r < sizeof rows / sizeof *rows; r++) {
        const struct problem_row *row = &rows[r];
        size_t count = 0;
        for (int k = 0; k < KINDS_MOST; k++)
            count += (size_t)row->counts[k];
        int64_t *lengths = ARENA_ARRAY(arena, int64_t, count);
        count = 0;
        for (int k = 0; k < KINDS_MOST; k++)
            for (int copy = 0; copy < row->counts[k]; copy++)
                lengths[count++] = row->lengths[k];
        struct board_stock stock = {row->stock, 1};
        struct board_task task = {lengths, count, &stock, 1, row->kerf, 0};
        struct board_plan plan = cut_all(&task, row->name);
        cr_assert(plan.cost == row->fewest && plan.proved, "%s: %lld boards, at least %lld",
                  row->name, (long long)plan.cost, (long long)plan.bound);
    }
}

/* ---- small problems against every way to share the pieces out ---- */

enum { SMALL_MOST = 9, DEAR = 1 << 30 };

static int64_t least_cost(const struct board_task *task, const int64_t *lengths, int count) {
    int64_t *one = ARENA_ARRAY(arena, int64_t, (size_t)1 << count);
    int64_t *least = ARENA_ARRAY(arena, int64_t, (size_t)1 << count);
    for (int set = 1; set < 1 << count; set++) {
        int64_t sum = -task->kerf;
        for (int k = 0; k < count; k++)
            if (set >> k & 1)
                sum += lengths[k] + task->kerf;
        one[set] = DEAR;
        for (size_t s = 0; s < task->stock_count; s++)
            if (sum <= task->stocks[s].length - 2 * task->trim && task->stocks[s].cost < one[set])
                one[set] = task->stocks[s].cost;
        least[set] = DEAR;
        for (int part = set; part; part = (part - 1) & set)
            if (one[part] + least[set ^ part] < least[set])
                least[set] = one[part] + least[set ^ part];
    }
    return least[(1 << count) - 1];
}

Test(boards, small_problems_are_solved) {
    uint64_t state = 20;
    for (int trial = 0; trial < 3000; trial++) {
        struct arena_mark mark = arena_mark(arena);
        struct board_stock stocks[3];
        int64_t lengths[SMALL_MOST], that_fit[SMALL_MOST], longest = 0;
        int range = 20 + (int)(200 * random_next(&state)), fit = 0;
        struct board_task task = {.lengths = lengths,
                                  .count = 1 + (size_t)(SMALL_MOST * random_next(&state)),
                                  .stocks = stocks,
                                  .stock_count = 1 + (size_t)(3 * random_next(&state)),
                                  .kerf = (int64_t)(3 * random_next(&state)),
                                  .trim = (int64_t)(2 * random_next(&state))};
        for (size_t s = 0; s < task.stock_count; s++) {
            stocks[s].length = range / 2 + (int64_t)(range * random_next(&state));
            stocks[s].cost = 10 + (int64_t)(40 * random_next(&state));
            if (stocks[s].length - 2 * task.trim > longest)
                longest = stocks[s].length - 2 * task.trim;
        }
        for (size_t k = 0; k < task.count; k++) {
            lengths[k] = 1 + (int64_t)(0.9 * range * random_next(&state));
            if (lengths[k] <= longest)
                that_fit[fit++] = lengths[k];
        }
        struct board_plan plan = cut_all(&task, "small");
        cr_assert(plan.cost == (fit ? least_cost(&task, that_fit, fit) : 0), "trial %d", trial);
        cr_assert(plan.bound == plan.cost, "trial %d is not proved", trial);
        arena_rewind(arena, mark);
    }
}

/* ---- boards cut up at random: what was cut fits together again ---- */

static void no_waste(uint64_t *state, int pieces, int64_t unit, const char *name) {
    enum { PIECES = 60 };
    int64_t lengths[PIECES], stock = 2438400000, kerf = 3175000;
    size_t count = 0;
    int boards = PIECES / pieces;
    for (int b = 0; b < boards; b++) {
        double share[PIECES], sum = 0.0;
        int64_t left = stock + kerf;
        for (int k = 0; k < pieces; k++)
            sum += share[k] = 0.2 + random_next(state);
        for (int k = 0; k + 1 < pieces; k++) {
            int64_t size = (int64_t)((double)stock * share[k] / sum) / unit * unit;
            lengths[count++] = size - kerf;
            left -= size;
        }
        lengths[count++] = left - kerf;
    }
    struct board_stock stocks = {stock, 1};
    struct board_task task = {lengths, count, &stocks, 1, kerf, 0};
    struct board_plan plan = cut_all(&task, name);
    cr_assert(plan.cost == boards && plan.proved, "%s: %lld boards, not %d", name,
              (long long)plan.cost, boards);
    /* a nanometre less of every board, and one more is needed */
    stocks.length -= 1;
    plan = cut_all(&task, name);
    cr_assert(plan.cost > boards, "%s: a shorter board holds as much", name);
}

Test(boards, what_was_cut_fits_together_again) {
    uint64_t state = 7;
    for (int trial = 0; trial < 100; trial++) {
        struct arena_mark mark = arena_mark(arena);
        no_waste(&state, 2 + trial % 3, 1, "to a nanometre");
        no_waste(&state, 3 + trial % 4, 1587500, "to 1/16 in");
        arena_rewind(arena, mark);
    }
}

/* ---- sixty pieces of many kinds: all proved ---- */

static int64_t random_length(uint64_t *state, int kind) {
    double r = random_next(state);
    switch (kind) {
    case 0: /* any length at all */
        return 1 + (int64_t)(2438399998.0 * r);
    case 1: /* two to five on a board */
        return (int64_t)((0.2 + 0.2 * r) * 2438400000.0);
    case 2: /* little between them, and no good fit */
        return (int64_t)(150 + 51 * r) * 2438400;
    default: /* a few lengths, as frames have */
        return 50800000 * (1 + (int64_t)(7 * r) * 3);
    }
}

Test(boards, sixty_pieces_are_proved) {
    uint64_t state = 3;
    for (int trial = 0; trial < 40; trial++) {
        struct arena_mark mark = arena_mark(arena);
        int64_t lengths[60];
        for (int k = 0; k < 60; k++)
            lengths[k] = random_length(&state, trial % 4);
        struct board_stock stock = {2438400000, 1};
        struct board_task task = {lengths, 60, &stock, 1, 3175000, 0};
        cr_assert(cut_all(&task, "sixty").proved, "trial %d", trial);
        arena_rewind(arena, mark);
    }
}

/* Sixty pieces of as many lengths, to 1/16 in, from stocks of 6, 8, 10 and 12 ft: the bound of the
 * least cost lies between what boards come to, so that nearly each of these was open once. */
static size_t sixty_lengths(uint64_t *state, double least, double most, int64_t *lengths) {
    size_t count = 0;
    while (count < 60) {
        double inches = least + (most - least) * random_next(state);
        int64_t length = (int64_t)(16.0 * inches) * 1587500;
        bool is_new = true;
        for (size_t k = 0; k < count; k++)
            is_new &= lengths[k] != length;
        if (is_new)
            lengths[count++] = length;
    }
    return count;
}

Test(boards, sixty_lengths_of_four_priced_stocks_are_proved) {
    static const struct {
        const char *name;
        double least, most; /* in */
        int64_t cost[4];
    } priced[] = {{"a dear 6 ft", 3, 90, {275, 348, 465, 572}},
                  {"10 ft by the foot cheapest", 3, 90, {271, 363, 449, 547}},
                  {"by the foot all alike", 3, 90, {300, 400, 500, 600}},
                  {"longer is cheaper", 3, 90, {299, 378, 445, 497}},
                  {"three or four on 8 ft", 20, 30, {275, 348, 465, 572}}};
    uint64_t state = 60;
    for (int trial = 0; trial < 20; trial++) {
        struct arena_mark mark = arena_mark(arena);
        size_t p = (size_t)trial % (sizeof priced / sizeof *priced);
        int64_t lengths[60];
        struct board_stock stocks[4];
        for (int s = 0; s < 4; s++)
            stocks[s] = (struct board_stock){(72 + 24 * s) * 25400000LL, priced[p].cost[s]};
        size_t count = sixty_lengths(&state, priced[p].least, priced[p].most, lengths);
        struct board_task task = {lengths, count, stocks, 4, 3175000, 0};
        cr_assert(cut_all(&task, priced[p].name).proved, "%s: trial %d", priced[p].name, trial);
        arena_rewind(arena, mark);
    }
}

/* Two stocks with prices: 8 ft at 3.20, 10 ft at 4.60. Three pieces of 39 in need a 10 ft board
 * (117.25 in) or an 8 ft one for two and another for one: 4.60 against 6.40. */
Test(boards, the_cheaper_choice_of_stocks) {
    const int64_t inch = 25400000, lengths[] = {39 * inch, 39 * inch, 39 * inch, 90 * inch};
    const struct board_stock stocks[] = {{96 * inch, 320}, {120 * inch, 460}};
    struct board_task task = {lengths, 4, stocks, 2, inch / 8, 0};
    struct board_plan plan = cut_all(&task, "two stocks");
    cr_assert(plan.cost == 780 && plan.board_count == 2 && plan.proved);
    cr_assert(plan.boards[0].stock == 0 && plan.boards[0].count == 1);
    cr_assert(plan.boards[1].stock == 1 && plan.boards[1].count == 3);
}

Test(boards, what_is_too_long_is_said) {
    const int64_t lengths[] = {50, 101, 98};
    const struct board_stock stock = {100, 1};
    struct board_task task = {lengths, 3, &stock, 1, 2, 1};
    struct board_plan plan = cut_all(&task, "too long");
    cr_assert(plan.too_long_count == 1 && plan.too_long[0] == 1 && plan.cost == 2 && !plan.proved);
    task.count = 0;
    plan = cut_all(&task, "nothing");
    cr_assert(plan.board_count == 0 && plan.cost == 0 && plan.proved);
    /* trims that leave nothing of a board */
    task.count = 3;
    task.trim = 50;
    plan = cut_all(&task, "no board left");
    cr_assert(plan.too_long_count == 3 && plan.board_count == 0 && !plan.proved);
}

/* Many pieces that are not proved: still a plan, and the same every time. */
Test(boards, many_pieces_give_the_same_plan_again) {
    enum { MANY = 3000 };
    uint64_t state = 11;
    int64_t *lengths = ARENA_ARRAY(arena, int64_t, MANY);
    for (int k = 0; k < MANY; k++)
        lengths[k] = (int64_t)((0.02 + 0.6 * random_next(&state)) * 2438400000.0);
    struct board_stock stock = {2438400000, 1};
    struct board_task task = {lengths, MANY, &stock, 1, 3175000, 0};
    struct board_plan one = cut_all(&task, "many"), other = cut_all(&task, "many");
    cr_assert(one.board_count == other.board_count && one.bound == other.bound);
    cr_assert((double)one.cost <= 1.01 * (double)one.bound);
    for (size_t b = 0; b < one.board_count; b++)
        cr_assert(one.boards[b].count == other.boards[b].count &&
                  memcmp(one.boards[b].pieces, other.boards[b].pieces,
                         one.boards[b].count * sizeof(int)) == 0);
}

/* ---- the steps alone ---- */

/* Against every choice. */
Test(boards, knapsack_is_exact) {
    enum { THINGS = 7 };
    uint64_t state = 5;
    for (int trial = 0; trial < 500; trial++) {
        struct arena_mark mark = arena_mark(arena);
        int64_t size[THINGS], worth[THINGS];
        int most[THINGS], take[THINGS];
        long patience = 1000;
        for (int k = 0; k < THINGS; k++) {
            size[k] = 1 + (int64_t)(40 * random_next(&state));
            worth[k] = (int64_t)(50 * random_next(&state));
            most[k] = (int)(3 * random_next(&state));
        }
        struct knapsack knapsack = {
            THINGS, size, worth, most, (int64_t)(120 * random_next(&state)), &patience};
        int64_t best = 0, upper, found = 0;
        for (int choice = 0; choice < 2187; choice++) {
            int64_t room = 0, sum = 0;
            bool allowed = true;
            for (int k = 0, rest = choice; k < THINGS; k++, rest /= 3) {
                allowed &= rest % 3 <= most[k];
                room += rest % 3 * size[k];
                sum += rest % 3 * worth[k];
            }
            if (allowed && room <= knapsack.room && sum > best)
                best = sum;
        }
        int64_t got = knapsack_best(arena, &knapsack, 0, take, &upper);
        cr_assert(got == best && upper == best, "trial %d", trial);
        for (int k = 0; got > 0 && k < THINGS; k++)
            found += take[k] * worth[k];
        cr_assert(found == best);
        arena_rewind(arena, mark);
    }
}

/* Six pieces of 52 and six of 49 on boards of 100: by length 606 / 100, 7 boards. But none of the
 * first shares a board with any of the others (101), so 6 and ceil(6 x 49 / 100) = 3 are needed
 * (Martello and Toth's L2). */
Test(boards, bound_by_halves) {
    int64_t lengths[12];
    for (int k = 0; k < 12; k++)
        lengths[k] = k < 6 ? 52 : 49;
    struct board_stock stock = {100, 1};
    struct board_task task = {lengths, 12, &stock, 1, 0, 0};
    struct board_plan plan = {0};
    struct kinds kinds = kinds_of(arena, &task, &plan);
    cr_assert(bound_by_length(&kinds) == 7);
    cr_assert(bound_by_halves(&kinds) == 9);
    cr_assert(cut_all(&task, "halves").cost == 9);
}

/* ---- given boards ---- */

enum { GIVEN_PIECES = 7, GIVEN_BOARDS = 4 };

/* Every way to lay the pieces, the first ones laid already, into what is left of the boards. */
static bool fit_in(const int64_t *size, int count, int64_t *room, int boards) {
    if (count == 0)
        return true;
    for (int b = 0; b < boards; b++) {
        if (room[b] < *size)
            continue;
        room[b] -= *size;
        bool fit = fit_in(size + 1, count - 1, room, boards);
        room[b] += *size;
        if (fit)
            return true;
    }
    return false;
}

static void holds_all(const struct kinds *kinds, const int *boards, const struct layout *layout) {
    int left[GIVEN_PIECES] = {0}, used[2] = {0};
    for (size_t k = 0; k < layout->count; k++) {
        const struct pattern *pattern = &layout->items[k];
        int64_t sum = 0;
        used[pattern->stock] += pattern->times;
        for (size_t t = 0; t < pattern->take_count; t++) {
            left[pattern->takes[t].kind] += pattern->takes[t].count * pattern->times;
            sum += kinds->size[pattern->takes[t].kind] * pattern->takes[t].count;
        }
        cr_assert(sum <= kinds->room[pattern->stock]);
    }
    for (size_t k = 0; k < kinds->count; k++)
        cr_assert(left[k] == kinds->demand[k]);
    for (size_t s = 0; s < kinds->stock_count; s++)
        cr_assert(used[s] <= boards[s]);
}

/* Boards that are said to be too few are so, and what is rounded to them fits, against every way
 * to lay the pieces; of those that are long enough altogether many are too few all the same. */
Test(boards, given_boards_are_too_few_or_not) {
    uint64_t state = 33;
    int long_enough = 0, rounded = 0, wrongly_open = 0;
    for (int trial = 0; trial < 2000; trial++) {
        struct arena_mark mark = arena_mark(arena);
        int64_t lengths[GIVEN_PIECES], room[GIVEN_BOARDS], sum = 0;
        for (int k = 0; k < GIVEN_PIECES; k++)
            sum += lengths[k] = 15 + (int64_t)(50 * random_next(&state));
        const struct board_stock stocks[2] = {{72, 10}, {96, 13}};
        const struct board_task task = {lengths, GIVEN_PIECES, stocks, 2, 0, 0};
        struct board_plan plan = {0};
        struct kinds kinds = kinds_of(arena, &task, &plan);
        int boards[2] = {(int)(3 * random_next(&state)), 2};
        for (int b = 0; b < boards[0] + boards[1]; b++)
            sum -= room[b] = b < boards[0] ? 72 : 96;
        bool fit = fit_in(lengths, GIVEN_PIECES, room, boards[0] + boards[1]);
        struct columns columns = {0};
        struct relaxation relaxation = relax(arena, &kinds, kinds.demand, boards, &columns);
        struct layout layout = {0};
        cr_assert(!(relaxation.too_few && fit), "trial %d: said to be too few", trial);
        long_enough += relaxation.too_few && sum <= 0;
        wrongly_open += !relaxation.too_few && !fit;
        if (!relaxation.too_few && relaxation.solved &&
            round_to_boards(arena, &kinds, boards, &columns, &relaxation, 10000, &layout)) {
            cr_assert(fit, "trial %d: laid what does not fit", trial);
            holds_all(&kinds, boards, &layout);
            rounded++;
        }
        arena_rewind(arena, mark);
    }
    cr_assert(long_enough > 50 && rounded > 50 && wrongly_open < 100, "%d, %d, %d", long_enough,
              rounded, wrongly_open);
}
