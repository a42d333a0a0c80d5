#include "loads/weather_words.h"

static const char *edition_name(enum edition edition) {
    return edition == EDITION_ASCE7_22 ? "ASCE 7-22" : "ASCE 7-16";
}

static const char *land(struct arena *arena, const struct site *site) {
    if (!site->exposure)
        return "open land around (exposure C, not said)";
    return arena_print(arena, "exposure %c", site->exposure);
}

/* Does snow lie on a roof that counts as heated? */
static const char *warmth(const struct site *site) {
    if (!site->heated_given)
        return "unheated (not said)";
    return site->heated ? "heated all winter" : "unheated";
}

static bool any_case(const struct weather *weather, int frame_case) {
    for (size_t k = 0; k < weather->cases.count; k++)
        if (weather->cases.items[k].frame_case == frame_case)
            return true;
    return false;
}

/* One roof slope, higher than the snow beside it: it may lean on a house. */
static bool is_lean_to(const struct weather *weather) {
    size_t roofs = 0, sloped = 0;
    for (size_t k = 0; k < weather->cover_count; k++) {
        const struct cover *cover = &weather->covers[k];
        if (cover->kind != COVER_ROOF)
            continue;
        roofs++;
        sloped += cover->slope > 0.01 &&
                  (cover->top + cover->low) / 2.0 >= table_constant("low-lid-height").value;
    }
    return roofs == 1 && sloped == 1;
}

static void snow_words(struct arena *arena, const struct frame *frame, struct weather *weather) {
    const struct site *site = &frame->site;
    if (!any_case(weather, CASE_SNOW)) {
        ARRAY_PUSH(arena, &weather->cautions,
                   "snow is given, and nothing here catches it: no roof panel and no shelf under "
                   "the open sky");
        return;
    }
    if (weather->snow.by_depth) {
        ARRAY_PUSH(arena, &weather->cautions,
                   arena_print(arena,
                               "snow: %s of it, as typed, lies on the roof itself: no factor for "
                               "exposure, heat or slope, and all that slides or drifts from a "
                               "house is taken to be in it",
                               quantity_print_length(arena, site->snow_depth.value, frame->units)));
        return;
    }
    ARRAY_PUSH(
        arena, &weather->cautions,
        arena_print(arena,
                    "snow by %s from %s on the ground: %s, roof partly open to the wind, not "
                    "slippery, %s, risk category %d%s",
                    edition_name(site->edition),
                    quantity_print(arena, site->ground_snow.value, QUANTITY_PRESSURE, frame->units),
                    land(arena, site), warmth(site), weather->snow.question.risk,
                    site->risk ? "" : " (a garden structure that nobody works in; not said)"));
    if (is_lean_to(weather) && !site->beside_given)
        ARRAY_PUSH(arena, &weather->cautions,
                   "a roof with one slope often stands against a house, from which snow slides and "
                   "drifts onto it: not counted; say beside: {house: ..} or beside: none under "
                   "site");
}

static void wind_words(struct arena *arena, const struct frame *frame, struct weather *weather,
                       double height) {
    const struct site *site = &frame->site;
    const char *speed =
        quantity_print(arena, weather->wind.question.speed, QUANTITY_SPEED, frame->units);
    ARRAY_PUSH(arena, &weather->cautions,
               arena_print(arena, "wind: %s, %s, %s",
                           weather->wind.real
                               ? arena_print(arena, "a gust of %s as it really blows", speed)
                               : arena_print(arena,
                                             "a map speed of %s (%s), of which 0.6 of the pressure "
                                             "counts",
                                             speed, edition_name(site->edition)),
                           land(arena, site), "level ground, no shelter from anything near"));
    if (weather->box.covered && height > table_constant("box-height-most").value)
        ARRAY_PUSH(arena, &weather->cautions,
                   "the wind coefficients are meant for boxes up to chest height; this frame is "
                   "taller, and the same are used");
    if (weather->box.gapes)
        ARRAY_PUSH(arena, &weather->cautions,
                   "one side has no panel: wind counts as in a box with a hole, stronger in and "
                   "out; say beside: {house: ..} where a house closes it");
}

void weather_words(struct arena *arena, const struct frame *frame, struct weather *weather,
                   double height) {
    if (weather->snow.given)
        snow_words(arena, frame, weather);
    if (weather->wind.given)
        wind_words(arena, frame, weather, height);
    for (size_t k = 0; k < weather->cover_count; k++)
        for (size_t b = 0; b < weather->covers[k].bearer_count; b++)
            if (weather->covers[k].bearers[b].member < 0) {
                ARRAY_PUSH(arena, &weather->cautions,
                           arena_print(arena,
                                       "panel %s: no stick lies under one of its ends, so its load "
                                       "there goes to the corner joints",
                                       weather->covers[k].panel->name));
                break;
            }
}
