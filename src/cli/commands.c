#include "cli/command.h"

const struct command COMMANDS[] = {
    {"check",
     "FRAME.yaml",
     "will it hold: every check, worst first, with cautions",
     "FRAME.yaml describes the frame; - reads it from standard input.",
     1,
     1,
     check_command,
     {OPTION_ALL, OPTION_JSON, OPTION_ALLOW_NOT_COVERED, OPTION_LARGE},
     4},
    {"why",
     "FRAME.yaml ID",
     "the working of one check, to be redone with a pocket calculator",
     "ID is a name in square brackets in the answer of check (batten check FRAME.yaml --all shows "
     "all of them).",
     2,
     2,
     why_command,
     {OPTION_COMBINATION, OPTION_JSON, OPTION_LARGE},
     3},
    {"brace",
     "FRAME.yaml",
     "can it fold or lean, and where do the fewest diagonals go",
     "FRAME.yaml describes the frame; - reads it from standard input.",
     1,
     1,
     brace_command,
     {OPTION_JSON, OPTION_LARGE},
     2},
    {"table",
     "[NAME]",
     "the built-in tables with their sources, and the names that a frame may use",
     "Without NAME: a line for each table, and all names.",
     0,
     1,
     table_command,
     {OPTION_JSON},
     1},
    {"span",
     "",
     "how far a stick spans, without a frame",
     "A simple span between bearing centres under an even load, its upper edge held. Bare numbers "
     "are inches and psf.",
     0,
     0,
     span_command,
     {OPTION_SIZE, OPTION_SPECIES, OPTION_GRADE, OPTION_STANDS, OPTION_LIVE, OPTION_DEAD,
      OPTION_SPACING, OPTION_SAG, OPTION_SAG_OF, OPTION_DURATION, OPTION_REPETITIVE, OPTION_DRY,
      OPTION_WET, OPTION_JSON},
     14},
};
const size_t COMMAND_COUNT = sizeof COMMANDS / sizeof *COMMANDS;

const char *call_word(const struct call *call, size_t index) {
    return index + 1 < call->options.word_count ? call->options.words[index + 1] : NULL;
}
