/* solve/resultant.h - the loads of a column gathered into one force and one moment.
 *
 * From the loads as they were described, not as they were turned into joint forces. Global
 * directions, N and N-m. The columns of ties and feet have none.
 */
#ifndef SOLVE_RESULTANT_H
#define SOLVE_RESULTANT_H

#include "solve/response.h"

struct resultant {
    double force[3], moment[3];
};

/* Add a force that acts at a place, its moment taken about `about`. */
void resultant_add(struct resultant *sum, const double at[3], const double about[3],
                   const double force[3]);

struct resultant response_resultant(const struct response *response, size_t column,
                                    const double about[3]);

#endif
