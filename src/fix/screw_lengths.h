/* fix/screw_lengths.h - lengths of screws that are tried, ascending. For src/fix only. */
#ifndef FIX_SCREW_LENGTHS_H
#define FIX_SCREW_LENGTHS_H

#include "fix/work.h"

enum { SCREW_LENGTHS = 9 };
#define SAME_SCREW_LENGTH 0.0005 /* m */

/* As the file writes lengths, "1-1/4 in" or "30 mm"; and in m. */
const char *screw_length_words(const struct work *work, int step);
double screw_length(const struct work *work, int step);

#endif
