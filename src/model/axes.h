/* model/axes.h - local axes of a stick and its sizes along them (frame format, "Standing" and
 * "Local axes"). */
#ifndef MODEL_AXES_H
#define MODEL_AXES_H

#include "frame/frame.h"

#include <stdbool.h>

/* Vertical: level run under 1e-6 of the length. */
bool axes_vertical(const double from[3], const double to[3]);

/* Rows x, y, z before `turn`, then turned right-handed about x by `turn` (rad). */
void axes_local(const double from[3], const double to[3], double turn, double axes[3][3]);

/* What `stands`, `faces` and `turn` come to for a member: its own entry wins over its stick's. */
struct attitude {
    enum stands stands;
    enum faces faces;
    double turn; /* rad */
};
struct attitude attitude_of(const struct member *member, const struct stick *stick);

/* Sizes along local y and z before `turn`, of a stick with sides thickness <= width. */
void axes_sizes(bool vertical, struct attitude attitude, double thickness, double width,
                double *size_y, double *size_z);

#endif
