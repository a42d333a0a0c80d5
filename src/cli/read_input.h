/* cli/read_input.h - a whole file, or standard input, into memory.
 */
#ifndef CLI_READ_INPUT_H
#define CLI_READ_INPUT_H

#include "base/text.h"

#include <stdbool.h>

/* The name to show: "<stdin>" for "-". */
const char *input_name(const char *path);

/* False with *why set where it cannot be read or is larger than a frame may be;
 * reading stops there. */
bool read_input(const char *path, struct text *bytes, const char **why);

#endif
