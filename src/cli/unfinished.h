/* cli/unfinished.h - a file that is being written is removed where a signal ends the program.
 */
#ifndef CLI_UNFINISHED_H
#define CLI_UNFINISHED_H

/* At the start of the program: a closed pipe and a limit on the size of files come back as errors
 * from the write and end nothing by themselves. */
void unfinished_start(void);

/* From now on SIGHUP, SIGINT and SIGTERM remove `path` first (where they are not ignored). The
 * string must stay. */
void unfinished_begin(const char *path);

/* It is finished, or gone. */
void unfinished_end(void);

#endif
