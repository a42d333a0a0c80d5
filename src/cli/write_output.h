/* cli/write_output.h - an answer to standard output, or to the file that --output names.
 *
 * The file is written under a name of its own beside its place and then put there in one step, so
 * that nothing half-written is ever seen under its name. An existing file is only replaced with
 * --force. For every command that takes OPTION_OUTPUT and OPTION_FORCE.
 */
#ifndef CLI_WRITE_OUTPUT_H
#define CLI_WRITE_OUTPUT_H

#include "base/text.h"
#include "cli/command.h"

/* False, and told (EXIT_WRONG_INPUT), where --output names what may not be written over. To be
 * asked before any work is done. */
bool output_is_free(const struct call *call);

/* `status`, or what to end with where it could not be written (then told, and nothing is left). */
enum exit_status write_output(const struct call *call, const struct text *text,
                              enum exit_status status);

#endif
