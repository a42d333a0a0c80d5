#include "judge/patterns.h"

static bool is_tray(const struct column *column) {
    return column->set == SET_TRAY_LONG || column->set == SET_TRAY_SHORT;
}

bool pattern_matters(const struct run *run, const double *weights) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    for (size_t c = 0; c < response->live_count; c++)
        if (weights[c] != 0.0 && is_tray(&response->columns[c]))
            return true;
    return false;
}

bool pattern_apply(const struct run *run, size_t pattern, double *weights) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    const struct load_pattern *made = &run->loads->patterns[pattern];
    bool solvable = true;
    for (size_t c = 0; c < response->live_count; c++) {
        const struct column *column = &response->columns[c];
        if (!is_tray(column) || weights[c] == 0.0)
            continue;
        int other =
            response_column(response, made->sets[column->set == SET_TRAY_SHORT], column->lean);
        if (other >= 0) {
            weights[other] = weights[c];
            solvable &= response->solvable[other];
        }
        weights[c] = 0.0;
    }
    return solvable;
}
