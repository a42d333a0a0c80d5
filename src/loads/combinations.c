#include "loads/combinations.h"

struct list {
    struct load_combination *items;
    size_t count, capacity;
};

static int find_case(const struct loads *loads, int frame_case) {
    for (size_t c = 0; c < loads->case_count; c++)
        if (loads->cases[c].frame_case == frame_case)
            return (int)c;
    return -1;
}

static void from_file(struct arena *arena, struct loads *loads, struct list *list) {
    const struct frame *frame = loads->model->frame;
    for (size_t k = 0; k < frame->combinations.count; k++) {
        const struct combination_entry *entry = &frame->combinations.items[k];
        struct load_combination made = {.name = entry->name, .duration = entry->duration};
        made.terms = ARENA_ARRAY(arena, struct combination_term, entry->part_count);
        for (size_t p = 0; p < entry->part_count; p++) {
            int load_case = find_case(loads, entry->parts[p].load_case);
            if (load_case >= 0)
                made.terms[made.term_count++] =
                    (struct combination_term){load_case, entry->parts[p].factor};
            else
                ARRAY_PUSH(
                    arena, &loads->cautions,
                    arena_print(arena,
                                "combination %s names the case %s, in which nothing acts here",
                                entry->name, frame->cases.items[entry->parts[p].load_case]));
        }
        if (made.term_count)
            ARRAY_PUSH(arena, list, made);
    }
}

/* A built-in combination; left out where a case other than self weight does not occur (a file may
 * leave its own weight out). */
static void built_in(struct arena *arena, struct loads *loads, struct list *list, const char *name,
                     const int *cases, size_t count, enum duration duration) {
    struct load_combination made = {.name = name, .duration = duration};
    made.terms = ARENA_ARRAY(arena, struct combination_term, count);
    for (size_t k = 0; k < count; k++) {
        int load_case = find_case(loads, cases[k]);
        if (load_case < 0 && (cases[k] != CASE_SELF || count == 1))
            return;
        if (load_case < 0)
            continue;
        made.terms[made.term_count++] = (struct combination_term){load_case, 1.0};
        made.out_of_plumb |= cases[k] == CASE_TRAY;
    }
    ARRAY_PUSH(arena, list, made);
}

/* Somebody leans on it, both ways along each axis, with the shelves empty and full. */
static void pushes(struct arena *arena, struct loads *loads, struct list *list) {
    static const struct {
        const char *empty, *full;
        int push;
        double sign;
    } ways[] = {{"D+push right", "D+T+push right", CASE_PUSH_X, 1.0},
                {"D+push left", "D+T+push left", CASE_PUSH_X, -1.0},
                {"D+push back", "D+T+push back", CASE_PUSH_Y, 1.0},
                {"D+push front", "D+T+push front", CASE_PUSH_Y, -1.0}};
    for (size_t k = 0; k < sizeof ways / sizeof *ways; k++) {
        size_t before = list->count;
        built_in(arena, loads, list, ways[k].empty, (int[]){CASE_SELF, ways[k].push}, 2,
                 DURATION_SEVEN_DAYS);
        built_in(arena, loads, list, ways[k].full, (int[]){CASE_SELF, CASE_TRAY, ways[k].push}, 3,
                 DURATION_SEVEN_DAYS);
        for (size_t c = before; c < list->count; c++) {
            struct load_combination *made = &list->items[c];
            made->terms[made->term_count - 1].factor = ways[k].sign;
        }
    }
}

void combinations_build(struct arena *arena, struct loads *loads) {
    struct list list = {0};
    if (loads->model->frame->has_combine) {
        from_file(arena, loads, &list);
    } else {
        built_in(arena, loads, &list, "D", (int[]){CASE_SELF}, 1, DURATION_PERMANENT);
        built_in(arena, loads, &list, "D+T", (int[]){CASE_SELF, CASE_TRAY}, 2, DURATION_TEN_YEARS);
        pushes(arena, loads, &list);
    }
    loads->combinations = list.items;
    loads->combination_count = list.count;
}
