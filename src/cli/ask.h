/* cli/ask.h - options that are quantities or names, for the quick questions.
 *
 * What is wrong goes to the problems; the value is then of no use.
 */
#ifndef CLI_ASK_H
#define CLI_ASK_H

#include "cli/command.h"
#include "report/names.h"
#include "units/quantity.h"

/* The options of one call, and what is wrong with them. */
struct asking {
    const struct call *call;
    struct problems problems;
};

/* The index of the option's value in a list of names; `otherwise` where it is not given, or wrong.
 */
int ask_name(struct asking *asking, enum option option, bool required, const struct name_list *list,
             int otherwise);

/* The same in a list of `batten table`, -1 otherwise. */
int ask_table_name(struct asking *asking, enum option option, bool required, const char *list);

/* A quantity that may not be below zero, nor zero where `positive`; 0 where it is not given. */
double ask_quantity(struct asking *asking, enum option option, bool required, enum quantity kind,
                    bool positive);

#endif
