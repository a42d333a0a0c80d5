#include "shell/shell.h"

#include "cli/command.h"

#include <string.h>

/* Inside a description of _arguments brackets and colons would end it. */
static const char *described(struct arena *arena, const char *words) {
    struct text text = text_new(arena);
    for (; *words; words++) {
        if (strchr("[]:\\", *words))
            text_add(&text, "\\");
        text_bytes(&text, words, 1);
    }
    return text_string(&text);
}

static const char *action(struct arena *arena, const struct shell_values *values) {
    if (values->files[0])
        return arena_print(arena, "_files -g \"%s\"", values->files);
    return values->names[0] ? arena_print(arena, "(%s)", values->names) : "";
}

static void option_line(struct text *text, enum option option) {
    struct arena *arena = text->arena;
    const struct option_rule *rule = &OPTION_RULES[option];
    struct shell_values values = shell_option_values(arena, option);
    const char *line = arena_print(arena, "%s%s[%s]", rule->name, rule->value ? "=" : "",
                                   described(arena, rule->words));
    if (rule->value)
        line = arena_print(arena, "%s:%s:%s", line, described(arena, rule->value),
                           action(arena, &values));
    text_print(text, "            %s \\\n", shell_quoted(arena, line));
}

static void command_case(struct text *text, const struct command *command) {
    struct arena *arena = text->arena;
    struct shell_values values = shell_word_values(arena, command->words);
    text_print(text, "        %s)\n        _arguments \\\n", command->name);
    for (size_t k = 0; k < command->option_count; k++)
        option_line(text, command->options[k]);
    option_line(text, OPTION_HELP);
    const char *word =
        arena_print(arena, "1:%s:%s", described(arena, command->words), action(arena, &values));
    if (command->most_words)
        text_print(text, "            %s ;;\n", shell_quoted(arena, word));
    else
        text_add(text, "            ;;\n");
}

void shell_zsh(struct text *text) {
    text_add(text, "#compdef batten\n"
                   "# Completion of batten for zsh, made when it was built.\n"
                   "_batten() {\n"
                   "    local state line\n"
                   "    local -a commands\n"
                   "    commands=(\n");
    for (size_t k = 0; k < COMMAND_COUNT; k++)
        text_print(text, "        %s\n",
                   shell_quoted(text->arena, arena_print(text->arena, "%s:%s", COMMANDS[k].name,
                                                         COMMANDS[k].question)));
    text_add(text, "    )\n"
                   "    _arguments -C '--help[this text]' '--version[the version]' "
                   "'1:command:->command' '*::word:->word'\n"
                   "    case $state in\n"
                   "    command) _describe command commands ;;\n"
                   "    word)\n"
                   "        case $line[1] in\n");
    for (size_t k = 0; k < COMMAND_COUNT; k++)
        command_case(text, &COMMANDS[k]);
    text_add(text, "        esac ;;\n"
                   "    esac\n"
                   "}\n"
                   "_batten \"$@\"\n");
}
