#include "frame/fastener_size.h"
#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

enum { MOST_FASTENERS = 100, COUNT_NOT_SAID = 2 };

/* ORDER connection_type */
static const char *const type_names[] = {"pinned", "rigid", "springs", "screwed-lap",
                                         "screwed-butt"};
static const struct key_list types = {type_names, sizeof type_names / sizeof type_names[0]};

static void read_fastener(struct reader *reader, const struct node *entry,
                          struct connection *connection) {
    static const struct {
        const char *key;
        enum fastener_kind kind;
        bool (*read)(struct reader *reader, const struct node *node, double *diameter);
    } fasteners[] = {{"screw", FASTENER_SCREW, read_screw_size},
                     {"nail", FASTENER_NAIL, read_nail_size},
                     {"lag", FASTENER_LAG, read_lag_or_bolt_size},
                     {"bolt", FASTENER_BOLT, read_lag_or_bolt_size}};
    const char *first = NULL;
    for (size_t k = 0; k < sizeof fasteners / sizeof fasteners[0]; k++) {
        const struct node *node = node_child(entry, fasteners[k].key);
        if (!node)
            continue;
        if (first) {
            trouble_with_key(reader, node, "'%s' and '%s' are both given; give one", first,
                             fasteners[k].key);
            continue;
        }
        first = fasteners[k].key;
        connection->fastener = fasteners[k].kind;
        if (fasteners[k].read(reader, node, &connection->diameter))
            connection->size_name = node->text;
    }
    if (!first)
        trouble_missing(reader, entry, "screw", "'screw: 8', or nail, lag or bolt");
}

static void read_screwed(struct reader *reader, const struct node *entry,
                         struct connection *connection) {
    only_keys(reader, entry,
              KEYS("type", "screw", "nail", "lag", "bolt", "length", "count", "spacing"));
    read_fastener(reader, entry, connection);
    optional_quantity(reader, entry, "length", QUANTITY_LENGTH, OVER_ZERO, &connection->length);
    optional_quantity(reader, entry, "spacing", QUANTITY_LENGTH, OVER_ZERO, &connection->spacing);
    connection->count = COUNT_NOT_SAID;
    const struct node *count = node_child(entry, "count");
    if (count)
        connection->count_given = read_whole(reader, count, 1, MOST_FASTENERS, &connection->count);
    else
        caution(reader, "Connection %s: how many fasteners is not said; %d are taken.",
                connection->name, COUNT_NOT_SAID);
    /* A nail's size says how long it is; a bolt goes through. */
    bool long_enough =
        connection->fastener == FASTENER_NAIL || connection->fastener == FASTENER_BOLT;
    if (!node_child(entry, "length") && !long_enough)
        caution(reader,
                "Connection %s: the length of its screws is not said, so how deep they "
                "reach is not known.",
                connection->name);
}

static void read_springs(struct reader *reader, const struct node *entry,
                         struct connection *connection) {
    only_keys(reader, entry, KEYS("type", "rotation", "slip"));
    connection->rotation.given = required_quantity(reader, entry, "rotation", QUANTITY_ROTATION,
                                                   NOT_NEGATIVE, &connection->rotation.value);
    optional_quantity(reader, entry, "slip", QUANTITY_SLIP, OVER_ZERO, &connection->slip);
}

/* The types that the format page keeps for later work are unknown like any other word. */
static void read_type(struct reader *reader, const struct node *entry,
                      struct connection *connection) {
    const struct node *node = node_child(entry, "type");
    if (!node) {
        trouble_missing(reader, entry, "type",
                        "screwed-lap, screwed-butt, springs, pinned or rigid");
        return;
    }
    int type = read_word(reader, node, "a type of connection", types);
    if (type < 0)
        return;
    connection->type = (enum connection_type)type;
    if (type == CONNECTION_SCREWED_LAP || type == CONNECTION_SCREWED_BUTT)
        read_screwed(reader, entry, connection);
    else if (type == CONNECTION_SPRINGS)
        read_springs(reader, entry, connection);
    else
        only_keys(reader, entry, KEYS("type"));
}

static int add_connection(struct reader *reader, struct connection connection) {
    ARRAY_PUSH(reader->arena, &reader->frame->connections, connection);
    return name_index_add(reader->arena, &reader->connections, connection.name);
}

static void read_connection(struct reader *reader, const struct node *entry) {
    check_name(reader, entry);
    if (name_index_find(&reader->connections, entry->key) >= 0) {
        trouble_with_key(reader, entry, "%s is built in and needs no entry; choose another name",
                         quote_text(reader->arena, entry->key));
        return;
    }
    struct connection connection = {.name = entry->key, .place = entry->key_place, .size_name = ""};
    if (is_map(reader, entry, "a connection such as {type: screwed-lap, screw: 8, ...}"))
        read_type(reader, entry, &connection);
    int number = add_connection(reader, connection);
    if (strcmp(entry->key, "default") == 0)
        reader->frame->default_connection = number;
}

void read_connections(struct reader *reader, const struct node *section) {
    add_connection(
        reader, (struct connection){.name = "pinned", .type = CONNECTION_PINNED, .size_name = ""});
    add_connection(reader,
                   (struct connection){.name = "rigid", .type = CONNECTION_RIGID, .size_name = ""});
    if (!section || !is_map(reader, section, "connections by name"))
        return;
    const struct node *named_default = NULL;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next) {
        if (strcmp(entry->key, "default") == 0 && entry->kind == NODE_TEXT)
            named_default = entry;
        else
            read_connection(reader, entry);
    }
    if (named_default)
        reader->frame->default_connection =
            read_name(reader, named_default, "connection", &reader->connections);
}
