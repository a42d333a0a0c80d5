/* What one person carries, against worked numbers of the lifting equation (loads page 7). */
#include "check/carry.h"

#include "in_arena.h"
#include "near.h"
#include "redo.h"

TestSuite(carry, .init = set_up, .fini = tear_down);

static const double INCH = 0.0254, POUND = 0.45359237;

static struct lift lift(double reach, double height, double travel, enum grip grip) {
    return (struct lift){reach * INCH, height * INCH, travel * INCH, 0.0, grip};
}

/* 51 lb where every multiplier is 1. */
Test(carry, best_posture_is_51_lb) {
    struct lift best = lift(10, 30, 0, GRIP_GOOD);
    NEAR_REL(lift_limit(&best, NULL), 51 * POUND, 1e-9);
    best.reach = 6 * INCH; /* nearer counts as 10 in */
    NEAR_REL(lift_limit(&best, NULL), 51 * POUND, 1e-9);
}

/* A tray, 13.5 in out, from a bench at 30 in to a shelf at 60 in: HM 0.741, DM 0.88, 33.2 lb at the
 * bench, VM 0.775 and 25.8 lb at the shelf. */
Test(carry, tray_from_bench_to_shelf) {
    struct lift bench = lift(13.5, 30, 30, GRIP_FAIR), shelf = lift(13.5, 60, 30, GRIP_FAIR);
    NEAR_ABS(lift_limit(&bench, NULL) / POUND, 33.2, 0.05);
    NEAR_ABS(lift_limit(&shelf, NULL) / POUND, 25.8, 0.05);
    NEAR_REL(lift_limit(&shelf, NULL) / lift_limit(&bench, NULL), 0.775, 1e-9);
}

/* The same from the floor: V 2, H 15.5, D 28, fair grip: 51 x 0.645 x 0.79 x 0.884 x 0.95 = 21.8
 * lb.
 */
Test(carry, tray_from_the_floor) {
    struct lift floor = lift(15.5, 2, 28, GRIP_FAIR);
    NEAR_ABS(lift_limit(&floor, NULL) / POUND, 21.8, 0.05);
}

/* AM = 1 - 0.0032 A: 0.71 at 90 degrees (the worksheet's own table). */
Test(carry, turning_takes_away) {
    struct lift turned = lift(10, 30, 0, GRIP_GOOD);
    turned.turn = 90 * 0.017453292519943295;
    NEAR_ABS(lift_limit(&turned, NULL) / POUND, 51 * 0.712, 1e-6);
    turned.turn = 136 * 0.017453292519943295;
    cr_assert(lift_limit(&turned, NULL) == 0.0);
}

/* Beyond 25 in, 70 in and 70 in nothing is left; and nothing is ever a pass. */
Test(carry, nothing_is_left_beyond_the_limits) {
    struct lift far = lift(25.1, 30, 0, GRIP_GOOD), high = lift(10, 70.1, 0, GRIP_GOOD);
    struct lift long_way = lift(10, 30, 70.1, GRIP_GOOD), unknown = lift(10, NAN, 0, GRIP_GOOD);
    cr_assert(lift_limit(&far, NULL) == 0.0 && lift_limit(&high, NULL) == 0.0);
    cr_assert(lift_limit(&long_way, NULL) == 0.0 && lift_limit(&unknown, NULL) == 0.0);
    struct carried deep = {.weight = 1.0, .depth = 40 * INCH, .top = 1.0};
    cr_assert(!(check_carry(&deep, NULL).ratio <= 1.0));
    struct carried nothing = {.weight = NAN, .depth = 0.1, .top = 1.0};
    cr_assert(!(check_carry(&nothing, NULL).ratio <= 1.0));
}

/* A side frame 1-1/2 in deep and 48 in high, 20 lb: held close at knuckle height, 20 of 51 lb. A
 * box 24 in deep, its top at 19.5 in: H 20, V 19.5, D 10.5: 51 x 0.5 x 0.92125 x 0.991429 x 0.95 =
 * 22.126 lb. */
Test(carry, parts_of_a_frame) {
    struct carried side = {.weight = 20 * POUND, .depth = 1.5 * INCH, .top = 48 * INCH};
    struct carried box = {.weight = 20 * POUND, .depth = 24 * INCH, .top = 19.5 * INCH};
    NEAR_REL(check_carry(&side, NULL).ratio, 20.0 / 51.0, 1e-9);
    NEAR_ABS(check_carry(&box, NULL).limit / POUND, 22.126, 0.001);
    cr_assert(check_carry(&box, NULL).quantity == QUANTITY_MASS);
}

Test(carry, working_can_be_redone) {
    struct carried box = {.weight = 9.0, .depth = 0.6, .top = 0.5};
    struct carried low = {.weight = 9.0, .depth = 0.1, .top = 0.2};
    struct working working = {.arena = arena};
    check_carry(&box, &working);
    check_carry(&low, &working);
    cr_assert(redo_all(&working) >= 12);
}
