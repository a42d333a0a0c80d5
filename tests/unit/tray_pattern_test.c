/* Shelves that are not all full: which patterns there are, and what their rails carry by hand. */
#include "loaded.h"

#include <stdio.h>

TestSuite(tray_pattern, .init = set_up, .fini = tear_down);

#define FRONT_HALF "trays on the front half of each shelf alone"
#define BACK_HALF "trays on the back half of each shelf alone"

static const struct load_pattern *pattern_if_any(const struct loads *loads, const char *words) {
    for (size_t k = 0; k < loads->pattern_count; k++)
        if (strcmp(loads->patterns[k].words, words) == 0)
            return &loads->patterns[k];
    return NULL;
}

/* Its long-standing trays. */
static const struct load_set *filled(const struct loads *loads, const char *words) {
    const struct load_pattern *found = pattern_if_any(loads, words);
    cr_assert(found, "no pattern: %s", words);
    cr_assert(loads->sets[found->sets[0]].present && !loads->sets[found->sets[1]].present);
    return &loads->sets[found->sets[0]];
}

/* Rails along x at y = 0, 0.2 and 0.8 m, in the order that is given. */
#define ALONG(rails, trays)                                                                        \
    LOADED "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [0, 200, 0], d: [1000, 200, 0], e: [0, "    \
           "800, 0], f: [1000, 800, 0]}\n"                                                         \
           "members: {back: {from: e, to: f, stick: bar}, front: {from: a, to: b, stick: bar}, "   \
           "middle: {from: c, to: d, stick: bar}}\n"                                               \
           "supports: {a: fixed, b: fixed, c: fixed, d: fixed, e: fixed, f: fixed}\n"              \
           "site: {place: indoors}\nshelves: {s: {rails: [" rails "], trays: " trays "}}\n"

/* 400 N on the front 0.4 m of 0.8 m: 200 N at 0.1 m, between the first two rails; 200 N at 0.3 m, a
 * sixth of the way from the second to the third. Whichever rail the file names first. */
Test(tray_pattern, the_front_and_the_back_half) {
    static const char *const texts[] = {ALONG("front, middle, back", "{weight: 800 N}"),
                                        ALONG("back, middle, front", "{weight: 800 N}")};
    for (int k = 0; k < 2; k++) {
        const struct loads *loads = loads_of_text(texts[k]);
        cr_assert(loads->pattern_count == 2, "%zu patterns", loads->pattern_count);
        const struct load_set *front = filled(loads, FRONT_HALF), *back = filled(loads, BACK_HALF);
        weighs(loads, front, "front", 100.0, 0.5);
        weighs(loads, front, "middle", 100.0 + 200.0 * 5 / 6, 0.5);
        weighs(loads, front, "back", 200.0 / 6, 0.5);
        /* the back: 400 N at 0.6 m, two thirds of the way */
        weighs(loads, back, "front", 0.0, 0.5);
        weighs(loads, back, "middle", 400.0 / 3, 0.5);
        weighs(loads, back, "back", 800.0 / 3, 0.5);
    }
}

/* Rails from front to back, beside each other from y = 0.1 to 0.9 m: half of the trays lie on 0.1
 * to 0.5 m or on 0.5 to 0.9 m of both; `to` and `from` are turned round in the second. */
#define ACROSS(left)                                                                               \
    LOADED "joints: {a: [0, 0, 0], b: [0, 900, 0], c: [500, 100, 0], d: [500, 1000, 0]}\n"         \
           "members: {left: {" left ", stick: bar}, right: {from: c, to: d, stick: bar}}\n"        \
           "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\nsite: {place: indoors}\n"          \
           "shelves: {s: {rails: [left, right], trays: {weight: 800 N}}}\n"

Test(tray_pattern, halves_along_the_rails) {
    const struct loads *there = loads_of_text(ACROSS("from: a, to: b"));
    weighs(there, filled(there, FRONT_HALF), "left", 200.0, 0.3);
    weighs(there, filled(there, FRONT_HALF), "right", 200.0, 0.2);
    weighs(there, filled(there, BACK_HALF), "left", 200.0, 0.7);
    const struct loads *back = loads_of_text(ACROSS("from: b, to: a"));
    weighs(back, filled(back, FRONT_HALF), "left", 200.0, 0.6);
    weighs(back, filled(back, FRONT_HALF), "right", 200.0, 0.2);
    weighs(back, filled(back, BACK_HALF), "left", 200.0, 0.2);
}

/* ---- many shelves ---- */

/* Levels of rails at y = 0, 0.4 and 0.8 m, 0.3 m apart. One shelf a level over all of it, or two
 * beside each other, the front rails then 20 mm higher; 10 N on each, but none on the first where
 * it says so. */
static const char *rack(int levels, bool pairs, bool first_empty) {
    char joints[4000] = "", members[4000] = "", shelves[4000] = "";
    for (int k = 0; k < levels; k++) {
        int z = 300 * k, front = pairs ? z + 20 : z;
        const char *trays = k == 0 && first_empty ? "none" : "{weight: 10 N}";
        snprintf(joints + strlen(joints), sizeof joints - strlen(joints),
                 "a%d: [0, 0, %d], b%d: [900, 0, %d], c%d: [0, 400, %d], d%d: [900, 400, %d], "
                 "e%d: [0, 800, %d], f%d: [900, 800, %d], ",
                 k, front, k, front, k, z, k, z, k, z, k, z);
        snprintf(members + strlen(members), sizeof members - strlen(members),
                 "front%d: {from: a%d, to: b%d, stick: bar}, middle%d: {from: c%d, to: d%d, stick: "
                 "bar}, back%d: {from: e%d, to: f%d, stick: bar}, ",
                 k, k, k, k, k, k, k, k, k);
        if (pairs)
            snprintf(shelves + strlen(shelves), sizeof shelves - strlen(shelves),
                     "s%d: {rails: [front%d, middle%d], trays: %s}, "
                     "t%d: {rails: [middle%d, back%d], trays: %s}, ",
                     k, k, k, trays, k, k, k, trays);
        else
            snprintf(shelves + strlen(shelves), sizeof shelves - strlen(shelves),
                     "s%d: {rails: [front%d, back%d], trays: %s}, ", k, k, k, trays);
    }
    return arena_print(arena,
                       LOADED "joints: {%s}\nmembers: {%spost: {from: a0, to: a%d, "
                              "stick: bar}}\nshelves: {%s}\nsupports: {a0: fixed, b0: fixed, c0: "
                              "fixed, d0: fixed, e0: fixed, f0: fixed}\nsite: {place: indoors}\n",
                       joints, members, levels - 1, shelves);
}

/* Each alone up to eight; of nine the lowest is not looked at, and a shelf without trays never. */
Test(tray_pattern, the_highest_eight_alone) {
    const struct loads *loads = loads_of_text(rack(10, false, true));
    cr_assert(loads->pattern_count == 8 + 2, "%zu patterns", loads->pattern_count);
    for (int k = 0; k < 10; k++) {
        const char *words = arena_print(arena, "trays on the shelves level with s%d alone", k);
        cr_assert((pattern_if_any(loads, words) != NULL) == (k >= 2), "%s", words);
    }
    const struct load_set *set = filled(loads, "trays on the shelves level with s9 alone");
    weighs(loads, set, "front9", 5.0, 0.45);
    weighs(loads, set, "back9", 5.0, 0.45);
    weighs(loads, set, "front8", 0.0, 0.45);
    const struct loads *few = loads_of_text(rack(9, false, true));
    cr_assert(few->pattern_count == 8 + 2, "%zu patterns", few->pattern_count);
    filled(few, "trays on the s1 shelf alone");
    /* half a shelf without trays stays empty too: 5 N on 0 to 0.4 of 0.8 m, a quarter at the back
     */
    weighs(few, filled(few, FRONT_HALF), "back1", 1.25, 0.45);
    weighs(few, filled(few, FRONT_HALF), "front0", 0.0, 0.45);
}

/* Over eight shelves, those of one level (within 25 mm) are filled together. */
Test(tray_pattern, two_shelves_on_a_level) {
    const struct loads *loads = loads_of_text(rack(5, true, false));
    cr_assert(loads->pattern_count == 5 + 2, "%zu patterns", loads->pattern_count);
    const struct load_set *set = filled(loads, "trays on the shelves level with s3 alone");
    weighs(loads, set, "front3", 5.0, 0.45);
    weighs(loads, set, "middle3", 10.0, 0.45);
    weighs(loads, set, "back3", 5.0, 0.45);
    weighs(loads, set, "middle2", 0.0, 0.45);
}

/* What the file puts into the case of the trays is one more shelf; its other loads are none. */
Test(tray_pattern, trays_given_as_loads) {
    const struct loads *loads =
        loads_of_text(ALONG("front, back", "{weight: 800 N}") "loads: [{case: mine, member: front, "
                                                              "line: [0, 0, -7]}, {case: tray, "
                                                              "member: middle, line: [0, 0, -9]}]"
                                                              "\n");
    cr_assert(loads->pattern_count == 2 + 2, "%zu patterns", loads->pattern_count);
    const struct load_set *own = filled(loads, "no trays but the loads given for the case tray");
    weighs(loads, own, "middle", 9.0, 0.5);
    weighs(loads, own, "front", 0.0, 0.5);
    const struct load_set *shelf = filled(loads, "trays on the s shelf alone");
    weighs(loads, shelf, "front", 400.0, 0.5);
    weighs(loads, shelf, "middle", 0.0, 0.5);
}

/* A load of another case is no shelf: one shelf has its two halves, and is never alone. */
Test(tray_pattern, other_loads_are_no_shelf) {
    const struct loads *loads =
        loads_of_text(ALONG("front, back", "{weight: 800 N}") "loads: [{case: mine, member: front, "
                                                              "line: [0, 0, -7]}]\n");
    cr_assert(loads->pattern_count == 2, "%zu patterns", loads->pattern_count);
}

/* A frame drawn in a plane has no front and no back. */
Test(tray_pattern, a_plane_frame_has_no_halves) {
    const struct loads *loads = loads_of_text(
        LOADED "joints: {a: [0, 0], b: [1000, 0], c: [0, 300], d: [1000, 300]}\n"
               "members: {low: {from: a, to: b, stick: bar}, high: {from: c, to: d, stick: bar}}\n"
               "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\nsite: {place: indoors}\n"
               "shelves: {s: {rails: [low, high], trays: {weight: 800 N}}}\n");
    cr_assert(loads->pattern_count == 0, "%zu patterns", loads->pattern_count);
}
