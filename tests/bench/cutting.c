#include "cutting.h"

#include "cut/boards.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { PIECES = 60, TASKS = 20 };
static const int64_t STOCK = 2438400000, KERF = 3175000;

static uint64_t state;

static double next(void) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return (double)(state >> 11) * 0x1p-53;
}

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

/* ---- kinds of tasks ---- */

static size_t between(int64_t *lengths, double least, double most) {
    for (int k = 0; k < PIECES; k++)
        lengths[k] = (int64_t)((least + (most - least) * next()) * (double)STOCK);
    return PIECES;
}

static size_t any_length(int64_t *lengths) {
    return between(lengths, 0.001, 0.999);
}
static size_t two_to_five(int64_t *lengths) {
    return between(lengths, 0.2, 0.45);
}
static size_t little_apart(int64_t *lengths) {
    size_t count = between(lengths, 0.150, 0.200);
    for (size_t k = 0; k < count; k++)
        lengths[k] = lengths[k] / 2438400 * 2438400;
    return count;
}

/* Of as many lengths as pieces, to 1/16 in; 20 to 30 in is three or four on 8 ft. */
static size_t to_a_sixteenth(int64_t *lengths, double least, double most) {
    size_t count = 0;
    while (count < PIECES) {
        int64_t length = (int64_t)(16.0 * (least + (most - least) * next())) * 1587500;
        size_t k = 0;
        while (k < count && lengths[k] != length)
            k++;
        if (k == count)
            lengths[count++] = length;
    }
    return count;
}
static size_t sixty_lengths(int64_t *lengths) {
    return to_a_sixteenth(lengths, 3.0, 90.0);
}
static size_t threes_and_fours(int64_t *lengths) {
    return to_a_sixteenth(lengths, 20.0, 30.0);
}
static size_t few_lengths(int64_t *lengths) {
    int64_t kinds[8];
    for (int k = 0; k < 8; k++)
        kinds[k] = (int64_t)(6 + next() * 80 * 16) * 1587500;
    for (int k = 0; k < PIECES; k++)
        lengths[k] = kinds[(int)(8 * next())];
    return PIECES;
}

/* Boards cut up with nothing left over, so that only the same cuts do. */
static size_t cut_up(int64_t *lengths, int pieces, int64_t unit) {
    size_t count = 0;
    for (int b = 0; b < PIECES / pieces; b++) {
        double share[PIECES], sum = 0.0;
        int64_t left = STOCK + KERF;
        for (int k = 0; k < pieces; k++)
            sum += share[k] = 0.2 + next();
        for (int k = 0; k + 1 < pieces; k++) {
            int64_t size = (int64_t)((double)STOCK * share[k] / sum) / unit * unit;
            lengths[count++] = size - KERF;
            left -= size;
        }
        lengths[count++] = left - KERF;
    }
    return count;
}
static size_t threes(int64_t *lengths) {
    return cut_up(lengths, 3, 1);
}
static size_t sixes(int64_t *lengths) {
    return cut_up(lengths, 6, 1);
}
static size_t sixes_to_a_sixteenth(int64_t *lengths) {
    return cut_up(lengths, 6, 1587500);
}

/* ---- */

static bool is_proved(const struct board_task *task) {
    struct arena *arena = arena_new();
    if (!arena || ARENA_TRAP(arena))
        exit(1);
    bool proved = boards_cut(arena, task).proved;
    arena_free(arena);
    return proved;
}

static void row(const char *what, size_t (*make)(int64_t *), size_t stock_count) {
    static const struct board_stock priced[] = {
        {2438400000, 320}, {3048000000, 425}, {3657600000, 519}, {4876800000, 760}};
    static const struct board_stock one = {2438400000, 1};
    double slowest = 0.0;
    int proved = 0;
    state = 1;
    for (int task = 0; task < TASKS; task++) {
        int64_t lengths[PIECES];
        struct board_task asked = {.lengths = lengths,
                                   .count = make(lengths),
                                   .stocks = stock_count > 1 ? priced : &one,
                                   .stock_count = stock_count,
                                   .kerf = KERF};
        double start = now();
        proved += is_proved(&asked);
        slowest = fmax(slowest, now() - start);
    }
    printf("%-66s %6.0f ms, %2d of %d proved %12d ms  %s\n", what, 1e3 * slowest, proved, TASKS,
           2000, slowest <= 2.0 && proved == TASKS ? "met" : "missed");
    fflush(stdout);
}

void cutting(void) {
    row("boards for 60 pieces, slowest of 20: any length", any_length, 1);
    row("    two to five on a board", two_to_five, 1);
    row("    lengths little apart", little_apart, 1);
    row("    eight lengths, as frames have", few_lengths, 1);
    row("    boards cut up in threes, nothing left over", threes, 1);
    row("    in sixes, nothing left over", sixes, 1);
    row("    in sixes, to 1/16 in", sixes_to_a_sixteenth, 1);
    row("    eight lengths, the cheapest of four stocks", few_lengths, 4);
    row("    any length under 8 ft, the cheapest of four stocks", any_length, 4);
    row("    sixty lengths of 3 to 90 in, the same", sixty_lengths, 4);
    row("    sixty lengths of 20 to 30 in, the same", threes_and_fours, 4);
}
