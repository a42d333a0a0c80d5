#include "frame/fastener_size.h"
#include "frame/sections.h"
#include "frame/table_names.h"
#include "units/quote.h"

#include <string.h>

enum { COUNT_NOT_SAID = 2 };

/* ORDER connection_type */
static const char *const type_names[] = {"pinned",       "rigid",     "springs", "screwed-lap",
                                         "screwed-butt", "glued-lap", "bracket", "gusset",
                                         "cleat",        "notched",   "hinge"};
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

/* The keys of every type with fasteners, and those of its own. */
#define SCREWED_KEYS(...)                                                                          \
    KEYS("type", "screw", "nail", "lag", "bolt", "length", "count", "metal", __VA_ARGS__)

static void read_screwed(struct reader *reader, const struct node *entry,
                         struct connection *connection) {
    read_fastener(reader, entry, connection);
    optional_quantity(reader, entry, "length", QUANTITY_LENGTH, OVER_ZERO, &connection->length);
    optional_quantity(reader, entry, "spacing", QUANTITY_LENGTH, OVER_ZERO, &connection->spacing);
    const struct node *metal = node_child(entry, "metal");
    if (metal)
        connection->metal = (enum metal)(1 + read_word(reader, metal, "a metal of screws",
                                                       KEYS("plain", "galvanized", "stainless")));
    connection->count = COUNT_NOT_SAID;
    const struct node *count = node_child(entry, "count");
    if (count)
        connection->count_given =
            read_whole(reader, count, 1, CONNECTION_MOST_FASTENERS, &connection->count);
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

static double length_or(struct reader *reader, const struct node *entry, const char *key,
                        const char *row) {
    struct optional length = {0};
    optional_quantity(reader, entry, key, QUANTITY_LENGTH, OVER_ZERO, &length);
    return length.given ? length.value : table_constant(row).value;
}

static void read_lap(struct reader *reader, const struct node *entry,
                     struct connection *connection) {
    only_keys(reader, entry, SCREWED_KEYS("spacing"));
    read_screwed(reader, entry, connection);
}

static void read_bracket(struct reader *reader, const struct node *entry,
                         struct connection *connection) {
    only_keys(reader, entry, SCREWED_KEYS("steel", "wide"));
    read_screwed(reader, entry, connection);
    connection->steel = length_or(reader, entry, "steel", "bracket-thickness");
    connection->wide = length_or(reader, entry, "wide", "bracket-width");
}

static void read_gusset(struct reader *reader, const struct node *entry,
                        struct connection *connection) {
    only_keys(reader, entry, SCREWED_KEYS("spacing", "sheet", "plates"));
    read_screwed(reader, entry, connection);
    const struct node *sheet = node_child(entry, "sheet");
    const struct node *plates = node_child(entry, "plates");
    if (sheet)
        connection->sheet = read_table_name(reader, sheet, NAMES_SHEETS);
    else
        trouble_missing(reader, entry, "sheet", "the plate, such as plywood-1/4in");
    if (connection->sheet >= 0 && sheet &&
        strncmp(table_sheet(connection->sheet)->name, "plywood", strlen("plywood")) != 0)
        trouble(reader, sheet, "a gusset is cut from plywood, such as plywood-1/4in");
    connection->plates = 1;
    if (plates)
        read_whole(reader, plates, 1, 2, &connection->plates);
}

static void read_cleat(struct reader *reader, const struct node *entry,
                       struct connection *connection) {
    only_keys(reader, entry, SCREWED_KEYS("block"));
    read_screwed(reader, entry, connection);
    connection->block = length_or(reader, entry, "block", "cleat-thickness");
}

static void read_notched(struct reader *reader, const struct node *entry,
                         struct connection *connection) {
    only_keys(reader, entry, SCREWED_KEYS("depth"));
    read_screwed(reader, entry, connection);
    required_quantity(reader, entry, "depth", QUANTITY_LENGTH, OVER_ZERO, &connection->depth);
}

static void read_plain(struct reader *reader, const struct node *entry,
                       struct connection *connection) {
    (void)connection;
    only_keys(reader, entry, KEYS("type"));
}

static void read_hinge(struct reader *reader, const struct node *entry,
                       struct connection *connection) {
    only_keys(reader, entry, SCREWED_KEYS("steel"));
    read_screwed(reader, entry, connection);
    connection->steel = length_or(reader, entry, "steel", "hinge-thickness");
}

static void read_type(struct reader *reader, const struct node *entry,
                      struct connection *connection) {
    const struct node *node = node_child(entry, "type");
    if (!node) {
        trouble_missing(reader, entry, "type",
                        "screwed-lap, screwed-butt, glued-lap, bracket, gusset, cleat, notched, "
                        "hinge, springs, pinned or rigid");
        return;
    }
    int type = read_word(reader, node, "a type of connection", types);
    if (type < 0)
        return;
    connection->type = (enum connection_type)type;
    /* ORDER connection_type */
    static void (*const read[])(struct reader *, const struct node *, struct connection *) = {
        read_plain,   read_plain,  read_springs, read_lap,     read_lap,  read_plain,
        read_bracket, read_gusset, read_cleat,   read_notched, read_hinge};
    read[type](reader, entry, connection);
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
