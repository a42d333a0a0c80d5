#include "fix/fastened.h"

#include "fix/effort.h"
#include "fix/screw_lengths.h"

static const char *const BOLTS[BOLT_SIZES] = {"1/4 in", "5/16 in"};

/* ---- what it counts ---- */

static double fastener_effort(const struct fastened *end) {
    if (end->bolt >= 0)
        return effort_of("fix-bolt") * (1.0 + effort_of("fix-larger") * end->bolt);
    return effort_of("fix-screw") + end->step * effort_of("fix-screw-length");
}

double end_effort(const struct fastened *end) {
    double all = end->count * fastener_effort(end);
    switch (end->type) {
    case CONNECTION_CLEAT: /* screws into the post, and as many down through the rail */
        return effort_of("fix-cleat") + 2.0 * all;
    case CONNECTION_NOTCHED:
        return effort_of("fix-piece") + all;
    case CONNECTION_BRACKET:
        return effort_of("fix-bracket") + 2.0 * all;
    case CONNECTION_GUSSET:
        return end->plates * (effort_of("fix-gusset") + 2.0 * all);
    default:
        return all;
    }
}

struct fastened fastened_now(const struct work *work, const struct connection *now) {
    struct fastened end = {.type = now->type,
                           .bolt = now->fastener == FASTENER_BOLT ? 0 : -1,
                           .count = now->count,
                           .plates = now->plates};
    while (end.step < SCREW_LENGTHS - 1 && now->length.given &&
           screw_length(work, end.step) < now->length.value - SAME_SCREW_LENGTH)
        end.step++;
    return end;
}

/* ---- in words ---- */

static const char *number_words(struct arena *arena, int count) {
    static const char *const words[] = {"no", "one", "two", "three", "four", "five", "six"};
    return count <= 6 ? words[count] : arena_print(arena, "%d", count);
}

static const char *fasteners_words(struct arena *arena, const struct fastened *end) {
    const char *number = number_words(arena, end->count), *s = end->count == 1 ? "" : "s";
    if (end->bolt >= 0)
        return arena_print(arena, "%s %s bolt%s with washers", number, BOLTS[end->bolt], s);
    return arena_print(arena, "%s No.%s screw%s %s long", number, end->size, s, end->length);
}

const char *end_words(struct arena *arena, const struct fastened *end) {
    const char *fasteners = fasteners_words(arena, end);
    switch (end->type) {
    case CONNECTION_CLEAT:
        return arena_print(arena, "set the end on a block, %s through it", fasteners);
    case CONNECTION_BRACKET:
        return arena_print(arena, "use a steel angle, %s in each leg", fasteners);
    case CONNECTION_GUSSET:
        return arena_print(arena, "screw a 1/2 in plywood gusset over %s, %s in each stick",
                           end->plates == 1 ? "one side" : "both sides", fasteners);
    default:
        return arena_print(arena, "use %s", fasteners);
    }
}

const char *end_keys(const struct work *work, const struct fastened *end) {
    struct arena *arena = work->arena;
    const char *type =
        end->type == CONNECTION_CLEAT     ? "cleat"
        : end->type == CONNECTION_BRACKET ? "bracket"
        : end->type == CONNECTION_GUSSET
            ? arena_print(arena, "gusset, sheet: plywood-1/2in, plates: %d", end->plates)
        : end->type == CONNECTION_SCREWED_BUTT ? "screwed-butt"
                                               : "screwed-lap";
    const char *with = end->bolt >= 0 ? arena_print(arena, "bolt: %s", BOLTS[end->bolt])
                                      : arena_print(arena, "screw: %s, length: %s", end->size,
                                                    yaml_quoted(work, end->length));
    return arena_print(arena, "type: %s, %s, count: %d", type, with, end->count);
}
