#include "frame/tree.h"

#include "frame/name_index.h"
#include "frame/yaml_words.h"
#include "units/quote.h"

#include <limits.h>
#include <stdbool.h>
#include <string.h>
#include <yaml.h>

enum { NODES_A_CHUNK = 128, TEXT_CHUNK = 4096, FEW_KEYS = 8 };

/* What libyaml owns; released by the arena should memory run out on the way. */
struct session {
    yaml_parser_t parser;
    yaml_event_t event;
};

/* The tree as far as it is built: `open[0 .. depth)` are the lists and maps not closed yet. */
struct builder {
    struct arena *arena;
    struct problems *problems;
    struct tree_limits limits;
    struct session *session;
    struct node *root;
    struct node *open[NODE_DEPTH], *last[NODE_DEPTH];
    int depth;
    const char *key; /* read, its value not yet */
    struct place key_place;
    bool drop_next; /* the value of that key is not wanted */
    int values;
    struct node *nodes;
    int nodes_left;
    char *text;
    size_t text_left;
};

static void release_session(void *object) {
    struct session *session = object;
    yaml_event_delete(&session->event);
    yaml_parser_delete(&session->parser);
}

static struct place place_of(yaml_mark_t mark) {
    return (struct place){(int)mark.line + 1, (int)mark.column + 1};
}

/* Short texts share blocks: a large frame has some hundred thousand of them. */
static const char *keep_text(struct builder *builder, const char *bytes, size_t length) {
    if (length >= TEXT_CHUNK / 8)
        return arena_copy(builder->arena, bytes, length);
    if (builder->text_left < length + 1) {
        builder->text = arena_take(builder->arena, TEXT_CHUNK, 1);
        builder->text_left = TEXT_CHUNK;
    }
    char *kept = builder->text;
    memcpy(kept, bytes, length);
    builder->text += length + 1;
    builder->text_left -= length + 1;
    return kept;
}

static struct node *new_node(struct builder *builder, enum node_kind kind, struct place place) {
    if (builder->nodes_left == 0) {
        builder->nodes = ARENA_ARRAY(builder->arena, struct node, NODES_A_CHUNK);
        builder->nodes_left = NODES_A_CHUNK;
    }
    builder->nodes_left--;
    struct node *node = builder->nodes++;
    *node = (struct node){.kind = kind, .place = place, .key_place = place, .text = ""};
    return node;
}

static bool in_map(const struct builder *builder) {
    return builder->depth > 0 && builder->open[builder->depth - 1]->kind == NODE_MAP;
}

/* False where the parent holds more than it may. */
static bool within_limits(struct builder *builder, const struct node *node) {
    const struct node *parent = node->parent;
    builder->values++;
    if (builder->values > builder->limits.values) {
        problem_add(builder->problems, node->place, "",
                    "the file holds more than %d values; --large allows more",
                    builder->limits.values);
        return false;
    }
    if (parent && parent->parent == builder->root && parent->key &&
        parent->count > builder->limits.entries &&
        (strcmp(parent->key, "joints") == 0 || strcmp(parent->key, "members") == 0)) {
        problem_add(builder->problems, node->key_place, parent->key,
                    "more than %d %s; --large allows 200000", builder->limits.entries, parent->key);
        return false;
    }
    return true;
}

/* Put a node where the file has it. */
static bool attach(struct builder *builder, struct node *node) {
    if (builder->depth == 0) {
        builder->root = node;
        return within_limits(builder, node);
    }
    struct node *parent = builder->open[builder->depth - 1];
    node->parent = parent;
    if (in_map(builder)) {
        node->key = builder->key;
        node->key_place = builder->key_place;
        builder->key = NULL;
    }
    if (builder->drop_next) {
        builder->drop_next = false;
        return true;
    }
    struct node *last = builder->last[builder->depth - 1];
    if (last)
        last->next = node;
    else
        parent->first = node;
    builder->last[builder->depth - 1] = node;
    parent->count++;
    return within_limits(builder, node);
}

/* The path of the value that comes next, for messages. */
static const char *next_path(struct builder *builder) {
    if (builder->depth == 0)
        return "";
    const char *parent = node_path(builder->arena, builder->open[builder->depth - 1]);
    if (!builder->key)
        return parent;
    return arena_print(builder->arena, "%s%s%s", parent, *parent ? "." : "",
                       plain_text(builder->arena, builder->key));
}

static void refuse_extras(struct builder *builder, const yaml_char_t *anchor,
                          const yaml_char_t *tag, struct place place) {
    if (anchor)
        problem_add(builder->problems, place, next_path(builder),
                    "anchors such as &%s are not part of the format; write it out in each place",
                    plain_text(builder->arena, (const char *)anchor));
    static const char full[] = "tag:yaml.org,2002:"; /* what "!!" stands for */
    const char *name = (const char *)tag;
    bool standard = tag && strncmp(name, full, sizeof full - 1) == 0;
    if (tag)
        problem_add(builder->problems, place, next_path(builder),
                    "tags such as %s%s are not part of the format; write the value alone",
                    standard ? "!!" : "",
                    plain_text(builder->arena, name + (standard ? sizeof full - 1 : 0)));
}

static bool take_key(struct builder *builder, const char *bytes, size_t length,
                     struct place place) {
    builder->key = keep_text(builder, bytes, length);
    builder->key_place = place;
    if (strcmp(builder->key, "<<") == 0) {
        problem_add(builder->problems, place, next_path(builder),
                    "merge keys (<<) are not part of the format; write the keys out");
        builder->drop_next = true;
    }
    return true;
}

static bool take_scalar(struct builder *builder) {
    const yaml_event_t *event = &builder->session->event;
    struct place place = place_of(event->start_mark);
    const char *bytes = (const char *)event->data.scalar.value;
    size_t length = event->data.scalar.length;
    refuse_extras(builder, event->data.scalar.anchor, event->data.scalar.tag, place);
    if (memchr(bytes, '\0', length)) {
        problem_add(builder->problems, place, next_path(builder),
                    "a text cannot hold a zero character");
        return false;
    }
    if (in_map(builder) && !builder->key)
        return take_key(builder, bytes, length, place);
    struct node *node = new_node(builder, NODE_TEXT, place);
    node->text = keep_text(builder, bytes, length);
    return attach(builder, node);
}

static bool refuse_key(struct builder *builder, struct place place) {
    problem_add(builder->problems, place, next_path(builder),
                "a name and a colon were expected here, not a list or a group");
    return false;
}

static bool take_alias(struct builder *builder) {
    const yaml_event_t *event = &builder->session->event;
    struct place place = place_of(event->start_mark);
    if (in_map(builder) && !builder->key)
        return refuse_key(builder, place);
    problem_add(builder->problems, place, next_path(builder),
                "aliases such as *%s are not part of the format; write it out",
                plain_text(builder->arena, (const char *)event->data.alias.anchor));
    return attach(builder, new_node(builder, NODE_BROKEN, place));
}

static bool open_group(struct builder *builder, enum node_kind kind) {
    const yaml_event_t *event = &builder->session->event;
    struct place place = place_of(event->start_mark);
    if (kind == NODE_MAP)
        refuse_extras(builder, event->data.mapping_start.anchor, event->data.mapping_start.tag,
                      place);
    else
        refuse_extras(builder, event->data.sequence_start.anchor, event->data.sequence_start.tag,
                      place);
    if (in_map(builder) && !builder->key)
        return refuse_key(builder, place);
    if (builder->depth == NODE_DEPTH) {
        problem_add(builder->problems, place, "",
                    "lists and groups are nested more than %d deep here", NODE_DEPTH);
        return false;
    }
    struct node *node = new_node(builder, kind, place);
    if (!attach(builder, node))
        return false;
    builder->open[builder->depth] = node;
    builder->last[builder->depth] = NULL;
    builder->depth++;
    return true;
}

static void tell_twice(struct builder *builder, const struct node *again,
                       const struct node *before) {
    problem_add(builder->problems, again->key_place, node_path(builder->arena, again),
                "%s is given twice; the first is in line %d",
                quote_text(builder->arena, again->key), before->key_place.line);
}

/* The child of `map` before `node` with its key; maps of few keys only. */
static const struct node *same_before(const struct node *map, const struct node *node) {
    for (const struct node *each = map->first; each != node; each = each->next)
        if (strcmp(each->key, node->key) == 0)
            return each;
    return NULL;
}

/* Report keys given twice and take the later ones out. */
static void drop_repeated_keys(struct builder *builder, struct node *map) {
    bool few = map->count <= FEW_KEYS;
    struct name_index names = {0};
    const struct node **nodes =
        few ? NULL : ARENA_ARRAY(builder->arena, const struct node *, (size_t)map->count);
    struct node *kept = NULL;
    for (struct node *child = map->first; child; child = child->next) {
        if (builder->problems->count >= MOST_PROBLEMS)
            return; /* take_events() stops now */
        int number = few ? -1 : name_index_find(&names, child->key);
        const struct node *before =
            few ? same_before(map, child) : (number < 0 ? NULL : nodes[number]);
        if (before) {
            tell_twice(builder, child, before);
            kept->next = child->next;
            map->count--;
            continue;
        }
        if (!few)
            nodes[name_index_add(builder->arena, &names, child->key)] = child;
        kept = child;
    }
}

static bool close_group(struct builder *builder) {
    struct node *node = builder->open[--builder->depth];
    if (node->kind == NODE_MAP)
        drop_repeated_keys(builder, node);
    return true;
}

/* False where reading cannot go on. */
static bool take_event(struct builder *builder) {
    switch (builder->session->event.type) {
    case YAML_SCALAR_EVENT:
        return take_scalar(builder);
    case YAML_ALIAS_EVENT:
        return take_alias(builder);
    case YAML_SEQUENCE_START_EVENT:
        return open_group(builder, NODE_LIST);
    case YAML_MAPPING_START_EVENT:
        return open_group(builder, NODE_MAP);
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        return close_group(builder);
    default:
        return true;
    }
}

static bool refuse_syntax(struct builder *builder) {
    const yaml_parser_t *parser = &builder->session->parser;
    if (parser->error == YAML_NO_ERROR || parser->error == YAML_MEMORY_ERROR)
        arena_exhausted(builder->arena);
    /* A name without its colon is found out only lines later: point at the name. */
    bool at_name = parser->context && strstr(parser->context, "simple key");
    yaml_mark_t mark = at_name ? parser->context_mark : parser->problem_mark;
    problem_add(builder->problems, place_of(mark), "", "%s",
                yaml_words(builder->arena, parser->problem, parser->context,
                           (int)parser->context_mark.line + 1));
    return false;
}

/* True where the whole text was read. */
static bool take_events(struct builder *builder) {
    yaml_event_t *event = &builder->session->event;
    for (int documents = 0;;) {
        if (!yaml_parser_parse(&builder->session->parser, event))
            return refuse_syntax(builder);
        if (event->type == YAML_STREAM_END_EVENT)
            return true;
        if (event->type == YAML_DOCUMENT_START_EVENT && ++documents > 1) {
            problem_add(builder->problems, place_of(event->start_mark), "",
                        "a second document starts here; one file describes one frame");
            return true;
        }
        if (!take_event(builder))
            return false;
        if (builder->problems->count >= MOST_PROBLEMS) {
            problem_add(builder->problems, place_of(event->start_mark), "",
                        "more than %d problems; reading stops here", MOST_PROBLEMS);
            return false;
        }
        yaml_event_delete(event);
    }
}

struct node *tree_read(struct arena *arena, const char *bytes, size_t length,
                       struct tree_limits limits, struct problems *problems) {
    struct builder builder = {.arena = arena, .problems = problems, .limits = limits};
    builder.session = ARENA_NEW(arena, struct session);
    if (!yaml_parser_initialize(&builder.session->parser))
        arena_exhausted(arena);
    arena_defer(arena, release_session, builder.session);
    yaml_parser_set_encoding(&builder.session->parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&builder.session->parser, (const unsigned char *)bytes, length);
    bool whole = take_events(&builder);
    /* Releasing twice is harmless: libyaml clears what it deletes. */
    release_session(builder.session);
    if (whole && !builder.root)
        problem_add(problems, (struct place){1, 1}, "",
                    "the file is empty; a frame starts with 'batten: 1'");
    return whole ? builder.root : NULL;
}

struct node *tree_of_text(struct arena *arena, const char *bytes, size_t length) {
    struct problems problems = problems_new(arena);
    struct node *root =
        tree_read(arena, bytes, length, (struct tree_limits){INT_MAX, INT_MAX}, &problems);
    return problems.count == 0 ? root : NULL;
}
