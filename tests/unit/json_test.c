#include "in_arena.h"
#include "near.h"

#include "report/json_write.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

TestSuite(shortest, .init = set_up, .fini = tear_down);
TestSuite(json, .init = set_up, .fini = tear_down);

/* ---- numbers ---- */

static const char *shortest_text(double value) {
    static struct powers_of_ten powers;
    static char out[SHORTEST_ROOM];
    size_t length = shortest_write(&powers, value, out);
    cr_assert(length == strlen(out), "length %zu of %s", length, out);
    return out;
}

Test(shortest, writes_known_numbers) {
    static const struct {
        double value;
        const char *text;
    } cases[] = {{0.0, "0"},
                 {-0.0, "0"},
                 {1.0, "1"},
                 {-1.39, "-1.39"},
                 {0.0053, "0.0053"},
                 {0.1, "0.1"},
                 {100.0, "100"},
                 {1e-5, "0.00001"},
                 {9.9e-6, "9.9e-6"},
                 {1e-15, "1e-15"},
                 {1e16, "10000000000000000"},
                 {1e17, "1e17"},
                 {1e22, "1e22"},
                 {1e23, "1e23"},
                 {5e-324, "5e-324"},
                 {0x1p-44, "5.684341886080802e-14"},
                 {2.2250738585072014e-308, "2.2250738585072014e-308"},
                 {1.7976931348623157e308, "1.7976931348623157e308"},
                 {1.0 / 3.0, "0.3333333333333333"},
                 {0.1 + 0.2, "0.30000000000000004"}};
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++)
        SAME_TEXT(shortest_text(cases[k].value), cases[k].text);
}

static int digits_of(const char *text) {
    char digits[64];
    int count = 0, first = 0;
    for (; *text && *text != 'e'; text++)
        if (*text >= '0' && *text <= '9')
            digits[count++] = *text;
    while (first < count && digits[first] == '0')
        first++;
    while (count > first && digits[count - 1] == '0')
        count--;
    return count - first;
}

/* Against the C library: reads back the same, and no fewer digits would. */
Test(shortest, reads_back_and_is_shortest) {
    uint64_t state = UINT64_C(88172645463325252);
    for (int k = 0; k < 100000; k++) {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        double value;
        memcpy(&value, &state, sizeof value);
        if (k % 2)
            value = (double)(int64_t)(state >> 34) / 1000.0;
        if (k % 16 == 0)
            value = ldexp(1.0, (int)(state % 2098) - 1074);
        if (!isfinite(value))
            continue;
        const char *text = shortest_text(value);
        cr_assert(strtod(text, NULL) == value, "%s is not %.17g", text, value);
        char fewer[64];
        int digits = digits_of(text);
        if (digits < 2)
            continue;
        snprintf(fewer, sizeof fewer, "%.*e", digits - 2, value);
        cr_assert(strtod(fewer, NULL) != value, "%s is longer than %s", text, fewer);
    }
}

/* ---- documents ---- */

Test(json, lays_out_lines_and_single_lines) {
    struct json *json = json_new(arena, (struct json_sink){0});
    json_object(json, JSON_LINES);
    json_key_string(json, "title", "a");
    json_key(json, "list");
    json_list(json, JSON_LINES);
    json_object(json, JSON_ONE_LINE);
    json_key(json, "at");
    json_list(json, JSON_LINES); /* inside one line: stays in it */
    json_number(json, -0.0);
    json_number(json, NAN);
    json_number(json, INFINITY);
    json_close(json);
    json_close(json);
    json_bool(json, true);
    json_close(json);
    json_key(json, "empty");
    json_object(json, JSON_LINES);
    json_close(json);
    json_key_string(json, "none", NULL);
    json_close(json);
    json_end(json);
    SAME_TEXT(text_string(&json->text), "{\n"
                                        "  \"title\": \"a\",\n"
                                        "  \"list\": [\n"
                                        "    {\"at\": [0, null, null]},\n"
                                        "    true\n"
                                        "  ],\n"
                                        "  \"empty\": {},\n"
                                        "  \"none\": null\n"
                                        "}\n");
}

static const char *string_text(const char *string) {
    struct json *json = json_new(arena, (struct json_sink){0});
    json_string(json, string);
    return text_string(&json->text);
}

Test(json, escapes_strings) {
    SAME_TEXT(string_text("plain"), "\"plain\"");
    SAME_TEXT(string_text("a \"b\" \\ c"), "\"a \\\"b\\\" \\\\ c\"");
    SAME_TEXT(string_text("x\n\x1b[31m\x7f"), "\"x\\u000a\\u001b[31m\\u007f\"");
    SAME_TEXT(string_text("3\xC3\x97\xE2\x82\xAC\xF0\x9F\x8C\xB1"),
              "\"3\xC3\x97\xE2\x82\xAC\xF0\x9F\x8C\xB1\"");
    SAME_TEXT(string_text("\xFF"
                          "a\xC3"),
              "\"\xEF\xBF\xBD"
              "a\xEF\xBF\xBD\"");
    SAME_TEXT(string_text("\xC0\x80\xED\xA0\x80"), "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"
                                                   "\xEF\xBF\xBD\xEF\xBF\xBD\"");
}

struct taken {
    size_t bytes, calls;
    char last;
};

static void take(void *to, const char *bytes, size_t length) {
    struct taken *taken = to;
    taken->bytes += length;
    taken->calls++;
    taken->last = bytes[length - 1];
}

static void many_numbers(struct json *json) {
    json_list(json, JSON_LINES);
    for (int k = 0; k < 50000; k++)
        json_number(json, k / 7.0);
    json_close(json);
    json_end(json);
}

Test(json, hands_on_everything_in_blocks) {
    struct taken taken = {0, 0, 0};
    many_numbers(json_new(arena, (struct json_sink){take, &taken}));
    struct json *whole = json_new(arena, (struct json_sink){0});
    many_numbers(whole);
    cr_assert(taken.bytes == whole->text.count, "%zu of %zu bytes", taken.bytes, whole->text.count);
    cr_assert(taken.calls > 5, "%zu blocks", taken.calls);
    cr_assert(taken.last == '\n', "ends with a newline");
}
