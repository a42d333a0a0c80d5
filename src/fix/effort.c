#include "fix/effort.h"

#include <math.h>

static const double BOARD_FOOT = 0.3048 * 0.3048 * 0.0254; /* m3 */

double board_feet(double cubic_metres) {
    return cubic_metres / BOARD_FOOT;
}

double effort_of(const char *row) {
    return table_constant(row).value;
}

static double area(const struct stick *stick) {
    return stick->has_size ? stick->thickness * stick->width : stick->section.A;
}

double stick_wood(const struct work *work, int stick) {
    return board_feet(area(&work->frame->sticks.items[stick]) * work->lengths[stick]);
}

double piece_effort(const struct work *work, int stick, double length) {
    return effort_of("fix-piece") + board_feet(area(&work->frame->sticks.items[stick]) * length);
}

struct effort set_guide(const struct work *work, const struct set *set) {
    struct effort effort = {0, 0, 0};
    for (size_t k = 0; k < work->slot_count; k++) {
        if (!set->level[k])
            continue;
        const struct option *option = &work->slots[k].items[set->level[k] - 1];
        effort.trays += option->trays;
        effort.milli += lround(1000.0 * option->effort);
        if (work->by_price)
            effort.money += lround(1000.0 * option->money);
    }
    return effort;
}

/* No price: dearer than anything. */
static long thousandths(double money) {
    static const double most = 1e12;
    return lround(1000.0 * (money < most ? money : most));
}

struct effort set_effort(struct work *work, const struct set *set) {
    struct effort effort = set_guide(work, set);
    if (work->by_price)
        effort.money = thousandths(set_bill_known(work, set).all - work->described_bill);
    return effort;
}

struct effort set_bound(struct work *work, const struct set *set) {
    struct effort effort = set_guide(work, set);
    if (work->by_price)
        effort.money = thousandths(set_bill_known(work, set).sticks - work->described_bill);
    return effort;
}

int effort_compare(struct effort a, struct effort b) {
    if (a.trays != b.trays)
        return a.trays < b.trays ? -1 : 1;
    if (a.money != b.money)
        return a.money < b.money ? -1 : 1;
    return (a.milli > b.milli) - (a.milli < b.milli);
}
