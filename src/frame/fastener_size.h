/* frame/fastener_size.h - the diameters that fastener names stand for.
 *
 * Wood screws: D = 0.060 in + 0.013 in x number (ANSI/ASME B18.6.1), which gives every D of NDS
 * 2018 Table L3, Nos. 6 to 16 [read]; Nos. 4 and 5 by the same rule [memory]. Common nails: NDS
 * 2018 Table L4, 6d to 20d [read]; 2d to 4d from a nail size chart [read], 5d [memory]. Lags and
 * bolts: NDS 2018 Tables L2 and L1 [read].
 */
#ifndef FRAME_FASTENER_SIZE_H
#define FRAME_FASTENER_SIZE_H

#include "frame/reader.h"

/* Nominal diameter of a wood screw by its number, m. */
double screw_diameter(long number);

/* Each gives the nominal diameter in m, or false after telling what is known. */
bool read_screw_size(struct reader *reader, const struct node *node, double *diameter);
bool read_nail_size(struct reader *reader, const struct node *node, double *diameter);
bool read_lag_or_bolt_size(struct reader *reader, const struct node *node, double *diameter);

#endif
