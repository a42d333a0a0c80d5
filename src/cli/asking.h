/* cli/asking.h - the values of a quick question's options, and what is wrong with them.
 *
 * Every function tells what it finds as a problem of its option and returns something harmless, so
 * that all problems of a line are told in one go.
 */
#ifndef CLI_ASKING_H
#define CLI_ASKING_H

#include "cli/command.h"
#include "report/names.h"
#include "tables/tables.h"
#include "units/quantity.h"

struct asking {
    const struct call *call;
    struct problems problems;
};
struct asking asking_of(const struct call *call);

void asking_wrong(struct asking *asking, enum option option, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* The value as typed; NULL where it is not given, told where it is required. */
const char *asked_text(struct asking *asking, enum option option, bool required);

/* The index of the option's value in a list of names; `otherwise` where it is not given, or wrong.
 */
int asked_name(struct asking *asking, enum option option, bool required,
               const struct name_list *list, int otherwise);
/* The same in a list of report/names, -1 otherwise. */
int asked_table_name(struct asking *asking, enum option option, bool required, const char *list);

/* A quantity that may not be below zero, nor zero where `positive`. */
double asked_quantity(struct asking *asking, enum option option, bool required, enum quantity kind,
                      bool positive);

/* --dry and --wet: true where wet, dry where neither is said. */
bool asked_wet(struct asking *asking);
/* --duration: ten years where it is not said. */
enum duration asked_duration(struct asking *asking);

#endif
