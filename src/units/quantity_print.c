#include "units/decimal.h"
#include "units/quantity.h"
#include "units/unit.h"

#include <math.h>
#include <string.h>

/* ORDER QUANTITY: decimals below 10, below 100 and above, for US and SI. */
static const struct {
    int us[3], si[3];
} decimals[QUANTITY_COUNT] = {
    [QUANTITY_NUMBER] = {{3, 2, 1}, {3, 2, 1}},      [QUANTITY_LENGTH] = {{2, 2, 2}, {1, 1, 1}},
    [QUANTITY_WEIGHT] = {{1, 1, 0}, {1, 1, 0}},      [QUANTITY_MASS] = {{1, 1, 0}, {1, 1, 0}},
    [QUANTITY_LOAD] = {{1, 1, 0}, {3, 2, 1}},        [QUANTITY_STRESS] = {{0, 0, 0}, {2, 1, 0}},
    [QUANTITY_LINE_LOAD] = {{1, 1, 0}, {1, 0, 0}},   [QUANTITY_SLIP] = {{0, 0, 0}, {1, 0, 0}},
    [QUANTITY_DENSITY] = {{1, 1, 0}, {0, 0, 0}},     [QUANTITY_AREA] = {{3, 2, 1}, {0, 0, 0}},
    [QUANTITY_MODULUS] = {{3, 2, 1}, {0, 0, 0}},     [QUANTITY_INERTIA] = {{3, 2, 1}, {0, 0, 0}},
    [QUANTITY_MOMENT] = {{1, 1, 0}, {2, 1, 0}},      [QUANTITY_ROTATION] = {{0, 0, 0}, {1, 0, 0}},
    [QUANTITY_SPEED] = {{1, 1, 0}, {1, 1, 0}},       [QUANTITY_ANGLE] = {{1, 1, 1}, {1, 1, 1}},
    [QUANTITY_TEMPERATURE] = {{0, 0, 0}, {1, 1, 1}}, [QUANTITY_PRESSURE] = {{1, 1, 0}, {3, 2, 1}},
};

static const char *with_unit(struct arena *arena, const char *number, const char *unit) {
    return unit ? arena_print(arena, "%s %s", number, unit) : number;
}

const char *quantity_print(struct arena *arena, double si, enum quantity kind,
                           enum unit_system system) {
    const struct unit *unit = unit_default(kind, system);
    double value = unit ? si / unit->factor - unit->offset : si;
    const int *steps = system == UNITS_SI ? decimals[kind].si : decimals[kind].us;
    double size = fabs(value);
    int places = size < 9.9995 ? steps[0] : size < 99.95 ? steps[1] : steps[2];
    return with_unit(arena, decimal_fixed(arena, value, places), unit ? unit->name : NULL);
}

/* "3-1/2 in" of whole sixteenths under a foot. */
static const char *print_inches(struct arena *arena, int sixteenths) {
    int whole = sixteenths / 16, top = sixteenths % 16, bottom = 16;
    if (top == 0)
        return arena_print(arena, "%d in", whole);
    while (top % 2 == 0) {
        top /= 2;
        bottom /= 2;
    }
    return whole ? arena_print(arena, "%d-%d/%d in", whole, top, bottom)
                 : arena_print(arena, "%d/%d in", top, bottom);
}

const char *quantity_print_length(struct arena *arena, double si, enum unit_system system) {
    if (system == UNITS_SI)
        return with_unit(arena, decimal_fixed(arena, round(si * 1000), 0), "mm");
    double sixteenths = round(fabs(si) / 0.0254 * 16);
    if (!(sixteenths < 1e15))
        return "?";
    const char *sign = si < 0 && sixteenths > 0 ? "-" : "";
    double feet = floor(sixteenths / 192);
    int rest = (int)(sixteenths - feet * 192);
    if (!(feet > 0))
        return arena_print(arena, "%s%s", sign, print_inches(arena, rest));
    if (rest == 0)
        return arena_print(arena, "%s%.0f ft", sign, feet);
    return arena_print(arena, "%s%.0f ft %s", sign, feet, print_inches(arena, rest));
}

const char *quantity_print_drill(struct arena *arena, double si, enum unit_system system) {
    if (system == UNITS_SI)
        return with_unit(arena, decimal_fixed(arena, floor(si * 2000.0 + 1e-6) / 2.0, 1), "mm");
    int top = (int)floor(si / 0.0254 * 64.0 + 1e-6), bottom = 64;
    while (top > 0 && top % 2 == 0 && bottom > 1) {
        top /= 2;
        bottom /= 2;
    }
    return top < bottom ? arena_print(arena, "%d/%d in", top, bottom)
                        : quantity_print(arena, si, QUANTITY_LENGTH, system);
}

/* The unit that fits a calculation in inches and pounds, or in mm and N. */
static void working_unit(enum quantity kind, enum unit_system system, const char **name,
                         double *factor) {
    static const char *const names[QUANTITY_COUNT][2] = {
        [QUANTITY_LOAD] = {"psi", "MPa"},
        [QUANTITY_LINE_LOAD] = {"lb/in", "N/mm"},
    };
    const struct unit *unit = unit_default(kind, system);
    const char *other = names[kind][system == UNITS_SI];
    if (other)
        unit = unit_find(other, strlen(other), kind);
    *name = unit ? unit->name : NULL;
    *factor = unit ? unit->factor : 1;
    if (system == UNITS_SI && (kind == QUANTITY_MOMENT || kind == QUANTITY_ROTATION)) {
        *name = kind == QUANTITY_MOMENT ? "N-mm" : "N-mm/rad";
        *factor = 1e-3;
    }
}

const char *quantity_print_working(struct arena *arena, double si, enum quantity kind,
                                   enum unit_system system) {
    const char *name = NULL;
    double factor = 1;
    working_unit(kind, system, &name, &factor);
    double value = si / factor;
    if (kind == QUANTITY_TEMPERATURE)
        value -= unit_default(kind, system)->offset;
    return with_unit(arena, decimal_significant(arena, value, 5), name);
}
