#include "cli/options.h"

#include "base/near.h"

#include <string.h>

/* ORDER OPTION */
const struct option_rule OPTION_RULES[OPTION_COUNT] = {
    [OPTION_ALL] = {"--all", NULL, "show every check, also those that hold"},
    [OPTION_ALLOW_NOT_COVERED] = {"--allow-not-covered", NULL,
                                  "end with 0 where all that is left are checks without a "
                                  "published rule"},
    [OPTION_ANGLE_MAIN] = {"--angle-main", "ANGLE", "the same of the main member"},
    [OPTION_ANGLE_SIDE] = {"--angle-side", "ANGLE",
                           "between the load and the grain of the side member, 0 (the default) to "
                           "90; counts from 1/4 in of diameter on"},
    [OPTION_COMBINATION] = {"--combination", "NAME",
                            "under these loads, such as D+T, and not under the worst"},
    [OPTION_DEAD] = {"--dead", "LOAD", "what always lies on it, \"10 psf\"; default none"},
    [OPTION_DRY] = {"--dry", NULL, "the wood stays dry (the default)"},
    [OPTION_DURATION] = {"--duration", "NAME",
                         "how long the load stands: permanent, ten-years (the default), "
                         "two-months, seven-days, ten-minutes"},
    [OPTION_EDITION] = {"--edition", "NAME", "of ASCE 7: asce7-16 (the default), asce7-22"},
    [OPTION_END_GRAIN] = {"--end-grain", NULL, "it runs along the grain of the main member"},
    [OPTION_EXPOSURE] = {"--exposure", "B|C|D",
                         "the land around: B houses or trees, C open (the default), D a shore"},
    [OPTION_FORCE] = {"--force", NULL, "write over the file that --output names"},
    [OPTION_GRADE] = {"--grade", "NAME", "no-2, stud, ungraded ... (batten table lists them)"},
    [OPTION_GROUND_SNOW] = {"--ground-snow", "LOAD",
                            "snow on the ground, from the map: \"30 psf\""},
    [OPTION_HEIGHT] = {"--height", "LENGTH",
                       "of the roof above the ground; under 3 ft the ground snow covers it"},
    [OPTION_HELP] = {"--help", NULL, "this text"},
    [OPTION_JSON] = {"--json", NULL, "one JSON object, SI units"},
    [OPTION_KERF] = {"--kerf", "LENGTH", "width of a saw cut; default 1/8 in"},
    [OPTION_KIND] = {"--kind", "screw|nail|lag|bolt", "what holds"},
    [OPTION_LARGE] = {"--large", NULL, "allow up to 200 000 joints and sticks"},
    [OPTION_LENGTH] = {"--length", "LENGTH", "of the fastener, \"2 in\"; nails have their own"},
    [OPTION_LIVE] = {"--live", "LOAD", "what comes and goes, \"20 psf\""},
    [OPTION_MAIN] =
        {"--main", "LENGTH",
         "thickness of the main member, which takes the point; without it thick enough"},
    [OPTION_MAIN_WOOD] = {"--main-wood", "WOOD", "the same of the main member"},
    [OPTION_NAIL] = {"--nail", "common|box|sinker", "which nail; default common"},
    [OPTION_OUTPUT] = {"--output", "FILE",
                       "write into FILE; a file that is there already stays, but for --force"},
    [OPTION_REPETITIVE] = {"--repetitive", NULL, "three or more side by side share the load"},
    [OPTION_RISK] = {"--risk", "1|2|3|4", "risk category; default 1, a garden structure"},
    [OPTION_SAG] = {"--sag", "LIMIT", "how far it may sag, span/240 (the default) or a length"},
    [OPTION_SAG_OF] = {"--sag-of", "total|live",
                       "the sag of all load with creep (the default), or of the live load alone "
                       "as in building-code span tables"},
    [OPTION_SHOW] = {"--show", "LIST",
                     "what the picture shows, with commas between: names, dimensions, loads, bent, "
                     "folds, braces, work (how hard each stick works); all or nothing; default "
                     "names,dimensions,loads,work, with bent where --combination is given"},
    [OPTION_SIDE] = {"--side", "LENGTH",
                     "thickness of the side member, under the head, \"3/4 in\""},
    [OPTION_SIDE_WOOD] =
        {"--side-wood", "WOOD",
         "spruce-pine-fir ... (batten table lists them), or a specific gravity such "
         "as 0.42"},
    [OPTION_SIZE] =
        {"--size", "SIZE",
         "of a stick 2x6 and so on (without it a row for each size); of a fastener 8, 10d, 1/2in"},
    [OPTION_SKETCH] = {"--sketch", NULL, "a small front view in plain characters first"},
    [OPTION_SLIPPERY] = {"--slippery", NULL, "the roof is smooth and its snow can slide clear"},
    [OPTION_SLOPE] = {"--slope", "ANGLE", "of the roof, \"20 deg\"; default level"},
    [OPTION_SNOW_EXPOSURE] = {"--snow-exposure", "NAME",
                              "how freely the wind clears the roof: fully-exposed, partial (the "
                              "default), sheltered"},
    [OPTION_SOLVER] = {"--solver", "own|gsl",
                       "who solves the equations: the program itself (the default), or GSL's band "
                       "factor, slower, to compare with"},
    [OPTION_SPACING] = {"--spacing", "LENGTH", "from stick to stick, \"24 in\""},
    [OPTION_SPECIES] = {"--species", "NAME", "spruce-pine-fir ... (batten table lists them)"},
    [OPTION_STANDS] = {"--stands", "on-edge|flat", "how the stick lies; default on-edge"},
    [OPTION_STOCK] = {"--stock", "LENGTHS",
                      "lengths of boards to be had, \"8 ft, 10 ft\"; without it those of the "
                      "prices, else 8 ft"},
    [OPTION_SVG] = {"--svg", NULL, "a picture of every board and sheet (SVG) and nothing else"},
    [OPTION_TOGETHER] = {"--together", NULL,
                         "cut sticks of the same wood from the same boards, whatever their names"},
    [OPTION_TRIM] = {"--trim", "LENGTH", "cut off both ends of every board first; default 0 in"},
    [OPTION_THERMAL] = {"--thermal", "NAME",
                        "how warm the roof is: heated, just-above-freezing, unheated (the "
                        "default), greenhouse (heated all winter, glass or plastic)"},
    [OPTION_UNITS] = {"--units", "us|si", "inches and pounds (the default), or mm and N"},
    [OPTION_VERSION] = {"--version", NULL, "the version"},
    [OPTION_VIEW] = {"--view", "front|side|plan|corner|all",
                     "from where; default all four on one sheet"},
    [OPTION_WET] = {"--wet", NULL, "the wood gets wet in service"},
    [OPTION_WIND] = {"--wind", "SPEED", "wind speed from the map: \"115 mph\""},
};

static const struct place NO_PLACE = {0, 0};

/* The option called by the first `length` bytes of `name`, OPTION_COUNT where there is none. */
static enum option option_find(const char *name, size_t length) {
    for (int k = 0; k < OPTION_COUNT; k++)
        if (strlen(OPTION_RULES[k].name) == length &&
            strncmp(OPTION_RULES[k].name, name, length) == 0)
            return (enum option)k;
    return OPTION_COUNT;
}

static bool is_option(const char *argument) {
    return argument[0] == '-' && argument[1] != '\0';
}

/* Where the option's value stands: behind its equal sign, as the next argument, or nowhere. What
 * looks like an option is no value. */
enum value_place { VALUE_NONE, VALUE_BEHIND, VALUE_NEXT };
static enum value_place value_place(enum option option, int argc, char *const *argv, int at) {
    if (strchr(argv[at], '='))
        return VALUE_BEHIND;
    bool takes = option < OPTION_COUNT && OPTION_RULES[option].value;
    return takes && at + 1 < argc && strncmp(argv[at + 1], "--", 2) != 0 ? VALUE_NEXT : VALUE_NONE;
}

/* One argument after the other. */
struct reading {
    int argc;
    char *const *argv;
    int at;
    bool ended; /* by -- */
};
struct argument {
    const char *word; /* a word, else NULL */
    const char *text; /* the option as typed */
    size_t length;    /* of its name */
    enum option option;
    enum value_place place;
    const char *value;
};

static bool next_argument(struct reading *reading, struct argument *out) {
    if (reading->at < reading->argc && !reading->ended &&
        strcmp(reading->argv[reading->at], "--") == 0) {
        reading->ended = true;
        reading->at++;
    }
    if (reading->at >= reading->argc)
        return false;
    const char *text = reading->argv[reading->at];
    *out = (struct argument){.text = text, .option = OPTION_COUNT};
    if (reading->ended || !is_option(text)) {
        out->word = text;
        reading->at++;
        return true;
    }
    out->length = strcspn(text, "=");
    out->option = option_find(text, out->length);
    out->place = value_place(out->option, reading->argc, reading->argv, reading->at);
    if (out->place == VALUE_BEHIND)
        out->value = text + out->length + 1;
    if (out->place == VALUE_NEXT)
        out->value = reading->argv[++reading->at];
    reading->at++;
    return true;
}

const char *options_command(int argc, char *const *argv) {
    struct reading reading = {argc, argv, 1, false};
    struct argument argument;
    while (next_argument(&reading, &argument))
        if (argument.word)
            return argument.word;
    return NULL;
}

bool options_has(int argc, char *const *argv, enum option option) {
    struct reading reading = {argc, argv, 1, false};
    struct argument argument;
    while (next_argument(&reading, &argument))
        if (argument.option == option)
            return true;
    return false;
}

static bool is_known(enum option option, const enum option *known, size_t known_count) {
    for (size_t k = 0; k < known_count; k++)
        if (known[k] == option)
            return true;
    return false;
}

static void unknown_option(const char *name, const enum option *known, size_t known_count,
                           struct problems *problems) {
    const char *names[OPTION_COUNT];
    for (size_t k = 0; k < known_count; k++)
        names[k] = OPTION_RULES[known[k]].name;
    const char *near = near_name(name, names, known_count);
    if (near)
        problem_add(problems, NO_PLACE, name, "unknown option; did you mean %s?", near);
    else
        problem_add(problems, NO_PLACE, name, "unknown option");
}

static void take_option(struct arena *arena, const struct argument *argument,
                        const enum option *known, size_t known_count, struct options *options,
                        struct problems *problems) {
    const char *name = arena_copy(arena, argument->text, argument->length);
    enum option option = argument->option;
    if (!is_known(option, known, known_count)) {
        unknown_option(name, known, known_count, problems);
        return;
    }
    const char *wanted = OPTION_RULES[option].value;
    if (options->given[option])
        problem_add(problems, NO_PLACE, name, "given twice");
    else if (wanted && !argument->value)
        problem_add(problems, NO_PLACE, name, "a value is missing: %s %s", name, wanted);
    else if (!wanted && argument->value)
        problem_add(problems, NO_PLACE, name, "takes no value, found '%s'", argument->value);
    options->given[option] = true;
    options->value[option] = argument->value;
}

struct options options_read(struct arena *arena, int argc, char *const *argv,
                            const enum option *known, size_t known_count,
                            struct problems *problems) {
    struct options options = {.words = ARENA_ARRAY(arena, const char *, (size_t)argc + 1)};
    struct reading reading = {argc, argv, 1, false};
    struct argument argument;
    while (next_argument(&reading, &argument)) {
        if (argument.word)
            options.words[options.word_count++] = argument.word;
        else
            take_option(arena, &argument, known, known_count, &options, problems);
    }
    return options;
}
