#include "pieces/small.h"

#include "base/text.h"
#include "base/vector.h"
#include "frame/fastener_size.h"
#include "loads/panels.h"
#include "tables/fasteners.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { HINGES_LEAST = 2, HINGES_LONG = 3 };

struct counting {
    struct arena *arena;
    const struct model *model;
    struct small_parts *parts;
};

static void count_part(struct counting *counting, struct small_part part) {
    struct small_parts *parts = counting->parts;
    for (size_t k = 0; k < parts->count; k++)
        if (strcmp(parts->items[k].key, part.key) == 0) {
            parts->items[k].count += part.count;
            return;
        }
    if (part.count > 0)
        ARRAY_PUSH(counting->arena, parts, part);
}

static void count_thing(struct counting *counting, const char *key, const char *words, int count) {
    count_part(counting, (struct small_part){.key = key, .words = words, .count = count});
}

static void note(struct counting *counting, const char *words) {
    ARRAY_PUSH(counting->arena, &counting->parts->notes, words);
}

/* ---- fasteners ---- */

/* "1-1/4in" of "1-1/4 in" */
static const char *without_spaces(struct arena *arena, const char *words) {
    char *copy = arena_copy(arena, words, strlen(words));
    char *to = copy;
    for (const char *from = copy; *from; from++)
        if (*from != ' ')
            *to++ = *from;
    *to = '\0';
    return copy;
}

static const char *size_words(struct arena *arena, enum fastener_kind kind, const char *size) {
    switch (kind) {
    case FASTENER_SCREW:
        return arena_print(arena, "screws No. %s", size);
    case FASTENER_NAIL:
        return arena_print(arena, "nails %s", size);
    case FASTENER_LAG:
        return arena_print(arena, "lag screws %s in", size);
    default:
        return arena_print(arena, "bolts %s in", size);
    }
}

static void count_fasteners(struct counting *counting, enum fastener_kind kind,
                            struct fastener_size size, struct optional length, int count) {
    struct arena *arena = counting->arena;
    const char *inches = kind == FASTENER_LAG || kind == FASTENER_BOLT ? "in" : "";
    struct text key = text_new(arena), words = text_new(arena);
    text_print(&key, "%s-%s%s", dowel_kind_name(fastener_dowel_kind(kind)), size.name, inches);
    text_add(&words, size_words(arena, kind, size.name));
    if (length.given) {
        const char *long_as =
            quantity_print_length(arena, length.value, counting->model->frame->units);
        text_print(&key, "x%s", without_spaces(arena, long_as));
        text_print(&words, " x %s", long_as);
    }
    count_part(counting, (struct small_part){.key = text_string(&key),
                                             .words = text_string(&words),
                                             .fastener = kind,
                                             .size = size.name,
                                             .length = length,
                                             .count = count});
}

/* ---- ends of members ---- */

/* How many times its `count` a connection takes: once through both sticks, or in each. */
static int times_count(const struct connection *connection) {
    switch (connection->type) {
    case CONNECTION_BRACKET:
    case CONNECTION_HINGE:
        return 2;
    case CONNECTION_GUSSET:
        return 2 * connection->plates;
    default:
        return 1;
    }
}

static void count_end(struct counting *counting, const struct connection *connection) {
    struct arena *arena = counting->arena;
    struct fastener_size size;
    if (connection->fastener != FASTENER_NONE &&
        table_fastener_find(fastener_dowel_kind(connection->fastener), NAIL_COMMON,
                            connection->size_name, &size))
        count_fasteners(counting, connection->fastener, size, connection->length,
                        connection->count * times_count(connection));
    if (connection->type == CONNECTION_BRACKET)
        count_thing(counting, "bracket", "brackets", 1);
    if (connection->type == CONNECTION_HINGE)
        count_thing(counting, "hinge", "hinges", 1);
    if (connection->type == CONNECTION_CLEAT)
        count_thing(counting, "block", "blocks to sit on", 1);
    if (connection->type == CONNECTION_GUSSET)
        count_thing(counting, "gusset",
                    arena_print(arena, "plates of %s", table_sheet(connection->sheet)->name),
                    connection->plates);
}

/* ---- panels ---- */

static double edge_length(const struct model *model, const struct panel *panel, int k) {
    const struct joint *joints = model->frame->joints.items;
    double along[3];
    return vector_between(joints[panel->corners[k]].at, joints[panel->corners[(k + 1) % 4]].at,
                          along);
}

/* Round a panel at this spacing: one at each corner, and between them no wider than that. */
static int round_panel(const struct model *model, const struct panel *panel) {
    int count = 0;
    for (int k = 0; k < 4; k++)
        count += (int)ceil(edge_length(model, panel, k) / panel->spacing.value - 1e-9);
    return count;
}

/* Screws on the sticks between the two ends of its run, besides those at the edges. */
static int on_sticks_between(struct arena *arena, const struct model *model,
                             const struct panel *panel) {
    struct bearer *bearers;
    size_t count = panel_bearers(arena, model, panel, &bearers);
    int screws = 0;
    for (size_t k = 1; k + 1 < count; k++)
        if (bearers[k].member >= 0)
            screws +=
                (int)ceil((bearers[k].to - bearers[k].from) / panel->spacing.value - 1e-9) - 1;
    return screws;
}

/* Clear sheets are held by washers, for their holes are larger than the screws. */
static bool is_wood(int sheet) {
    struct cited stiffness;
    char row[64];
    int length = snprintf(row, sizeof row, "%s.shear-stiffness", table_sheet(sheet)->name);
    return length > 0 && (size_t)length < sizeof row && table_value("sheet-shear", row, &stiffness);
}

static void count_panel(struct counting *counting, const struct panel *panel) {
    struct arena *arena = counting->arena;
    const struct model *model = counting->model;
    const struct optional unknown = {0};
    bool spaced = panel->spacing.given;
    int count = spaced ? round_panel(model, panel) : 0;
    if (panel->held == HELD_SCREWED && spaced) {
        count += on_sticks_between(arena, model, panel);
        struct fastener_size size;
        if (table_fastener_of_diameter(DOWEL_SCREW, NAIL_COMMON, panel->screw_diameter, &size))
            count_fasteners(counting, FASTENER_SCREW, size, unknown, count);
        else
            count_thing(counting, "screw", "screws for panels", count);
        if (!is_wood(panel->sheet))
            count_thing(counting, "washer", "washers for the screws of panels", count);
    } else if (panel->held == HELD_STAPLED && spaced) {
        count_thing(counting, "staple", "staples", count);
    } else if (panel->held == HELD_HINGED) {
        double hinged = 0.0;
        if (panel->hinge[0] >= 0)
            hinged =
                vector_between(model->frame->joints.items[panel->hinge[0]].at,
                               model->frame->joints.items[panel->hinge[1]].at, (double[3]){0.0});
        int hinges = hinged > table_constant("hinge-third").value ? HINGES_LONG : HINGES_LEAST;
        count_thing(counting, "hinge", "hinges", hinges);
    } else if (panel->held == HELD_SCREWED || panel->held == HELD_STAPLED) {
        note(counting, arena_print(arena,
                                   "panel %s: how far apart it is fastened is not said, so that is "
                                   "not counted",
                                   panel->name));
    }
    if (panel->stay)
        count_thing(counting, "stay", "stays to hold a lid open", 1);
}

/* ---- */

static void count_slats(struct counting *counting) {
    const struct frame *frame = counting->model->frame;
    int crossings = 0;
    for (size_t s = 0; s < frame->shelves.count; s++)
        if (frame->shelves.items[s].deck == DECK_SLATS)
            crossings +=
                frame->shelves.items[s].slat_count * (int)frame->shelves.items[s].rail_count;
    if (crossings)
        note(counting,
             arena_print(counting->arena,
                         "how slats are fastened is not said: they cross rails in %d places, a "
                         "screw or nail each",
                         crossings));
}

struct small_parts small_parts(struct arena *arena, const struct model *model) {
    struct small_parts parts = {0};
    struct counting counting = {arena, model, &parts};
    for (size_t m = 0; m < model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            const struct member_end *at = &model->members[m].ends[end];
            if (!at->host && at->connection >= 0)
                count_end(&counting, &model->frame->connections.items[at->connection]);
        }
    for (size_t p = 0; p < model->frame->panels.count; p++)
        count_panel(&counting, &model->frame->panels.items[p]);
    count_slats(&counting);
    return parts;
}
