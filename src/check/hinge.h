/* check/hinge.h - the screws of the hinges of a lid or door, shut and open.
 *
 * Two hinges share what pulls at the panel. One that hangs from an upright or sloping line of
 * hinges twists them apart as well: W b sin(A) / (2 h), the exact moment of its weight across that
 * line. Wind on a shut panel goes half to the hinges and half to what keeps it shut; on an open one
 * all of it goes to the hinges, since what props it need not stand in the right place. All parts
 * are added as if they pulled the same way, and the sum is taken once as shear and once as pull on
 * the screws of one leaf, because how the leaves lie is not in a description.
 */
#ifndef CHECK_HINGE_H
#define CHECK_HINGE_H

#include "check/rating.h"
#include "check/screw.h"

struct hinge_input {
    double weight;           /* N, of the panel */
    double deep;             /* m from the line of hinges to the other edge */
    double apart;            /* m between the two hinges */
    double incline;          /* rad, of the line of hinges from level */
    double area;             /* m2 that the wind meets */
    double wind;             /* Pa, velocity pressure; 0: none */
    struct cited shut, open; /* net coefficients; open is not read where it does not open */
    bool opens;
    double with_weight, with_wind; /* factors of the combination */
    int count;                     /* screws in one leaf */
    struct screw_input screw;      /* its loads left out */
};

struct rating check_hinge(const struct hinge_input *input, struct working *working);

#endif
