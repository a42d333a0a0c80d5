/* Quantities, ratios and prices from any text. The first byte chooses kind and units. What is read
 * is finite; what is refused says why; what is printed reads back. */
#include "fuzz.h"

#include "units/quantity.h"

#include <math.h>
#include <string.h>

static void try_quantity(struct arena *arena, const char *text, enum quantity kind,
                         enum unit_system system) {
    double value = NAN;
    const char *why = NULL;
    if (quantity_read(arena, text, kind, system, &value, &why))
        HOLDS(isfinite(value));
    else
        HOLDS(why && why[0]);
}

static void try_ratio(struct arena *arena, const char *text, enum unit_system system) {
    static const char *const WORDS[] = {"span", "height", NULL};
    for (int k = 0; k < 3; k++) {
        double divisor = NAN, length = NAN;
        const char *why = NULL;
        if (quantity_read_ratio(arena, text, WORDS[k], system, &divisor, &length, &why))
            HOLDS(divisor > 0.0 ? isfinite(divisor) : divisor == 0.0 && isfinite(length));
        else
            HOLDS(why && why[0]);
    }
}

static void try_price(struct arena *arena, const char *text, enum unit_system system) {
    struct price price = {0};
    const char *why = NULL;
    if (quantity_read_price(arena, text, system, &price, &why))
        HOLDS(isfinite(price.amount) && price.amount >= 0.0);
    else
        HOLDS(why && why[0]);
}

static void try_all(struct arena *arena, const uint8_t *bytes, size_t length) {
    if (ARENA_TRAP(arena))
        return;
    enum quantity kind = (enum quantity)(bytes[0] % QUANTITY_COUNT);
    enum unit_system system = bytes[0] & 0x80 ? UNITS_SI : UNITS_US;
    char *text = arena_copy(arena, (const char *)bytes + 1, length - 1);
    if (strlen(text) != length - 1) /* the reader of files refuses a 0 */
        return;
    try_quantity(arena, text, kind, system);
    try_ratio(arena, text, system);
    try_price(arena, text, system);
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length) {
    if (!length || length > 4096)
        return 0;
    struct arena *arena = arena_new();
    if (arena)
        try_all(arena, bytes, length);
    arena_free(arena);
    return 0;
}
