#include "judge/sideways.h"

#include "loads/combinations.h"
#include "loads/weather.h"

/* What is found, and whether there are trays to go with it. */
struct found {
    struct arena *arena;
    bool trays;
    struct {
        struct sideways *items;
        size_t count, capacity;
    } list;
};

/* Beside empty shelves, and beside full ones. */
static void both(struct found *found, struct sideways what) {
    const char *part = what.name;
    what.name = arena_print(found->arena, "D+%s", part);
    ARRAY_PUSH(found->arena, &found->list, what);
    what.name = arena_print(found->arena, "D+T+%s", part);
    what.full = true;
    if (found->trays)
        ARRAY_PUSH(found->arena, &found->list, what);
}

static void pushes(struct found *found, const struct loads *loads, int axis) {
    static const char *const PARTS[2][2] = {{"push right", "push left"},
                                            {"push back", "push front"}};
    int set = axis ? SET_PUSH_Y : SET_PUSH_X;
    for (int way = 0; loads->sets[set].present && way < 2; way++) {
        double sign = way ? -1.0 : 1.0;
        both(found, (struct sideways){.name = PARTS[axis][way],
                                      .sets = {set},
                                      .set_count = 1,
                                      .factor = sign,
                                      .axis = axis,
                                      .sign = sign});
    }
}

struct cited sideways_wind_share(const struct loads *loads) {
    return loads->weather->wind.given ? loads->weather->wind.service
                                      : table_constant("service-wind");
}

static void winds(struct found *found, const struct loads *loads, int axis) {
    double share = sideways_wind_share(loads).value;
    for (size_t c = 0; c < loads->case_count; c++) {
        const struct load_case *wind = &loads->cases[c];
        if (wind->frame_case < CASE_WIND_LEFT || wind->frame_case > CASE_WIND_BACK)
            continue;
        const double *blows = wind_direction((enum wind_from)(wind->frame_case - CASE_WIND_LEFT));
        if (blows[axis] == 0.0)
            continue;
        both(found, (struct sideways){.name = combination_wind_part(found->arena, wind, share),
                                      .sets = {wind->sets[0], wind->sets[1]},
                                      .set_count = wind->set_count,
                                      .factor = share,
                                      .axis = axis,
                                      .sign = blows[axis],
                                      .wind = true});
    }
}

size_t sideways_along(struct arena *arena, const struct loads *loads, int axis,
                      struct sideways **list) {
    struct found found = {.arena = arena,
                          .trays = loads->sets[SET_TRAY_LONG].present ||
                                   loads->sets[SET_TRAY_SHORT].present};
    pushes(&found, loads, axis);
    winds(&found, loads, axis);
    *list = found.list.items;
    return found.list.count;
}
