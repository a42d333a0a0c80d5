#include "base/near.h"
#include "base/version.h"
#include "cli/command.h"
#include "cli/help.h"
#include "cli/output.h"
#include "cli/unfinished.h"

#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <string.h>

static const struct place NO_PLACE = {0, 0};

static const struct command *find_command(const char *name) {
    for (size_t k = 0; name && k < COMMAND_COUNT; k++)
        if (strcmp(COMMANDS[k].name, name) == 0)
            return &COMMANDS[k];
    return NULL;
}

static void no_command(const char *name, struct problems *problems) {
    const char **names = ARENA_ARRAY(problems->arena, const char *, COMMAND_COUNT);
    for (size_t k = 0; k < COMMAND_COUNT; k++)
        names[k] = COMMANDS[k].name;
    const char *near = name ? near_name(name, names, COMMAND_COUNT) : NULL;
    if (!name)
        problem_add(problems, NO_PLACE, "", "a command is missing");
    else if (near)
        problem_add(problems, NO_PLACE, "", "unknown command '%s'; did you mean %s?", name, near);
    else
        problem_add(problems, NO_PLACE, "", "unknown command '%s'", name);
}

static void count_words(const struct command *command, const struct options *options,
                        struct problems *problems) {
    size_t words = options->word_count - 1;
    if (words < command->fewest_words)
        problem_add(problems, NO_PLACE, "", "%s needs %s", command->name, command->words);
    for (size_t k = command->most_words; k < words; k++)
        problem_add(problems, NO_PLACE, "", "'%s' is one word too many", options->words[k + 1]);
}

static enum exit_status show(const struct text *text) {
    output_text(text);
    return EXIT_HOLDS;
}

static enum exit_status run(struct arena *arena, int argc, char *const *argv) {
    const char *name = options_command(argc, argv);
    const struct command *command = find_command(name);
    struct text text = text_new(arena);
    bool as_json = options_has(argc, argv, OPTION_JSON);
    if (command || !name) {
        if (options_has(argc, argv, OPTION_HELP)) {
            if (command)
                command_help_text(&text, command);
            else
                help_text(&text);
            return show(&text);
        }
        if (options_has(argc, argv, OPTION_VERSION)) {
            text_add(&text, "batten " BATTEN_VERSION "\n");
            return show(&text);
        }
    }
    struct problems problems = problems_new(arena);
    if (!command) {
        no_command(name, &problems);
        return output_problems(arena, NULL, &problems, as_json);
    }
    struct call call = {.arena = arena,
                        .options = options_read(arena, argc, argv, command->options,
                                                command->option_count, &problems)};
    count_words(command, &call.options, &problems);
    if (problems.count)
        return output_problems(arena, NULL, &problems, as_json);
    return command->run(&call);
}

static enum exit_status out_of_memory(void) {
    fputs("batten: out of memory\n", stderr);
    return EXIT_TROUBLE;
}

/* Apart from main(), so that nothing changes between the trap and its use. */
static enum exit_status run_trapped(struct arena *arena, int argc, char *const *argv) {
    if (ARENA_TRAP(arena))
        return out_of_memory();
    return run(arena, argc, argv);
}

int main(int argc, char **argv) {
    gsl_set_error_handler_off();
    unfinished_start();
    struct arena *arena = arena_new();
    enum exit_status status = arena ? run_trapped(arena, argc, argv) : out_of_memory();
    arena_free(arena);
    return (int)output_close(status);
}
