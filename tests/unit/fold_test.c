/* Ways to fold with every fastening taken as a hinge: frames whose counts are known. */
#include "fold/ways.h"
#include "near.h"
#include "second_frame.h"
#include "solve/system.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#define HEAD                                                                                       \
    "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"                              \
    "sticks: {a: {size: [45, 45], material: {E: 9 GPa, density: 420}}}\nconnections: {default: "   \
    "pinned}\n"

static struct fold_ways ways_of(struct arena *arena, const char *text, bool loose,
                                const struct model **out) {
    struct frame *frame = frame_of_text(arena, text);
    if (loose)
        frame->supports.count = 0;
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame, &problems);
    cr_assert(model != NULL, "no model");
    if (out)
        *out = model;
    return fold_ways(arena, model, NULL, 0);
}

static void count(const char *name, const char *text, size_t ways, size_t self_stress) {
    struct arena *arena = arena_new();
    const struct model *model;
    struct fold_ways found = ways_of(arena, text, false, &model);
    cr_assert(found.count == ways, "%s: %zu ways, are %zu", name, found.count, ways);
    cr_assert(found.self_stress_known && found.self_stress == self_stress,
              "%s: %zu states of self-stress, are %zu", name, found.self_stress, self_stress);
    /* every way strains nothing */
    struct straight straight = straight_build(arena, model, NULL, 0);
    for (size_t w = 0; w < found.count; w++)
        for (size_t r = 0; r < straight.rows.count; r++)
            NEAR_ABS(strain_of(&straight.rows.items[r], (const double(*)[3])found.moves[w]), 0.0,
                     1e-9);
    /* all is pinned: the system with its real fastenings folds as often */
    const struct system *system = system_build(arena, model, STIFFNESS_MIDDLE, NULL, 0);
    cr_assert(system->mode_count == ways, "%s: the system folds in %zu ways", name,
              system->mode_count);
    arena_free(arena);
}

#define BAY                                                                                        \
    "joints: {a: [0, 0], b: [1000, 0], c: [0, 1000], d: [1000, 1000]}\n"                           \
    "supports: {a: pinned, b: pinned}\n"                                                           \
    "members:\n  ac: {from: a, to: c, stick: a}\n  bd: {from: b, to: d, stick: a}\n"               \
    "  cd: {from: c, to: d, stick: a}\n"

Test(fold, two_bars_in_a_line) {
    count("two bars in a line",
          HEAD "joints: {a: [0, 0], b: [1000, 0], c: [2000, 0]}\nsupports: {a: pinned, c: pinned}\n"
               "members:\n  ab: {from: a, to: b, stick: a}\n  bc: {from: b, to: c, stick: a}\n",
          1, 1);
}

Test(fold, a_square_bay) {
    count("bay", HEAD BAY, 1, 0);
    count("bay, one diagonal", HEAD BAY "  ad: {from: a, to: d, stick: a}\n", 0, 0);
    count("bay, two diagonals",
          HEAD BAY "  ad: {from: a, to: d, stick: a}\n  bc: {from: b, to: c, stick: a}\n", 0, 1);
}

#define CUBE                                                                                       \
    "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [1000, 1000, 0], d: [0, 1000, 0], e: [0, 0, "      \
    "1000], f: [1000, 0, 1000], g: [1000, 1000, 1000], h: [0, 1000, 1000]}\n"                      \
    "supports: {a: pinned, b: [y, z], d: [z]}\nmembers:\n"                                         \
    "  ab: {from: a, to: b, stick: a}\n  bc: {from: b, to: c, stick: a}\n"                         \
    "  cd: {from: c, to: d, stick: a}\n  da: {from: d, to: a, stick: a}\n"                         \
    "  ef: {from: e, to: f, stick: a}\n  fg: {from: f, to: g, stick: a}\n"                         \
    "  gh: {from: g, to: h, stick: a}\n  he: {from: h, to: e, stick: a}\n"                         \
    "  ae: {from: a, to: e, stick: a}\n  bf: {from: b, to: f, stick: a}\n"                         \
    "  cg: {from: c, to: g, stick: a}\n  dh: {from: d, to: h, stick: a}\n"

Test(fold, a_cube) {
    count("cube", HEAD CUBE, 6, 0);
    count("cube, a diagonal in each face",
          HEAD CUBE "  af: {from: a, to: f, stick: a}\n  dg: {from: d, to: g, stick: a}\n"
                    "  bg: {from: b, to: g, stick: a}\n  ah: {from: a, to: h, stick: a}\n"
                    "  ac: {from: a, to: c, stick: a}\n  eg: {from: e, to: g, stick: a}\n",
          0, 0);
}

/* Boxes of nx by ny bays and so many tiers on pinned feet: posts a tier each (or in one piece),
 * beams along both ways at every level. */
static const char *boxes(struct arena *arena, int nx, int ny, int tiers, bool long_posts) {
    char *text = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&text, &length);
    fprintf(out, HEAD "joints:\n");
    for (int k = 0; k <= tiers; k++)
        for (int j = 0; j <= ny; j++)
            for (int i = 0; i <= nx; i++)
                fprintf(out, "  j%d-%d-%d: [%d, %d, %d]\n", i, j, k, 900 * i, 700 * j, 800 * k);
    fprintf(out, "supports:\n");
    for (int j = 0; j <= ny; j++)
        for (int i = 0; i <= nx; i++)
            fprintf(out, "  j%d-%d-0: pinned\n", i, j);
    fprintf(out, "members:\n");
    for (int j = 0; j <= ny; j++)
        for (int i = 0; i <= nx; i++)
            for (int k = 0; k < (long_posts ? 1 : tiers); k++)
                fprintf(out, "  p%d-%d-%d: {from: j%d-%d-%d, to: j%d-%d-%d, stick: a}\n", i, j, k,
                        i, j, k, i, j, long_posts ? tiers : k + 1);
    for (int k = 1; k <= tiers; k++)
        for (int j = 0; j <= ny; j++)
            for (int i = 0; i <= nx; i++) {
                if (i < nx)
                    fprintf(out, "  x%d-%d-%d: {from: j%d-%d-%d, to: j%d-%d-%d, stick: a}\n", i, j,
                            k, i, j, k, i + 1, j, k);
                if (j < ny)
                    fprintf(out, "  y%d-%d-%d: {from: j%d-%d-%d, to: j%d-%d-%d, stick: a}\n", i, j,
                            k, i, j, k, i, j + 1, k);
            }
    fclose(out);
    const char *copy = arena_copy(arena, text, length);
    free(text);
    return copy;
}

Test(fold, boxes_and_roofs_on_posts) {
    struct arena *arena = arena_new();
    count("box", boxes(arena, 1, 1, 1, false), 4, 0);
    count("two tiers", boxes(arena, 1, 1, 2, false), 8, 0);
    /* k by l bays: k + l + 2 ways */
    static const int bays[][2] = {{2, 1}, {2, 2}, {3, 2}};
    for (int k = 0; k < 3; k++) {
        struct fold_ways found =
            ways_of(arena, boxes(arena, bays[k][0], bays[k][1], 1, false), false, NULL);
        cr_assert(found.count == (size_t)(bays[k][0] + bays[k][1] + 2), "%d by %d bays: %zu ways",
                  bays[k][0], bays[k][1], found.count);
    }
    arena_free(arena);
}

/* Posts in one piece stay straight: what the ring above does, the ring below does by half. */
Test(fold, long_posts_carry_the_rings_along) {
    struct arena *arena = arena_new();
    for (int tiers = 2; tiers < 5; tiers++) {
        struct fold_ways found = ways_of(arena, boxes(arena, 1, 1, tiers, true), false, NULL);
        cr_assert(found.count == 4, "%d tiers: %zu ways", tiers, found.count);
        cr_assert(!found.self_stress_known, "sticks of more than two joints");
    }
    arena_free(arena);
}

static const char *prism(struct arena *arena, double degrees) {
    double turn = degrees * acos(-1.0) / 180.0, third = 2.0 * acos(-1.0) / 3.0;
    const char *joints = "", *members = "";
    for (int i = 0; i < 3; i++) {
        double low = third * i, high = third * i + turn;
        joints = arena_print(arena, "%s  l%d: [%.17g, %.17g, 0]\n  h%d: [%.17g, %.17g, 1300]\n",
                             joints, i, 1000.0 * cos(low), 1000.0 * sin(low), i, 1000.0 * cos(high),
                             1000.0 * sin(high));
        int n = (i + 1) % 3;
        members = arena_print(arena,
                              "%s  a%d: {from: l%d, to: l%d, stick: a}\n"
                              "  b%d: {from: h%d, to: h%d, stick: a}\n"
                              "  c%d: {from: l%d, to: h%d, stick: a}\n"
                              "  d%d: {from: l%d, to: h%d, stick: a}\n",
                              members, i, i, n, i, i, n, i, i, i, i, i, n);
    }
    return arena_print(arena, HEAD "joints:\n%smembers:\n%ssupports: {l0: pinned}\n", joints,
                       members);
}

/* The same bars fold or not by their geometry alone: counting is not enough. */
Test(fold, a_twisted_prism) {
    static const struct {
        double degrees;
        size_t ways, self_stress;
    } rows[] = {{0, 6, 0}, {10, 6, 0}, {30, 7, 1}, {45, 6, 0}, {60, 6, 0}};
    for (int k = 0; k < 5; k++) {
        struct arena *arena = arena_new();
        struct fold_ways found = ways_of(arena, prism(arena, rows[k].degrees), true, NULL);
        cr_assert(found.count == rows[k].ways && found.self_stress == rows[k].self_stress,
                  "twisted by %g: %zu ways, %zu states of self-stress", rows[k].degrees,
                  found.count, found.self_stress);
        arena_free(arena);
    }
}

/* A brace of a braced bay as a bar beside the sticks. */
Test(fold, a_bar_stops_a_way) {
    struct arena *arena = arena_new();
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame_of_text(arena, HEAD BAY), &problems);
    struct bar bar = {.joints = {0, 3}, .stiffness = 1e6};
    cr_assert(fold_ways(arena, model, NULL, 0).count == 1, "without");
    cr_assert(fold_ways(arena, model, &bar, 1).count == 0, "with");
    cr_assert(system_build(arena, model, STIFFNESS_MIDDLE, &bar, 1)->mode_count == 0, "solved");
    arena_free(arena);
}
