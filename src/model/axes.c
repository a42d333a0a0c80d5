#include "model/axes.h"

#include "base/vector.h"

#include <math.h>

bool axes_vertical(const double from[3], const double to[3]) {
    double run = hypot(to[0] - from[0], to[1] - from[1]);
    double length = hypot(run, to[2] - from[2]);
    return run < 1e-6 * length;
}

static void turn_about_x(double axes[3][3], double turn) {
    double c = cos(turn), s = sin(turn);
    for (int k = 0; k < 3; k++) {
        double y = axes[1][k], z = axes[2][k];
        axes[1][k] = c * y + s * z;
        axes[2][k] = -s * y + c * z;
    }
}

void axes_local(const double from[3], const double to[3], double turn, double axes[3][3]) {
    for (int k = 0; k < 3; k++)
        axes[0][k] = to[k] - from[k];
    vector_unit(axes[0]);
    if (axes_vertical(from, to)) {
        axes[2][0] = 0.0;
        axes[2][1] = 1.0;
        axes[2][2] = 0.0;
    } else {
        /* upward normal in the stick's vertical plane: up, less its part along the stick */
        double up = axes[0][2];
        axes[2][0] = -up * axes[0][0];
        axes[2][1] = -up * axes[0][1];
        axes[2][2] = 1.0 - up * axes[0][2];
        vector_unit(axes[2]);
    }
    vector_cross(axes[2], axes[0], axes[1]);
    vector_unit(axes[1]);
    if (turn != 0.0)
        turn_about_x(axes, turn);
}

struct attitude attitude_of(const struct member *member, const struct stick *stick) {
    struct attitude attitude = {.stands = stick->stands, .faces = stick->faces};
    if (member->stands != STANDS_NOT_SAID)
        attitude.stands = member->stands;
    if (member->faces != FACES_NOT_SAID)
        attitude.faces = member->faces;
    if (member->turn.given)
        attitude.turn = member->turn.value;
    else if (stick->turn.given)
        attitude.turn = stick->turn.value;
    return attitude;
}

void axes_sizes(bool vertical, struct attitude attitude, double thickness, double width,
                double *size_y, double *size_z) {
    /* Vertical, facing front: the larger side along x, which is local y. */
    bool larger_along_y = vertical ? attitude.faces != FACES_SIDE : attitude.stands == STANDS_FLAT;
    *size_y = larger_along_y ? width : thickness;
    *size_z = larger_along_y ? thickness : width;
}
