/* cli/combination.h - a combination of loads that the command line names. */
#ifndef CLI_COMBINATION_H
#define CLI_COMBINATION_H

#include "base/problem.h"
#include "cli/command.h"
#include "result/result.h"

#include <stdbool.h>

bool has_combination(const struct result *result, const char *name);

/* That there is no such combination: with the near one, or with all there are. */
void unknown_combination(struct problems *problems, const struct result *result, const char *name);

/* The combination that --combination names is there, or none is named; else told. */
bool combination_is_known(const struct call *call, const struct result *result);

#endif
