/* fix/work.h - what the steps of `fix` share. For src/fix only. */
#ifndef FIX_WORK_H
#define FIX_WORK_H

#include "base/text.h"
#include "fix/fix.h"
#include "frame/node.h"
#include "model/model.h"

#include <stdint.h>

/* One change: an edit of the description. */
struct option {
    const char *what;        /* in words */
    const struct node *edit; /* {sticks: {rail: {size: 1x3}}} */
    double effort;           /* board feet (fix/effort.h) */
    double money;            /* what it adds to the bill alone; where sets are compared by price */
    int trays;               /* given up */
    bool fine;               /* between others: left out while a first set is looked for */
};
/* Changes of which at most one is made: the sizes of one kind of stick. Ascending effort. */
struct choice {
    enum change_kind kind;
    int stick, shelf, panel; /* whose it is; -1 */
    const char *connection;  /* of CHANGE_JOINT */
    struct option *items;
    size_t count, capacity;
};

/* More slots than that are not looked at; a caution says so. */
enum { SLOTS_MOST = 64 };
/* Per slot: 0 as described, k its k-th option. */
struct set {
    unsigned char level[SLOTS_MOST];
};

/* Fewest trays given up first, then least money where sets are compared by it, then least effort;
 * whole thousandths, so that sums do not depend on their order. */
struct effort {
    long trays, money, milli;
};

struct judged {
    bool passes;
    double score;      /* 0: passes; how much fails, for choosing what to try next */
    double wood;       /* the share of the sticks themselves in it, joints left out */
    uint64_t hopes;    /* slots that may well mend what fails: a guess */
    uint64_t needs[2]; /* a passing set changes a slot of each of these, whatever else it holds */
    enum verdict verdict; /* so far as it was judged */
};
struct memo;

struct work {
    struct arena *arena;
    const struct frame *frame;
    const struct model *model;
    const struct node *raw; /* the file; `frame->tree` has what a shape stands for in its place */
    const struct fix_options *options;
    struct fix_answer *answer;
    struct choice slots[SLOTS_MOST];
    size_t slot_count;
    bool slots_left_out;
    size_t left_out; /* options without a price, where sets are compared by it */
    const char *lap; /* the connection of sticks that are added */
    size_t *pieces;  /* per stick: how many, slats and lids included, and their length in m */
    double *lengths;
    struct memo *memo;
    size_t budget; /* variants that may be judged */
    bool by_price;
    bool prices_smalls;   /* screws and the like count in the bill */
    bool bill_may_shrink; /* a change more may make it less: nothing is proved */
    double described_bill;
    const struct cut_answer *described; /* how it is cut; NULL where no price decides */
    bool found;
    struct set best;
    struct effort best_effort, best_guide;
    struct set nearest; /* of those that do not pass */
    double nearest_score;
};

/* A frame with its catalogue, nothing tried yet; without a model where the description is wrong. */
struct work *work_new(struct arena *arena, const char *bytes, size_t length,
                      const struct frame *frame, const struct fix_options *options);

/* ---- the catalogue: each adds its slots ---- */

void catalogue_build(struct work *work);
void catalogue_sticks(struct work *work);
void catalogue_joints(struct work *work);
void catalogue_rails(struct work *work);
void catalogue_legs(struct work *work);
void catalogue_braces(struct work *work);
void catalogue_shelves(struct work *work);
void catalogue_panels(struct work *work);
void catalogue_feet(struct work *work);
void catalogue_ballast(struct work *work);

/* A text of the file as it may stand in an edit: in double quotes. */
const char *yaml_quoted(const struct work *work, const char *words);

/* A slot without options yet; NULL where there is no room. */
struct choice *choice_new(struct work *work, enum change_kind kind, int stick, int shelf);
/* `yaml` is the edit; everything in the arena. The option, to be adorned; NULL without a
 * slot, or where the edit does not read. */
struct option *choice_add(struct work *work, struct choice *slot, const char *what,
                          const char *yaml, double effort, int trays);

/* A name of the file's own kind that no joint, member or connection has yet: "leg-1". */
const char *name_unused(struct work *work, const char *word);
/* work->lap: a connection that sticks which are added can be lapped on with. Its line of an edit,
 * "" where the file has it already. */
const char *lap_entry(struct work *work);
/* The kind that most uprights are made of. */
int post_stick(const struct work *work);
/* Are slats of a shelf of that kind? */
bool has_slats_of(const struct frame *frame, int stick);
/* A length as the file writes it bare: in its own unit. */
const char *bare_length(const struct work *work, double metres);
/* "[1, 2, 3]" */
const char *bare_place(const struct work *work, const double at[3]);

/* ---- variants ---- */

/* The sum over its changes; of the money that is a guide alone, since boards are whole. */
struct effort set_guide(const struct work *work, const struct set *set);
/* With the money of the whole set. `bound`: with what no set that holds this one falls below. */
struct effort set_effort(struct work *work, const struct set *set);
struct effort set_bound(struct work *work, const struct set *set);
int effort_compare(struct effort a, struct effort b);

/* The edits of a set in one, and the whole description with them. */
const struct node *set_edit(struct work *work, const struct set *set);
struct node *set_tree(struct work *work, const struct set *set);

/* Prices of sticks that the set makes another size or grade: those of a stick of the file that is
 * the same wood, else none. NULL where no price is touched. */
const struct node *price_edit(struct work *work, const struct set *set);
/* What `cut` says that all of it costs with the set; NAN where a price is missing. Takes no
 * memory. */
struct bill {
    double all;
    double sticks; /* and sheets; screws and the like left out */
};
struct bill set_bill(struct work *work, const struct set *set);

/* The changes whose prices are known, with what each adds to the bill; the catalogue is cut down to
 * them (fewer trays cost nothing, and are for where nothing else helps). False where the file
 * prices too little for that, or the frame is too large to be cut so often; nothing is changed
 * then. */
bool price_catalogue(struct work *work);

/* Judge a set, into `result`; false where the description with it is wrong. Takes memory.
 * `first_failure`: as in judge/judge.h. */
bool set_judge(struct work *work, const struct set *set, bool first_failure, struct result *result);

/* The same, remembered; takes no memory. Counts as tried when it was not known. */
struct judged set_try(struct work *work, const struct set *set);
/* The bill, remembered likewise; not counted as tried. */
struct bill set_bill_known(struct work *work, const struct set *set);
bool budget_left(const struct work *work);
void memo_new(struct work *work);

/* What is wrong with it. */
struct judged judged_of(const struct work *work, const struct result *result);
uint64_t all_slots(const struct work *work);
int slots_in(uint64_t mask);

/* Slots that may well mend a check of such a frame: a guess, for what to try first. */
uint64_t hopes_of(const struct work *work, const struct frame *frame, const struct check *check);

/* ---- what is told (fix/telling.c) ---- */

/* As described: what fails. */
void judge_described(struct work *work);
/* The best set: its changes, what each mends and costs. */
void describe_found(struct work *work);
/* What still fails with the set that came nearest. */
void describe_left(struct work *work);

/* ---- searches ---- */

/* A set that passes, near to the cheapest: into work->best. */
void guess(struct work *work);
/* The cheapest, from the cheapest sets upwards; sets answer->proved where it got to the end. */
void best_first(struct work *work);

/* Keep the set where it is cheaper than what is known. It passes. */
void keep(struct work *work, const struct set *set);

#endif
