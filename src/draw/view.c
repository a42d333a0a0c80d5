#include "draw/view.h"

#include "base/vector.h"

/* The corner is looked at from the front, to the right and above: 32 degrees round and 24 degrees
 * down, so that no edge of a square frame falls on another. */
#define ROUND_SINE 0.52991926423320495
#define ROUND_COSINE 0.84804809615642596
#define DOWN_SINE 0.40673664307580021
#define DOWN_COSINE 0.91354545764260087

/* ORDER VIEW; the side is the right one, so that the front is on the left of its picture. */
const struct view VIEWS[VIEW_COUNT] = {
    {"front", "from the front", {1, 0, 0}, {0, 0, 1}, {0, -1, 0}},
    {"side", "from the right", {0, 1, 0}, {0, 0, 1}, {1, 0, 0}},
    {"plan", "from above, front below", {1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
    {"corner",
     "from the front right corner",
     {ROUND_COSINE, ROUND_SINE, 0},
     {-ROUND_SINE * DOWN_SINE, ROUND_COSINE *DOWN_SINE, DOWN_COSINE},
     {ROUND_SINE * DOWN_COSINE, -ROUND_COSINE *DOWN_COSINE, DOWN_SINE}},
};

struct spot view_spot(const struct view *view, const double at[3]) {
    return (struct spot){vector_dot(view->right, at), vector_dot(view->up, at),
                         vector_dot(view->toward, at)};
}
