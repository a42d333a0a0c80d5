/* start/starters.h - the starter files of examples/starters/, compiled in.
 */
#ifndef START_STARTERS_H
#define START_STARTERS_H

#include "units/quantity.h"

#include <stddef.h>

struct starter {
    const char *kind; /* "lean-to" */
    enum unit_system units;
    const char *text; /* the whole file */
};
extern const struct starter STARTERS[]; /* made by the build */
extern const size_t STARTER_COUNT;

/* NULL where there is none. */
const struct starter *starter_find(const char *kind, enum unit_system units);

#endif
