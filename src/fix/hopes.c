#include "fix/work.h"

#include <string.h>

/* ORDER change_kind */
#define KIND(kind) (1u << CHANGE_##kind)

/* By the first word of a check: what a builder would try. `own`: only for the stick, shelf or
 * fastening that fails. */
static const struct {
    const char *check;
    unsigned own, any;
} REMEDIES[] = {
    {"sag", KIND(TURN) | KIND(SIZE) | KIND(GRADE) | KIND(RAIL), KIND(LEGS) | KIND(TRAYS)},
    {"slat", KIND(SIZE) | KIND(GRADE) | KIND(SLATS) | KIND(RAIL), KIND(TRAYS)},
    {"bend", KIND(TURN) | KIND(SIZE) | KIND(GRADE),
     KIND(LEGS) | KIND(BRACE) | KIND(RAIL) | KIND(TRAYS)},
    {"shear", KIND(SIZE) | KIND(GRADE), KIND(LEGS) | KIND(RAIL) | KIND(TRAYS)},
    {"bearing", KIND(SIZE), KIND(LEGS) | KIND(RAIL) | KIND(TRAYS)},
    {"lean", 0, KIND(BRACE) | KIND(SIZE) | KIND(TURN) | KIND(JOINT) | KIND(LEGS)},
    {"sway", 0, KIND(BRACE) | KIND(SIZE) | KIND(TURN) | KIND(JOINT) | KIND(LEGS)},
    {"screw", KIND(JOINT), KIND(SIZE) | KIND(TURN) | KIND(BRACE) | KIND(LEGS) | KIND(RAIL)},
    {"joint-moment", KIND(JOINT), KIND(BRACE) | KIND(SIZE) | KIND(TURN) | KIND(LEGS)},
    {"hang", KIND(JOINT) | KIND(SIZE), KIND(LEGS) | KIND(RAIL)},
    {"panel", KIND(SHEET), KIND(RAIL) | KIND(LEGS) | KIND(BRACE)},
    {"panel-screw", KIND(SHEET) | KIND(SHEET_SCREWS), KIND(RAIL) | KIND(LEGS) | KIND(BRACE)},
    {"panel-rack", KIND(SHEET) | KIND(SHEET_SCREWS), KIND(BRACE)},
    {"hinge", KIND(HINGES) | KIND(SHEET), 0},
    {"lift", 0, KIND(HOLD_DOWN) | KIND(BALLAST) | KIND(BRACE) | KIND(LEGS)},
    {"tip", 0, KIND(HOLD_DOWN) | KIND(BALLAST) | KIND(SIZE) | KIND(TRAYS)},
    {"slide", 0, KIND(HOLD_DOWN) | KIND(BALLAST) | KIND(SIZE)},
};

/* Does the file's name for it stand among the parts of where the check is? */
static bool names(const struct check *check, const char *name) {
    size_t length = strlen(name);
    for (const char *at = check->where; at; at = strchr(at, '/')) {
        at += *at == '/';
        if (strncmp(at, name, length) == 0 && (at[length] == '/' || !at[length]))
            return true;
    }
    return false;
}

static bool is_fastened_by(const struct frame *frame, const struct member *member,
                           const char *connection) {
    for (int e = 0; e < 2; e++) {
        int end = member->ends[e] >= 0 ? member->ends[e] : frame->default_connection;
        if (end >= 0 && strcmp(frame->connections.items[end].name, connection) == 0)
            return true;
    }
    return false;
}

static bool is_own(const struct work *work, const struct frame *frame, const struct check *check,
                   const struct choice *slot) {
    const struct frame *described = work->frame;
    if (slot->panel >= 0)
        return names(check, described->panels.items[slot->panel].name);
    for (size_t k = 0; k < frame->members.count; k++) {
        const struct member *member = &frame->members.items[k];
        if (names(check, member->name) &&
            (slot->connection ? is_fastened_by(frame, member, slot->connection)
                              : slot->stick == member->stick))
            return true;
    }
    for (size_t k = 0; k < described->shelves.count; k++) {
        const struct shelf *shelf = &described->shelves.items[k];
        bool slats = slot->kind <= CHANGE_SLATS && slot->stick == shelf->slat;
        if (names(check, shelf->name) && (slot->shelf == (int)k || slot->shelf < 0) &&
            (slot->shelf == (int)k || slats || slot->kind == CHANGE_RAIL))
            return true;
    }
    return false;
}

uint64_t hopes_of(const struct work *work, const struct frame *frame, const struct check *check) {
    uint64_t hopes = 0;
    for (size_t r = 0; r < sizeof REMEDIES / sizeof *REMEDIES; r++) {
        if (strcmp(REMEDIES[r].check, check->kind) != 0)
            continue;
        for (size_t k = 0; k < work->slot_count; k++) {
            const struct choice *slot = &work->slots[k];
            unsigned kind = 1u << slot->kind;
            if ((REMEDIES[r].any & kind) ||
                ((REMEDIES[r].own & kind) && is_own(work, frame, check, slot)))
                hopes |= (uint64_t)1 << k;
        }
    }
    return hopes;
}
