#include "quick/weather.h"
#include "cli/asking.h"
#include "cli/output.h"
#include "report/weather_text.h"
#include "weather/units.h"

static struct snow_question ask_snow(struct asking *asking) {
    static const char *const EXPOSURES[] = {"fully-exposed", "partial", "sheltered"},
                             *const THERMALS[] = {"heated", "just-above-freezing", "unheated",
                                                  "greenhouse"},
                             *const RISKS[] = {"1", "2", "3", "4"};
    const struct name_list exposures = {"", "", EXPOSURES, SNOW_EXPOSURE_COUNT},
                           thermals = {"", "", THERMALS, SNOW_THERMAL_COUNT},
                           risks = {"", "", RISKS, 4};
    struct snow_question snow = {
        .ground = asked_quantity(asking, OPTION_GROUND_SNOW, false, QUANTITY_LOAD, false),
        .slope = asked_quantity(asking, OPTION_SLOPE, false, QUANTITY_ANGLE, false),
        .exposure = (enum snow_exposure)asked_name(asking, OPTION_SNOW_EXPOSURE, false, &exposures,
                                                   SNOW_PARTIAL),
        .thermal =
            (enum snow_thermal)asked_name(asking, OPTION_THERMAL, false, &thermals, SNOW_UNHEATED),
        .risk = asked_name(asking, OPTION_RISK, false, &risks, 0) + 1,
        .slippery = asking->call->options.given[OPTION_SLIPPERY],
    };
    if (snow.slope > 90.0 * WEATHER_DEGREE * (1.0 + 1e-12))
        asking_wrong(asking, OPTION_SLOPE, "a roof slopes by 90 deg at most, found %s",
                     asking->call->options.value[OPTION_SLOPE]);
    return snow;
}

static struct weather_question ask(struct asking *asking) {
    static const char *const LETTERS[] = {"B", "C", "D"};
    const struct name_list letters = {"", "", LETTERS, 3};
    const bool *given = asking->call->options.given;
    struct weather_question question = {.asks_snow = given[OPTION_GROUND_SNOW],
                                        .asks_wind = given[OPTION_WIND]};
    enum edition edition = asked_table_name(asking, OPTION_EDITION, false, "editions") == 1
                               ? EDITION_ASCE7_22
                               : EDITION_ASCE7_16;
    char letter = (char)('B' + asked_name(asking, OPTION_EXPOSURE, false, &letters, 1));
    double height = asked_quantity(asking, OPTION_HEIGHT, false, QUANTITY_LENGTH, true);
    question.snow = ask_snow(asking);
    question.snow.edition = edition;
    question.snow.terrain = letter;
    question.snow.low = given[OPTION_HEIGHT] && height < table_constant("low-lid-height").value;
    question.wind = (struct wind_question){
        .edition = edition,
        .speed = asked_quantity(asking, OPTION_WIND, false, QUANTITY_SPEED, false),
        .exposure = letter,
        .height = height,
        .units = UNITS_US};
    if (!question.asks_snow && !question.asks_wind)
        asking_wrong(asking, OPTION_GROUND_SNOW,
                     "nothing is asked: give --ground-snow LOAD, --wind SPEED or both");
    return question;
}

enum exit_status weather_command(const struct call *call) {
    bool as_json = call->options.given[OPTION_JSON];
    struct asking asking = asking_of(call);
    struct weather_question question = ask(&asking);
    if (asking.problems.count)
        return output_problems(call->arena, NULL, &asking.problems, as_json);
    struct weather_answer answer = weather_answer(call->arena, &question);
    if (as_json) {
        weather_json(json_new(call->arena, output_sink()), &question, &answer);
        return EXIT_HOLDS;
    }
    struct text text = text_new(call->arena);
    weather_text(&text, &question, &answer);
    output_text(&text);
    return EXIT_HOLDS;
}
