#include "fold/words.h"

#include "base/text.h"

#include <math.h>

#define NAMED_AT_MOST 4
#define STILL 0.02 /* share of the largest movement that counts as none */

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

static void name_joints(struct text *text, const struct frame *frame, const struct motion *motion,
                        int direction) {
    size_t count = 0, named = 0;
    for (size_t k = 0; k < motion->move_count; k++)
        count += fabs(motion->moves[k].by[direction]) > STILL;
    for (size_t k = 0; k < motion->move_count && named < NAMED_AT_MOST; k++) {
        if (fabs(motion->moves[k].by[direction]) <= STILL)
            continue;
        bool last = named + 1 == count;
        text_print(text, "%s%s", named == 0 ? "" : last ? " and " : ", ",
                   frame->joints.items[motion->moves[k].joint].name);
        named++;
    }
    if (count > named)
        text_print(text, " and %zu more", count - named);
    text_print(text, count == 1 ? " (joint)" : " (joints)");
}

struct motion fold_motion(struct arena *arena, const struct frame *frame,
                          const double (*moves)[3]) {
    static const char *const ways[] = {"left or right", "front or back", "up or down"};
    double largest = largest_entry(frame, moves);
    struct joint_move *list = ARENA_ARRAY(arena, struct joint_move, frame->joints.count);
    struct motion motion = {.moves = list};
    for (size_t j = 0; j < frame->joints.count && largest != 0.0; j++) {
        struct joint_move move = {.joint = (int)j};
        bool moving = false;
        for (int c = 0; c < 3; c++) {
            double by = moves[j][c] / largest;
            move.by[c] = fabs(by) > STILL ? by : 0.0;
            moving |= move.by[c] != 0.0;
        }
        if (moving)
            list[motion.move_count++] = move;
    }
    struct text text = text_new(arena);
    int direction = main_direction(&motion);
    text_add(&text, "Nothing stops ");
    name_joints(&text, frame, &motion, direction);
    text_print(&text, " from moving %s%s.", ways[direction],
               motion.move_count < 2             ? ""
               : together(&motion, direction) ? " together"
                                                 : ", some against the others");
    motion.sentence = text_string(&text);
    return motion;
}
