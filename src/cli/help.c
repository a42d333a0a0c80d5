#include "cli/help.h"

#include "report/layout.h"
#include "report/words.h"

static const size_t COMMAND_WIDTHS[] = {24, LINE_WIDTH - 2 - 24 - 2};
static const size_t OPTION_WIDTHS[] = {22, LINE_WIDTH - 2 - 22 - 2};

static void option_row(struct text *text, enum option option) {
    const struct option_rule *rule = &OPTION_RULES[option];
    const char *typed =
        rule->value ? arena_print(text->arena, "%s %s", rule->name, rule->value) : rule->name;
    row_of_cells(text, 2, (const char *const[]){typed, rule->words}, OPTION_WIDTHS, 2);
}

static void statuses(struct text *text) {
    paragraph(
        text, "", 0,
        "Ends with 0: every check passes, or there is nothing to brace; 1: a check fails or has "
        "no published rule, or something is to be braced; 2: the "
        "description or the command line is wrong; 3: the frame folds up as described; 4: "
        "the answer could not be trusted, or the machine failed.");
}

void help_text(struct text *text) {
    text_add(text, "batten COMMAND [words] [options]\n"
                   "Will a light wood frame hold: a seedling stand, a bench, a cold frame?\n\n");
    for (size_t k = 0; k < COMMAND_COUNT; k++) {
        const struct command *command = &COMMANDS[k];
        const char *typed = arena_print(text->arena, "%s %s", command->name, command->words);
        row_of_cells(text, 2, (const char *const[]){typed, command->question}, COMMAND_WIDTHS, 2);
    }
    text_add(text, "\nbatten COMMAND --help says more about one of them, batten --version the "
                   "version.\n");
    statuses(text);
    text_add(text, "\n");
    paragraph(text, "", 0, SAFETY_LINE);
}

void command_help_text(struct text *text, const struct command *command) {
    text_print(text, "batten %s%s%s [options]\n", command->name, command->words[0] ? " " : "",
               command->words);
    paragraph(text, "", 0, arena_print(text->arena, "Answers: %s.", command->question));
    if (command->more[0])
        paragraph(text, "", 0, command->more);
    text_add(text, "\n");
    for (size_t k = 0; k < command->option_count; k++)
        option_row(text, command->options[k]);
    option_row(text, OPTION_HELP);
    text_add(text, "\n");
    statuses(text);
    text_add(text, "\n");
    paragraph(text, "", 0, SAFETY_LINE);
}
