#include "tables/data.h"

int table_size_count(void) {
    return (int)dressed_size_records_count;
}

const struct dressed_size *table_size(int index) {
    return &dressed_size_records[index];
}

int table_size_find(const char *name) {
    return table_name_index(dressed_size_records, dressed_size_records_count,
                            sizeof *dressed_size_records, name);
}

static double nearer_nominal(double best, double nominal, double dressed, double least) {
    return dressed >= least && nominal < best ? nominal : best;
}

double table_nominal_inches(double actual) {
    double least = actual - INCH / 32.0;
    double best = 14.0;
    for (size_t k = 0; k < dressed_size_records_count; k++) {
        const struct dressed_size *size = &dressed_size_records[k];
        best = nearer_nominal(best, size->nominal_thickness, size->thickness, least);
        best = nearer_nominal(best, size->nominal_width, size->width, least);
    }
    return best;
}
