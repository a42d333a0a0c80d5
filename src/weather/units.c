#include "weather/units.h"

#include <stdlib.h>

struct cited weather_row(const char *table, const char *row) {
    struct cited cited;
    if (!table_value(table, row, &cited))
        abort();
    return cited;
}
