#include "shell/shell.h"

#include "cli/command.h"

static const char HEAD[] =
    "# Completion of batten for bash, made when it was built.\n"
    "_batten() {\n"
    "    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}\n"
    "    local command= words=0 names= files= options= k\n"
    "    COMPREPLY=()\n"
    "    # --key=value comes in three words.\n"
    "    if [ \"$word\" = '=' ]; then word=; fi\n"
    "    if [ \"$before\" = '=' ]; then before=${COMP_WORDS[COMP_CWORD - 2]}; fi\n"
    "    for ((k = 1; k < COMP_CWORD; k++)); do\n"
    "        case ${COMP_WORDS[k]} in\n"
    "        -?*) ;;\n"
    "        *) if [ -z \"$command\" ]; then command=${COMP_WORDS[k]}; else words=$((words + 1)); "
    "fi ;;\n"
    "        esac\n"
    "    done\n";

static const char FOOT[] =
    "    if [ -n \"$files\" ]; then\n"
    "        compopt -o filenames 2>/dev/null\n"
    "        COMPREPLY=($(compgen -d -- \"$word\") $(compgen -f -X \"!$files\" -- \"$word\"))\n"
    "    else\n"
    "        COMPREPLY=($(compgen -W \"$names\" -- \"$word\"))\n"
    "    fi\n"
    "}\n"
    "complete -F _batten batten\n";

static void assign(struct text *text, const struct shell_values *values) {
    text_print(text, "names=%s files=%s", shell_quoted(text->arena, values->names),
               shell_quoted(text->arena, values->files));
}

static void option_values(struct text *text) {
    text_add(text, "    case $before in\n");
    for (int k = 0; k < OPTION_COUNT; k++) {
        struct shell_values values = shell_option_values(text->arena, (enum option)k);
        if (!OPTION_RULES[k].value)
            continue;
        text_print(text, "    %s) ", OPTION_RULES[k].name);
        assign(text, &values);
        text_add(text, "; options=none ;;\n");
    }
    text_add(text, "    esac\n");
}

static void command_case(struct text *text, const struct command *command) {
    struct shell_values values = shell_word_values(text->arena, command->words);
    text_print(text, "        %s)\n            if [ $words = 0 ]; then ", command->name);
    assign(text, &values);
    text_add(text, "; fi\n            options='");
    for (size_t k = 0; k < command->option_count; k++)
        text_print(text, "%s ", OPTION_RULES[command->options[k]].name);
    text_print(text, "%s' ;;\n", OPTION_RULES[OPTION_HELP].name);
}

void shell_bash(struct text *text) {
    text_add(text, HEAD);
    option_values(text);
    text_add(text,
             "    if [ -z \"$options\" ]; then\n        case $command in\n        '') names='");
    for (size_t k = 0; k < COMMAND_COUNT; k++)
        text_print(text, "%s%s", k ? " " : "", COMMANDS[k].name);
    text_print(text, "' options='%s %s' ;;\n", OPTION_RULES[OPTION_HELP].name,
               OPTION_RULES[OPTION_VERSION].name);
    for (size_t k = 0; k < COMMAND_COUNT; k++)
        command_case(text, &COMMANDS[k]);
    text_add(text, "        esac\n"
                   "        case $word in -*) names=$options files= ;; esac\n"
                   "    fi\n");
    text_add(text, FOOT);
}
