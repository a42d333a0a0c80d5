/* judge/run.h - what the steps of a judgement share.
 *
 * A mix is one combination in one out-of-plumb direction: a weight for each column of the
 * responses. Checks of strength look at all mixes at low, middle and high stiffness of the
 * fastenings; sag at the middle.
 */
#ifndef JUDGE_RUN_H
#define JUDGE_RUN_H

#include "bracing/sheets.h"
#include "check/rating.h"
#include "ground/footprint.h"
#include "judge/judge.h"
#include "solve/stance.h"

struct second_order;

struct mix {
    int combination;
    bool solved;                      /* and it stands */
    double *weights[STIFFNESS_COUNT]; /* per column; slack ties and lifted feet undone */
    struct stance stances[STIFFNESS_COUNT];
    bool stands;                 /* some state of its ties holds it */
    bool tips;                   /* no state of its feet does: they are taken as held down */
    int edge;                    /* of the footprint, over which it tips; -1 none */
    struct second_order *second; /* NULL: not solved */
    const char *lean;            /* "leaning to the right" ...; "" upright */
};

struct run {
    struct arena *arena;
    const struct frame *frame;
    const struct judge_options *options;
    struct result *result;
    const struct model *model;
    const struct loads *loads;
    const struct system *systems[STIFFNESS_COUNT];
    struct response *responses[STIFFNESS_COUNT]; /* of a frame without screws: only middle */
    const enum stiffness *only;        /* the stiffness in hand; NULL: all that matter at once */
    struct bracing_sheet *sheets;      /* per panel */
    struct bar *bars[STIFFNESS_COUNT]; /* of the sheets that brace, clear ones left out */
    size_t bar_counts[STIFFNESS_COUNT];
    struct mix *mixes;
    size_t mix_count;
    struct mix *upright; /* per combination: without the lean */
    bool has_ties;
    const struct footprint *footprint;  /* where it stands */
    const struct resultant *resultants; /* per column, about the model's middle */
    struct holding *holding;
    struct fold_ways *ways; /* with hinges for joints, clear sheets left out */
};

/* The stiffnesses that matter: all three with screws, else the middle alone; of them the one in
 * hand, where only one is. */
bool run_uses(const struct run *run, enum stiffness stiffness);

/* Is this combination asked for? All are, unless `why` names one and the check in hand. */
bool run_wants_combination(const struct run *run, const char *id, int combination);

/* Does somebody lean on the frame in it? Such combinations say nothing of shelves. */
bool run_pushes(const struct run *run, int combination);

/* Working to be noted for this check, or NULL. */
struct working *run_working(const struct run *run, const char *id);

/* Weights of a combination over the columns of a response, upright; `long_only`: only what stands
 * for long, `brief_only`: only the rest. False where a case of it could not be solved, which is all
 * that is asked for where `weights` is NULL. */
enum share { SHARE_ALL, SHARE_STANDING, SHARE_BRIEF };
bool run_weights(const struct run *run, const struct response *response, int combination,
                 enum share share, double *weights);

/* Does the set creep in this combination? Own weight and long-standing trays do, and a case of the
 * user's own that is combined as acting for ten years or more. */
bool run_stands_for_long(const struct loads *loads, int set, const struct load_combination *in);

void mixes_build(struct run *run);

/* Add a check from its rating. `place` and `advice` are words for the builder. */
struct check *run_add_check(struct run *run, const char *kind, const char *where,
                            const char *combination, struct rating rating, const char *place,
                            const char *advice, struct working *working);

void run_caution(struct run *run, const char *text);

#endif
