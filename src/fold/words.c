#include "fold/words.h"

#include "base/text.h"
#include "fold/leaning.h"
#include "fold/rigid.h"
#include "units/quantity.h"

#include <math.h>
#include <stdlib.h>

#define NAMED_AT_MOST 4
#define STILL 0.02      /* share of the largest movement that counts as none */
#define SOLID 0.02      /* what is left over of a solid movement, of the same */
#define TWISTS 0.2      /* least movement by turning, of the same */
#define ONE_LEVEL 0.005 /* m between joints of one level */

static const char *const slides[] = {"left or right", "forward or back", "up or down"};

struct story {
    struct arena *arena;
    const struct cells *cells;
    const struct frame *frame;
    const double (*moves)[3]; /* largest entry 1 */
    struct motion *motion;
};

static double largest_entry(const struct frame *frame, const double (*moves)[3]) {
    double largest = 0.0;
    for (size_t j = 0; j < frame->joints.count; j++)
        for (int c = 0; c < 3; c++)
            if (fabs(moves[j][c]) > fabs(largest))
                largest = moves[j][c];
    return largest;
}

/* The direction in which the joints move most, all together. */
static int main_direction(const struct motion *motion) {
    double sums[3] = {0};
    for (size_t k = 0; k < motion->move_count; k++)
        for (int c = 0; c < 3; c++)
            sums[c] += motion->moves[k].by[c] * motion->moves[k].by[c];
    int best = 0;
    for (int c = 1; c < 3; c++)
        if (sums[c] > sums[best] * (1.0 + 1e-6))
            best = c;
    return best;
}

/* Do they all move the same way, or some against the others? */
static bool together(const struct motion *motion, int direction) {
    bool forth = false, back = false;
    for (size_t k = 0; k < motion->move_count; k++) {
        forth |= motion->moves[k].by[direction] > STILL;
        back |= motion->moves[k].by[direction] < -STILL;
    }
    return forth != back;
}

static const char *name_joints(const struct story *story, int direction) {
    struct text text = text_new(story->arena);
    const struct motion *motion = story->motion;
    size_t count = 0, named = 0;
    for (size_t k = 0; k < motion->move_count; k++)
        count += fabs(motion->moves[k].by[direction]) > STILL;
    text_add(&text, count == 1 ? "joint " : "joints ");
    for (size_t k = 0; k < motion->move_count && named < NAMED_AT_MOST; k++) {
        if (fabs(motion->moves[k].by[direction]) <= STILL)
            continue;
        bool last = named + 1 == count;
        text_print(&text, "%s%s",
                   named == 0 ? ""
                   : last     ? " and "
                              : ", ",
                   story->frame->joints.items[motion->moves[k].joint].name);
        named++;
    }
    if (count > named)
        text_print(&text, " and %zu more", count - named);
    return text_string(&text);
}

static const char *tell_joints(const struct story *story) {
    int direction = main_direction(story->motion);
    return arena_print(story->arena, "Nothing stops %s from moving %s%s.",
                       name_joints(story, direction), slides[direction],
                       story->motion->move_count < 2        ? ""
                       : together(story->motion, direction) ? " together"
                                                            : ", some against the others");
}

/* The whole frame as one piece; NULL where it is not so. */
static const char *tell_whole(const struct story *story) {
    size_t count = story->frame->joints.count;
    int *all = ARENA_ARRAY(story->arena, int, count);
    for (size_t j = 0; j < count; j++)
        all[j] = (int)j;
    struct rigid rigid = rigid_fit(story->frame, all, count, story->moves);
    if (!(rigid.off < SOLID))
        return NULL;
    int most = 0, about = 0;
    double turning = 0.0;
    for (int c = 0; c < 3; c++) {
        turning = fmax(turning, fabs(rigid.turn[c]) * rigid.radius);
        if (fabs(rigid.turn[c]) > fabs(rigid.turn[about]))
            about = c;
        if (fabs(rigid.slide[c]) > fabs(rigid.slide[most]))
            most = c;
    }
    if (turning < TWISTS)
        return arena_print(story->arena, "Nothing stops the whole frame from sliding %s.",
                           slides[most]);
    if (about == 2)
        return "Nothing stops the whole frame from turning round where it stands.";
    return arena_print(story->arena, "Nothing stops the whole frame from tipping over %s.",
                       slides[1 - about]);
}

struct height {
    double at;
    int joint;
};

/* The highest first. */
static int compare_heights(const void *left, const void *right) {
    const struct height *a = left, *b = right;
    if (a->at != b->at)
        return a->at > b->at ? -1 : 1;
    return (a->joint > b->joint) - (a->joint < b->joint);
}

static const char *level_words(const struct story *story, double height, double lowest,
                               bool highest) {
    if (highest)
        return "the top";
    for (size_t f = 0; f < story->cells->face_count; f++) {
        const struct face *face = &story->cells->faces[f];
        if (face->kind == FACE_LEVEL && fabs(face->at[2] - height) <= ONE_LEVEL)
            return face->the;
    }
    return arena_print(story->arena, "the level at %s",
                       quantity_print_length(story->arena, height - lowest, story->frame->units));
}

/* The highest level of three or more joints that turns as one piece about an upright axis; NULL
 * where there is none. */
static const char *twisting_level(const struct story *story) {
    size_t count = story->frame->joints.count;
    struct height *heights = ARENA_ARRAY(story->arena, struct height, count);
    int *level = ARENA_ARRAY(story->arena, int, count);
    for (size_t j = 0; j < count; j++)
        heights[j] = (struct height){story->frame->joints.items[j].at[2], (int)j};
    qsort(heights, count, sizeof *heights, compare_heights);
    for (size_t start = 0, end; start < count; start = end) {
        for (end = start; end < count && heights[start].at - heights[end].at <= ONE_LEVEL; end++)
            level[end - start] = heights[end].joint;
        if (end - start < 3)
            continue;
        struct rigid rigid = rigid_fit(story->frame, level, end - start, story->moves);
        if (rigid.off < SOLID && fabs(rigid.turn[2]) * rigid.radius > TWISTS)
            return level_words(story, heights[start].at, heights[count - 1].at, start == 0);
    }
    return NULL;
}

/* Faces that lean, or a level that twists; NULL where no cell goes out of square. */
static const char *tell_leaning(const struct story *story) {
    struct leanings lean[2];
    for (int axis = 0; axis < 2; axis++)
        lean[axis] = leanings_find(story->arena, story->cells, story->moves, FACE_UPRIGHT, axis);
    bool one = (lean[0].count > 0) != (lean[1].count > 0);
    if (one) {
        int axis = lean[0].count > 0 ? 0 : 1;
        return arena_print(story->arena, "Nothing stops %s from leaning %s like a parallelogram.",
                           leanings_words(story->arena, story->cells, &lean[axis]), slides[axis]);
    }
    const char *level = twisting_level(story);
    if (level)
        return arena_print(story->arena, "Nothing stops %s from twisting round.", level);
    if (lean[0].count > 0)
        return arena_print(
            story->arena,
            "Nothing stops %s from leaning %s while %s lean%s %s, like parallelograms.",
            leanings_words(story->arena, story->cells, &lean[0]), slides[0],
            leanings_words(story->arena, story->cells, &lean[1]),
            lean[1].count == 1 && !lean[1].items[0].several ? "s" : "", slides[1]);
    return NULL;
}

/* Level or sloped cells that go out of square in their own plane, all movement lying in it. */
static const char *tell_racking(const struct story *story) {
    static const enum face_kind kinds[] = {FACE_SLOPED, FACE_LEVEL};
    for (int k = 0; k < 2; k++) {
        struct leanings lean =
            leanings_find(story->arena, story->cells, story->moves, kinds[k], -1);
        if (lean.count > 0 && main_direction(story->motion) != 2)
            return arena_print(story->arena, "Nothing stops %s from going out of square.",
                               leanings_words(story->arena, story->cells, &lean));
    }
    return NULL;
}

static const char *tell(const struct story *story) {
    const char *words = tell_whole(story);
    if (!words)
        words = tell_leaning(story);
    if (!words)
        words = tell_racking(story);
    return words ? words : tell_joints(story);
}

struct motion fold_motion(struct arena *arena, const struct cells *cells,
                          const double (*moves)[3]) {
    const struct frame *frame = cells->model->frame;
    double largest = largest_entry(frame, moves);
    struct joint_move *list = ARENA_ARRAY(arena, struct joint_move, frame->joints.count);
    double(*scaled)[3] = arena_take(arena, frame->joints.count, sizeof *scaled);
    struct motion motion = {.moves = list};
    for (size_t j = 0; j < frame->joints.count && largest != 0.0; j++) {
        struct joint_move move = {.joint = (int)j};
        bool moving = false;
        for (int c = 0; c < 3; c++) {
            scaled[j][c] = moves[j][c] / largest;
            move.by[c] = fabs(scaled[j][c]) > STILL ? scaled[j][c] : 0.0;
            moving |= move.by[c] != 0.0;
        }
        if (moving)
            list[motion.move_count++] = move;
    }
    struct story story = {arena, cells, frame, (const double(*)[3])scaled, &motion};
    motion.sentence = tell(&story);
    return motion;
}
