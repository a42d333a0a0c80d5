/* sway/assemble.h - stiffness of pieces, elastic and geometric, and its sum over the frame.
 *
 * Local axes, twelve unknowns as in solve/element.h. The geometric stiffness of a force N along the
 * piece (pull positive) is the consistent one of the shape that the elastic stiffness has, shear
 * flexibility included; that of a bar, N/L, in a plane in which the stick cannot bend.
 */
#ifndef SWAY_ASSEMBLE_H
#define SWAY_ASSEMBLE_H

#include "solve/band.h"
#include "sway/pieces.h"

void piece_elastic(const struct piece *piece, double k[ELEMENT_DOFS][ELEMENT_DOFS]);
void piece_geometric(const struct piece *piece, double N, double k[ELEMENT_DOFS][ELEMENT_DOFS]);

/* N in the middle of a piece, from that at the ends of its segment. */
double piece_axial(const struct pieces *pieces, const struct piece *piece,
                   const double (*axial)[2]);

/* K with its springs and bars; spins of sticks about their own axis are held as solve/modes.h
 * does. */
struct sparse assemble_elastic(struct arena *arena, const struct pieces *pieces);

/* Kg of the given forces. */
struct sparse assemble_geometric(struct arena *arena, const struct pieces *pieces,
                                 const double (*axial)[2]);

/* matrix += factor x Kg. */
void assemble_add_geometric(const struct sparse *matrix, const struct pieces *pieces,
                            const double (*axial)[2], double factor);

#endif
