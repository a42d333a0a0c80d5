#include "solve/stance.h"

#include "solve/contacts.h"

enum { FEW = 12 };

/* The contact from `first` to `last` - 1 that is most wrong; `last` where none is. */
static size_t most_wrong(const struct contacts *contacts, size_t first, size_t last) {
    double worst = contacts->small;
    size_t which = last;
    for (size_t k = first; k < last; k++) {
        double wrong = contact_wrong(contacts, k);
        if (wrong > worst) {
            worst = wrong;
            which = k;
        }
    }
    return which;
}

/* Let go what holds; what is out comes back to the state `back`. */
static void change(struct contact *contact, enum contact_state back) {
    contact->state = contact->state == CONTACT_OUT ? back : CONTACT_OUT;
}

static enum contact_state state_of_bit(size_t state, size_t bit) {
    return (state >> bit) & 1 ? CONTACT_OUT : CONTACT_HOLDS;
}

/* Change tie by tie until none is wrong, feet as they are. */
static bool settle_ties(struct arena *arena, struct contacts *contacts) {
    for (size_t pass = 0; pass < 4 * contacts->tie_count + 8; pass++) {
        if (!contacts_solve(arena, contacts))
            return false;
        size_t which = most_wrong(contacts, 0, contacts->tie_count);
        if (which == contacts->tie_count)
            return true;
        change(&contacts->items[which], CONTACT_HOLDS);
    }
    return false;
}

static void all_hold(struct contacts *contacts) {
    for (size_t k = 0; k < contacts->count; k++)
        contacts->items[k].state = CONTACT_HOLDS;
}

/* Every state of a few ties; the first that stands. */
static bool try_ties(struct arena *arena, struct contacts *contacts) {
    if (contacts->tie_count > FEW)
        return false;
    for (size_t state = 0; state < (size_t)1 << contacts->tie_count; state++) {
        for (size_t i = 0; i < contacts->tie_count; i++)
            contacts->items[i].state = state_of_bit(state, i);
        if (contacts_solve(arena, contacts) &&
            most_wrong(contacts, 0, contacts->tie_count) == contacts->tie_count)
            return true;
    }
    return false;
}

/* All feet that are wrong change at once, or the worst alone; those that sink come back to `back`.
 * False where that does not rest. */
static bool settle_feet(struct arena *arena, struct contacts *contacts, bool one_by_one,
                        enum contact_state back) {
    all_hold(contacts);
    for (size_t pass = 0; pass < 4 * contacts->count + 8; pass++) {
        if (!settle_ties(arena, contacts))
            return false;
        size_t worst = most_wrong(contacts, contacts->tie_count, contacts->count);
        if (worst == contacts->count)
            return true;
        bool *wrong = ARENA_ARRAY(arena, bool, contacts->count);
        for (size_t k = contacts->tie_count; k < contacts->count; k++)
            wrong[k] = one_by_one ? k == worst : contact_wrong(contacts, k) > contacts->small;
        for (size_t k = contacts->tie_count; k < contacts->count; k++)
            if (wrong[k])
                change(&contacts->items[k], back);
    }
    return false;
}

static size_t bits(size_t state) {
    size_t count = 0;
    for (; state; state &= state - 1)
        count++;
    return count;
}

/* What is loose stays so when more lets go. */
static bool holds_one(const size_t *loose, size_t count, size_t state) {
    for (size_t k = 0; k < count; k++)
        if ((state & loose[k]) == loose[k])
            return true;
    return false;
}

/* Every state of a few feet, those with the fewest lifted first. */
static bool try_feet(struct arena *arena, struct contacts *contacts) {
    size_t feet = contacts->count - contacts->tie_count, loose_count = 0;
    size_t *loose = feet <= FEW ? ARENA_ARRAY(arena, size_t, (size_t)1 << feet) : NULL;
    for (size_t lifted = 0; feet <= FEW && lifted <= feet; lifted++)
        for (size_t state = 0; state < (size_t)1 << feet; state++) {
            if (bits(state) != lifted || holds_one(loose, loose_count, state))
                continue;
            all_hold(contacts);
            for (size_t i = 0; i < feet; i++)
                contacts->items[contacts->tie_count + i].state = state_of_bit(state, i);
            if (!settle_ties(arena, contacts)) {
                if (contacts->tie_count == 0)
                    loose[loose_count++] = state;
            } else if (most_wrong(contacts, contacts->tie_count, contacts->count) ==
                       contacts->count) {
                return true;
            }
        }
    return false;
}

static void tell_foot(const struct contacts *contacts, const struct contact *contact,
                      struct stance *stance) {
    stance->lifted[contact->foot] = contact->state == CONTACT_OUT;
    for (size_t p = 0; p < contact->count; p++) {
        const struct contact_part *part = &contacts->parts[contact->first + p];
        stance->freed[contact->foot][part->axis] = part->gone;
    }
}

static void tell(struct arena *arena, const struct contacts *contacts, struct stance *stance) {
    const struct model *model = contacts->response->system->model;
    *stance = (struct stance){0};
    if (contacts->tie_count)
        stance->slack = ARENA_ARRAY(arena, bool, model->member_count);
    for (size_t k = 0; k < contacts->count; k++) {
        const struct contact *contact = &contacts->items[k];
        if (contact->tie >= 0)
            stance->slack[contact->tie] = contact->state == CONTACT_OUT;
        else
            stance->let_go += contact->state != CONTACT_HOLDS;
    }
    if (stance->let_go == 0)
        return;
    size_t supports = model->frame->supports.count;
    stance->lifted = ARENA_ARRAY(arena, bool, supports);
    stance->freed = arena_take(arena, supports, sizeof *stance->freed);
    for (size_t k = contacts->tie_count; k < contacts->count; k++)
        if (contacts->items[k].state != CONTACT_HOLDS)
            tell_foot(contacts, &contacts->items[k], stance);
}

/* Trying every state takes a moment where there are more than a few: it then comes last. */
static bool settle_all(struct arena *arena, struct contacts *contacts) {
    enum { QUICK = 6 };
    bool quick = contacts->count - contacts->tie_count <= QUICK;
    return settle_feet(arena, contacts, false, CONTACT_HOLDS) ||
           settle_feet(arena, contacts, true, CONTACT_HOLDS) ||
           (quick && try_feet(arena, contacts)) ||
           settle_feet(arena, contacts, true, CONTACT_SLIDES) ||
           (!quick && try_feet(arena, contacts));
}

bool stance_settle(struct arena *arena, struct response *response, enum feet feet, double *weights,
                   struct stance *stance) {
    struct contacts contacts = contacts_of(arena, response, weights, feet == FEET_PUSH);
    bool stands = contacts.count == contacts.tie_count
                      ? settle_ties(arena, &contacts) || try_ties(arena, &contacts)
                      : settle_all(arena, &contacts);
    if (!stands)
        return false;
    for (size_t p = 0; p < contacts.part_count; p++)
        weights[contacts.parts[p].column] = contacts.parts[p].weight;
    if (stance)
        tell(arena, &contacts, stance);
    return true;
}
