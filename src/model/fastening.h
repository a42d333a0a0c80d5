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

/* How the screws of a lap lie. */
struct lap {
    int screw_axis; /* local axis of the ending stick along the screws: 1 (y) or 2 (z) */
    double width_ending, width_host; /* m, the two sizes in the lap plane */
    double line;                     /* m between the outer screws */
    bool line_cut;                   /* the spacing asked for does not fit */
    double slip;                     /* N/m of one screw, middle */
    double sum_r2;                   /* m2 about the middle of the line */
};
struct lap fastening_lap(const struct fastening *fastening);

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
