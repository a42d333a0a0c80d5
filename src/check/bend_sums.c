#include "check/bend_sums.h"

#include "base/text.h"

#include <math.h>

#define PULL_SUM_SOURCE "NDS 2018 3.9.1"
#define PUSH_SUM_SOURCE "NDS 2018 3.9.2"
/* What a stick past its buckling stress shows at least: over 1 by more than rounding. */
static const double BUCKLED = 1.01;
/* A bending share below this is dust: the post shows fc/Fc'. */
static const double DUST_SHARE = 1e-6;

static void keep(struct rating *worst, struct rating next) {
    *worst = worst->covered ? rating_worse(*worst, next) : next;
}

static void single(struct rating *worst, double stress, double limit, const char *symbol,
                   const char *formula, const char *source, const char *governs,
                   struct working *working) {
    if (stress == 0.0)
        return;
    working_step(working, symbol, governs, formula, stress / limit, QUANTITY_NUMBER, source);
    keep(worst, rating_of(stress, limit, QUANTITY_STRESS, source, governs));
}

static struct rating of_sum(double sum, const char *source, const char *governs) {
    return rating_of(sum, 1.0, QUANTITY_NUMBER, source, governs);
}

/* Both inequalities of 3.9.1. The pull relieves only the bending on edge; bending flatwise is added
 * in full in both. */
static struct rating pull_sums(const struct stresses *s, struct working *working) {
    double share1 = s->fb1 > 0.0 ? s->fb1 / s->fb_star : 0.0;
    double share2 = s->fb2 > 0.0 ? s->fb2 / s->fb2_limit : 0.0;
    const char *formula = s->fb1 > 0.0 && s->fb2 > 0.0 ? "ft / Ft' + fb1 / Fbs + fb2 / Fb2'"
                          : s->fb1 > 0.0               ? "ft / Ft' + fb1 / Fbs"
                                                       : "ft / Ft' + fb2 / Fb2'";
    double first =
        working_step(working, "sum1", "pulled edge: pull and bending together", formula,
                     s->ft / s->ft_limit + share1 + share2, QUANTITY_NUMBER, PULL_SUM_SOURCE);
    struct rating rating = of_sum(first, PULL_SUM_SOURCE, "bending with pull");
    if (!(s->fb1 > 0.0))
        return rating;
    double rest = (s->fb1 - s->ft < 0.0 ? 0.0 : s->fb1 - s->ft) / s->fb1_limit;
    double second = working_step(working, "sum2", "pressed edge: bending less the pull",
                                 s->fb2 > 0.0 ? "max(0, fb1 - ft) / Fb1' + fb2 / Fb2'"
                                              : "max(0, fb1 - ft) / Fb1'",
                                 rest + share2, QUANTITY_NUMBER, PULL_SUM_SOURCE);
    return rating_worse(rating, of_sum(second, PULL_SUM_SOURCE, "bending with pull"));
}

/* x / y, or 0 where the stick cannot buckle that way. */
static double part(double stress, double critical) {
    return isinf(critical) ? 0.0 : stress / critical;
}

/* The formula of 3.9-3 with only the terms that are there: a stick that is held has no buckling
 * stress to put in. */
static void note_push_sum(const struct stresses *s, double sum, struct working *working) {
    struct text formula = text_new(working->arena);
    bool push1 = s->fc > 0.0 && !isinf(s->column.critical[0]);
    bool push2 = s->fc > 0.0 && !isinf(s->column.critical[1]);
    bool turn = s->fb1 > 0.0 && !isinf(s->beam.critical);
    const char *plus = "";
    if (s->fc > 0.0) {
        text_add(&formula, "(fc / Fc')^2");
        plus = " + ";
    }
    if (s->fb1 > 0.0) {
        text_print(&formula, push1 ? "%sfb1 / (Fb1' * (1 - fc / FcE1))" : "%sfb1 / Fb1'", plus);
        plus = " + ";
    }
    if (s->fb2 > 0.0 && (push2 || turn))
        text_print(&formula, "%sfb2 / (Fb2' * (1%s%s))", plus, push2 ? " - fc / FcE2" : "",
                   turn ? " - (fb1 / FbE)^2" : "");
    else if (s->fb2 > 0.0)
        text_print(&formula, "%sfb2 / Fb2'", plus);
    working_step(working, "sum", "push and bending together", text_string(&formula), sum,
                 QUANTITY_NUMBER, PUSH_SUM_SOURCE);
}

/* 3.9-4: what must stay under 1 for the last term of the sum to mean anything. */
static double turning_share(const struct stresses *s, struct working *working) {
    double push = part(s->fc, s->column.critical[1]), turn = part(s->fb1, s->beam.critical);
    const char *formula = push != 0.0 && turn != 0.0 ? "fc / FcE2 + (fb1 / FbE)^2"
                          : push != 0.0              ? "fc / FcE2"
                                                     : "(fb1 / FbE)^2";
    double share = push + turn * turn;
    if (share != 0.0)
        working_step(working, "turn", "share of buckling across the thickness, must stay under 1",
                     formula, share, QUANTITY_NUMBER, PUSH_SUM_SOURCE);
    return share;
}

/* Both inequalities of 3.9.2; past buckling the sum means nothing and a finite ratio over 1 stands
 * in for it. */
static struct rating push_sums(const struct stresses *s, struct working *working) {
    const char *governs = s->fc > 0.0 ? "bending with push" : "bending both ways";
    double turn = turning_share(s, working);
    double left1 = 1.0 - part(s->fc, s->column.critical[0]), left2 = 1.0 - turn;
    double share1 = s->fb1 > 0.0 ? s->fb1 / s->fb1_limit : 0.0;
    double share2 = s->fb2 > 0.0 ? s->fb2 / s->fb2_limit : 0.0;
    double push = s->fc > 0.0 ? s->fc / s->fc_limit : 0.0;
    if (left1 <= 0.0 || left2 <= 0.0)
        return of_sum(fmax(fmax(turn, push), fmax(share1 + share2, BUCKLED)), PUSH_SUM_SOURCE,
                      "buckles");
    double sum = push * push + share1 / left1 + share2 / left2;
    if (working)
        note_push_sum(s, sum, working);
    return rating_worse(of_sum(sum, PUSH_SUM_SOURCE, governs),
                        of_sum(turn, PUSH_SUM_SOURCE, governs));
}

/* Slimmer than 50: refused where the stress is more than a quarter of its limit, else a caution. */
static void slimness(struct rating *worst, double slenderness, double stress, double limit,
                     const char *constant, const char *symbol, const char *formula,
                     const char *governs, struct working *working) {
    if (!(stress > 0.0) || slenderness <= 0.0)
        return;
    struct cited most = table_constant(constant);
    if (slenderness <= most.value)
        return;
    if (stress <= table_constant("slender-stress-share").value * limit) {
        worst->slender = true;
        return;
    }
    working_cited(working, symbol, "most that is allowed for it", most, QUANTITY_NUMBER);
    working_step(working, "rs", governs, formula, slenderness / most.value, QUANTITY_NUMBER,
                 most.source);
    keep(worst, rating_of(slenderness, most.value, QUANTITY_NUMBER, most.source, governs));
}

bool stresses_stout(const struct column_stability *column, const struct beam_stability *beam) {
    double post = table_constant("slenderness-limit").value;
    return column->slenderness[0] <= post && column->slenderness[1] <= post &&
           beam->slenderness <= table_constant("beam-slenderness-limit").value;
}

static void both_slimnesses(const struct stresses *s, struct rating *worst,
                            struct working *working) {
    const double *post = s->column.slenderness;
    bool first = post[0] >= post[1];
    slimness(worst, first ? post[0] : post[1], s->fc, s->fc_limit, "slenderness-limit", "sm",
             first ? "s1 / sm" : "s2 / sm", "too slim for a post", working);
    slimness(worst, s->beam.slenderness, s->fb1, s->fb1_limit, "beam-slenderness-limit", "RBm",
             "RB / RBm", "too slim to stand on edge", working);
}

static bool bends(const struct stresses *s) {
    double share =
        (s->fb1 > 0.0 ? s->fb1 / s->fb1_limit : 0.0) + (s->fb2 > 0.0 ? s->fb2 / s->fb2_limit : 0.0);
    return share > DUST_SHARE;
}

struct rating worst_of_stresses(const struct stresses *s, struct working *working) {
    struct rating worst = {.covered = false};
    single(&worst, s->fb1, s->fb1_limit, "r1", "fb1 / Fb1'", "NDS 2018 3.3", "bending on edge",
           working);
    single(&worst, s->fb2, s->fb2_limit, "r2", "fb2 / Fb2'", "NDS 2018 3.3", "bending flatwise",
           working);
    single(&worst, s->ft, s->ft_limit, "rt", "ft / Ft'", "NDS 2018 3.8", "pull along the stick",
           working);
    single(&worst, s->fc, s->fc_limit, "rc", "fc / Fc'", "NDS 2018 3.7", "push along the stick",
           working);
    if (!worst.covered) /* nothing bends, pushes or pulls it */
        worst = rating_of(0.0, 1.0, QUANTITY_NUMBER, "NDS 2018 3.3", "no load");
    if (s->ft > 0.0 && bends(s))
        keep(&worst, pull_sums(s, working));
    else if (bends(s) && (s->fc > 0.0 || (s->fb1 > 0.0 && s->fb2 > 0.0)))
        keep(&worst, push_sums(s, working));
    if (!s->stout)
        both_slimnesses(s, &worst, working);
    return worst;
}
