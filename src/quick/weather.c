#include "quick/weather.h"

#include "weather/snow_shapes.h"

static struct working *new_working(struct arena *arena) {
    struct working *working = ARENA_NEW(arena, struct working);
    working->arena = arena;
    return working;
}

struct weather_answer weather_answer(struct arena *arena, const struct weather_question *question) {
    struct weather_answer answer = {.snow_working = new_working(arena),
                                    .wind_working = new_working(arena)};
    if (question->asks_snow) {
        answer.snow = snow_on_roof(&question->snow, answer.snow_working);
        answer.snow_depth = snow_depth_of_pressure(question->snow.ground);
    }
    if (question->asks_wind)
        answer.wind = wind_pressure(&question->wind, answer.wind_working);
    return answer;
}
