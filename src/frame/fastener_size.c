#include "frame/fastener_size.h"

#include "units/quote.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define INCH 0.0254

double screw_diameter(long number) {
    return (0.060 + 0.013 * (double)number) * INCH;
}

bool read_screw_size(struct reader *reader, const struct node *node, double *diameter) {
    const char *text = read_text(reader, node, "a screw number such as 8");
    if (!text)
        return false;
    const char *number = strncmp(text, "No.", 3) == 0 ? text + 3 : text;
    static const char *const known[] = {"4", "5", "6", "7", "8", "9", "10", "12", "14", "16"};
    for (size_t k = 0; k < sizeof known / sizeof known[0]; k++) {
        if (strcmp(number, known[k]) == 0) {
            *diameter = screw_diameter(strtol(number, NULL, 10));
            return true;
        }
    }
    trouble(reader, node,
            "%s is no wood screw number; known are 4, 5, 6, 7, 8, 9, 10, 12, 14 and 16",
            quote_text(reader->arena, text));
    return false;
}

bool read_nail_size(struct reader *reader, const struct node *node, double *diameter) {
    static const struct {
        const char *name;
        double inches;
    } known[] = {{"2d", 0.072}, {"3d", 0.080},  {"4d", 0.098},  {"5d", 0.099},  {"6d", 0.113},
                 {"8d", 0.131}, {"10d", 0.148}, {"12d", 0.148}, {"16d", 0.162}, {"20d", 0.192}};
    const char *text = read_text(reader, node, "a nail size such as 10d");
    if (!text)
        return false;
    for (size_t k = 0; k < sizeof known / sizeof known[0]; k++) {
        if (strcmp(text, known[k].name) == 0) {
            *diameter = known[k].inches * INCH;
            return true;
        }
    }
    trouble(reader, node,
            "%s is no nail size; known are 2d, 3d, 4d, 5d, 6d, 8d, 10d, 12d, 16d and 20d",
            quote_text(reader->arena, text));
    return false;
}

bool read_lag_or_bolt_size(struct reader *reader, const struct node *node, double *diameter) {
    static const double known[] = {0.25, 0.3125, 0.375, 0.5};
    double value = 0;
    if (!read_quantity(reader, node, QUANTITY_LENGTH, OVER_ZERO, &value))
        return false;
    for (size_t k = 0; k < sizeof known / sizeof known[0]; k++) {
        if (fabs(value - known[k] * INCH) < 1e-5) {
            *diameter = known[k] * INCH;
            return true;
        }
    }
    trouble(reader, node,
            "%s is no size of lag or bolt that the tables know; "
            "known are 1/4, 5/16, 3/8 and 1/2 in",
            quote_text(reader->arena, node->text));
    return false;
}
