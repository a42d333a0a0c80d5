/* cut/guillotine.h - every guillotine pattern of a few plates, looked at.
 *
 * A set of plates can be cut from a rectangle by guillotine cuts exactly where it is one plate, or
 * two sets beside or above each other. So the smallest rectangles (those that no other of the set
 * is inside of) are built from those of all pairs of smaller sets, and a set fits on a sheet where
 * one of its rectangles does. A set is a number of each kind of plate. For src/cut only.
 */
#ifndef CUT_GUILLOTINE_H
#define CUT_GUILLOTINE_H

#include "cut/plates.h"

struct guillotine;

/* NULL where there are too many sets. */
struct guillotine *guillotine_new(struct arena *arena, const struct plates *plates);

/* Does a set (how many of each plate, at most the demand) fit on one sheet? */
bool guillotine_fits(const struct guillotine *guillotine, const int *set);

/* The fewest sheets for all plates, each with its pattern. */
struct sheets_layout guillotine_fewest(struct arena *arena, const struct guillotine *guillotine);

#endif
