#include "start/starters.h"

#include <string.h>

const struct starter *starter_find(const char *kind, enum unit_system units) {
    for (size_t k = 0; k < STARTER_COUNT; k++)
        if (STARTERS[k].units == units && strcmp(STARTERS[k].kind, kind) == 0)
            return &STARTERS[k];
    return NULL;
}
