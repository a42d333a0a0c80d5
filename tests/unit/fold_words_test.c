/* Ways to fold as sentences. */
#include "fold/ways.h"
#include "fold/words.h"
#include "near.h"
#include "second_frame.h"

#include <stdarg.h>
#include <string.h>

/* The sentences of a frame of the repository, in order; NULL ends the list. */
static void tells(const char *path, ...) {
    struct arena *arena = arena_new();
    struct problems problems = problems_new(arena);
    const struct frame *frame = frame_of_text(arena, text_of_file(arena, path));
    const struct model *model = model_build(arena, frame, &problems);
    const struct cells *cells = cells_find(arena, model);
    struct fold_ways ways = fold_ways(arena, model, NULL, 0);
    size_t before = ways.count, k = 0;
    fold_readable(arena, model, &ways);
    cr_assert(ways.count == before, "%s: %zu ways of %zu", path, ways.count, before);
    struct straight straight = straight_build(arena, model, NULL, 0);
    va_list list;
    va_start(list, path);
    for (const char *want; (want = va_arg(list, const char *)); k++) {
        cr_assert(k < ways.count, "%s: only %zu ways", path, ways.count);
        struct motion motion = fold_motion(arena, cells, (const double(*)[3])ways.moves[k]);
        SAME_TEXT(motion.sentence, want);
        double largest = 0.0;
        for (size_t m = 0; m < motion.move_count; m++)
            for (int c = 0; c < 3; c++)
                largest = fmax(largest, fabs(motion.moves[m].by[c]));
        NEAR_REL(largest, 1.0, 1e-9);
        for (size_t r = 0; r < straight.rows.count; r++)
            NEAR_ABS(strain_of(&straight.rows.items[r], (const double(*)[3])ways.moves[k]), 0.0,
                     1e-8);
    }
    va_end(list);
    cr_assert(k == ways.count, "%s: %zu ways, %zu told", path, ways.count, k);
    arena_free(arena);
}

#define LEANS(what, way) "Nothing stops " what " from leaning " way " like a parallelogram."

Test(fold_words, a_box) {
    tells("tests/published/h-box.yaml", LEANS("the front", "left or right"),
          LEANS("the back", "left or right"), LEANS("the left side", "forward or back"),
          LEANS("the right side", "forward or back"), NULL);
}

Test(fold_words, faces_that_lean_together) {
    tells("tests/published/h-box-left-right-deck.yaml",
          LEANS("the front and back", "left or right"), NULL);
}

Test(fold_words, a_stand_whose_posts_run_through) {
    tells("examples/seedling-stand.yaml", LEANS("the front", "left or right"),
          LEANS("the back", "left or right"), LEANS("the left side", "forward or back"),
          LEANS("the right side", "forward or back"), NULL);
}

Test(fold_words, tiers) {
    tells("tests/published/h-box-two-tiers.yaml", LEANS("the front", "left or right"),
          LEANS("the back", "left or right"), LEANS("the upper bay of the front", "left or right"),
          LEANS("the upper bay of the back", "left or right"),
          LEANS("the left side", "forward or back"), LEANS("the right side", "forward or back"),
          LEANS("the upper bay of the left side", "forward or back"),
          LEANS("the upper bay of the right side", "forward or back"), NULL);
}

Test(fold_words, a_wall_of_bays) {
    tells("tests/published/h-wall.yaml", LEANS("the front", "left or right"),
          LEANS("the upper bays of the front", "left or right"), NULL);
}

Test(fold_words, a_twisting_prism) {
    tells("tests/published/h-prism-30.yaml", "Nothing stops the top from twisting round.", NULL);
}

Test(fold_words, one_joint) {
    tells("tests/published/h-collinear-bars.yaml", "Nothing stops joint b from moving up or down.",
          NULL);
}

/* A box that is held nowhere sideways: as one piece. */
Test(fold_words, the_whole_frame) {
    struct arena *arena = arena_new();
    struct problems problems = problems_new(arena);
    const struct frame *frame =
        frame_of_text(arena, text_of_file(arena, "tests/published/h-box.yaml"));
    const struct model *model = model_build(arena, frame, &problems);
    const struct cells *cells = cells_find(arena, model);
    double(*moves)[3] = arena_take(arena, frame->joints.count, sizeof *moves);
    for (size_t j = 0; j < frame->joints.count; j++)
        moves[j][0] = -3.0;
    SAME_TEXT(fold_motion(arena, cells, (const double(*)[3])moves).sentence,
              "Nothing stops the whole frame from sliding left or right.");
    for (size_t j = 0; j < frame->joints.count; j++) {
        moves[j][0] = -frame->joints.items[j].at[1];
        moves[j][1] = frame->joints.items[j].at[0];
    }
    SAME_TEXT(fold_motion(arena, cells, (const double(*)[3])moves).sentence,
              "Nothing stops the whole frame from turning round where it stands.");
    arena_free(arena);
}
