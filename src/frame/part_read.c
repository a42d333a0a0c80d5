#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

/* Whose part each member and panel is: part number + 1, 0 where none. */
struct owners {
    int *of_member, *of_panel;
};

static bool claim(struct reader *reader, const struct node *node, int *owner, int part) {
    if (*owner == 0) {
        *owner = part + 1;
        return true;
    }
    if (*owner == part + 1)
        trouble(reader, node, "%s is given twice", quote_text(reader->arena, node->text));
    else
        trouble(reader, node, "%s is already in part %s", quote_text(reader->arena, node->text),
                quote_text(reader->arena, reader->frame->parts.items[*owner - 1].name));
    return false;
}

static void read_piece(struct reader *reader, const struct node *node, struct owners owners,
                       int number, struct part *part) {
    const char *text = read_text(reader, node, "the name of a member or panel");
    if (!text)
        return;
    int member = name_index_find(&reader->members, text);
    int panel = name_index_find(&reader->panels, text);
    if (member >= 0 && claim(reader, node, &owners.of_member[member], number))
        part->members[part->member_count++] = member;
    else if (member < 0 && panel >= 0 && claim(reader, node, &owners.of_panel[panel], number))
        part->panels[part->panel_count++] = panel;
    else if (member < 0 && panel < 0 && !reader->made_names)
        trouble(reader, node, "no member or panel named %s%s", quote_text(reader->arena, text),
                hint(reader, text, "members:", reader->members.items, reader->members.count));
}

static void read_part(struct reader *reader, const struct node *entry, struct owners owners) {
    check_name(reader, entry);
    struct part part = {.name = entry->key, .place = entry->key_place};
    if (!is_list(reader, entry, "members and panels that are carried as one"))
        return;
    if (entry->count == 0)
        trouble(reader, entry, "an empty part; expected members and panels");
    part.members = ARENA_ARRAY(reader->arena, int, (size_t)entry->count);
    part.panels = ARENA_ARRAY(reader->arena, int, (size_t)entry->count);
    int number = (int)reader->frame->parts.count;
    for (const struct node *each = entry->first; each && !told_enough(reader); each = each->next)
        read_piece(reader, each, owners, number, &part);
    ARRAY_PUSH(reader->arena, &reader->frame->parts, part);
}

void read_parts(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "parts by name, such as {left: [post-1, rail-1]}"))
        return;
    struct owners owners = {ARENA_ARRAY(reader->arena, int, reader->members.count),
                            ARENA_ARRAY(reader->arena, int, reader->panels.count)};
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        read_part(reader, entry, owners);
}

void read_keep_open(struct reader *reader, const struct node *section) {
    if (!is_list(reader, section, "a list of faces, such as [front]"))
        return;
    for (const struct node *each = section->first; each && !told_enough(reader);
         each = each->next) {
        if (read_word(reader, each, "a face", KEYS("front", "back", "left", "right", "roof")) < 0)
            continue;
        for (size_t k = 0; k < reader->frame->keep_open.count; k++)
            if (strcmp(reader->frame->keep_open.items[k], each->text) == 0)
                trouble(reader, each, "%s is given twice", quote_text(reader->arena, each->text));
        ARRAY_PUSH(reader->arena, &reader->frame->keep_open, each->text);
    }
}
