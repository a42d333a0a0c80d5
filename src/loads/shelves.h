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
