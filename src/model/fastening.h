/* model/fastening.h - the six springs between the end of a stick and its joint.
 *
 * Stiffnesses: engineering page, section 1. Slip of one screw: Kser = rho^1.5 d / 23 N/mm
 * (EN 1995-1-1 Table 7.1), rho the density at 12 % moisture in kg/m3 (geometric mean of two woods),
 * d the nominal diameter in mm. All results N/m and N-m/rad.
 */
#ifndef MODEL_FASTENING_H
#define MODEL_FASTENING_H

#include "model/model.h"

struct fastening {
    const struct connection *connection;
    const struct model_member *ending, *host;
    bool wet;
};

/* Two sticks face to face: the plane of the faces. Axes are local ones of the ending stick. */
struct lap_plane {
    bool parallel;                   /* the sticks run the same way */
    int normal, across;              /* 1 (y) or 2 (z): along the screws; in the plane */
    double width_ending, width_host; /* m, the sizes in the plane */
    double thick_ending, thick_host; /* m, along the screws */
};
struct lap_plane fastening_plane(const struct fastening *fastening);

/* How the screws of a lap lie. */
struct lap {
    struct lap_plane plane;
    double line;   /* m between the outer screws */
    bool line_cut; /* the spacing asked for does not fit */
    double slip;   /* N/m of one screw, middle */
    double sum_r2; /* m2 about the middle of the line */
};
struct lap fastening_lap(const struct fastening *fastening);

/* m between the outer screws of a gusset in one stick. */
double fastening_gusset_line(const struct connection *connection);

/* Density of a stick's wood at 12 % moisture, kg/m3; the weakest common group where nothing is
 * known of it. */
double fastening_density(const struct model_member *stick);

/* Slip of one screw of this diameter (m) in wood of this density (kg/m3), N/m, middle. */
double fastening_slip(double density, double diameter, bool wet);

/* Slip of screws at low, middle and high stiffness, as shares of the middle. */
void fastening_slip_range(double range[STIFFNESS_COUNT]);

/* Springs at low, middle and high stiffness. True where they come from screws (an estimate). */
bool fastening_springs(const struct fastening *fastening,
                       struct end_springs springs[STIFFNESS_COUNT]);

#endif
