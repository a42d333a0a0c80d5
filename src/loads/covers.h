/* loads/covers.h - the panels of a frame as snow and wind meet them.
 *
 * SI: m, rad, global directions. A panel up to 60 degrees is a roof, a steeper one a wall. One that
 * lies under a roof panel is inside: nothing falls on it and no wind meets it.
 */
#ifndef LOADS_COVERS_H
#define LOADS_COVERS_H

#include "loads/panels.h"

enum cover_kind { COVER_ROOF, COVER_WALL, COVER_INSIDE };

struct cover {
    const struct panel *panel;
    enum cover_kind kind;
    double corners[4][3];
    double middle[3];
    double normal[3];  /* unit; outward: up on roofs, away from the middle of the frame on walls */
    bool sided;        /* false: a wall through the middle of the frame has no outside */
    double slope;      /* from level, 0 to a right angle */
    double area;       /* m2, overhang included */
    double level_area; /* its projection on the level */
    double level_run;  /* m, level, from its highest to its lowest edge */
    double top, low;   /* m above the ground: highest and lowest corner */
    bool wood;         /* plywood and the like; else glass, plastic */
    struct bearer *bearers;
    size_t bearer_count;
};

/* One for each panel of the frame, in file order. */
struct cover *covers_of(struct arena *arena, const struct model *model);

/* Does a line from `from` along `direction` go through the panel, in front of the start? */
bool cover_in_the_way(const struct cover *cover, const double from[3], const double direction[3]);

/* Is there open sky over the point, as far as the roofs go? */
bool covers_leave_open(const struct cover *covers, size_t count, const double point[3]);

/* Height of the lowest support: the ground, m. */
double ground_level(const struct model *model);

#endif
