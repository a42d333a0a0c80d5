#include "report/words.h"

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

/* A row for each kind of check: its demand and its limit in `both`; where the two are a sum of
 * shares (a plain number, limit 1) only `alone` is said. sway: the demand is the factor that is
 * asked for, the limit the one it has. */
static const struct kind_words {
    const char *kind;
    int question;
    const char *both, *alone;
} KINDS[] = {
    {"sag", 0, "sags {}, may sag {}", "sag"},
    {"slat", 0, "sags {}, may sag {}", "bending of a slat"},
    {"bend", 1, "bent with {}, may be {}", "bending"},
    {"shear", 1, "sheared with {}, may be {}", "shear along the grain"},
    {"hang", 1, "at the screw {}, may be {}", "splitting at a screw near the end"},
    {"bearing", 1, "crushed with {}, may be {}", "crushing across the grain"},
    {"lean", 2, "moves {}, may move {}", "lean"},
    {"sway", 2, "must stand {} times its load, stands {}", "swaying over under its load"},
    {"screw", 3, "carries {}, may carry {}", "pull on the screws"},
    {"joint-moment", 3, "twisted with {}, may be {}", "twisting at the screws"},
    {"lift", 4, "lifts with {}, held down with {}", "lifting"},
    {"slide", 4, "pushed with {}, the ground holds {}", "sliding"},
    {"tip", 4, "overturned by {}, held by {}", "tipping over"},
    {"panel", 5, "takes {}, may take {}", "the sheet between its sticks"},
    {"panel-screw", 5, "pulled with {}, may be {}", "screws of the sheet"},
    {"panel-rack", 5, "racked with {}, may be {}", "the sheet as a brace"},
    {"hinge", 5, "pulled with {}, may be {}", "hinges"},
    {"carry", 6, "weighs {}, one person carries {}", "weight to carry"},
};

int question_count(void) {
    return QUESTION_COUNT;
}

const char *question_words(int question) {
    return QUESTIONS[question];
}

static const struct kind_words *words_of(const char *kind) {
    static const struct kind_words OTHER = {"", QUESTION_COUNT - 1, "is {}, may be {}", ""};
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
        return "spans {}, may span {}";
    if (strcmp(check->kind, "slat") == 0 && !length)
        return "bent with {}, may be {}";
    return words_of(check->kind)->both;
}

const char *subject_in_words(const struct check *check) {
    const char *alone = words_of(check->kind)->alone;
    return check->governs[0] ? check->governs : alone[0] ? alone : check->kind;
}

/* `words` with its two {} filled in; only up to the comma where there is no limit. */
static const char *filled(struct arena *arena, const char *words, const char *demand,
                          const char *limit) {
    size_t first = strcspn(words, "{"), between = strcspn(words + first + 2, "{");
    const char *rest = words + first + 2;
    if (!limit)
        between = strcspn(rest, ",");
    return arena_print(arena, "%.*s%s%.*s%s", (int)first, words, demand, (int)between, rest,
                       limit ? arena_print(arena, "%s%s", limit, rest + between + 2) : "");
}

const char *numbers_in_words(struct arena *arena, const struct check *check,
                             enum unit_system units) {
    bool share = check->quantity == QUANTITY_NUMBER && (check->limit == 1.0 || isnan(check->limit));
    if (!isfinite(check->demand) || share)
        return subject_in_words(check);
    const char *demand = quantity_print(arena, check->demand, check->quantity, units);
    const char *limit = isnan(check->limit) ? NULL
                        : isinf(check->limit)
                            ? "any"
                            : quantity_print(arena, check->limit, check->quantity, units);
    const char *numbers = filled(arena, both_for(check), demand, limit);
    return check->governs[0] ? arena_print(arena, "%s (%s)", numbers, check->governs) : numbers;
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
