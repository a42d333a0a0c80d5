/* cli/output.h - the two ways out: answers on standard output, messages on standard error.
 */
#ifndef CLI_OUTPUT_H
#define CLI_OUTPUT_H

#include "base/problem.h"
#include "base/text.h"
#include "cli/exit_status.h"
#include "report/json_write.h"

/* Standard output as a sink for JSON. */
struct json_sink output_sink(void);

void output_text(const struct text *text);

/* "batten: ..." on standard error; what other people wrote is made safe to show. */
void message(struct arena *arena, const char *words);

/* Problems of a file, under its name, or with file_name NULL of the command line (then with a hint
 * at --help); on standard error, and as JSON on standard output where asked for. */
enum exit_status output_problems(struct arena *arena, const char *file_name,
                                 struct problems *problems, bool as_json);

/* Close standard output. EXIT_TROUBLE, with a message, where not everything could be written. */
enum exit_status output_close(enum exit_status status);

#endif
