#include "report/margin_text.h"

#include "report/check_text.h"
#include "report/layout.h"
#include "units/decimal.h"

#include <math.h>
#include <string.h>

const char *const MARGIN_NAMES[MARGIN_COUNT] = {"trays", "snow", "wind"};

/* Never rounded up: two decimals of a factor. */
static const char *factor_down(struct arena *arena, double factor) {
    return decimal_fixed(arena, floor(100.0 * factor + 1e-7) / 100.0, 2);
}

/* "14 in of settled snow", whole inches or centimetres, rounded down. */
static const char *depth_in_words(struct arena *arena, double pressure, int kind,
                                  enum unit_system units) {
    double depth = pressure / (table_snow_density(kind).value * table_constant("gravity").value);
    double unit = units == UNITS_SI ? 0.01 : 0.0254;
    return arena_print(arena, "%s %s of %s snow",
                       decimal_fixed(arena, floor(depth / unit + 1e-7), 0),
                       units == UNITS_SI ? "cm" : "in", table_snow_name(kind));
}

const char *margin_amount(struct arena *arena, const struct margin_answer *answer,
                          enum margin_load load, double value) {
    if (load == MARGIN_TRAY)
        return arena_print(arena, "%s times", factor_down(arena, value));
    return quantity_print(arena, value, load == MARGIN_SNOW ? QUANTITY_LOAD : QUANTITY_SPEED,
                          answer->frame->units);
}

static const char *amount(struct arena *arena, const struct margin_answer *answer,
                          enum margin_load load) {
    const struct frame *frame = answer->frame;
    const struct site *site = &frame->site;
    double value = answer->loads[load].value;
    const char *alone = margin_amount(arena, answer, load, value);
    switch (load) {
    case MARGIN_TRAY:
        return arena_print(arena, "%s the trays as described", alone);
    case MARGIN_SNOW:
        if (site->snow_depth.given)
            return arena_print(arena, "%s lying on it",
                               depth_in_words(arena, value, site->snow_kind, frame->units));
        return arena_print(arena, "%s of snow on the ground, such as %s", alone,
                           depth_in_words(arena, value, table_snow_find("settled"), frame->units));
    default:
        return arena_print(arena, "%s%s", alone,
                           site->wind.given ? " as wind maps give it" : " in a real gust");
    }
}

static const char *described_amount(struct arena *arena, const struct margin_answer *answer,
                                    enum margin_load load) {
    double described = answer->loads[load].as_described;
    if (load == MARGIN_TRAY || isnan(described))
        return "";
    return arena_print(arena, " (described: %s)", margin_amount(arena, answer, load, described));
}

const char *margin_sentence(struct arena *arena, const struct margin_answer *answer,
                            enum margin_load load) {
    const struct margin *margin = &answer->loads[load];
    switch (margin->reach) {
    case REACH_FOUND:
        return arena_print(arena, "stands %s%s; then the first to fail is %s [%s]",
                           amount(arena, answer, load), described_amount(arena, answer, load),
                           margin->first_words, margin->first);
    case REACH_NONE:
        return arena_print(arena, "fails without any of it: %s [%s]", margin->first_words,
                           margin->first);
    case REACH_BEYOND:
        return "nothing of it makes a check fail";
    case REACH_UNKNOWN:
        return "not known: the computation could not be trusted on the way";
    default:
        return load == MARGIN_TRAY ? "none described" : "none given under site: not checked";
    }
}

/* The least of what is left, said first. */
static const char *summary(struct arena *arena, const struct margin_answer *answer,
                           const char *title) {
    if (answer->trouble)
        return arena_print(arena, "%s: %s", title, answer->trouble);
    switch (answer->verdict) {
    case VERDICT_FOLDS:
        return arena_print(
            arena, "%s folds as described, so nothing is left; batten brace says why.", title);
    case VERDICT_FAILS:
        return arena_print(arena,
                           "%s does not hold as described. Each load is changed alone here, "
                           "the others as described.",
                           title);
    default:
        return arena_print(arena,
                           "%s: how much of each load until the first check fails, the others "
                           "as described.",
                           title);
    }
}

void margin_text(struct text *text, const struct margin_answer *answer) {
    struct arena *arena = text->arena;
    struct result said = {.frame = answer->frame};
    for (size_t k = 0; k < answer->cautions.count; k++)
        ARRAY_PUSH(arena, &said.cautions, answer->cautions.items[k]);
    if (answer->not_covered)
        ARRAY_PUSH(arena, &said.cautions,
                   arena_print(arena,
                               "%zu check%s without a published rule %s left out here: they may "
                               "fail first",
                               answer->not_covered, answer->not_covered == 1 ? "" : "s",
                               answer->not_covered == 1 ? "is" : "are"));
    paragraph(text, "", 0, summary(arena, answer, title_in_words(arena, &said)));
    if (answer->verdict != VERDICT_FOLDS && !answer->trouble) {
        text_add(text, "\n");
        for (int load = 0; load < MARGIN_COUNT; load++)
            paragraph(text, arena_print(arena, "  %-7s", MARGIN_NAMES[load]), 9,
                      margin_sentence(arena, answer, load));
    }
    cautions_text(text, &said);
}
