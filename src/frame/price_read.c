#include "frame/sections.h"
#include "tables/fasteners.h"
#include "tables/tables.h"
#include "units/quote.h"

#include <string.h>

/* Sticks are sold by length or each, sheets by size or each; other things (screws, hinges) each or
 * by the box. */
static void check_basis(struct reader *reader, const struct node *entry,
                        const struct price_entry *entered) {
    enum price_basis basis = entered->price.basis;
    if (entered->stick >= 0 && basis != PRICE_PER_LENGTH && basis != PRICE_EACH)
        trouble(reader, entry, "a stick is priced per length, such as 3.20 per 8 ft, or each");
    else if (entered->stick >= 0 || basis == PRICE_EACH)
        return;
    else if (entered->fastener != FASTENER_NONE && basis != PRICE_PER_BOX)
        trouble(reader, entry, "screws and the like are priced each, or such as 9 per box of 100");
    else if (entered->sheet >= 0 && basis != PRICE_PER_SHEET)
        trouble(reader, entry, "a sheet is priced per size, such as 68 per 4 ft x 8 ft, or each");
    else if (entered->sheet < 0 && basis == PRICE_PER_LENGTH)
        trouble_with_key(
            reader, entry, "no stick named %s%s", quote_text(reader->arena, entered->name),
            hint(reader, entered->name, "known:", reader->sticks.items, reader->sticks.count));
    else if (entered->sheet < 0 && basis == PRICE_PER_SHEET)
        trouble_with_key(reader, entry, "no sheet named %s is known; 'batten table' lists them all",
                         quote_text(reader->arena, entered->name));
}

/* "screw-8", "screw-8x1-1/4in", "bolt-3/8inx4in": a kind, its size, and how long. False where the
 * key is no fastener; what is wrong with it is then left to the rules for names. */
static bool read_fastener_key(struct reader *reader, const char *key, struct price_entry *entered) {
    static const enum fastener_kind kinds[DOWEL_KIND_COUNT] = {FASTENER_SCREW, FASTENER_NAIL,
                                                               FASTENER_LAG, FASTENER_BOLT};
    for (int kind = 0; kind < DOWEL_KIND_COUNT; kind++) {
        const char *name = dowel_kind_name((enum dowel_kind)kind);
        size_t length = strlen(name);
        if (strncmp(key, name, length) != 0 || key[length] != '-')
            continue;
        const char *size = key + length + 1, *cross = strchr(size, 'x'), *why;
        struct fastener_size found;
        if (cross)
            size = arena_copy(reader->arena, size, (size_t)(cross - size));
        if (!table_fastener_find((enum dowel_kind)kind, NAIL_COMMON, size, &found))
            return false;
        entered->screw_length.given = cross;
        if (cross && !quantity_read(reader->arena, cross + 1, QUANTITY_LENGTH, reader->frame->units,
                                    &entered->screw_length.value, &why))
            return false;
        entered->fastener = kinds[kind];
        entered->fastener_size = found.name;
        return true;
    }
    return false;
}

static void read_one(struct reader *reader, const struct node *entry, struct price_entry entered) {
    const char *text = read_text(reader, entry, "a price such as 3.20 per 8 ft");
    const char *why = NULL;
    if (!text)
        return;
    if (quantity_read_price(reader->arena, text, reader->frame->units, &entered.price, &why))
        check_basis(reader, entry, &entered);
    else
        trouble(reader, entry, "%s", why);
    ARRAY_PUSH(reader->arena, &reader->frame->prices, entered);
}

static void read_price(struct reader *reader, const struct node *entry) {
    struct price_entry entered = {.name = entry->key,
                                  .place = entry->key_place,
                                  .stick = name_index_find(&reader->sticks, entry->key),
                                  .sheet = table_sheet_find(entry->key)};
    bool fastener = entered.stick < 0 && read_fastener_key(reader, entry->key, &entered);
    if (entered.sheet < 0 && !fastener)
        check_name(reader, entry);
    if (entry->kind != NODE_LIST) {
        read_one(reader, entry, entered);
        return;
    }
    if (entry->count == 0)
        trouble(reader, entry, "an empty list; expected prices such as 3.20 per 8 ft");
    if (entered.stick < 0 && entered.sheet < 0)
        trouble(reader, entry, "only sticks and sheets come in several sizes; give one price");
    for (const struct node *each = entry->first; each && !told_enough(reader); each = each->next)
        read_one(reader, each, entered);
}

void read_prices(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "prices such as {upright: 3.20 per 8 ft}"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        read_price(reader, entry);
}
