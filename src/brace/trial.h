/* brace/trial.h - trying braces on a solved frame without solving it anew.
 *
 * A brace is a bar between two joints: one term k c c' added to K, c its direction cosines at the
 * two joints. With the factor of K held, Z = K^-1 V for the directions V of all candidates is made
 * once; a set of braces then changes the movements by
 *
 *   u' = u - Z (D^-1 + V' Z)^-1 V' u        (Sherman, Morrison and Woodbury)
 *
 * The quiet springs of a frame that folds are taken out the same way, with negative stiffness.
 */
#ifndef BRACE_TRIAL_H
#define BRACE_TRIAL_H

#include "lean/lean.h"
#include "solve/response.h"

struct trial {
    const struct system *system;
    size_t springs;       /* quiet springs to be taken out */
    size_t count;         /* candidates */
    double *stiffness;    /* springs first (negative), then candidates: N/m */
    double **moves;       /* of each of those: level movements of the joints for a unit force along
                             it, 2 per joint */
    double *products;     /* V' Z, (springs + count) squared */
    size_t loads;         /* pushes tried: 1 or 2 */
    int axes[2];          /* 0: push along x, 1: along y */
    double **load_moves;  /* per push: level movements without braces, 2 per joint */
    double **along;       /* per push: V' u */
    const double *limits; /* lean limit per joint, m */
};

/* `bars` are the candidates; `pushes` one load vector a push (3 x slots), axes[i] its direction. */
struct trial *trial_prepare(struct arena *arena, const struct system *system,
                            const struct bar *bars, size_t count, double *const *pushes,
                            const int *axes, size_t push_count, const double *limits);

struct trial_result {
    bool stands;         /* false: it still folds with these braces */
    struct lean lean[2]; /* per push: the worst joint */
    double worst;        /* the larger of the two ratios */
};

/* Try a set of candidates (indices). `forces`, NULL or 2 x count numbers: pull in each brace for
 * each push, N. Scratch comes from the arena and is given back. */
struct trial_result trial_run(struct arena *arena, const struct trial *trial, const int *set,
                              size_t count, double *forces);

#endif
