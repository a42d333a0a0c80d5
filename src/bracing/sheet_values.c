#include "bracing/sheet_values.h"

#include "bracing/racking.h"

#include <math.h>
#include <stdio.h>

static const char table[] = "sheet-shear";

static bool find(const char *what, const char *field, struct cited *out) {
    char row[128];
    int length = snprintf(row, sizeof row, "%s.%s", what, field);
    return length > 0 && (size_t)length < sizeof row && table_value(table, row, out);
}

struct cited sheet_value(const char *what, const char *field) {
    struct cited value = {.value = NAN, .source = ""};
    find(what, field, &value);
    return value;
}

enum sheet_kind sheet_kind(int sheet) {
    struct cited value;
    const char *name = table_sheet(sheet)->name;
    if (find(name, "shear-stiffness", &value))
        return SHEET_WOOD;
    return find(name, "skins", &value) ? SHEET_CLEAR : SHEET_NEVER;
}

struct cited sheet_skins(int sheet) {
    return sheet_value(table_sheet(sheet)->name, "skins");
}

double sheet_shear(int sheet) {
    if (sheet_kind(sheet) == SHEET_WOOD)
        return sheet_value(table_sheet(sheet)->name, "shear-stiffness").value;
    return sheet_value("polycarbonate", "shear-modulus").value * sheet_skins(sheet).value;
}

bool sheet_unit_shear(int sheet, double spacing, struct cited *out, bool *beyond) {
    static const struct {
        double inches;
        const char *field;
    } rows[] = {{2, "unit-shear.2"}, {3, "unit-shear.3"}, {4, "unit-shear.4"}, {6, "unit-shear.6"}};
    enum { ROWS = sizeof rows / sizeof *rows };
    const double inch = 0.0254, slack = 1e-9;
    size_t row = 0;
    while (row + 1 < ROWS && !(spacing <= rows[row].inches * inch + slack))
        row++;
    *beyond = !(spacing <= rows[row].inches * inch + slack);
    return find(table_sheet(sheet)->name, rows[row].field, out);
}

double sheet_buckling(int sheet, double width, double height) {
    double E = sheet_value("polycarbonate", "modulus").value;
    double poisson = sheet_value("polycarbonate", "poisson").value;
    double skins = sheet_skins(sheet).value;
    struct cited depth;
    if (!find(table_sheet(sheet)->name, "depth", &depth))
        return buckling_flow_solid(E, poisson, skins, width, height);
    return buckling_flow_ribbed(E, poisson, skins, depth.value,
                                sheet_value("polycarbonate", "across-share").value, width, height);
}
