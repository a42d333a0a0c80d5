#include "weather/snow.h"

#include "weather/units.h"

#include <math.h>
#include <stdio.h>

static const char *const EXPOSURES[] = {/* ORDER SNOW */ [SNOW_FULLY_EXPOSED] = "fully-exposed",
                                        [SNOW_PARTIAL] = "partial",
                                        [SNOW_SHELTERED] = "sheltered"};
static const char *const THERMALS[] = {/* ORDER SNOW */ [SNOW_HEATED] = "heated",
                                       [SNOW_JUST_ABOVE_FREEZING] = "just-above-freezing",
                                       [SNOW_UNHEATED] = "unheated",
                                       [SNOW_GREENHOUSE] = "greenhouse"};

const char *snow_exposure_name(enum snow_exposure exposure) {
    return EXPOSURES[exposure];
}

const char *snow_thermal_name(enum snow_thermal thermal) {
    return THERMALS[thermal];
}

static struct cited exposure_factor(const struct snow_question *question) {
    char row[40];
    snprintf(row, sizeof row, "Ce.%c.%s", question->terrain, EXPOSURES[question->exposure]);
    struct cited Ce = weather_row("snow-factors", row);
    struct cited least = weather_row("snow-factors", "low-lid-exposure");
    return question->low && Ce.value < least.value ? least : Ce;
}

static struct cited thermal_factor(const struct snow_question *question) {
    char row[40];
    snprintf(row, sizeof row, "Ct.%s.%s", question->edition == EDITION_ASCE7_22 ? "7-22" : "7-16",
             THERMALS[question->thermal]);
    return weather_row("snow-factors", row);
}

static struct cited importance(const struct snow_question *question) {
    char row[8];
    if (question->edition == EDITION_ASCE7_22)
        return (struct cited){1.0, "ASCE 7-22: the map holds the risk", MARK_READ};
    snprintf(row, sizeof row, "Is.%d", question->risk);
    return weather_row("snow-factors", row);
}

/* Does the kinder curve of slippery roofs hold? A warm one only where the roof is well insulated,
 * which glass and plastic over a heated house are not; 7-22 has none for warm roofs. */
static bool slides(const struct snow_question *question, double Ct) {
    if (!question->slippery || question->thermal == SNOW_GREENHOUSE)
        return false;
    return question->edition == EDITION_ASCE7_16 || Ct >= 1.1;
}

static double slope_factor(const struct snow_question *question, double Ct,
                           struct working *working) {
    const char *band = Ct >= 1.2 ? "cold" : Ct >= 1.1 ? "cool" : "warm";
    char row[24];
    snprintf(row, sizeof row, "Cs.%s.%s", band, slides(question, Ct) ? "slippery" : "other");
    struct cited full = weather_row("snow-factors", row),
                 none = weather_row("snow-factors", "Cs.none");
    working_given(working, "t", "slope of the roof", question->slope, QUANTITY_ANGLE);
    working_cited(working, "t1", "up to this slope all of the snow stays", full, QUANTITY_ANGLE);
    working_cited(working, "t2", "from this slope none stays", none, QUANTITY_ANGLE);
    double share = (none.value - question->slope) / (none.value - full.value);
    return working_step(working, "Cs", "slope", "max(0, min(1, (t2 - t) / (t2 - t1)))",
                        fmax(0.0, fmin(1.0, share)), QUANTITY_NUMBER, "ASCE 7 Figure 7.4-1");
}

struct cited snow_minimum_ground(enum edition edition, int risk) {
    char row[16] = "minimum.7-16";
    if (edition == EDITION_ASCE7_22)
        snprintf(row, sizeof row, "minimum.7-22.%d", risk);
    return weather_row("snow-factors", row);
}

/* Nearly at the limit counts as under it: a slope typed as 15 deg is not flatter than 15 deg. */
static double minimum(const struct snow_question *question, struct working *working) {
    if (!(question->slope < weather_row("snow-factors", "minimum.slope").value * (1.0 - 1e-12)))
        return NAN;
    struct cited most = snow_minimum_ground(question->edition, question->risk);
    working_cited(working, "pmm", "most that the minimum for low slopes asks for", most,
                  QUANTITY_PRESSURE);
    return working_step(
        working, "pm", "minimum for slopes under 15 deg, a case of its own in place of ps",
        "Is * min(pg, pmm)", importance(question).value * fmin(question->ground, most.value),
        QUANTITY_PRESSURE, "ASCE 7 section 7.3.4");
}

struct roof_snow snow_on_roof(const struct snow_question *question, struct working *working) {
    struct roof_snow roof;
    working_given(working, "pg", "ground snow", question->ground, QUANTITY_PRESSURE);
    double share = working_cited(
        working, "kg",
        question->low ? "share of the ground snow, roof under 3 ft high"
                      : "share of the ground snow that lies on a flat roof",
        weather_row("snow-factors", question->low ? "low-lid-share" : "flat-roof-share"),
        QUANTITY_NUMBER);
    roof.Ce = working_cited(working, "Ce", "exposure to the wind", exposure_factor(question),
                            QUANTITY_NUMBER);
    roof.Ct = working_cited(working, "Ct", "warmth of the roof", thermal_factor(question),
                            QUANTITY_NUMBER);
    roof.Is = working_cited(working, "Is", "importance by risk category", importance(question),
                            QUANTITY_NUMBER);
    roof.flat = working_step(working, "pf", "snow on a flat roof", "kg * Ce * Ct * Is * pg",
                             share * roof.Ce * roof.Ct * roof.Is * question->ground,
                             QUANTITY_PRESSURE, "ASCE 7 section 7.3");
    roof.Cs = slope_factor(question, roof.Ct, working);
    roof.sloped = working_step(working, "ps", "snow on the slope, on its level area", "Cs * pf",
                               roof.Cs * roof.flat, QUANTITY_PRESSURE, "ASCE 7 section 7.4");
    roof.minimum = minimum(question, working);
    return roof;
}

double snow_rain(const struct snow_question *question, double width) {
    bool later = question->edition == EDITION_ASCE7_22;
    double most = later ? snow_minimum_ground(question->edition, question->risk).value
                        : weather_row("snow-factors", "rain.7-16.ground-most").value;
    double flatter = WEATHER_DEGREE * width / weather_row("snow-factors", "rain.width").value;
    if (!(question->ground > 0.0 && question->ground <= most * (1.0 + 1e-12)) ||
        !(question->slope < flatter))
        return 0.0;
    return weather_row("snow-factors", later ? "rain.7-22" : "rain.7-16").value;
}
