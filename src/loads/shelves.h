/* loads/shelves.h - decks and trays of a shelf, shared out to its rails.
 *
 * The load is uniform over the length common to all rails; each rail gets its share by the lever
 * rule between neighbours (slats are simple beams from rail to rail).
 */
#ifndef LOADS_SHELVES_H
#define LOADS_SHELVES_H

#include "loads/loads.h"

/* Geometry, weights and shares of one shelf. */
struct shelf_loading shelves_measure(struct arena *arena, const struct model *model,
                                     const struct shelf *shelf);

/* The middle of the loaded part, between the axes of the outer rails. */
void shelf_middle(const struct model *model, const struct shelf *shelf,
                  const struct shelf_loading *loading, double middle[3]);

/* Put a force (N, global) that is even from `from` to `to` of the rails' length (as in the loading)
 * onto the rails, by `shares`. */
void shelf_force(struct arena *arena, const struct model *model, const struct shelf *shelf,
                 const struct shelf_loading *loading, const double *shares, double from, double to,
                 const double force[3], struct load_set *set);

/* Put the deck into `self` (NULL: weight is left out) and the trays into `trays`. */
void shelves_load(struct arena *arena, const struct model *model, const struct shelf *shelf,
                  const struct shelf_loading *loading, struct load_set *self,
                  struct load_set *trays);

/* Spread a weight over part of the rails' length (`from` to `to` as in the loading), by `shares` of
 * the rails. */
void shelves_spread(struct arena *arena, const struct model *model, const struct shelf *shelf,
                    const struct shelf_loading *loading, const double *shares, double from,
                    double to, double weight, struct load_set *set);

#endif
