/* fix/price.h - prices of the file, for a set of changes. For src/fix only. */
#ifndef FIX_PRICE_H
#define FIX_PRICE_H

#include "buy/buy.h"
#include "fix/work.h"

/* What the set says of a stick ("size" for CHANGE_SIZE), "" where nothing. */
const char *set_says(const struct work *work, const struct set *set, enum change_kind kind,
                     int stick, const char *key);

/* A stick of the file that is the same wood in that size and grade ("": as it is); -1: none. */
int same_wood(const struct frame *frame, int stick, const char *size, const char *grade);

/* Does the file price screws or other small parts? */
bool prices_smalls(const struct frame *frame);

/* As `cut` does without options. */
struct cut_options usual_cut(void);

#endif
