/* result/fix_answer.h - what `fix` found, for the reporters. */
#ifndef RESULT_FIX_ANSWER_H
#define RESULT_FIX_ANSWER_H

#include "result/result.h"

enum change_kind {
    CHANGE_TURN,         /* a stick on edge, a post turned */
    CHANGE_SIZE,         /* a larger size for a kind of stick */
    CHANGE_GRADE,        /* a better grade for a kind of stick */
    CHANGE_SLATS,        /* more slats on a shelf */
    CHANGE_RAIL,         /* a rail more under a shelf */
    CHANGE_LEGS,         /* legs under the middle of shelves */
    CHANGE_BRACE,        /* a diagonal */
    CHANGE_SHEET,        /* a thicker sheet */
    CHANGE_SHEET_SCREWS, /* of a sheet: closer or thicker */
    CHANGE_HINGES,       /* screws of a lid or door, sticks round it */
    CHANGE_HOLD_DOWN,    /* feet anchored */
    CHANGE_BALLAST,      /* weight laid on */
    CHANGE_TRAYS,        /* fewer trays on a shelf */
    CHANGE_JOINT         /* another fastening under the same name */
};

/* A check in words: "lean/x", "left-right (at joint fr2)". */
struct fix_check {
    const char *id, *words;
    enum verdict verdict;
};

struct fix_change {
    enum change_kind kind;
    const char *what;              /* "use 2x2 for post, 4 pieces, in place of 1x2" */
    const struct node *edit;       /* what it puts into the description */
    double cost;                   /* what it adds to the bill; NAN where a price is missing */
    double effort;                 /* board feet and what counts like them, see fix/effort.h */
    int trays;                     /* given up */
    const struct fix_check *mends; /* what fails, or is not covered, without it alone */
    size_t mend_count;
};

struct fix_answer {
    const struct frame *frame;  /* as described */
    enum verdict before, after; /* after: of the edited description, where found */
    bool passes_already, found;
    const struct fix_change *changes;
    size_t change_count;
    double cost, effort; /* of all of them; cost NAN where prices are missing */
    int trays;
    bool by_price;  /* sets were compared by what they cost; else by effort */
    size_t tried;   /* descriptions that were judged, the described one not counted */
    size_t options; /* changes in the catalogue */
    bool proved;
    const struct node *edit;    /* all edits in one */
    const struct node *nearest; /* where nothing is found: the edit that came nearest; NULL */
    const struct node *edited;  /* the whole description with them; NULL where nothing is found */
    /* What fails or is not covered as described, and, where nothing was found, what is left with
     * the nearest set. */
    struct {
        struct fix_check *items;
        size_t count, capacity;
    } failing, left;
    struct {
        const char **items;
        size_t count, capacity;
    } notes, cautions;
    struct problems problems;
    const char *trouble; /* VERDICT_FAILED: why */
};

#endif
