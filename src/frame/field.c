#include "frame/reader.h"

#include "units/quote.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Far beyond any stick, load or strength: keeps squares and products finite. */
#define LARGEST 1e15

enum { LONGEST_NAME = 64 };

static const char *kind_found(const struct node *node) {
    if (node->kind == NODE_LIST)
        return "a list";
    if (node->kind == NODE_MAP)
        return "a group of keys";
    return *node->text ? "a single value" : "nothing";
}

static bool is_kind(struct reader *reader, const struct node *node, enum node_kind kind,
                    const char *expected) {
    if (node->kind == kind)
        return true;
    if (node->kind != NODE_BROKEN)
        trouble(reader, node, "found %s; expected %s", kind_found(node), expected);
    return false;
}

bool is_map(struct reader *reader, const struct node *node, const char *expected) {
    return is_kind(reader, node, NODE_MAP, expected);
}

bool is_list(struct reader *reader, const struct node *node, const char *expected) {
    return is_kind(reader, node, NODE_LIST, expected);
}

static bool among(const char *text, struct key_list keys) {
    for (size_t k = 0; k < keys.count; k++)
        if (strcmp(text, keys.names[k]) == 0)
            return true;
    return false;
}

void only_keys(struct reader *reader, const struct node *map, struct key_list keys) {
    for (const struct node *child = map->first; child && !told_enough(reader); child = child->next)
        if (!among(child->key, keys))
            trouble_with_key(reader, child, "unknown key %s%s",
                             quote_text(reader->arena, child->key),
                             hint(reader, child->key, "known:", keys.names, keys.count));
}

const char *wrong_name(struct reader *reader, const char *name) {
    static const char allowed[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                  "0123456789-_.";
    size_t length = strlen(name);
    if (length == 0)
        return "a name is missing";
    if (length > LONGEST_NAME)
        return arena_print(reader->arena, "a name of %zu bytes; at most %d are allowed", length,
                           LONGEST_NAME);
    if (strspn(name, allowed) != length)
        return arena_print(reader->arena,
                           "%s is no name; names are made of letters, digits, '-', '_' and '.'",
                           quote_text(reader->arena, name));
    return NULL;
}

void check_name(struct reader *reader, const struct node *entry) {
    const char *wrong = wrong_name(reader, entry->key);
    if (wrong)
        trouble_with_key(reader, entry, "%s", wrong);
}

const char *read_text(struct reader *reader, const struct node *node, const char *expected) {
    if (!is_kind(reader, node, NODE_TEXT, expected))
        return NULL;
    if (*node->text)
        return node->text;
    trouble(reader, node, "nothing is given; expected %s", expected);
    return NULL;
}

bool read_quantity(struct reader *reader, const struct node *node, enum quantity kind,
                   enum bound bound, double *value) {
    enum unit_system units = reader->frame->units;
    const char *expected = arena_print(reader->arena, "%s such as %s", quantity_name(kind),
                                       quantity_example(kind, units));
    const char *text = read_text(reader, node, expected);
    if (!text)
        return false;
    double si = 0;
    const char *why = NULL;
    if (!quantity_read(reader->arena, text, kind, units, &si, &why)) {
        trouble(reader, node, "%s", why);
        return false;
    }
    const char *wrong = NULL;
    if (!(fabs(si) <= LARGEST))
        wrong = "is too large to be meant";
    else if (bound == OVER_ZERO && !(si > 0))
        wrong = "must be more than 0";
    else if (bound == NOT_NEGATIVE && !(si >= 0))
        wrong = "must not be under 0";
    if (wrong) {
        trouble(reader, node, "%s %s", quote_text(reader->arena, text), wrong);
        return false;
    }
    *value = si;
    return true;
}

bool read_quantities(struct reader *reader, const struct node *node, enum quantity kind, int count,
                     const char *expected, double *values) {
    if (!is_list(reader, node, expected))
        return false;
    if (node->count != count) {
        trouble(reader, node, "a list of %d; expected %s", node->count, expected);
        return false;
    }
    bool good = true;
    int k = 0;
    for (const struct node *each = node->first; each; each = each->next)
        good &= read_quantity(reader, each, kind, ANY_SIZE, &values[k++]);
    return good;
}

bool read_whole(struct reader *reader, const struct node *node, int least, int most, int *value) {
    const char *expected = arena_print(reader->arena, "a whole number from %d to %d", least, most);
    const char *text = read_text(reader, node, expected);
    if (!text)
        return false;
    size_t length = strlen(text);
    long number = length < 10 ? strtol(text, NULL, 10) : -1;
    if (strspn(text, "0123456789") != length || number < least || number > most) {
        trouble(reader, node, "%s: expected %s", quote_text(reader->arena, text), expected);
        return false;
    }
    *value = (int)number;
    return true;
}

int read_word(struct reader *reader, const struct node *node, const char *what,
              struct key_list words) {
    const char *text = read_text(reader, node, what);
    if (!text)
        return -1;
    for (size_t k = 0; k < words.count; k++)
        if (strcmp(text, words.names[k]) == 0)
            return (int)k;
    trouble(reader, node, "%s is not %s%s", quote_text(reader->arena, text), what,
            hint(reader, text, "use one of", words.names, words.count));
    return -1;
}

bool read_yes_no(struct reader *reader, const struct node *node, bool *value) {
    static const char *const words[] = {"no", "yes", "false", "true"};
    const char *text = read_text(reader, node, "yes or no");
    if (!text)
        return false;
    for (int k = 0; k < 4; k++) {
        if (strcmp(text, words[k]) == 0) {
            *value = k % 2 == 1;
            return true;
        }
    }
    trouble(reader, node, "%s: expected yes or no", quote_text(reader->arena, text));
    return false;
}

int read_name(struct reader *reader, const struct node *node, const char *what,
              const struct name_index *names) {
    const char *text =
        read_text(reader, node, arena_print(reader->arena, "the name of a %s", what));
    if (!text)
        return -1;
    int number = name_index_find(names, text);
    if (number < 0)
        trouble(reader, node, "no %s named %s%s", what, quote_text(reader->arena, text),
                hint(reader, text, "known:", names->items, names->count));
    return number;
}

int read_made_name(struct reader *reader, const struct node *node, const char *what,
                   const struct name_index *names) {
    if (reader->made_names && node->kind == NODE_TEXT && *node->text)
        return name_index_find(names, node->text);
    return read_name(reader, node, what, names);
}

bool optional_quantity(struct reader *reader, const struct node *map, const char *key,
                       enum quantity kind, enum bound bound, struct optional *value) {
    const struct node *node = node_child(map, key);
    if (!node || !read_quantity(reader, node, kind, bound, &value->value))
        return false;
    value->given = true;
    return true;
}

bool required_quantity(struct reader *reader, const struct node *map, const char *key,
                       enum quantity kind, enum bound bound, double *value) {
    const struct node *node = node_child(map, key);
    if (node)
        return read_quantity(reader, node, kind, bound, value);
    trouble_missing(reader, map, key,
                    arena_print(reader->arena, "%s such as %s", quantity_name(kind),
                                quantity_example(kind, reader->frame->units)));
    return false;
}

bool optional_yes_no(struct reader *reader, const struct node *map, const char *key, bool *value) {
    const struct node *node = node_child(map, key);
    return node && read_yes_no(reader, node, value);
}

void read_stance(struct reader *reader, const struct node *map, enum stands *stands,
                 enum faces *faces, struct optional *turn) {
    const struct node *stands_node = node_child(map, "stands");
    if (stands_node) {
        int word = read_word(reader, stands_node, "a way to stand", KEYS("on-edge", "flat"));
        *stands = word == 0 ? STANDS_ON_EDGE : word == 1 ? STANDS_FLAT : STANDS_NOT_SAID;
    }
    const struct node *faces_node = node_child(map, "faces");
    if (faces_node) {
        int word = read_word(reader, faces_node, "a way to face", KEYS("front", "side"));
        *faces = word == 0 ? FACES_FRONT : word == 1 ? FACES_SIDE : FACES_NOT_SAID;
    }
    optional_quantity(reader, map, "turn", QUANTITY_ANGLE, ANY_SIZE, turn);
}
