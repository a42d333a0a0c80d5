/* cli/options.h - the command line, taken apart.
 *
 * Options may stand before or after the command and its words, as `--key value` or `--key=value`;
 * `--` ends them; `-` is a word (standard input). Every option means the same kind of thing in all
 * commands, so a line can be read before its command is known.
 */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include "base/arena.h"
#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>

/* ORDER OPTION: OPTION_RULES holds a row for each. */
enum option {
    OPTION_ALL,
    OPTION_ALLOW_NOT_COVERED,
    OPTION_ANGLE_MAIN,
    OPTION_ANGLE_SIDE,
    OPTION_COMBINATION,
    OPTION_DEAD,
    OPTION_DRY,
    OPTION_DURATION,
    OPTION_EDITION,
    OPTION_END_GRAIN,
    OPTION_EXPOSURE,
    OPTION_FORCE,
    OPTION_GRADE,
    OPTION_GROUND_SNOW,
    OPTION_HEIGHT,
    OPTION_HELP,
    OPTION_JSON,
    OPTION_KERF,
    OPTION_KIND,
    OPTION_LARGE,
    OPTION_LENGTH,
    OPTION_LIVE,
    OPTION_MAIN,
    OPTION_MAIN_WOOD,
    OPTION_NAIL,
    OPTION_OUTPUT,
    OPTION_REPETITIVE,
    OPTION_RISK,
    OPTION_SAG,
    OPTION_SAG_OF,
    OPTION_SHOW,
    OPTION_SIDE,
    OPTION_SIDE_WOOD,
    OPTION_SIZE,
    OPTION_SKETCH,
    OPTION_SLIPPERY,
    OPTION_SLOPE,
    OPTION_SNOW_EXPOSURE,
    OPTION_SOLVER,
    OPTION_SPACING,
    OPTION_SPECIES,
    OPTION_STANDS,
    OPTION_STOCK,
    OPTION_SVG,
    OPTION_THERMAL,
    OPTION_TOGETHER,
    OPTION_TRIM,
    OPTION_UNITS,
    OPTION_VERSION,
    OPTION_VIEW,
    OPTION_WET,
    OPTION_WIND,
    OPTION_COUNT
};

struct option_rule {
    const char *name;  /* "--all" */
    const char *value; /* what it takes, "20 psf"; NULL: nothing */
    const char *words; /* for --help */
};
extern const struct option_rule OPTION_RULES[OPTION_COUNT];

struct options {
    bool given[OPTION_COUNT];
    const char *value[OPTION_COUNT]; /* NULL where it takes none */
    const char **words;              /* the command first */
    size_t word_count;
};

/* Problems: unknown options (with the near name of an allowed one), repeated ones, a value that is
 * missing or not wanted. `known` are the options of the command, for the suggestions; the caller
 * finds the command first with `options_command`. */
struct options options_read(struct arena *arena, int argc, char *const *argv,
                            const enum option *known, size_t known_count,
                            struct problems *problems);

/* The first word of the line, NULL where there is none. */
const char *options_command(int argc, char *const *argv);

/* Whether the option stands anywhere on the line, right or wrong as the rest may be. */
bool options_has(int argc, char *const *argv, enum option option);

#endif
