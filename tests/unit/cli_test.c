#include "near.h"

/* The program's own files are not in the library that the unit tests link. */
#include "cli/exit_status.c"
#include "cli/options.c"

static struct arena *arena;
static struct problems problems;

static void set_up(void) {
    arena = arena_new();
    cr_assert_not_null(arena);
    problems = problems_new(arena);
}

static void tear_down(void) {
    arena_free(arena);
}

TestSuite(options, .init = set_up, .fini = tear_down);

static const enum option KNOWN[] = {OPTION_ALL, OPTION_JSON, OPTION_COMBINATION};

/* A command line without the program's name, ended by NULL. */
static struct options read_line(char *const *words) {
    char *argv[16] = {(char *)"batten"};
    int argc = 1;
    for (; words[argc - 1]; argc++)
        argv[argc] = words[argc - 1];
    return options_read(arena, argc, argv, KNOWN, sizeof KNOWN / sizeof *KNOWN, &problems);
}
#define READ(...) read_line((char *const[]){__VA_ARGS__, NULL})

Test(options, stand_before_and_after_the_words) {
    struct options options = READ("--combination", "D+T", "why", "--json", "a.yaml", "sag/x");
    cr_assert(problems.count == 0);
    cr_assert(options.word_count == 3, "%zu words", options.word_count);
    SAME_TEXT(options.words[0], "why");
    SAME_TEXT(options.words[2], "sag/x");
    SAME_TEXT(options.value[OPTION_COMBINATION], "D+T");
    cr_assert(options.given[OPTION_JSON] && !options.given[OPTION_ALL]);
}

Test(options, take_values_behind_an_equal_sign) {
    struct options options = READ("why", "--combination=D=T", "-", "--", "--all");
    cr_assert(problems.count == 0);
    SAME_TEXT(options.value[OPTION_COMBINATION], "D=T");
    SAME_TEXT(options.words[1], "-");
    SAME_TEXT(options.words[2], "--all");
    cr_assert(!options.given[OPTION_ALL], "-- ends the options");
}

Test(options, find_the_command_and_help) {
    char *const argv[] = {(char *)"batten",    (char *)"--combination",
                          (char *)"check",     (char *)"why",
                          (char *)"--help=1",  (char *)"--",
                          (char *)"--version", NULL};
    SAME_TEXT(options_command(7, argv), "why");
    cr_assert(options_has(7, argv, OPTION_HELP));
    cr_assert(!options_has(7, argv, OPTION_VERSION), "behind -- there are words");
    cr_assert_null(options_command(1, argv));
}

static void one_problem(const char *key, const char *message) {
    cr_assert(problems.count == 1, "%zu problems", problems.count);
    SAME_TEXT(problems.items[0].key, key);
    SAME_TEXT(problems.items[0].message, message);
}

Test(options, refuse_what_they_do_not_know) {
    READ("check", "--jsno");
    one_problem("--jsno", "unknown option; did you mean --json?");
}

Test(options, refuse_options_of_other_commands) {
    READ("check", "--spacing", "2 ft");
    one_problem("--spacing", "unknown option");
}

Test(options, refuse_short_ones) {
    READ("check", "-q");
    one_problem("-q", "unknown option");
}

Test(options, refuse_twice) {
    READ("--json", "check", "--json");
    one_problem("--json", "given twice");
}

Test(options, refuse_values_that_are_missing) {
    READ("why", "--combination", "--json");
    one_problem("--combination", "a value is missing: --combination NAME");
}

Test(options, refuse_values_at_the_end) {
    READ("why", "--combination");
    one_problem("--combination", "a value is missing: --combination NAME");
}

Test(options, refuse_values_that_are_not_wanted) {
    READ("check", "--all=yes");
    one_problem("--all", "takes no value, found 'yes'");
}

Test(options, tell_everything_in_one_go) {
    READ("check", "--nothing-like-it", "--all=1", "--json", "--json");
    cr_assert(problems.count == 3, "%zu problems", problems.count);
}

Test(exit_status, follows_the_verdict) {
    static const int wanted[] = {0, 0, 1, 1, 3, 4};
    for (int verdict = VERDICT_OK; verdict <= VERDICT_FAILED; verdict++)
        cr_assert((int)exit_status_of((enum verdict)verdict, false) == wanted[verdict], "%d",
                  verdict);
    cr_assert(exit_status_of(VERDICT_NOT_COVERED, true) == EXIT_HOLDS);
    cr_assert(exit_status_of(VERDICT_FAILS, true) == EXIT_DOES_NOT_HOLD);
}
