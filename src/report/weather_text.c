#include "report/weather_text.h"

#include "report/layout.h"
#include "report/why_text.h"
#include "report/words.h"

#include <math.h>

static const char *pressure(struct arena *arena, double si) {
    return quantity_print(arena, si, QUANTITY_PRESSURE, UNITS_US);
}

static void row(struct text *text, const char *what, const char *value, const char *remark) {
    static const size_t WIDTHS[] = {34, 10, 48};
    row_of_cells(text, 2, (const char *const[]){what, value, remark}, WIDTHS, 3);
}

static const char *land(char exposure) {
    return exposure == 'B'   ? "houses or trees around (B)"
           : exposure == 'D' ? "a shore (D)"
                             : "open land (C)";
}

static void snow_rows(struct text *text, const struct weather_question *question,
                      const struct weather_answer *answer) {
    const struct snow_question *snow = &question->snow;
    struct arena *arena = text->arena;
    row(text, "snow on the ground", pressure(arena, snow->ground),
        arena_print(arena, "about %s as it settles",
                    quantity_print_length(arena, answer->snow_depth, UNITS_US)));
    row(text, "snow on a flat roof, pf", pressure(arena, answer->snow.flat),
        snow->low ? "under 3 ft high: the snow on the ground covers it" : "");
    row(text, "snow on this roof, ps", pressure(arena, answer->snow.sloped), "of its level area");
    if (isfinite(answer->snow.minimum))
        row(text, "least snow, slope under 15 deg", pressure(arena, answer->snow.minimum),
            "a case of its own, in place of ps");
    if (snow->edition == EDITION_ASCE7_22)
        row(text, "in allowable stress design",
            pressure(arena, table_constant("snow-share-22").value * answer->snow.sloped),
            "0.7 of it: this edition's snow is at strength level");
}

static void wind_rows(struct text *text, const struct weather_answer *answer) {
    struct arena *arena = text->arena;
    struct cited share = table_constant("map-wind-share");
    row(text, "pressure of the wind, q", pressure(arena, answer->wind.q),
        "strength level; times the coefficients of the surface");
    row(text, "in allowable stress design", pressure(arena, share.value * answer->wind.q),
        "0.6 of it; of a gust that really blew, all of it");
}

static void taken(struct text *text, const struct weather_question *question) {
    const struct snow_question *snow = &question->snow;
    struct arena *arena = text->arena;
    const char *roof = "";
    if (question->asks_snow)
        roof = arena_print(arena, "; roof at %s, %s, %s%s, risk category %d",
                           quantity_print(arena, snow->slope, QUANTITY_ANGLE, UNITS_US),
                           snow_exposure_name(snow->exposure), snow_thermal_name(snow->thermal),
                           snow->slippery ? ", slippery" : "", snow->risk);
    paragraph(text, "", 0,
              arena_print(arena, "Snow and wind by ASCE 7-%s: %s%s.",
                          snow->edition == EDITION_ASCE7_22 ? "22" : "16", land(snow->terrain),
                          roof));
    text_add(text, "\n");
}

void weather_text(struct text *text, const struct weather_question *question,
                  const struct weather_answer *answer) {
    taken(text, question);
    if (question->asks_snow)
        snow_rows(text, question, answer);
    if (question->asks_wind)
        wind_rows(text, answer);
    if (question->asks_snow) {
        text_add(text, "\nThe working of the snow\n");
        working_text(text, answer->snow_working, UNITS_US);
    }
    if (question->asks_wind) {
        text_add(text, "\nThe working of the wind\n");
        working_text(text, answer->wind_working, UNITS_US);
    }
    text_add(text, "\n");
    paragraph(text, "", 0, SAFETY_LINE);
}

void weather_json(struct json *json, const struct weather_question *question,
                  const struct weather_answer *answer) {
    const struct roof_snow *snow = &answer->snow;
    json_object(json, JSON_LINES);
    json_key(json, "snow");
    if (question->asks_snow) {
        json_object(json, JSON_ONE_LINE);
        json_key_number(json, "flat", snow->flat);
        json_key_number(json, "sloped", snow->sloped);
        json_key_number(json, "minimum", snow->minimum);
        json_key_number(json, "Ce", snow->Ce);
        json_key_number(json, "Ct", snow->Ct);
        json_key_number(json, "Is", snow->Is);
        json_key_number(json, "Cs", snow->Cs);
        json_close(json);
    } else {
        json_null(json);
    }
    json_key(json, "wind");
    if (question->asks_wind) {
        json_object(json, JSON_ONE_LINE);
        json_key_number(json, "Kz", answer->wind.Kz);
        json_key_number(json, "q", answer->wind.q);
        json_close(json);
    } else {
        json_null(json);
    }
    json_close(json);
    json_end(json);
}
