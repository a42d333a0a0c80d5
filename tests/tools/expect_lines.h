/* expect_lines.h - what a published case should give, one value a line:
 *
 *     # where the numbers come from: title, page (at least one comment a file)
 *     exit 0
 *     cases.load.joints.d.2       -0.13995 in   abs 5e-6 in
 *     cases.load.members.ab.N.0   -23.09 kN     rel 0.1%     # its own source
 *     folding.ways                2
 *     verdict                     ok
 *
 * Path, value, unit, then `abs` or `rel` and a tolerance. JSON is SI, so a unit converts (see
 * expect_lines.c for the list). The unit of an absolute tolerance is that of the value where none
 * is named; a relative one may be in percent. Without a tolerance a number must be exactly that.
 * Lines that start with `exit` or `command` are for tests/tools/run-published.
 */
#ifndef TESTS_TOOLS_EXPECT_LINES_H
#define TESTS_TOOLS_EXPECT_LINES_H

#include "json.h"

/* One line; `place` is put before a message. True where the value is as expected. */
bool expect_line(const struct json *json, const char *line, const char *place);

/* All lines of a file; prints the tally. Returns an exit status: 0, 1, or 2 where the file cannot
 * be read, expects nothing or names no source. */
int expect_lines(const char *path, const struct json *json);

#endif
