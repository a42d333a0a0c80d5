/* The library as others see it. That its findings are those of the program is tested in
 * tests/tools/run-install. */
#include "library/batten.h"

#include <criterion/criterion.h>
#include <gsl/gsl_errno.h>
#include <string.h>

/* A plank of 2 m on two ends under its own load of 100 N/m: 5 q L^4 / (384 E I) is checked in the
 * published cases; here it is only asked for. */
static const char PLANK[] = "batten: 1\nunits: si\nself-weight: no\n"
                            "sticks: {p: {size: [20, 90], material: {E: 9 GPa, density: 420}}}\n"
                            "joints: {a: [0, 0], b: [2000, 0]}\n"
                            "members: {plank: {from: a, to: b, stick: p, ends: pinned}}\n"
                            "supports: {a: pinned, b: [z]}\n"
                            "loads: [{case: tray, member: plank, line: [0, 0, -100]}]\n";

static void own_handler(const char *reason, const char *file, int line, int number) {
    (void)reason, (void)file, (void)line, (void)number;
}

Test(library, answers) {
    struct batten *answer = batten_check(PLANK, strlen(PLANK));
    cr_assert_not_null(answer);
    cr_expect_eq(batten_problem_count(answer), 0);
    cr_expect_neq(batten_outcome_of(answer), BATTEN_WRONG_INPUT);
    cr_expect_gt(batten_caution_count(answer), 0);
    cr_expect_null(batten_caution_at(answer, batten_caution_count(answer)));
    cr_expect_not_null(strstr(batten_json(answer), "\"cases\""));
    cr_expect_not_null(strstr(batten_text(answer), "local codes and licensed practice decide"));
    struct batten_finding finding = {.id = "left alone"};
    cr_expect_not(batten_finding_at(answer, batten_finding_count(answer), &finding));
    cr_expect_str_eq(finding.id, "left alone");
    batten_free(answer);
    batten_free(NULL);
}

Test(library, tells_what_is_wrong_with_a_description) {
    struct batten *answer = batten_check("batten: 1\n\nstick: {}\n", 21);
    cr_assert_not_null(answer);
    cr_expect_eq(batten_outcome_of(answer), BATTEN_WRONG_INPUT);
    cr_expect_str_eq(batten_verdict(answer), "");
    cr_expect_eq(batten_finding_count(answer), 0);
    struct batten_problem problem;
    cr_assert(batten_problem_at(answer, batten_problem_count(answer) - 1, &problem));
    cr_expect_eq(problem.line, 3);
    cr_expect_eq(problem.column, 1);
    cr_expect_not_null(strstr(problem.message, "sticks"));
    cr_expect_not(batten_problem_at(answer, batten_problem_count(answer), &problem));
    cr_expect_not_null(strstr(batten_json(answer), "\"errors\""));
    batten_free(answer);
    answer = batten_check("", 0);
    cr_expect_eq(batten_outcome_of(answer), BATTEN_WRONG_INPUT);
    batten_free(answer);
}

Test(library, puts_the_error_handler_back) {
    gsl_set_error_handler(own_handler);
    batten_free(batten_check(PLANK, strlen(PLANK)));
    cr_expect_eq(gsl_set_error_handler(NULL), own_handler);
}
