/* bracing/racking.h - a sheet fastened round a frame: how stiff against going out of square.
 *
 * 1/K = h^2/k (1/Sx + 1/Sy) + h/(G t b): slip of the fastenings and shear of the sheet in series, a
 * frame of stiff sticks pinned at its corners, linear slip, minimum of energy over the turning of
 * the sheet (the linear elastic fully anchored model). Fastenings all round at an even spacing s:
 * Sx = b^2 (3h + b)/(6s), Sy = h^2 (3b + h)/(6s), m2. Shear buckling of a sheet held at its edges:
 * k pi^2 D/a^2 with k = 5.34 + 4 (a/c)^2, a the shorter and c the longer side, D of the solid
 * sheet; two skins with ribs: the long strip of unlike stiffness, 4 x 8.125 (D1 D2^3)^(1/4)/a^2,
 * the weak way across the strip. SI.
 */
#ifndef BRACING_RACKING_H
#define BRACING_RACKING_H

struct racking_sheet {
    double width, height; /* m: b along the racking force, h across it */
    double shear;         /* G t, N/m */
    double slip;          /* k of one fastening, N/m */
    double spacing;       /* m */
};

struct racking {
    double sum_x2, sum_y2;   /* Sx, Sy, m2 (per fastening of unit stiffness) */
    double sheet, fastening; /* N/m: the two alone */
    double stiffness;        /* K, N/m: racking force over the sideways movement of the top */
    double corner_share;     /* force on a corner fastening per unit of racking force */
};
struct racking racking_of(const struct racking_sheet *sheet);

/* The same from the two sums of squares of the fastenings' places. */
struct racking racking_of_sums(const struct racking_sheet *sheet, double sum_x2, double sum_y2);

/* Free travel of the top before anything bears, m, with a radial gap c in every hole:
 * 2 c (1 + h/b). */
double racking_play(double width, double height, double gap);

/* Shear flow at which the sheet buckles, N/m; E in Pa, thickness and sides in m. */
double buckling_flow_solid(double E, double poisson, double thickness, double width, double height);
/* `skins`: both together, m; `depth` over all, m; `across_share`: bending stiffness across the ribs
 * over that along them. */
double buckling_flow_ribbed(double E, double poisson, double skins, double depth,
                            double across_share, double width, double height);

#endif
