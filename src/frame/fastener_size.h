/* frame/fastener_size.h - the diameters that fastener names stand for (tables/fasteners.h).
 */
#ifndef FRAME_FASTENER_SIZE_H
#define FRAME_FASTENER_SIZE_H

#include "frame/reader.h"
#include "tables/fasteners.h"

/* The kind of the tables; a screw where a connection has no fastener. */
enum dowel_kind fastener_dowel_kind(enum fastener_kind kind);

/* Nominal diameter of a wood screw by its number, m; NAN where there is no such number. */
double screw_diameter(long number);

/* Each gives the nominal diameter in m, or false after telling what is known. Nails are common
 * nails. */
bool read_screw_size(struct reader *reader, const struct node *node, double *diameter);
bool read_nail_size(struct reader *reader, const struct node *node, double *diameter);
bool read_lag_or_bolt_size(struct reader *reader, const struct node *node, double *diameter);

#endif
