#include "report/words.h"

#include "base/text.h"
#include "units/decimal.h"

#include <math.h>
#include <string.h>

const char SAFETY_LINE[] =
    "A sanity check for sound wood and careful work, not an engineer's approval: nobody climbs on "
    "it or stands under a doubtful one, and local codes and licensed practice decide.";

static const char *const QUESTIONS[] = {
    "Do the shelves hold?", "Do the sticks hold?", "Does it lean?",      "Do the screws hold?",
    "Does it stay put?",    "Do the covers hold?", "Can it be carried?", "What else?",
};
enum { QUESTION_COUNT = sizeof QUESTIONS / sizeof *QUESTIONS };

/* A row for each kind of check: its demand {} and its limit {may} in `both`, of which the part
 * before the comma stands alone where there is no limit; where the two are a sum of shares (a plain
 * number, limit 1) only `alone` is said. sway: the demand is the factor that is asked for, the
 * limit the one it has. */
static const struct kind_words {
    const char *kind;
    int question;
    const char *both, *alone;
} KINDS[] = {
    {"sag", 0, "sags {}, may sag {may}", "sag"},
    {"slat", 0, "sags {}, may sag {may}", "bending of a slat"},
    {"bend", 1, "bent with {}, may be {may}", "bending"},
    {"shear", 1, "sheared with {}, may be {may}", "shear along the grain"},
    {"hang", 1, "at the screw {}, may be {may}", "splitting at a screw near the end"},
    {"bearing", 1, "crushed with {}, may be {may}", "crushing across the grain"},
    {"lean", 2, "moves {}, may move {may}", "lean"},
    {"sway", 2, "stands until {may} times this load, must stand {} times",
     "swaying over under its load"},
    {"screw", 3, "carries {}, may carry {may}", "load on the screws"},
    {"joint-moment", 3, "twisted with {}, may be {may}", "twisting at the screws"},
    {"lift", 4, "lifts with {}, held down with {may}", "lifting"},
    {"slide", 4, "pushed with {}, the ground holds {may}", "sliding"},
    {"tip", 4, "overturned by {}, held by {may}", "tipping over"},
    {"panel", 5, "takes {}, may take {may}", "the sheet between its sticks"},
    {"panel-screw", 5, "pulled with {}, may be {may}", "screws of the sheet"},
    {"panel-rack", 5, "racked with {}, may be {may}", "the sheet as a brace"},
    {"hinge", 5, "pulled with {}, may be {may}", "hinges"},
    {"carry", 6, "weighs {}, one person carries {may}", "weight to carry"},
};

int question_count(void) {
    return QUESTION_COUNT;
}

const char *question_words(int question) {
    return QUESTIONS[question];
}

static const struct kind_words *words_of(const char *kind) {
    static const struct kind_words OTHER = {"", QUESTION_COUNT - 1, "is {}, may be {may}", ""};
    for (size_t k = 0; k < sizeof KINDS / sizeof *KINDS; k++)
        if (strcmp(KINDS[k].kind, kind) == 0)
            return &KINDS[k];
    return &OTHER;
}

int question_of(const char *kind) {
    return words_of(kind)->question;
}

/* The same kind of check may compare other things: a sheet's span and not its load, a slat's stress
 * and not its sag. */
static const char *both_for(const struct check *check) {
    bool length = check->quantity == QUANTITY_LENGTH;
    if (strcmp(check->kind, "panel") == 0 && length)
        return "spans {}, may span {may}";
    if (strcmp(check->kind, "slat") == 0 && !length)
        return "bent with {}, may be {may}";
    if (strcmp(check->kind, "sway") == 0 && isinf(check->limit))
        return "no load of this kind sways it over";
    return words_of(check->kind)->both;
}

/* A stick is not always bent; here the words say what decides, too. NULL for everything else. */
static const char *governed(const struct check *check) {
    static const struct {
        const char *governs, *both;
    } rows[] = {
        {"push along the stick", "pressed endways with {}, may be {may}"},
        {"pull along the stick", "pulled endways with {}, may be {may}"},
        {"too slim for a post", "slimmer than allowed: {} times its thickness, may be {may}"},
        {"too slim to stand on edge", "too slim to stand on edge: slimness {}, may be {may}"}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++)
        if (strcmp(check->kind, "bend") == 0 && strcmp(rows[k].governs, check->governs) == 0)
            return rows[k].both;
    return NULL;
}

const char *subject_in_words(const struct check *check) {
    const char *alone = words_of(check->kind)->alone;
    return check->governs[0] ? check->governs : alone[0] ? alone : check->kind;
}

/* `words` with the demand and the limit filled in; only up to the comma where there is no limit. */
static const char *filled(struct arena *arena, const char *words, const char *demand,
                          const char *limit) {
    struct text text = text_new(arena);
    while (*words && (limit || *words != ',')) {
        size_t plain = strcspn(words, limit ? "{" : "{,");
        text_bytes(&text, words, plain);
        words += plain;
        if (*words != '{')
            continue;
        text_add(&text, words[1] == '}' ? demand : limit ? limit : "");
        words += strcspn(words, "}") + 1;
    }
    return text_string(&text);
}

bool prints_as_nothing(const char *printed) {
    size_t number = strcspn(printed, " ");
    return strcspn(printed, "123456789?") >= number;
}

/* A demand that is there but rounds away must not read as none. Slimness has no decimals. */
static const char *demand_in_words(struct arena *arena, const struct check *check,
                                   enum unit_system units) {
    if (check->quantity == QUANTITY_NUMBER && fabs(check->demand) > 10.0)
        return decimal_significant(arena, check->demand, 3);
    const char *printed = quantity_print(arena, check->demand, check->quantity, units);
    return check->demand > 0.0 && prints_as_nothing(printed) ? "next to nothing" : printed;
}

/* NULL where there is none. What stands in the way of swaying over is never rounded up. */
static const char *limit_in_words(struct arena *arena, const struct check *check,
                                  enum unit_system units) {
    if (isnan(check->limit))
        return NULL;
    if (isinf(check->limit))
        return "any";
    if (strcmp(check->kind, "sway") == 0)
        return decimal_fixed(arena, floor(100.0 * check->limit) / 100.0, 2);
    return quantity_print(arena, check->limit, check->quantity, units);
}

const char *numbers_in_words(struct arena *arena, const struct check *check,
                             enum unit_system units) {
    bool sway = strcmp(check->kind, "sway") == 0;
    bool share = check->quantity == QUANTITY_NUMBER &&
                 (isnan(check->limit) || (check->limit == 1.0 && !sway));
    if (!isfinite(check->demand) || share)
        return subject_in_words(check);
    const char *special = governed(check);
    const char *numbers =
        filled(arena, special ? special : both_for(check), demand_in_words(arena, check, units),
               limit_in_words(arena, check, units));
    if (!check->governs[0] || special)
        return numbers;
    return arena_print(arena, "%s (%s)", numbers, check->governs);
}

const char *ratio_in_words(struct arena *arena, const struct check *check) {
    double ratio = check->ratio;
    if (check->verdict == VERDICT_NOT_COVERED)
        return "";
    if (ratio <= 1.0)
        return arena_print(arena, "%s %%", decimal_fixed(arena, 100.0 * ratio, 0));
    if (ratio < 1.005)
        return "just over";
    if (ratio < 1000.0)
        return arena_print(arena, "%s times", decimal_fixed(arena, ratio, ratio < 9.995 ? 2 : 0));
    return "far over"; /* nothing holds it, or the number is no number */
}

const char *share_of_limit(struct arena *arena, const struct check *check) {
    const char *of = check->ratio <= 1.0 ? "of its limit" : "its limit";
    return arena_print(arena, "%s %s", ratio_in_words(arena, check), of);
}

const char *verdict_in_words(enum verdict verdict) {
    return verdict == VERDICT_NOT_COVERED ? "no rule" : verdict_name(verdict);
}
