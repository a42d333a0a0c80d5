#include "base/near.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST = 64 };

static size_t smaller(size_t a, size_t b) {
    return a < b ? a : b;
}

static int folded(const char *text, size_t index) {
    return tolower((unsigned char)text[index]);
}

/* Optimal string alignment distance; names longer than LONGEST count as far away. */
static size_t edit_distance(const char *a, const char *b) {
    size_t rows[3][LONGEST + 1];
    size_t length_a = strlen(a), length_b = strlen(b);
    if (length_a > LONGEST || length_b > LONGEST)
        return LONGEST;
    size_t *before = rows[0], *last = rows[1], *now = rows[2];
    for (size_t j = 0; j <= length_b; j++)
        last[j] = j;
    for (size_t i = 1; i <= length_a; i++) {
        now[0] = i;
        for (size_t j = 1; j <= length_b; j++) {
            size_t differs = folded(a, i - 1) != folded(b, j - 1);
            now[j] = smaller(smaller(now[j - 1], last[j]) + 1, last[j - 1] + differs);
            if (i > 1 && j > 1 && folded(a, i - 1) == folded(b, j - 2) &&
                folded(a, i - 2) == folded(b, j - 1))
                now[j] = smaller(now[j], before[j - 2] + 1);
        }
        size_t *oldest = before;
        before = last;
        last = now;
        now = oldest;
    }
    return last[length_b];
}

const char *near_name(const char *found, const char *const *names, size_t count) {
    size_t allowed = strlen(found) / 3;
    if (allowed < 1)
        allowed = 1;
    const char *best = NULL;
    size_t best_distance = allowed + 1;
    for (size_t k = 0; k < count; k++) {
        size_t distance = edit_distance(found, names[k]);
        if (distance < best_distance && distance < strlen(found)) {
            best = names[k];
            best_distance = distance;
        }
    }
    return best;
}
