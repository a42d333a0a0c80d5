#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

static void read_duration(struct reader *reader, const struct node *node, enum duration *duration) {
    const char *names[DURATION_COUNT];
    for (int k = 0; k < DURATION_COUNT; k++)
        names[k] = duration_name((enum duration)k);
    int word = read_word(reader, node, "a duration", (struct key_list){names, DURATION_COUNT});
    if (word >= 0)
        *duration = (enum duration)word;
}

static void read_part_of(struct reader *reader, const struct node *node,
                         struct combination_entry *entry) {
    struct combine_part part = {.load_case = name_index_find(&reader->cases, node->key)};
    if (part.load_case < 0)
        trouble_with_key(
            reader, node, "no load case named %s%s", quote_text(reader->arena, node->key),
            hint(reader, node->key, "known:", reader->cases.items, reader->cases.count));
    read_quantity(reader, node, QUANTITY_NUMBER, ANY_SIZE, &part.factor);
    entry->parts[entry->part_count++] = part;
}

static void read_combination(struct reader *reader, const struct node *entry) {
    check_name(reader, entry);
    struct combination_entry combination = {
        .name = entry->key, .place = entry->key_place, .duration = DURATION_TEN_YEARS};
    if (is_map(reader, entry, "cases and factors such as {self: 1, tray: 1}")) {
        combination.parts = ARENA_ARRAY(reader->arena, struct combine_part, (size_t)entry->count);
        for (const struct node *each = entry->first; each && !told_enough(reader);
             each = each->next) {
            if (strcmp(each->key, "duration") == 0)
                read_duration(reader, each, &combination.duration);
            else
                read_part_of(reader, each, &combination);
        }
        if (combination.part_count == 0)
            trouble_with_key(reader, entry, "no load case is named in it");
    }
    ARRAY_PUSH(reader->arena, &reader->frame->combinations, combination);
}

void read_combine(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "combinations by name"))
        return;
    reader->frame->has_combine = true;
    if (section->count == 0)
        trouble(reader, section,
                "no combination is given; leave 'combine' out for the built-in "
                "ones");
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        read_combination(reader, entry);
}
