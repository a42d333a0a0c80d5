/* cli/command.h - the commands, and what they share.
 */
#ifndef CLI_COMMAND_H
#define CLI_COMMAND_H

#include "base/arena.h"
#include "base/problem.h"
#include "cli/exit_status.h"
#include "cli/options.h"
#include "report/json_write.h"

struct call {
    struct arena *arena;
    struct options options;
};

struct command {
    const char *name;
    const char *words;    /* of the words after it: "FRAME.yaml ID" */
    const char *question; /* what it answers */
    const char *more;     /* for its --help; "" */
    size_t fewest_words, most_words;
    enum exit_status (*run)(const struct call *call);
    enum option options[OPTION_COUNT]; /* besides --help and --version */
    size_t option_count;
};
extern const struct command COMMANDS[];
extern const size_t COMMAND_COUNT;

/* The n-th word after the command, NULL where there is none. */
const char *call_word(const struct call *call, size_t index);

enum exit_status check_command(const struct call *call);
enum exit_status why_command(const struct call *call);
enum exit_status brace_command(const struct call *call);
enum exit_status cut_command(const struct call *call);
enum exit_status fix_command(const struct call *call);
enum exit_status margin_command(const struct call *call);
enum exit_status expand_command(const struct call *call);
enum exit_status start_command(const struct call *call);
enum exit_status draw_command(const struct call *call);
enum exit_status report_command(const struct call *call);
enum exit_status table_command(const struct call *call);
enum exit_status span_command(const struct call *call);
enum exit_status weather_command(const struct call *call);
enum exit_status fastener_command(const struct call *call);

#endif
