#include "in_arena.h"
#include "near.h"
#include "redo.h"

#include "report/check_text.h"
#include "report/layout.h"
#include "report/names.h"
#include "report/problem_text.h"
#include "report/result_json.h"
#include "report/span_text.h"
#include "report/substitute.h"
#include "report/table_text.h"
#include "report/visible.h"
#include "report/why_text.h"
#include "report/words.h"

#include <stdio.h>

TestSuite(layout, .init = set_up, .fini = tear_down);
TestSuite(check_text, .init = set_up, .fini = tear_down);
TestSuite(result_json, .init = set_up, .fini = tear_down);
TestSuite(why_text, .init = set_up, .fini = tear_down);
TestSuite(table_text, .init = set_up, .fini = tear_down);
TestSuite(span_text, .init = set_up, .fini = tear_down);
TestSuite(problem_text, .init = set_up, .fini = tear_down);

static bool has(const char *text, const char *part) {
    return strstr(text, part) != NULL;
}

#define HAS(text, part) cr_assert(has((text), (part)), "[%s] is not in [%s]", (part), (text))
#define HAS_NOT(text, part) cr_assert(!has((text), (part)), "[%s] is in [%s]", (part), (text))

static void lines_fit(const char *text) {
    for (const char *line = text; *line;) {
        size_t length = strcspn(line, "\n");
        const char *copy = arena_copy(arena, line, length);
        cr_assert(text_width(copy) <= LINE_WIDTH, "%zu wide: %s", text_width(copy), copy);
        cr_assert(length == 0 || line[length - 1] != ' ', "ends with a space: %s", copy);
        line += length + (line[length] == '\n');
    }
}

/* ---- layout ---- */

Test(layout, shows_what_could_steer_a_terminal) {
    SAME_TEXT(visible(arena, "a\x1b[31mb\n\x7f"), "a\\x1b[31mb\\x0a\\x7f");
    SAME_TEXT(visible(arena, "\xC2\x85\xE2\x80\xAE"), "\\x85\\u202e");
    SAME_TEXT(visible(arena, "\xFFz\xC3"), "\\xffz\\xc3");
    SAME_TEXT(visible(arena, "caf\xC3\xA9 \xF0\x9F\x8C\xB1"), "caf\xC3\xA9 \xF0\x9F\x8C\xB1");
    cr_assert(text_width("caf\xC3\xA9") == 4, "characters count, not bytes");
}

Test(layout, wraps_paragraphs_between_words) {
    struct text text = text_new(arena);
    for (int k = 0; k < 30; k++)
        text_add(&text, "seedling 7 in ");
    const char *words = text_string(&text);
    struct text out = text_new(arena);
    paragraph(&out, "  - ", 4, words);
    lines_fit(text_string(&out));
    HAS_NOT(text_string(&out), "7\n"); /* a number stays with its unit */
    HAS(text_string(&out), "\n    seedling");
}

Test(layout, keeps_long_names_whole) {
    static const size_t widths[] = {6, 10};
    struct text out = text_new(arena);
    row_of_cells(&out, 2, (const char *const[]){"short", "one two three"}, widths, 2);
    row_of_cells(&out, 2, (const char *const[]){"a-long-name", "one two"}, widths, 2);
    row_of_cells(&out, 2, (const char *const[]){"", "b"}, widths, 2);
    SAME_TEXT(text_string(&out), "  short   one two\n"
                                 "          three\n"
                                 "  a-long-name\n"
                                 "          one two\n"
                                 "          b\n");
}

/* ---- a result by hand ---- */

static struct check check_of(const char *id, const char *kind, double demand, double limit,
                             enum quantity quantity, enum verdict verdict, const char *place) {
    struct check check = {.id = id,
                          .kind = kind,
                          .where = strchr(id, '/') + 1,
                          .combination = "D+T",
                          .demand = demand,
                          .limit = limit,
                          .quantity = quantity,
                          .ratio = demand / limit,
                          .verdict = verdict,
                          .source = "NDS 2018 3.5",
                          .place = place,
                          .governs = "",
                          .advice = verdict == VERDICT_OK ? "" : "Stand the 1x2 on edge."};
    check.beside.words = "";
    return check;
}

static struct frame frame;

/* Sorted as the judge sorts: fails, not covered, close, ok; each by ratio. */
static struct result result_of(enum verdict verdict) {
    frame = (struct frame){.title = "Seedling stand"};
    static struct combination_result loaded = {.name = "D+T"};
    struct result result = {.frame = &frame,
                            .combinations = {&loaded, 1, 1},
                            .verdict = verdict,
                            .basis = "US allowable stress design",
                            .backward_error = 1e-15,
                            .equilibrium_error = NAN};
#define ADD(...) ARRAY_PUSH(arena, &result.checks, check_of(__VA_ARGS__))
    if (verdict == VERDICT_FAILS) {
        ADD("sag/lower/rail-1", "sag", 0.0053, 0.0038, QUANTITY_LENGTH, VERDICT_FAILS,
            "lower shelf, front rail");
        result.checks.items[0].beside.words = "the screws at its ends give";
        result.checks.items[0].beside.value = 0.0254;
        result.checks.items[0].beside.kind = QUANTITY_LENGTH;
    }
    if (verdict >= VERDICT_NOT_COVERED)
        ADD("screw/brace/fl0", "screw", 140.0, NAN, QUANTITY_WEIGHT, VERDICT_NOT_COVERED,
            "brace at the front left foot, where the name of the place is long");
    if (verdict >= VERDICT_CLOSE)
        ADD("bend/rail-1", "bend", 0.94, 1.0, QUANTITY_NUMBER, VERDICT_CLOSE, "front rail");
    ADD("sway/all", "sway", 2.0, 5.0, QUANTITY_NUMBER, VERDICT_OK, "the whole frame");
    ADD("sag/upper/rail-3", "sag", 0.00127, 0.00254, QUANTITY_LENGTH, VERDICT_OK, "upper shelf");
    ADD("sag/upper/rail-4", "sag", 0.00126, 0.00254, QUANTITY_LENGTH, VERDICT_OK, "rail-4");
    ADD("sag/upper/rail-5", "sag", 0.00125, 0.00254, QUANTITY_LENGTH, VERDICT_OK, "rail-5");
    ADD("odd/thing", "odd", 1.0, 2.0, QUANTITY_WEIGHT, VERDICT_OK, "");
#undef ADD
    ARRAY_PUSH(arena, &result.cautions, "Snow was not checked.");
    return result;
}

static const char *text_of(const struct result *result, bool all) {
    struct text text = text_new(arena);
    check_text(&text, result, &(struct check_text_options){.all = all, .frame_name = "stand.yaml"});
    lines_fit(text_string(&text));
    return text_string(&text);
}

static bool ends_with_cautions(const char *text) {
    static const char END[] = "\nWhat this does not know, and what to keep in mind\n"
                              "  - Snow was not checked.\n";
    size_t length = strlen(text);
    return length > strlen(END) && strcmp(text + length - strlen(END), END) == 0;
}

Test(check_text, says_first_whether_it_holds) {
    static const struct {
        enum verdict verdict;
        const char *start;
    } cases[] = {
        {VERDICT_OK, "Seedling stand holds: all 5 checks pass; the nearest to its limit is the "
                     "whole frame"},
        {VERDICT_CLOSE, "Seedling stand holds, but 1 of 6 checks is close to its limit;"},
        {VERDICT_NOT_COVERED, "Seedling stand: nothing fails, but 1 of 7 checks has no published "
                              "rule and cannot be"},
        {VERDICT_FAILS, "Seedling stand does not hold: 1 of 8 checks fails, 1 has no published "
                        "rule, 1 is close"}};
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++) {
        struct result result = result_of(cases[k].verdict);
        const char *text = text_of(&result, false);
        cr_assert(strncmp(text, cases[k].start, strlen(cases[k].start)) == 0, "%s", text);
        cr_assert(ends_with_cautions(text), "no cautions at the end: %s", text);
    }
}

Test(check_text, groups_by_question_and_folds_what_holds) {
    struct result result = result_of(VERDICT_FAILS);
    const char *text = text_of(&result, false);
    HAS(text, "\nDo the shelves hold?\n  lower shelf, front rail");
    HAS(text, "sags 0.21 in, may sag 0.15 in");
    HAS(text, "1.39 times  fails\n      Beside that: the screws at its ends give 1 in.\n"
              "      Stand the 1x2 on edge.\n      [sag/lower/rail-1] under D+T\n");
    HAS(text, "  upper shelf");
    HAS(text, "  and 2 more that hold (--all shows them)\n");
    HAS_NOT(text, "rail-4");
    HAS(text, "\nDo the sticks hold?\n  front rail               bending");
    HAS(text, "94 %");
    HAS(text, "stands until 5 times this load, must stand");
    HAS(text, "no rule\n");
    HAS(text, "\nWhat else?\n  thing");
    HAS(text, "batten why stand.yaml sag/lower/rail-1\n");
}

Test(check_text, shows_everything_when_asked) {
    struct result result = result_of(VERDICT_OK);
    const char *text = text_of(&result, true);
    HAS(text, "[sag/upper/rail-5] under D+T");
    HAS_NOT(text, "more that hold");
}

Test(check_text, never_passes_what_is_no_number) {
    struct check check = check_of("sag/a", "sag", NAN, 1.0, QUANTITY_LENGTH, VERDICT_FAILS, "a");
    SAME_TEXT(ratio_in_words(arena, &check), "far over");
    check.ratio = 1.001;
    SAME_TEXT(ratio_in_words(arena, &check), "just over");
    check.ratio = INFINITY;
    SAME_TEXT(share_of_limit(arena, &check), "far over its limit");
    check.ratio = 1.0;
    SAME_TEXT(share_of_limit(arena, &check), "100 % of its limit");
    check.ratio = 23.4;
    SAME_TEXT(ratio_in_words(arena, &check), "23 times");
}

Test(check_text, fills_in_both_numbers_or_one) {
    struct check check =
        check_of("lift/fl0", "lift", 44.482216152605, 0.0, QUANTITY_WEIGHT, VERDICT_FAILS, "foot");
    SAME_TEXT(numbers_in_words(arena, &check, UNITS_US), "lifts with 10 lb, held down with 0 lb");
    check.limit = NAN;
    SAME_TEXT(numbers_in_words(arena, &check, UNITS_US), "lifts with 10 lb");
    check.governs = "wind from the left";
    SAME_TEXT(numbers_in_words(arena, &check, UNITS_US), "lifts with 10 lb (wind from the left)");
    check.demand = NAN;
    SAME_TEXT(numbers_in_words(arena, &check, UNITS_US), "wind from the left");
}

Test(check_text, says_how_it_folds) {
    struct result result = result_of(VERDICT_FOLDS);
    static const struct motion motion = {"The top slides to the right.", NULL, 0, false, false};
    result.folding = (struct folding){
        .known = true, .ways = 2, .ways_with_panels = 1, .motions = &motion, .motion_count = 1};
    const char *text = text_of(&result, false);
    HAS(text, "Seedling stand folds up");
    HAS(text, "it can fold in 2 ways. Its sheets would stop 1 of them");
    HAS(text, "\nHow does it fold?\n  1. The top slides to the right.\n\nWhat stops it?\n");
    HAS_NOT(text, "Do the shelves hold?");
    cr_assert(ends_with_cautions(text), "%s", text);
}

Test(check_text, says_what_cannot_be_trusted) {
    struct result result = result_of(VERDICT_FAILED);
    result.trouble = "the loads and the feet do not balance";
    HAS(text_of(&result, false), "could not be judged: the loads and the feet do not balance. Do");
}

Test(check_text, shows_a_title_that_would_steer_the_terminal) {
    struct result result = result_of(VERDICT_OK);
    frame.title = "red \x1b[31m";
    const char *text = text_of(&result, false);
    HAS(text, "red \\x1b[31m holds");
    HAS_NOT(text, "\x1b");
    frame.title = "";
    HAS(text_of(&result, false), "This frame holds");
}

/* ---- JSON of a result ---- */

static const char *json_of(const struct result *result) {
    struct json *json = json_new(arena, (struct json_sink){0});
    result_json(json, result);
    return text_string(&json->text);
}

static void in_order(const char *text, const char *const *parts, size_t count) {
    const char *from = text;
    for (size_t k = 0; k < count; k++) {
        from = strstr(from, parts[k]);
        cr_assert_not_null(from, "%s is missing or too early in %s", parts[k], text);
    }
}

Test(result_json, keeps_the_order_of_the_keys) {
    static const char *const keys[] = {
        "\"batten\"", "\"title\"",        "\"verdict\"", "\"basis\"",       "\"checks\"",
        "\"id\"",     "\"kind\"",         "\"where\"",   "\"combination\"", "\"demand\"",
        "\"limit\"",  "\"unit\"",         "\"ratio\"",   "\"verdict\"",     "\"source\"",
        "\"cases\"",  "\"combinations\"", "\"folding\"", "\"accuracy\"",    "\"cautions\""};
    struct result result = result_of(VERDICT_FAILS);
    const char *text = json_of(&result);
    in_order(text, keys, sizeof keys / sizeof *keys);
    HAS(text, "\"demand\": 0.0053, \"limit\": 0.0038, \"unit\": \"m\", \"ratio\": 1.39");
    HAS(text, "\"demand\": 140, \"limit\": null, \"unit\": \"N\", \"ratio\": null, \"verdict\": "
              "\"not-covered\"");
    HAS(text, "\"accuracy\": {\"backward_error\": 1e-15, \"equilibrium_error\": null}");
    HAS(text, "\"folding\": {\"ways\": null, \"ways_with_panels\": null, \"self_stress\": null}");
}

Test(result_json, leaves_out_checks_where_it_folds) {
    struct result result = result_of(VERDICT_FOLDS);
    static struct joint joints[] = {{.name = "fl0"}, {.name = "fl3"}};
    static const struct joint_move move = {1, {0.5, -0.0, 0.25}};
    static const struct motion motion = {"The top slides.", &move, 1, false, false};
    frame.joints.items = joints;
    frame.joints.count = 2;
    result.folding = (struct folding){
        .known = true, .ways = 2, .ways_with_panels = 1, .motions = &motion, .motion_count = 1};
    const char *text = json_of(&result);
    HAS(text, "\"verdict\": \"folds\"");
    HAS(text, "\"checks\": []");
    HAS(text, "\"moves\": {\"fl3\": [0.5, 0, 0.25]}");
    HAS(text, "\"ways\": 2,\n    \"ways_with_panels\": 1,\n    \"self_stress\": null,");
}

Test(result_json, writes_solved_cases_and_combinations) {
    struct result result = result_of(VERDICT_OK);
    static struct joint joints[] = {{.name = "a"}};
    static struct member members[] = {{.name = "rail-1"}};
    static struct support supports[] = {{.joint = 0}};
    static double moves[1][6] = {{1, 2, 3, 4, 5, 6}}, holds[1][6] = {{-0.0, 0, 100, 0, 0, 0}};
    static double at[] = {0, 2}, zero[] = {0, 0}, shear[] = {-100, 100};
    static struct stations stations[] = {{2, at, zero, zero, shear, zero, zero, zero}};
    static const struct combination_part parts[] = {{"self", 1.0}, {"wind-left", 0.6}};
    frame.joints.items = joints;
    frame.members.items = members;
    frame.supports.items = supports;
    frame.joints.count = frame.members.count = frame.supports.count = 1;
    ARRAY_PUSH(arena, &result.cases,
               (struct case_result){.name = "snow"}); /* not solved: left out */
    ARRAY_PUSH(arena, &result.cases, (struct case_result){"tray", true, moves, holds, stations});
    ARRAY_PUSH(arena, &result.combinations,
               (struct combination_result){"D+W", parts, 2, 1.6, true, 12.5, NAN});
    const char *text = json_of(&result);
    HAS_NOT(text, "\"snow\"");
    HAS(text, "\"joints\": {\n        \"a\": [1, 2, 3, 4, 5, 6]\n      }");
    HAS(text, "\"reactions\": {\n        \"a\": [0, 0, 100, 0, 0, 0]\n      }");
    HAS(text, "\"rail-1\": {\"at\": [0, 2], \"N\": [0, 0], \"Vy\": [0, 0], \"Vz\": [-100, 100], "
              "\"T\": [0, 0], \"My\": [0, 0], \"Mz\": [0, 0]}");
    HAS(text, "\"D+W\": {\"parts\": {\"self\": 1, \"wind-left\": 0.6}, \"duration_factor\": 1.6, "
              "\"buckling_factor\": 12.5, \"buckling_factor_crept\": null}");
}

/* ---- the working ---- */

Test(why_text, replaces_whole_symbols_by_numbers) {
    static const struct symbol_number symbols[] = {{"Fb", "875"}, {"Fb*", "743.75"}, {"Fb'", "700"},
                                                   {"L", "-3"},   {"le/d", "20"},    {"Fb", "900"}};
    static const struct {
        const char *formula, *want;
    } cases[] = {{"Fb * 2", "900 * 2"},
                 {"Fb* * Fb'", "743.75 * 700"},
                 {"min(Fb, L^2)", "min(900, (-3)^2)"},
                 {"Fbe + Lx + xFb", "Fbe + Lx + xFb"},
                 {"Fb** / 1e6", "Fb** / 1e6"},
                 {"le/d / 2L", "20 / 2(-3)"}};
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++)
        SAME_TEXT(substituted(arena, cases[k].formula, symbols, 6), cases[k].want);
}

/* A simple beam: load, span, section, strength, ratio; numbers made up. */
static struct working *beam_working(void) {
    struct working *working = ARENA_NEW(arena, struct working);
    working->arena = arena;
    const double psi = 6894.757293168;
    double b = 0.01905, d = 0.0381;
    working_heading(working, "Load");
    double w = working_given(working, "w", "load along the rail", 150.0, QUANTITY_LINE_LOAD);
    double L = working_given(working, "L", "span", 0.876, QUANTITY_LENGTH);
    double M =
        working_step(working, "M", "moment", "w * L^2 / 8", w * L * L / 8, QUANTITY_MOMENT, "");
    working_heading(working, "Strength");
    working_given(working, "b", "thickness", b, QUANTITY_LENGTH);
    working_given(working, "d", "depth", d, QUANTITY_LENGTH);
    double S = working_step(working, "S", "section modulus", "b * d^2 / 6", b * d * d / 6,
                            QUANTITY_MODULUS, "");
    double Fb = working_cited(working, "Fb", "bending strength",
                              (struct cited){875 * psi, "NDS Supplement 2018 Table 4A", MARK_READ},
                              QUANTITY_STRESS);
    working_cited(working, "CM", "wet service", (struct cited){0.85, "Table 4A", MARK_MEMORY},
                  QUANTITY_NUMBER);
    double star = working_step(working, "Fb*", "with all factors but CL", "Fb * CM", Fb * 0.85,
                               QUANTITY_STRESS, "NDS 2018 3.3.3");
    double E = working_given(working, "FbE", "buckling strength", 1200 * psi, QUANTITY_STRESS);
    double q = E / star, half = (1 + q) / 1.9;
    double CL =
        working_step(working, "CL", "sideways buckling",
                     "(1 + FbE / Fb*) / 1.9 - sqrt(((1 + FbE / Fb*) / 1.9)^2 - "
                     "(FbE / Fb*) / 0.95)",
                     half - sqrt(half * half - q / 0.95), QUANTITY_NUMBER, "NDS 2018 3.3.3.8");
    double prime = working_step(working, "Fb'", "strength", "min(Fb* * CL, Fb*)", star * CL,
                                QUANTITY_STRESS, "");
    working_step(working, "ratio", "share used", "M / S / Fb'", M / S / prime, QUANTITY_NUMBER, "");
    return working;
}

/* The arithmetic of one equation as printed, lines joined: the part before the last equal sign
 * gives what stands behind it. */
static void redo_printed(const char *equation) {
    static const struct working none = {0};
    const char *result = strrchr(equation, '=');
    const char *before = result;
    while (before > equation && before[-1] != '=')
        before--;
    if (before == equation) /* symbol = result: a given value */
        return;
    struct redo redo = {&none, 0, arena_copy(arena, before, (size_t)(result - before))};
    double got = redo_sum(&redo), want = strtod(result + 1, NULL);
    cr_assert(redo_take(&redo, '\0') || *redo.at == '\0', "left over: %s", redo.at);
    cr_assert(is_near(got, want, 2e-4, 1e-9), "%s: redone %.7g", equation, got);
}

static size_t redo_all_printed(const char *text) {
    size_t count = 0;
    struct text equation = text_new(arena);
    for (const char *line = text; *line; line += strcspn(line, "\n") + 1) {
        size_t length = strcspn(line, "\n");
        bool indented = strncmp(line, "    ", 4) == 0;
        bool continued = indented && line[4] == ' ';
        if (!continued && equation.count) {
            redo_printed(text_string(&equation));
            equation = text_new(arena);
            count++;
        }
        if (indented)
            text_bytes(&equation, line, length);
    }
    return count;
}

Test(why_text, prints_arithmetic_that_comes_out) {
    for (int units = UNITS_US; units <= UNITS_SI; units++) {
        struct text text = text_new(arena);
        working_text(&text, beam_working(), (enum unit_system)units);
        lines_fit(text_string(&text));
        size_t count = redo_all_printed(text_string(&text));
        cr_assert(count == 13, "%zu equations in %s", count, text_string(&text));
    }
}

Test(why_text, names_sources_and_what_marks_mean) {
    struct result result = result_of(VERDICT_CLOSE);
    struct check *check = &result.checks.items[1];
    check->working = beam_working();
    struct text text = text_new(arena);
    why_text(&text, &result, check);
    lines_fit(text_string(&text));
    HAS(text_string(&text), "Fb = 875 psi   NDS Supplement 2018 Table 4A [read]\n");
    HAS(text_string(&text), "Fb* = Fb * CM = 875 * 0.85 = 743.75 psi   NDS 2018 3.3.3\n");
    HAS(text_string(&text), "  [memory] recalled");
    HAS_NOT(text_string(&text), "[trade]");
    cr_assert(ends_with_cautions(text_string(&text)), "%s", text_string(&text));
}

Test(why_text, json_has_values_in_si) {
    struct result result = result_of(VERDICT_CLOSE);
    struct check *check = &result.checks.items[1];
    check->working = beam_working();
    struct json *json = json_new(arena, (struct json_sink){0});
    why_json(json, check);
    const char *text = text_string(&json->text);
    static const char *const keys[] = {"\"id\"", "\"combination\"", "\"steps\"", "\"ratio\"",
                                       "\"verdict\""};
    in_order(text, keys, sizeof keys / sizeof *keys);
    HAS(text, "{\"symbol\": \"w\", \"words\": \"load along the rail\", \"formula\": null, "
              "\"value\": 150, \"unit\": \"N/m\", \"source\": \"\", \"mark\": null}");
    HAS(text, "\"source\": \"Table 4A\", \"mark\": \"memory\"}");
    HAS(text, "{\"symbol\": \"\", \"words\": \"Load\", \"formula\": null, \"value\": null");
}

/* ---- tables, spans, problems ---- */

Test(table_text, lists_every_table_and_prints_each) {
    struct text list = text_new(arena);
    table_list_text(&list);
    lines_fit(text_string(&list));
    for (size_t k = 0; k < table_count(); k++) {
        HAS(text_string(&list), table_at(k)->name);
        struct text text = text_new(arena);
        table_text(&text, table_at(k));
        lines_fit(text_string(&text));
        for (size_t j = 0; j < table_at(k)->count; j++)
            HAS(text_string(&text), table_at(k)->rows[j].row);
    }
    HAS(text_string(&list), "spruce-pine-fir, spruce-pine-fir-south");
    HAS(text_string(&list), "select-structural, no-1");
}

Test(table_text, json_names_what_the_format_accepts) {
    struct json *json = json_new(arena, (struct json_sink){0});
    table_list_json(json, arena);
    HAS(text_string(&json->text), "\"shapes\": [\"stand\", \"lean-to\"");
    const struct name_list *sizes = name_list_find(arena, "sizes");
    cr_assert_not_null(sizes);
    cr_assert((int)sizes->count == table_size_count(), "%zu sizes", sizes->count);
    cr_assert_null(name_list_find(arena, "nothing"));
    struct json *one = json_new(arena, (struct json_sink){0});
    table_json(one, table_find("grounds"));
    HAS(text_string(&one->text), "{\"row\": \"paving\", \"value\": \"0.40\", \"unit\": \"1\"");
}

static struct span_answer one_row(const struct span_question *question) {
    struct span_row *row = ARENA_NEW(arena, struct span_row);
    *row = (struct span_row){.size = table_size(question->size),
                             .span = 3.2,
                             .governs = SPAN_BEND,
                             .bend = 3.2,
                             .sag = INFINITY,
                             .shear = 8.125,
                             .note = "judged as no-3: an assumption",
                             .working = beam_working()};
    return (struct span_answer){row, 1};
}

Test(span_text, says_what_decides) {
    struct span_question question = {.size = table_size_find("2x6"),
                                     .species = table_species_find("spruce-pine-fir"),
                                     .grade = table_grade_find("no-2"),
                                     .live = 957.605,
                                     .spacing = 0.6096,
                                     .sag_divisor = 240,
                                     .duration = DURATION_TEN_YEARS};
    struct span_answer answer = one_row(&question);
    struct text text = text_new(arena);
    span_text(&text, &question, &answer);
    lines_fit(text_string(&text));
    HAS(text_string(&text), "24 in apart; 20 psf\nlive and 0 psf dead load");
    HAS(text_string(&text), "sag at most span/240 under all load, with creep");
    HAS(text_string(&text), "10 ft 6 in");
    HAS(text_string(&text), "bending decides");
    HAS(text_string(&text), "sag any");
    HAS(text_string(&text), "judged as no-3");
    HAS(text_string(&text), "The working of 2x6");
    HAS(text_string(&text), "local codes");
    struct json *json = json_new(arena, (struct json_sink){0});
    span_json(json, &answer);
    SAME_TEXT(text_string(&json->text),
              "{\n  \"rows\": [\n    {\"size\": \"2x6\", \"stands\": \"on-edge\", \"span\": 3.2, "
              "\"governs\": \"bend\", \"spans\": {\"bend\": 3.2, \"sag\": null, \"shear\": "
              "8.125}}\n  ]\n}\n");
}

Test(problem_text, names_the_place_and_stops_at_fifty) {
    struct problems problems = problems_new(arena);
    problem_add(&problems, (struct place){12, 5}, "members.rail-1.from", "no joint \x1b[2J");
    problem_add(&problems, (struct place){0, 0}, "", "cannot be read");
    struct text text = text_new(arena);
    problem_text(&text, "bench.yaml", &problems);
    SAME_TEXT(text_string(&text), "bench.yaml:12:5: members.rail-1.from: no joint \\x1b[2J\n"
                                  "bench.yaml: cannot be read\n");
    struct json *json = json_new(arena, (struct json_sink){0});
    problem_json(json, &problems);
    HAS(text_string(&json->text), "{\"line\": 12, \"column\": 5, \"key\": \"members.rail-1.from\", "
                                  "\"message\": \"no joint \\u001b[2J\"}");
    HAS(text_string(&json->text), "{\"line\": null, \"column\": null, \"key\": \"\"");
    HAS_NOT(text_string(&json->text), "more");
    for (int k = 0; k < 60; k++)
        problem_add(&problems, (struct place){20 + k, 1}, "a", "b");
    struct text many = text_new(arena);
    problem_text(&many, "bench.yaml", &problems);
    HAS(text_string(&many), "bench.yaml:67:1: a: b\nand 12 more\n");
    HAS_NOT(text_string(&many), "bench.yaml:68:");
    struct json *capped = json_new(arena, (struct json_sink){0});
    problem_json(capped, &problems);
    HAS(text_string(&capped->text), "],\n  \"more\": 12\n}");
}
