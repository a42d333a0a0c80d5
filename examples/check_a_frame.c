/* Check a frame from another program, through the library:
 *
 *   cc check_a_frame.c $(pkg-config --cflags --libs batten) -o check_a_frame
 *   ./check_a_frame < seedling-stand.yaml
 */
#include <batten.h>
#include <stdio.h>

int main(void) {
    static char description[1 << 22];
    size_t length = fread(description, 1, sizeof description, stdin);
    struct batten *answer = batten_check(description, length);
    if (!answer) {
        fputs("out of memory\n", stderr);
        return BATTEN_TROUBLE;
    }

    struct batten_problem problem;
    for (size_t k = 0; batten_problem_at(answer, k, &problem); k++)
        printf("line %d: %s\n", problem.line, problem.message);

    struct batten_finding finding;
    for (size_t k = 0; batten_finding_at(answer, k, &finding); k++)
        if (!(finding.ratio <= 0.9)) /* a NaN is never a pass */
            printf("%-11s %6.2f  %s\n", finding.verdict, finding.ratio, finding.id);

    printf("%s\n", batten_verdict(answer));
    for (size_t k = 0; k < batten_caution_count(answer); k++)
        printf("- %s\n", batten_caution_at(answer, k));
    int status = (int)batten_outcome_of(answer);
    batten_free(answer);
    return status;
}
