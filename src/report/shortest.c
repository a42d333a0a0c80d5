#include "report/shortest.h"

#include <stdbool.h>
#include <string.h>

__extension__ typedef unsigned __int128 wide;

/* Exact whole numbers up to 5^324 x 2^128 and 2^1024, lowest word first. */
enum { WORDS = 18, FIVES_AT_ONCE = 27 };
struct whole {
    uint64_t words[WORDS];
};

static uint64_t five_to(int exponent) {
    uint64_t power = 1;
    for (int k = 0; k < exponent; k++)
        power *= 5;
    return power;
}

static void multiply(struct whole *whole, uint64_t by) {
    wide carry = 0;
    for (int k = 0; k < WORDS; k++) {
        carry += (wide)whole->words[k] * by;
        whole->words[k] = (uint64_t)carry;
        carry >>= 64;
    }
}

/* Dividing in steps is exact: floor(floor(x / a) / b) is floor(x / ab). */
static void divide(struct whole *whole, uint64_t by) {
    wide rest = 0;
    for (int k = WORDS - 1; k >= 0; k--) {
        rest = rest << 64 | whole->words[k];
        whole->words[k] = (uint64_t)(rest / by);
        rest %= by;
    }
}

/* The 64 bits that end below bit `end`. */
static uint64_t bits_below(const struct whole *whole, int end) {
    int start = end - 64, word = start / 64, shift = start % 64;
    uint64_t bits = whole->words[word] >> shift;
    if (shift)
        bits |= whole->words[word + 1] << (64 - shift);
    return bits;
}

static int top_bit(const struct whole *whole) {
    int word = WORDS - 1;
    while (!whole->words[word])
        word--;
    int bit = 63;
    while (!(whole->words[word] >> bit))
        bit--;
    return word * 64 + bit;
}

/* 10^k and 5^k have the same significand. Rounded up, as the method asks; 5^k for k up to 55 fits
 * and is exact, every other one is not. */
static struct power_of_ten work_out(int k) {
    struct whole whole = {{0}};
    whole.words[k < 0 ? WORDS - 2 : 2] = 1; /* room for 128 bits below the top of any of them */
    for (int left = k < 0 ? -k : k; left > 0; left -= FIVES_AT_ONCE) {
        uint64_t power = five_to(left < FIVES_AT_ONCE ? left : FIVES_AT_ONCE);
        if (k < 0)
            divide(&whole, power);
        else
            multiply(&whole, power);
    }
    int end = top_bit(&whole) + 1;
    struct power_of_ten power = {bits_below(&whole, end), bits_below(&whole, end - 64)};
    if (k < 0 || k > 55)
        power.high += ++power.low == 0;
    return power;
}

static struct power_of_ten power_of(struct powers_of_ten *powers, int k) {
    struct power_of_ten *power = &powers->items[k - SHORTEST_LOWEST];
    if (!power->high)
        *power = work_out(k);
    return *power;
}

/* The top of power x c, with the last bit set where anything was cut off. */
static uint64_t scaled(struct power_of_ten power, uint64_t c) {
    wide low = (wide)power.low * c;
    wide high = (wide)power.high * c + (uint64_t)(low >> 64);
    return (uint64_t)(high >> 64) | ((uint64_t)high > 1);
}

struct decimal {
    uint64_t digits;
    int exponent;
};

/* floor(log2 10^k) and floor(log10 2^q), floor(log10 (3/4 2^q)) in whole numbers. */
static int log2_of_power(int k) {
    return (int)((k * INT64_C(1741647)) >> 19);
}
static int log10_of_binary(int q, bool uneven) {
    return (int)((q * INT64_C(1262611) - (uneven ? 524031 : 0)) >> 22);
}

static struct decimal shortest(struct powers_of_ten *powers, uint64_t fraction, int biased) {
    uint64_t c = biased ? fraction | UINT64_C(1) << 52 : fraction;
    int q = (biased ? biased : 1) - 1075;
    bool uneven = fraction == 0 && biased > 1; /* the neighbour below is at half the distance */
    uint64_t outside = c & 1;                  /* the interval's ends belong to even numbers only */
    int k = log10_of_binary(q, uneven);
    int shift = q + log2_of_power(-k) + 1;
    struct power_of_ten power = power_of(powers, -k);
    /* Four times the lower end, the number and the upper end, in units of 10^k. */
    uint64_t lower = scaled(power, (4 * c - 2 + uneven) << shift) + outside;
    uint64_t middle = scaled(power, (4 * c) << shift);
    uint64_t upper = scaled(power, (4 * c + 2) << shift) - outside;

    uint64_t s = middle / 4;
    if (s >= 10) { /* one digit fewer? */
        uint64_t t = s / 10;
        bool down = lower <= 40 * t, up = 40 * t + 40 <= upper;
        if (down != up)
            return (struct decimal){t + up, k + 1};
    }
    bool down = lower <= 4 * s, up = 4 * s + 4 <= upper;
    if (down != up)
        return (struct decimal){s + up, k};
    uint64_t half = 4 * s + 2;
    return (struct decimal){s + (middle > half || (middle == half && s % 2)), k};
}

static size_t write_digits(uint64_t digits, char *out) {
    char reversed[24];
    size_t count = 0;
    do
        reversed[count++] = (char)('0' + digits % 10);
    while (digits /= 10);
    for (size_t k = 0; k < count; k++)
        out[k] = reversed[count - 1 - k];
    return count;
}

static size_t write_exponent(int exponent, char *out) {
    size_t length = 0;
    out[length++] = 'e';
    if (exponent < 0)
        out[length++] = '-';
    return length + write_digits((uint64_t)(exponent < 0 ? -exponent : exponent), out + length);
}

/* `count` digits stand in `digits`; the first one is worth 10^first. */
static size_t lay_out(const char *digits, size_t count, int first, char *out) {
    size_t length = 0;
    if (first < -5 || first >= 17) {
        out[length++] = digits[0];
        if (count > 1) {
            out[length++] = '.';
            memcpy(out + length, digits + 1, count - 1);
            length += count - 1;
        }
        return length + write_exponent(first, out + length);
    }
    if (first < 0) {
        memcpy(out, "0.00000", (size_t)(1 - first));
        length = (size_t)(1 - first);
        memcpy(out + length, digits, count);
        return length + count;
    }
    size_t whole = (size_t)first + 1;
    for (size_t k = 0; k < whole; k++)
        out[length++] = k < count ? digits[k] : '0';
    if (count > whole) {
        out[length++] = '.';
        memcpy(out + length, digits + whole, count - whole);
        length += count - whole;
    }
    return length;
}

size_t shortest_write(struct powers_of_ten *powers, double value, char *out) {
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    size_t length = 0;
    if (bits << 1 == 0)
        out[length++] = '0';
    else {
        if (bits >> 63)
            out[length++] = '-';
        struct decimal decimal =
            shortest(powers, bits & ((UINT64_C(1) << 52) - 1), (int)(bits >> 52 & 0x7ff));
        while (decimal.digits % 10 == 0) {
            decimal.digits /= 10;
            decimal.exponent++;
        }
        char digits[24];
        size_t count = write_digits(decimal.digits, digits);
        length += lay_out(digits, count, decimal.exponent + (int)count - 1, out + length);
    }
    out[length] = '\0';
    return length;
}
