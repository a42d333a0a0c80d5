#include "frame/node_make.h"
#include "frame/shape_making.h"
#include "units/quote.h"

#include <string.h>

/* True where the member is made, or given by the file itself. */
static bool member_is_there(const struct making *making, const char *name) {
    const struct made_section *members = &making->sections[MADE_MEMBERS];
    int number = name_index_find(&members->names, name);
    return (number >= 0 && members->entries.items[number]) ||
           node_child(node_child(making->root, "members"), name);
}

static void add_rail(const struct making *making, struct node *rails, const char *name,
                     const char **missing) {
    if (member_is_there(making, name))
        node_add(rails, node_text(making->reader->arena, NULL, name, rails->place));
    else
        *missing = name;
}

/* The rails that are there, from the front to the back. */
static struct node *rails_of(const struct making *making, size_t level, const char **missing) {
    struct node *rails =
        node_new(making->reader->arena, NODE_LIST, "rails", making->layout.levels[level].place);
    add_rail(making, rails, face_rail(making, "front", level), missing);
    for (int rail = 2; rail < making->shape->rails_across; rail++)
        add_rail(making, rails, middle_rail(making, level, rail), missing);
    add_rail(making, rails, face_rail(making, "back", level), missing);
    return rails;
}

static void tell_missing(const struct making *making, const char *shelf, const char *rail) {
    for (size_t k = 0; k < making->shape->leave_out.count; k++) {
        const struct node *node = making->shape->leave_out.items[k];
        if (strcmp(node->text, rail) == 0)
            trouble(making->reader, node,
                    "shelf %s lies on it; give that shelf's rails under 'shelves', or leave the "
                    "rail in",
                    quote_text(making->reader->arena, shelf));
    }
}

static void make_shelf(struct making *making, size_t level) {
    static const char *const keys[] = {"deck", "trays", "standing"};
    struct arena *arena = making->reader->arena;
    const char *name = making->layout.levels[level].shelf;
    const char *missing = NULL;
    struct node *rails = rails_of(making, level, &missing);
    if (rails->count < 2) {
        if (!node_child(node_child(making->root, "shelves"), name))
            tell_missing(making, name, missing);
        return;
    }
    struct node *shelf = node_new(arena, NODE_MAP, name, making->layout.levels[level].place);
    node_add(shelf, rails);
    for (size_t k = 0; k < sizeof keys / sizeof *keys; k++) {
        const struct node *node = node_child(making->map, keys[k]);
        if (node)
            node_add(shelf, node_copy(arena, node, keys[k]));
    }
    made_add(making, MADE_SHELVES, shelf);
}

void make_shelves(struct making *making) {
    for (size_t level = 1; level < making->layout.level_count; level++)
        if (making->layout.levels[level].shelf)
            make_shelf(making, level);
}
