/* frame/input_guard.h - what is looked at before the text goes to the YAML parser. */
#ifndef FRAME_INPUT_GUARD_H
#define FRAME_INPUT_GUARD_H

#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>

enum { INPUT_BYTES = 4 * 1024 * 1024 };

/* True where the bytes are UTF-8 text of at most INPUT_BYTES, without control characters and
 * without lines that start with '%' (YAML directives, which the parser compares pair by pair).
 * Else one problem is added. */
bool input_guard(const char *bytes, size_t length, struct problems *problems);

#endif
