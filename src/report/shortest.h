/* report/shortest.h - the shortest decimal that reads back as the same double.
 *
 * Method: R. Giulietti, "The Schubfach way to render doubles" (2020): of the decimals inside the
 * rounding interval of the double, the one with the fewest digits, and of those the nearest. The
 * 128-bit powers of ten that it needs are worked out on first use and kept in the caller's table.
 * No locale, no library number formatting.
 */
#ifndef REPORT_SHORTEST_H
#define REPORT_SHORTEST_H

#include <stddef.h>
#include <stdint.h>

enum { SHORTEST_LOWEST = -292, SHORTEST_HIGHEST = 324, SHORTEST_ROOM = 32 };

/* 10^k = significand x 2^r, the significand rounded up to 128 bits; high is 0 until worked out. */
struct power_of_ten {
    uint64_t high, low;
};
struct powers_of_ten {
    struct power_of_ten items[SHORTEST_HIGHEST - SHORTEST_LOWEST + 1]; /* zeroed by the owner */
};

/* Write a finite `value` with a terminating 0 into `out` (SHORTEST_ROOM bytes); returns the length.
 * -0 gives "0"; exponents ("1e-15") below 1e-5 and from 1e17 up. */
size_t shortest_write(struct powers_of_ten *powers, double value, char *out);

#endif
