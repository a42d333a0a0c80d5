/* cli/help.h - what --help says.
 */
#ifndef CLI_HELP_H
#define CLI_HELP_H

#include "base/text.h"
#include "cli/command.h"

void help_text(struct text *text);
void command_help_text(struct text *text, const struct command *command);

#endif
