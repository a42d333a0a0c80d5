#include "shell/shell.h"

#include "cli/command.h"

/* In single quotes fish knows \\ and \' only. */
static const char *quoted(struct arena *arena, const char *words) {
    struct text text = text_new(arena);
    text_add(&text, "'");
    for (; *words; words++) {
        if (*words == '\'' || *words == '\\')
            text_add(&text, "\\");
        text_bytes(&text, words, 1);
    }
    text_add(&text, "'");
    return text_string(&text);
}

static void after(struct text *text, const char *command) {
    text_print(text, "complete -c batten -n '__fish_seen_subcommand_from %s'", command);
}

static void option_line(struct text *text, const char *command, enum option option) {
    const struct option_rule *rule = &OPTION_RULES[option];
    struct shell_values values = shell_option_values(text->arena, option);
    after(text, command);
    text_print(text, " -l %s", rule->name + 2);
    if (rule->value)
        text_add(text, values.files[0] ? " -r -F" : " -x");
    if (values.names[0])
        text_print(text, " -a %s", quoted(text->arena, values.names));
    text_print(text, " -d %s\n", quoted(text->arena, rule->words));
}

static void word_line(struct text *text, const struct command *command) {
    struct shell_values values = shell_word_values(text->arena, command->words);
    if (!values.files[0] && !values.names[0])
        return;
    after(text, command->name);
    if (values.files[0])
        text_add(text, " -k -a '(__fish_complete_suffix .yaml)'\n");
    else
        text_print(text, " -a %s\n", quoted(text->arena, values.names));
}

void shell_fish(struct text *text) {
    text_add(text, "# Completion of batten for fish, made when it was built.\n"
                   "complete -c batten -f\n"
                   "complete -c batten -n __fish_use_subcommand -l help -d 'this text'\n"
                   "complete -c batten -n __fish_use_subcommand -l version -d 'the version'\n");
    for (size_t k = 0; k < COMMAND_COUNT; k++)
        text_print(text, "complete -c batten -n __fish_use_subcommand -a %s -d %s\n",
                   COMMANDS[k].name, quoted(text->arena, COMMANDS[k].question));
    for (size_t k = 0; k < COMMAND_COUNT; k++) {
        const struct command *command = &COMMANDS[k];
        word_line(text, command);
        for (size_t o = 0; o < command->option_count; o++)
            option_line(text, command->name, command->options[o]);
        option_line(text, command->name, OPTION_HELP);
    }
}
