/* loads/bare.h - wind on what no panel covers: sticks and trays as a lattice.
 *
 * For each side the wind comes from: a stick counts unless a panel lies over it or stands between
 * it and the wind. Its own area across the wind, every face of the frame alike (no shelter), takes
 * q times a coefficient by how much of the frame's outline is solid: with trays on the shelves that
 * of a wall with holes, 1.45 (1 - (1 - e)^1.5)/e; bare sticks 2.0, 1.8, 1.6 (ASCE 7-16 Table
 * 29.4-2). The gust factor 0.85 is left out: the safe side.
 */
#ifndef LOADS_BARE_H
#define LOADS_BARE_H

#include "loads/wind.h"

struct bare {
    const struct model *model;
    const struct shelf_loading *shelves; /* per frame shelf */
    const struct cover *covers;
    size_t cover_count;
    const struct site_wind *wind;
};

/* How the lattice meets the wind from one side. */
struct lattice {
    double sticks, trays; /* m2 across the wind, of what is not hidden */
    double outline;       /* m2, of the box around all joints */
    double solid;         /* share: half of the sticks (front and back) and all trays */
    double coefficient;   /* on the area of each */
};
struct lattice bare_lattice(const struct bare *bare, enum wind_from from, enum wind_way way);

/* The coefficient alone. */
double lattice_coefficient(double solid, bool trays);

/* Add the wind on all of it to the set. */
void bare_wind(struct arena *arena, const struct bare *bare, enum wind_from from, enum wind_way way,
               struct load_set *set);

#endif
