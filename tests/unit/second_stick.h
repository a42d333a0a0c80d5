/* second_stick.h - axes, section, material and end springs for the second solver, with the
 * published numbers written out once more. */
#ifndef TESTS_UNIT_SECOND_STICK_H
#define TESTS_UNIT_SECOND_STICK_H

#include "second_solver.h"

bool second_wet(const struct frame *frame);
struct second_stick second_stick_of(const struct frame *frame, int member);

/* Along x y z, about x y z; INFINITY rigid, 0 free. `by` NULL: pinned. */
void second_springs(const struct connection *by, const struct second_stick *ending,
                    const struct second_stick *host, bool wet, int range, double springs[6]);

#endif
