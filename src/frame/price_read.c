#include "frame/sections.h"
#include "tables/tables.h"
#include "units/quote.h"

#include <string.h>

/* Sticks are sold by length or each, sheets by size or each; other things (hinges, bolts) each. */
static void check_basis(struct reader *reader, const struct node *entry, enum price_basis basis) {
    bool stick = name_index_find(&reader->sticks, entry->key) >= 0;
    bool sheet = table_sheet_find(entry->key) >= 0;
    if (stick && basis == PRICE_PER_SHEET)
        trouble(reader, entry, "a stick is priced per length, such as 3.20 per 8 ft, or each");
    else if (sheet && !stick && basis == PRICE_PER_LENGTH)
        trouble(reader, entry, "a sheet is priced per size, such as 68 per 4 ft x 8 ft, or each");
    else if (!stick && !sheet && basis == PRICE_PER_LENGTH)
        trouble_with_key(
            reader, entry, "no stick named %s%s", quote_text(reader->arena, entry->key),
            hint(reader, entry->key, "known:", reader->sticks.items, reader->sticks.count));
    else if (!stick && !sheet && basis == PRICE_PER_SHEET)
        trouble_with_key(reader, entry, "no sheet named %s is known; 'batten table' lists them all",
                         quote_text(reader->arena, entry->key));
}

void read_prices(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "prices such as {upright: 3.20 per 8 ft}"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next) {
        struct price_entry price = {.name = entry->key, .place = entry->key_place};
        const char *text = read_text(reader, entry, "a price such as 3.20 per 8 ft");
        const char *why = NULL;
        if (table_sheet_find(entry->key) < 0)
            check_name(reader, entry);
        if (!text)
            continue;
        if (quantity_read_price(reader->arena, text, reader->frame->units, &price.price, &why))
            check_basis(reader, entry, price.price.basis);
        else
            trouble(reader, entry, "%s", why);
        ARRAY_PUSH(reader->arena, &reader->frame->prices, price);
    }
}
