#include "frame/sections.h"
#include "frame/table_names.h"

#include <string.h>

#define PI 3.14159265358979323846
#define FASTEST 200.0 /* m/s: beyond any storm */

static void read_wind_speed(struct reader *reader, const struct node *map, const char *key,
                            struct optional *speed) {
    if (optional_quantity(reader, map, key, QUANTITY_SPEED, NOT_NEGATIVE, speed) &&
        !(speed->value <= FASTEST))
        trouble(reader, node_child(map, key), "faster than any storm; was another unit meant?");
}

/* The wind is given in one way: a map speed, a real gust or a word. */
static void read_wind(struct reader *reader, const struct node *map, struct site *site) {
    static const char *const ways[] = {"wind", "gust", "wind-words"};
    const struct node *first = NULL;
    for (size_t k = 0; k < sizeof ways / sizeof ways[0]; k++) {
        const struct node *node = node_child(map, ways[k]);
        if (node && first)
            trouble_with_key(reader, node, "'%s' and '%s' are both given; give one", first->key,
                             node->key);
        else if (node)
            first = node;
    }
    read_wind_speed(reader, map, "wind", &site->wind);
    read_wind_speed(reader, map, "gust", &site->gust);
    const struct node *word = node_child(map, "wind-words");
    if (word)
        site->wind_word = read_table_name(reader, word, NAMES_WIND_WORDS);
    const struct node *exposure = node_child(map, "exposure");
    if (exposure) {
        int letter = read_word(reader, exposure, "an exposure", KEYS("B", "C", "D"));
        site->exposure = letter < 0 ? '\0' : (char)('B' + letter);
    }
}

static void read_snow(struct reader *reader, const struct node *map, struct site *site) {
    const struct node *ground = node_child(map, "ground-snow");
    const struct node *depth = node_child(map, "snow-depth");
    const struct node *kind = node_child(map, "snow-kind");
    if (ground && depth)
        trouble_with_key(reader, depth, "'ground-snow' and 'snow-depth' are both given; give one");
    optional_quantity(reader, map, "ground-snow", QUANTITY_LOAD, NOT_NEGATIVE, &site->ground_snow);
    optional_quantity(reader, map, "snow-depth", QUANTITY_LENGTH, NOT_NEGATIVE, &site->snow_depth);
    if (kind)
        site->snow_kind = read_table_name(reader, kind, NAMES_SNOWS);
    if (depth && !kind)
        trouble_missing(reader, map, "snow-kind", "how the snow lies, such as settled");
    if (kind && !depth)
        trouble_with_key(reader, kind, "'snow-kind' goes with 'snow-depth', which is not given");
}

static void read_house(struct reader *reader, const struct node *house, struct site *site) {
    if (!is_map(reader, house, "{eave: 10 ft, depth: 20 ft, slope: 25 deg}"))
        return;
    only_keys(reader, house, KEYS("eave", "depth", "slope"));
    required_quantity(reader, house, "eave", QUANTITY_LENGTH, OVER_ZERO, &site->eave);
    required_quantity(reader, house, "depth", QUANTITY_LENGTH, OVER_ZERO, &site->depth);
    if (required_quantity(reader, house, "slope", QUANTITY_ANGLE, NOT_NEGATIVE,
                          &site->roof_slope) &&
        !(site->roof_slope < PI / 2))
        trouble(reader, node_child(house, "slope"), "a roof slopes less than 90 deg");
}

static void read_beside(struct reader *reader, const struct node *node, struct site *site) {
    static const char expected[] = "{house: {eave: .., depth: .., slope: ..}} or none";
    site->beside_given = true;
    if (node->kind == NODE_TEXT && strcmp(node->text, "none") == 0)
        return;
    if (!is_map(reader, node, expected))
        return;
    only_keys(reader, node, KEYS("house"));
    const struct node *house = node_child(node, "house");
    site->beside_house = house != NULL;
    if (house)
        read_house(reader, house, site);
    else
        trouble_missing(reader, node, "house", "{eave: .., depth: .., slope: ..}");
}

static void read_place_and_code(struct reader *reader, const struct node *map, struct site *site) {
    const struct node *place = node_child(map, "place");
    if (place)
        site->place = (enum site_place)(read_word(reader, place, "a place to stand",
                                                  KEYS("outdoors", "glazed", "shed", "indoors")) +
                                        1);
    const struct node *risk = node_child(map, "risk");
    if (risk)
        read_whole(reader, risk, 1, 4, &site->risk);
    const struct node *edition = node_child(map, "edition");
    if (edition)
        site->edition = read_word(reader, edition, "an edition", KEYS("asce7-16", "asce7-22")) == 1
                            ? EDITION_ASCE7_22
                            : EDITION_ASCE7_16;
    site->wet_service_given = optional_yes_no(reader, map, "wet-service", &site->wet_service);
    site->heated_given = optional_yes_no(reader, map, "heated", &site->heated);
}

void read_site(struct reader *reader, const struct node *section) {
    struct site *site = &reader->frame->site;
    if (!is_map(reader, section, "where it stands, such as {place: outdoors, ...}"))
        return;
    site->given = true;
    site->position = section->key_place;
    only_keys(reader, section,
              KEYS("place", "ground-snow", "snow-depth", "snow-kind", "wind", "gust", "wind-words",
                   "exposure", "wet-service", "heated", "risk", "edition", "beside", "push"));
    read_place_and_code(reader, section, site);
    read_snow(reader, section, site);
    read_wind(reader, section, site);
    const struct node *beside = node_child(section, "beside");
    if (beside)
        read_beside(reader, beside, site);
    optional_quantity(reader, section, "push", QUANTITY_WEIGHT, NOT_NEGATIVE, &site->push);
}
