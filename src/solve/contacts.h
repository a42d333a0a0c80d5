/* solve/contacts.h - what may let go in a mix of loads: ties that would be pushed, feet that would
 * be pulled.
 *
 * Letting go is linear: a tie that is out is the same as a pair of forces along it that undo what
 * it carries, a foot that is off the ground is the same as one that has moved to where it bears
 * nothing. So each tie has a column in the response (one N of pull between its joints), each foot
 * one for each direction (one metre of movement), and a state of them is a small set of equations.
 */
#ifndef SOLVE_CONTACTS_H
#define SOLVE_CONTACTS_H

#include "solve/response.h"

struct contact_part { /* a tie, or one direction of a foot */
    int axis;         /* of a foot; -1 a tie */
    size_t column;
    double base;   /* N: pull of the tie or force of the ground, with all holding */
    double weight; /* of its column in the present state */
    bool gone;     /* let go, and free to move: false where nothing would resist and nothing acts */
};

enum contact_state {
    CONTACT_HOLDS,
    CONTACT_SLIDES, /* a foot that stands, but so lightly that it is held in z alone */
    CONTACT_OUT     /* a slack tie, a lifted foot */
};

struct contact {
    int tie, foot; /* member or support; -1 */
    size_t first, count;
    enum contact_state state;
};

struct contacts {
    struct response *response;
    struct contact *items; /* ties, then feet */
    size_t count, tie_count;
    struct contact_part *parts;
    size_t part_count;
    double small; /* N: forces under this are none */
};

/* The ties, and with `feet` the feet that can lift, of a mix of the columns of load sets. */
struct contacts contacts_of(struct arena *arena, struct response *response, const double *weights,
                            bool feet);

/* Weights of the parts of what has let go, so that they bear nothing. False where nothing else
 * holds the frame. Columns of feet that were not needed before are solved. */
bool contacts_solve(struct arena *arena, struct contacts *contacts);

/* N by which a contact is wrong in the present state: a tie in that is pushed, a standing foot that
 * is pulled; a tie out that would pull, a foot off the ground that is below it (by the force that
 * it would take to bring it back alone). Not over `small`: it is right. */
double contact_wrong(const struct contacts *contacts, size_t which);

#endif
