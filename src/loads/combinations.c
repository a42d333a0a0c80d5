#include "loads/combinations.h"

#include "base/text.h"
#include "loads/weather.h"
#include "units/decimal.h"

#include <string.h>

/* Combinations as they are made. */
struct making {
    struct arena *arena;
    struct loads *loads;
    bool trays;
    struct {
        struct load_combination *items;
        size_t count, capacity;
    } list;
};

static int find_case(const struct loads *loads, int frame_case) {
    for (size_t c = 0; c < loads->case_count; c++)
        if (loads->cases[c].frame_case == frame_case)
            return (int)c;
    return -1;
}

/* The next case of that name from `after` on, -1 at the end: the case itself, then its variants. */
static int next_variant(const struct loads *loads, int frame_case, int after) {
    for (size_t c = (size_t)(after + 1); c < loads->case_count; c++)
        if (loads->cases[c].frame_case == frame_case)
            return (int)c;
    return -1;
}

/* One entry of the file, with `variant` in place of the case that it stands for (-1: none). */
static void add_entry(struct making *making, const struct combination_entry *entry, int variant,
                      int instead_of) {
    struct loads *loads = making->loads;
    struct load_combination made = {
        .name = entry->name, .duration = entry->duration, .short_trays = 1.0};
    made.terms = ARENA_ARRAY(making->arena, struct combination_term, entry->part_count);
    for (size_t p = 0; p < entry->part_count; p++) {
        int load_case = find_case(loads, entry->parts[p].load_case);
        if (load_case == instead_of)
            load_case = variant;
        if (load_case >= 0)
            made.terms[made.term_count++] =
                (struct combination_term){load_case, entry->parts[p].factor};
    }
    if (variant >= 0)
        made.name = arena_print(making->arena, "%s, %s", entry->name, loads->cases[variant].name);
    if (made.term_count)
        ARRAY_PUSH(making->arena, &making->list, made);
}

/* The combinations of the file; where one names snow or wind, each variant of it once more. */
static void from_file(struct making *making) {
    struct loads *loads = making->loads;
    const struct frame *frame = loads->model->frame;
    for (size_t k = 0; k < frame->combinations.count; k++) {
        const struct combination_entry *entry = &frame->combinations.items[k];
        add_entry(making, entry, -1, -1);
        for (size_t p = 0; p < entry->part_count; p++) {
            int named = entry->parts[p].load_case, first = find_case(loads, named);
            if (first < 0)
                ARRAY_PUSH(making->arena, &loads->cautions,
                           arena_print(making->arena,
                                       "combination %s names the case %s, in which nothing acts "
                                       "here",
                                       entry->name, frame->cases.items[named]));
            for (int c = first; c >= 0;) {
                c = next_variant(loads, named, c);
                if (c >= 0)
                    add_entry(making, entry, c, first);
            }
        }
    }
}

/* A term of a built-in combination; a case that is not there is left out. */
static void term(const struct making *making, struct load_combination *made, int load_case,
                 double factor) {
    if (load_case < 0)
        return;
    made->terms[made->term_count++] = (struct combination_term){load_case, factor};
    int frame_case = making->loads->cases[load_case].frame_case;
    made->out_of_plumb |= frame_case == CASE_TRAY || frame_case == CASE_SNOW;
}

/* What acts together. -1: without. */
struct together {
    double self;
    bool trays;
    int snow, wind, push;
    double snow_factor, wind_factor, push_factor;
    enum duration duration;
};
static const struct together NOTHING = {.self = 1.0, .snow = -1, .wind = -1, .push = -1};

/* Trays that stand shortly take 0.75 beside snow or wind; a tray case of such trays alone takes it
 * as its factor. */
static double tray_factor(const struct making *making, const struct together *what,
                          double *short_trays) {
    const struct loads *loads = making->loads;
    bool beside = what->snow >= 0 || what->wind >= 0;
    double share = beside ? table_constant("companion-share").value : 1.0;
    bool alone = !loads->sets[SET_TRAY_LONG].present;
    *short_trays = alone ? 1.0 : share;
    return alone ? share : 1.0;
}

/* At least one of the cases that it names must be there. */
static void add(struct making *making, const char *name, const struct together *what) {
    const struct loads *loads = making->loads;
    struct load_combination made = {.name = name, .duration = what->duration, .short_trays = 1.0};
    made.terms = ARENA_ARRAY(making->arena, struct combination_term, 5);
    term(making, &made, find_case(loads, CASE_SELF), what->self);
    if (what->trays)
        term(making, &made, find_case(loads, CASE_TRAY),
             tray_factor(making, what, &made.short_trays));
    term(making, &made, what->snow, what->snow_factor);
    term(making, &made, what->wind, what->wind_factor);
    term(making, &made, what->push, what->push_factor);
    ARRAY_PUSH(making->arena, &making->list, made);
}

/* "0.6S/drift": factor, letter and variant. */
static const char *part(struct arena *arena, double factor, const char *letter,
                        const char *variant) {
    return arena_print(arena, "%s%s%s%s",
                       factor == 1.0 ? "" : decimal_significant(arena, factor, 3), letter,
                       *variant ? "/" : "", variant);
}

const char *combination_wind_part(struct arena *arena, const struct load_case *wind,
                                  double factor) {
    static const char *const FROM[] = {"W from left", "W from right", "W from front",
                                       "W from back"};
    return part(arena, factor, FROM[wind->frame_case - CASE_WIND_LEFT], wind->variant);
}

static const char *dead(const struct making *making, bool trays) {
    return trays && making->trays ? "D+T" : "D";
}

/* D+S, D+T+S, for each way in which the snow lies. */
static void snows(struct making *making) {
    const struct loads *loads = making->loads;
    double share = loads->weather->snow.share.value;
    for (int snow = find_case(loads, CASE_SNOW); snow >= 0;
         snow = next_variant(loads, CASE_SNOW, snow))
        for (int trays = 0; trays <= (making->trays ? 1 : 0); trays++) {
            struct together what = NOTHING;
            what.trays = trays;
            what.snow = snow;
            what.snow_factor = share;
            what.duration = DURATION_TWO_MONTHS;
            add(making,
                arena_print(making->arena, "%s+%s", dead(making, trays),
                            part(making->arena, share, "S", loads->cases[snow].variant)),
                &what);
        }
}

/* D+T+0.75S+0.45W: shut panels only, nobody props a lid open under snow. */
static void snow_with_wind(struct making *making, struct together what, double snow_share) {
    const struct loads *loads = making->loads;
    double companion = table_constant("companion-share").value;
    const struct load_case *from = &loads->cases[what.wind];
    if (strncmp(from->variant, "open", strlen("open")) == 0)
        return;
    what.wind_factor *= companion;
    what.snow_factor = companion * snow_share;
    for (what.snow = find_case(loads, CASE_SNOW); what.snow >= 0;
         what.snow = next_variant(loads, CASE_SNOW, what.snow))
        add(making,
            arena_print(making->arena, "%s+%s+%s", dead(making, true),
                        part(making->arena, what.snow_factor, "S", loads->cases[what.snow].variant),
                        combination_wind_part(making->arena, from, what.wind_factor)),
            &what);
}

static void winds(struct making *making) {
    const struct loads *loads = making->loads;
    double share = loads->weather->wind.given ? loads->weather->wind.share.value
                                              : table_constant("map-wind-share").value;
    double least = table_constant("least-dead-share").value;
    for (int side = CASE_WIND_LEFT; side <= CASE_WIND_BACK; side++)
        for (int wind = find_case(loads, side); wind >= 0; wind = next_variant(loads, side, wind)) {
            struct together what = NOTHING;
            what.trays = true;
            what.wind = wind;
            what.wind_factor = share;
            what.duration = DURATION_TEN_MINUTES;
            add(making,
                arena_print(making->arena, "%s+%s", dead(making, true),
                            combination_wind_part(making->arena, &loads->cases[wind], share)),
                &what);
            snow_with_wind(making, what, loads->weather->snow.share.value);
            what.trays = false;
            what.self = least;
            add(making,
                arena_print(making->arena, "%s+%s", part(making->arena, least, "D", ""),
                            combination_wind_part(making->arena, &loads->cases[wind], share)),
                &what);
        }
}

/* Somebody leans on it, both ways along each axis, with the shelves empty and full. */
static void pushes(struct making *making) {
    static const struct {
        const char *empty, *full;
        int push;
        double sign;
    } WAYS[] = {{"D+push right", "D+T+push right", CASE_PUSH_X, 1.0},
                {"D+push left", "D+T+push left", CASE_PUSH_X, -1.0},
                {"D+push back", "D+T+push back", CASE_PUSH_Y, 1.0},
                {"D+push front", "D+T+push front", CASE_PUSH_Y, -1.0}};
    for (size_t k = 0; k < sizeof WAYS / sizeof *WAYS; k++) {
        struct together what = NOTHING;
        what.push = find_case(making->loads, WAYS[k].push);
        what.push_factor = WAYS[k].sign;
        what.duration = DURATION_SEVEN_DAYS;
        if (what.push < 0)
            continue;
        add(making, WAYS[k].empty, &what);
        what.trays = true;
        if (making->trays)
            add(making, WAYS[k].full, &what);
    }
}

void combinations_build(struct arena *arena, struct loads *loads) {
    struct making making = {
        .arena = arena, .loads = loads, .trays = find_case(loads, CASE_TRAY) >= 0};
    struct together what = NOTHING;
    if (loads->model->frame->has_combine) {
        from_file(&making);
    } else {
        what.duration = DURATION_PERMANENT;
        if (find_case(loads, CASE_SELF) >= 0)
            add(&making, "D", &what);
        what.duration = DURATION_TEN_YEARS;
        what.trays = true;
        if (making.trays)
            add(&making, "D+T", &what);
        snows(&making);
        winds(&making);
        pushes(&making);
    }
    loads->combinations = making.list.items;
    loads->combination_count = making.list.count;
}
