#include "frame/shape_build.h"

#include "frame/node_make.h"
#include "frame/shape_making.h"

#include <string.h>

/* ORDER MADE */
const char *const MADE_KEYS[MADE_SECTIONS] = {"joints", "members", "supports", "shelves", "panels"};

void made_add(struct making *making, enum made section, struct node *entry) {
    struct made_section *to = &making->sections[section];
    name_index_add(making->reader->arena, &to->names, entry->key);
    ARRAY_PUSH(making->reader->arena, &to->entries, entry);
}

/* ---- the file's own entries ---- */

static bool own_sections_are_maps(const struct node *root) {
    for (int k = 0; k < MADE_SECTIONS; k++) {
        const struct node *own = node_child(root, MADE_KEYS[k]);
        if (own && own->kind != NODE_MAP)
            return false;
    }
    return true;
}

static void add_own(struct making *making, enum made section) {
    struct made_section *to = &making->sections[section];
    const struct node *own = node_child(making->root, MADE_KEYS[section]);
    for (struct node *entry = own ? own->first : NULL; entry; entry = entry->next) {
        int number = name_index_find(&to->names, entry->key);
        if (number < 0)
            made_add(making, section, entry);
        else
            to->entries.items[number] = entry;
    }
}

/* ---- the tree ---- */

/* The section with all its entries; NULL where there is none. */
static struct node *section_of(struct making *making, enum made section) {
    const struct made_section *made = &making->sections[section];
    const struct node *own = node_child(making->root, MADE_KEYS[section]);
    const struct node *at = own ? own : making->map;
    struct node *map = node_new(making->reader->arena, NODE_MAP, MADE_KEYS[section], at->key_place);
    struct node **end = &map->first;
    for (size_t k = 0; k < made->entries.count; k++) {
        struct node *entry = made->entries.items[k];
        if (!entry)
            continue;
        entry->parent = map;
        *end = entry;
        end = &entry->next;
        map->count++;
    }
    *end = NULL;
    map->parent = making->root;
    return map->count > 0 || own ? map : NULL;
}

static bool goes_away(const struct node *node) {
    bool away = strcmp(node->key, "leave-out") == 0;
    for (int k = 0; k < MADE_SECTIONS; k++)
        away |= strcmp(node->key, MADE_KEYS[k]) == 0;
    return away;
}

/* The sections come where the shape was. */
static void put_in(struct making *making) {
    struct node *sections[MADE_SECTIONS];
    for (enum made k = MADE_JOINTS; k < MADE_SECTIONS; k++)
        sections[k] = section_of(making, k);
    struct node **end = &making->root->first;
    making->root->count = 0;
    for (struct node *node = making->root->first, *next; node; node = next) {
        next = node->next;
        for (int k = 0; k < MADE_SECTIONS && node == making->map; k++)
            if (sections[k]) {
                *end = sections[k];
                end = &sections[k]->next;
                making->root->count++;
            }
        if (node == making->map || goes_away(node))
            continue;
        *end = node;
        end = &node->next;
        making->root->count++;
    }
    *end = NULL;
}

/* As many joints as a file may hold. */
static bool few_enough(struct making *making) {
    const struct layout *layout = &making->layout;
    size_t middle_rails = (size_t)making->shape->rails_across - 2;
    size_t most = layout->level_count * layout->column_count * (SIDES + middle_rails);
    if (most <= (size_t)making->reader->most_entries)
        return true;
    trouble_with_key(making->reader, making->map,
                     "%zu posts along the width and %zu heights make more than %d joints; --large "
                     "allows 200000",
                     layout->column_count, layout->level_count, making->reader->most_entries);
    return false;
}

bool shape_build(struct reader *reader, struct node *root) {
    struct making making = {.reader = reader,
                            .root = root,
                            .map = node_child(root, "shape"),
                            .shape = reader->frame->shape.values};
    size_t before = reader->problems->count;
    if (!own_sections_are_maps(root) ||
        !shape_lay_out(reader, making.map, making.shape, &making.layout) || !few_enough(&making))
        return false;
    make_joints(&making);
    make_pieces(&making);
    make_braces(&making);
    make_feet(&making);
    make_leave_out(&making);
    make_shelves(&making);
    make_panels(&making);
    if (reader->problems->count != before)
        return false;
    for (enum made k = MADE_JOINTS; k < MADE_SECTIONS; k++)
        add_own(&making, k);
    put_in(&making);
    return true;
}
