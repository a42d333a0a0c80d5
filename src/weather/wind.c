#include "weather/wind.h"

#include "weather/units.h"

#include <math.h>
#include <stdio.h>

static const char *const TABLE = "wind-factors";

static double law(const char *year, char exposure, const char *what) {
    char row[24];
    snprintf(row, sizeof row, "Kz.%s.%c.%s", year, exposure, what);
    return weather_row(TABLE, row).value;
}

struct cited wind_height_factor(enum edition edition, char exposure, double height) {
    bool later = edition == EDITION_ASCE7_22;
    const char *year = later ? "7-22" : "7-16";
    char row[8];
    snprintf(row, sizeof row, "Kz.%c", exposure);
    struct cited Kz = weather_row(TABLE, row);
    snprintf(row, sizeof row, "Kz.%c.to", exposure);
    if (!(height > weather_row(TABLE, row).value * (1.0 + 1e-12)))
        return Kz;
    struct cited factor = weather_row(TABLE, later ? "Kz.7-22.factor" : "Kz.7-16.factor");
    double above =
        factor.value * pow(height / law(year, exposure, "zg"), 2.0 / law(year, exposure, "alpha"));
    /* the table is rounded: just above its end the law may lie a little below it */
    if (above > Kz.value)
        Kz = (struct cited){above, factor.source, factor.mark};
    return Kz;
}

struct wind_answer wind_pressure(const struct wind_question *question, struct working *working) {
    struct wind_answer answer;
    struct cited Kd = weather_row(TABLE, "Kd"), psf = weather_row(TABLE, "velocity");
    working_given(working, "V", "wind speed", question->speed, QUANTITY_SPEED);
    answer.Kz =
        working_cited(working, "Kz", "height and exposure",
                      wind_height_factor(question->edition, question->exposure, question->height),
                      QUANTITY_NUMBER);
    working_cited(working, "Kd", "the strongest wind seldom comes from the worst side", Kd,
                  QUANTITY_NUMBER);
    double mph = question->speed / WEATHER_MPH;
    answer.q = working_step(
        working, "q", "pressure of the wind",
        question->units == UNITS_SI ? "0.00061335 * Kz * Kd * V^2" : "0.00256 * Kz * Kd * V^2",
        psf.value * answer.Kz * Kd.value * mph * mph * WEATHER_PSF, QUANTITY_PRESSURE, psf.source);
    return answer;
}
