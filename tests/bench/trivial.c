/* The least that a program with the same libraries does: the floor for a whole run. */
#include <gsl/gsl_linalg.h>
#include <yaml.h>

int main(void) {
    yaml_parser_t parser;
    double items[] = {2.0, 1.0, 1.0, 2.0};
    gsl_matrix_view matrix = gsl_matrix_view_array(items, 2, 2);
    gsl_linalg_cholesky_decomp1(&matrix.matrix);
    if (!yaml_parser_initialize(&parser))
        return 1;
    yaml_parser_delete(&parser);
    return 0;
}
