/* shell/shell.h - the manual page, and what a shell completes; made from the same tables of
 * commands and options as `--help`, when the program is built.
 */
#ifndef SHELL_SHELL_H
#define SHELL_SHELL_H

#include "base/text.h"
#include "cli/options.h"

/* batten.1, in the man macros. */
void shell_manual(struct text *text);

/* Completion scripts. They complete commands, options, the values that have names, and files. */
void shell_bash(struct text *text);
void shell_zsh(struct text *text);
void shell_fish(struct text *text);

/* What may stand somewhere: names with blanks between, or files. */
struct shell_values {
    const char *names; /* "front side plan"; "" where there are none */
    const char *files; /* a pattern of the files, "*.yaml"; "" for no files */
};
struct shell_values shell_option_values(struct arena *arena, enum option option);
struct shell_values shell_word_values(struct arena *arena, const char *words); /* "FRAME.yaml ID" */

/* "it's" as a word in single quotes. */
const char *shell_quoted(struct arena *arena, const char *words);

#endif
