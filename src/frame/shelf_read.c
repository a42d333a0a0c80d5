#include "frame/sections.h"
#include "frame/table_names.h"
#include "units/quote.h"

#include <string.h>

enum { MOST_SLATS = 10000, MOST_TRAYS = 10000, MOST_RAILS = 1000 };

static bool is_none(const struct node *node) {
    return node->kind == NODE_TEXT && strcmp(node->text, "none") == 0;
}

/* The one of several keys that a map has; NULL, and told, where it has none or more than one. */
static const struct node *only_one(struct reader *reader, const struct node *map,
                                   struct key_list keys, const char *expected) {
    const struct node *found = NULL;
    for (size_t k = 0; k < keys.count; k++) {
        const struct node *node = node_child(map, keys.names[k]);
        if (node && found) {
            trouble_with_key(reader, node, "'%s' and '%s' are both given; give one", found->key,
                             node->key);
            return NULL;
        }
        if (node)
            found = node;
    }
    if (!found)
        trouble(reader, map, "expected %s", expected);
    return found;
}

static void read_count_of(struct reader *reader, const struct node *map, int most, int *count) {
    const struct node *node = node_child(map, "count");
    if (node)
        read_whole(reader, node, 1, most, count);
    else
        trouble_missing(reader, map, "count", "how many there are");
}

static void refuse_count(struct reader *reader, const struct node *map) {
    const struct node *count = node_child(map, "count");
    if (count)
        trouble_with_key(reader, count, "nothing is counted here; leave 'count' out");
}

int read_sheet(struct reader *reader, const struct node *node) {
    return read_table_name(reader, node, NAMES_SHEETS);
}

void read_deck(struct reader *reader, const struct node *node, struct shelf *shelf) {
    static const char expected[] =
        "{slats: slat, count: 9}, {sheet: plywood-1/2in}, {weight: 1.5 psf} or none";
    if (is_none(node) || !is_map(reader, node, expected))
        return;
    only_keys(reader, node, KEYS("slats", "count", "sheet", "weight"));
    const struct node *what = only_one(reader, node, KEYS("slats", "sheet", "weight"), expected);
    if (!what)
        return;
    if (strcmp(what->key, "slats") == 0) {
        shelf->deck = DECK_SLATS;
        shelf->slat = read_name(reader, what, "stick", &reader->sticks);
        read_count_of(reader, node, MOST_SLATS, &shelf->slat_count);
        return;
    }
    refuse_count(reader, node);
    if (strcmp(what->key, "sheet") == 0) {
        shelf->deck = DECK_SHEET;
        shelf->sheet = read_sheet(reader, what);
    } else if (read_quantity(reader, what, QUANTITY_LOAD, NOT_NEGATIVE, &shelf->deck_weight)) {
        shelf->deck = DECK_WEIGHT;
    }
}

void read_trays(struct reader *reader, const struct node *node, struct shelf *shelf) {
    static const char expected[] =
        "{kind: tray-1020-wet, count: 4}, {load: 12 psf}, {weight: 56 lb} or none";
    if (is_none(node) || !is_map(reader, node, expected))
        return;
    only_keys(reader, node, KEYS("kind", "count", "load", "weight"));
    const struct node *what = only_one(reader, node, KEYS("kind", "load", "weight"), expected);
    if (!what)
        return;
    if (strcmp(what->key, "kind") == 0) {
        shelf->trays = TRAYS_KIND;
        shelf->tray = read_table_name(reader, what, NAMES_TRAYS);
        read_count_of(reader, node, MOST_TRAYS, &shelf->tray_count);
        return;
    }
    refuse_count(reader, node);
    bool load = strcmp(what->key, "load") == 0;
    if (read_quantity(reader, what, load ? QUANTITY_LOAD : QUANTITY_WEIGHT, NOT_NEGATIVE,
                      &shelf->tray_load))
        shelf->trays = load ? TRAYS_LOAD : TRAYS_WEIGHT;
}

void read_standing(struct reader *reader, const struct node *node, struct shelf *shelf) {
    shelf->short_standing =
        read_word(reader, node, "a way for trays to stand", KEYS("long", "short")) == 1;
}

static bool has_rail(const struct shelf *shelf, int rail) {
    for (size_t k = 0; k < shelf->rail_count; k++)
        if (shelf->rails[k] == rail)
            return true;
    return false;
}

static void read_rails(struct reader *reader, const struct node *node, struct shelf *shelf) {
    if (!is_list(reader, node, "two or more members, in order across the shelf"))
        return;
    if (node->count < 2)
        trouble(reader, node, "a shelf rests on two rails or more, not on %d", node->count);
    if (node->count > MOST_RAILS) {
        trouble(reader, node, "%d rails; at most %d are allowed", node->count, MOST_RAILS);
        return;
    }
    shelf->rails = ARENA_ARRAY(reader->arena, int, (size_t)node->count);
    for (const struct node *each = node->first; each && !told_enough(reader); each = each->next) {
        int rail = read_made_name(reader, each, "member", &reader->members);
        if (rail >= 0 && has_rail(shelf, rail)) {
            trouble(reader, each, "rail %s is given twice", quote_text(reader->arena, each->text));
            continue;
        }
        shelf->rails[shelf->rail_count++] = rail;
    }
}

void read_shelves(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "shelves by name"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next) {
        check_name(reader, entry);
        struct shelf shelf = {.name = entry->key,
                              .place = entry->key_place,
                              .slat = -1,
                              .sheet = -1,
                              .tray = -1,
                              .tray_share = 1.0};
        if (is_map(reader, entry, "a shelf such as {rails: [..], deck: .., trays: ..}")) {
            only_keys(reader, entry, KEYS("rails", "deck", "trays", "standing"));
            const struct node *rails = node_child(entry, "rails");
            const struct node *deck = node_child(entry, "deck");
            const struct node *trays = node_child(entry, "trays");
            const struct node *standing = node_child(entry, "standing");
            if (rails)
                read_rails(reader, rails, &shelf);
            else
                trouble_missing(reader, entry, "rails", "two or more members");
            if (deck)
                read_deck(reader, deck, &shelf);
            if (trays)
                read_trays(reader, trays, &shelf);
            if (standing)
                read_standing(reader, standing, &shelf);
        }
        ARRAY_PUSH(reader->arena, &reader->frame->shelves, shelf);
        name_index_add(reader->arena, &reader->shelves, entry->key);
    }
}
