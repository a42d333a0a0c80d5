#include "in_arena.h"
#include "near.h"

#include "report/brace_json.h"
#include "report/brace_text.h"
#include "report/brace_words.h"
#include "report/check_text.h"
#include "report/layout.h"
#include "report/visible.h"
#include "report/words.h"

TestSuite(brace_text, .init = set_up, .fini = tear_down);
TestSuite(brace_json, .init = set_up, .fini = tear_down);
TestSuite(check_words, .init = set_up, .fini = tear_down);

#define HAS(text, part)                                                                            \
    cr_assert(strstr((text), (part)) != NULL, "[%s] is not in [%s]", (part), (text))
#define HAS_NOT(text, part)                                                                        \
    cr_assert(strstr((text), (part)) == NULL, "[%s] is in [%s]", (part), (text))

#define INCH 0.0254
#define POUND 4.4482216152605

/* ---- an answer by hand: one bay, 30 in wide and 40 in high, braced ---- */

static struct frame frame;
static struct joint joints[] = {{.name = "fl0", .at = {0, 0, 0}},
                                {.name = "fr1", .at = {30 * INCH, 0, 40 * INCH}},
                                {.name = "bl0", .at = {0, 20 * INCH, 0}}};
static struct member members[1];
static struct panel panels[] = {{.name = "back"}, {.name = "roof"}, {.name = "left"}};
static struct joint_move moves[] = {{1, {1.0, -0.0, 0.25}}};
static struct motion motions[] = {{"The top slides left or right.", moves, 1, false, false},
                                  {"The left side leans.", moves, 1, false, false}};
static struct sheet_remark sheets[] = {
    {0, false, "it opens", false}, {1, false, "clear sheet", true}, {2, true, "", true}};
static struct brace_choice braces[] = {{0, 1, "front, lower bay", 1, 33.2 * POUND, 60.9 * POUND},
                                       {0, 2, "lower shelf", -1, 3.1 * POUND, 2.9 * POUND}};
static struct alternative alternatives[] = {
    {"plywood over the back", 0, {0.1 * INCH, NAN}, {false, false}},
    {"gussets at every joint", 2, {0.3 * INCH, NAN}, {false, true}},
    {"a wall", 1, {0.25, 0.125}, {false, false}}};

static struct brace_answer *answer_of(void) {
    struct brace_answer *answer = ARENA_NEW(arena, struct brace_answer);
    frame = (struct frame){.title = "Stand", .units = UNITS_US};
    frame.joints.items = joints;
    frame.joints.count = 3;
    frame.members.items = members;
    frame.members.count = 1;
    frame.panels.items = panels;
    frame.panels.count = 3;
    *answer = (struct brace_answer){.frame = &frame,
                                    .ways = 3,
                                    .ways_with_panels = 1,
                                    .motions = motions,
                                    .motion_count = 2,
                                    .soft = {{1, 2 * INCH, 0.4 * INCH}},
                                    .soft_count = 1,
                                    .fewest = 2,
                                    .proved = true,
                                    .braces = braces,
                                    .brace_count = 2,
                                    .brace_stick = "rail",
                                    .lean_count = 2,
                                    .alternatives = alternatives,
                                    .alternative_count = 3,
                                    .sheets = sheets,
                                    .sheet_count = 3};
    answer->lean[0] = (struct lean_row){.axis = 0,
                                        .limit = 0.4 * INCH,
                                        .without_panels = {0.5 * INCH, 0.3 * INCH, 0.2 * INCH},
                                        .with_panels = {0.5 * INCH, 0.25 * INCH, 0.2 * INCH},
                                        .with_braces = 0.05 * INCH};
    answer->lean[1] = (struct lean_row){.axis = 1,
                                        .limit = 0.4 * INCH,
                                        .without_panels = {NAN, 2 * INCH, 1 * INCH},
                                        .with_panels = {NAN, 2 * INCH, 1 * INCH},
                                        .with_braces = 0.1 * INCH,
                                        .over_without = true,
                                        .over_with = true};
    ARRAY_PUSH(arena, &answer->notes, "it could be done with a diagonal in the front");
    return answer;
}

static const char *text_of(const struct brace_answer *answer) {
    struct text text = text_new(arena);
    brace_text(&text, answer);
    for (const char *line = text_string(&text); *line;) {
        size_t length = strcspn(line, "\n");
        const char *copy = arena_copy(arena, line, length);
        cr_assert(text_width(copy) <= LINE_WIDTH, "%zu wide: %s", text_width(copy), copy);
        cr_assert(length == 0 || line[length - 1] != ' ', "ends with a space: %s", copy);
        line += length + (line[length] == '\n');
    }
    return text_string(&text);
}

Test(brace_text, says_first_what_it_does_and_what_stops_it) {
    const char *text = text_of(answer_of());
    static const char start[] = "Stand can fold in 2 ways, and only its fastenings keep it square; "
                                "it leans too far front-back.\n2 diagonals stop that: front, lower "
                                "bay; lower shelf.\n\nCan it fold?\n";
    cr_assert(strncmp(text, start, strlen(start)) == 0, "%s", text);
    HAS(text, "it can fold in 3 ways. Its wood sheets stop 1 of them. Its\n  clear sheets would "
              "stop 1 more, but do not build on that. What is left:\n  1. The top slides left or "
              "right.\n  2. The left side leans.\n");
}

Test(brace_text, puts_movements_in_a_table) {
    const char *text = text_of(answer_of());
    HAS(text, "                  without sheets        with its sheets       with the diagonals    "
              "may move\n");
    HAS(text, "  left-right      0.3 in                0.25 in               0.05 in               "
              "0.4 in\n");
    HAS(text, "  front-back      2 in, too far         2 in, too far         0.1 in                "
              "0.4 in\n");
    HAS(text, "0.2 in to 0.5 in      0.2 in to 0.5 in\n");
    HAS(text, "1 in to folding up");
    HAS(text, "as soft as they may be it leans too far left-right; a diagonal makes sure");
}

Test(brace_text, names_each_diagonal_and_its_force) {
    struct brace_answer *answer = answer_of();
    const char *text = text_of(answer);
    HAS(text, "  1. from fl0 to fr1 (front, lower bay), 4 ft 2 in from joint to joint: stops fold "
              "2, and carries\n     about 34 lb, its screws hold about 60 lb\n");
    HAS(text, "  2. from fl0 to bl0 (lower shelf), 1 ft 8 in from joint to joint: keeps it from "
              "leaning front-back,\n     and carries about 4 lb, its screws hold about 2 lb: too "
              "little, use "
              "more\n");
    HAS(text, "Each is a stick of kind rail, screwed at both ends. Fewer would not do.");
    cr_assert(!strstr(text, "no published value"), "both are known");
    answer->braces[0].screws_hold = NAN;
    text = text_of(answer);
    HAS(text, "and carries\n     about 34 lb\n");
    HAS(text, "What screws may carry of it has no published value here");
    answer->proved = false;
    HAS(text_of(answer), "Fewer would not do; of sets of this");
    answer->motion_count = 1;
    HAS(text_of(answer), "Not every set was tried: fewer might do.");
}

Test(brace_text, tells_what_else_would_do) {
    const char *text = text_of(answer_of());
    HAS(text,
        "\nWhat else would do?\n  - plywood over the back: enough; moves 0.1 in left-right\n");
    HAS(text,
        "  - gussets at every joint: not enough; 2 ways to fold left; moves 0.3 in left-right; "
        "folds up\n    front-back\n");
    HAS(text, "  - a wall: stiff enough, but by its fastenings alone; 1 way to fold left; moves "
              "9.84 in left-right\n    and 4.92 in front-back\n");
}

Test(brace_text, says_which_sheets_count_and_why_clear_ones_do_not) {
    struct brace_answer *answer = answer_of();
    const char *text = text_of(answer);
    HAS(text, "does not count: it opens\n");
    HAS(text, "counts as a clear sheet only");
    HAS(text, "its holes are larger than its screws");
    HAS(text, "\nWhat else to know\n  - it could be done with");
    HAS(text, "  - A sanity check");
    answer->sheet_count = 1;
    HAS_NOT(text_of(answer), "larger than its screws");
    HAS_NOT(text_of(answer), "with its sheets");
}

Test(brace_text, has_nothing_to_say_of_a_frame_that_stands) {
    struct brace_answer *answer = answer_of();
    answer->ways = answer->ways_with_panels = 0;
    answer->motion_count = answer->soft_count = answer->brace_count = 0;
    answer->alternative_count = answer->sheet_count = answer->notes.count = 0;
    answer->fewest = 0;
    answer->lean_count = 1;
    const char *text = text_of(answer);
    HAS(text, "Stand cannot fold and leans no farther than it may. There is nothing to brace.\n");
    HAS(text, "  No: even with every fastening taken as a hinge nothing gives way.\n");
    HAS_NOT(text, "Where do the diagonals go?");
    HAS_NOT(text, "with the diagonals");
    cr_assert(!something_to_brace(answer));
    frame.members.count = 0;
    HAS(text_of(answer), "Stand: nothing to brace.\n");
}

Test(brace_text, admits_that_no_diagonals_do_it) {
    struct brace_answer *answer = answer_of();
    answer->fewest = -1;
    answer->brace_count = 0;
    answer->lean[1].without_panels[LEAN_MIDDLE] = NAN;
    const char *text = text_of(answer);
    HAS(text, "can fold in 2 ways and folds up when somebody leans on it; it leans too far "
              "front-back. No set\nof diagonals in its bays stops that.");
    HAS(text, "What else might do?");
    HAS(text, "front-back      folds up");
    answer->lean[1].without_panels[LEAN_MIDDLE] = 5.0;
    HAS(text_of(answer), "front-back      over 3 ft, too far");
}

/* ---- JSON ---- */

static const char *json_of(const struct brace_answer *answer) {
    struct json *json = json_new(arena, (struct json_sink){0});
    brace_json(json, answer);
    return text_string(&json->text);
}

Test(brace_json, keeps_the_order_of_the_keys) {
    static const char *const keys[] = {"\"ways\": 3",      "\"ways_with_panels\": 1",
                                       "\"soft\"",         "\"direction\": \"y\"",
                                       "\"lean\"",         "\"limit\"",
                                       "\"motions\"",      "\"sentence\"",
                                       "\"moves\"",        "\"fewest\": 2",
                                       "\"proved\": true", "\"braces\"",
                                       "\"from\"",         "\"to\"",
                                       "\"where\"",        "\"stops\": 1",
                                       "\"lean\"",         "\"direction\": \"x\"",
                                       "\"without_panels", "\"with_panels",
                                       "\"with_brace",     "\"limit\"",
                                       "\"brace_stick\"",  "\"cautions\""};
    const char *text = json_of(answer_of()), *from = text;
    for (size_t k = 0; k < sizeof keys / sizeof *keys; k++) {
        from = strstr(from, keys[k]);
        cr_assert_not_null(from, "%s is missing or too early in %s", keys[k], text);
    }
    HAS(text, "\"moves\": {\"fr1\": [1, 0, 0.25]}");
    HAS(text, "\"where\": \"lower shelf\", \"stops\": null, \"force\": ");
    HAS(text, "\"low\": {\"without_panels\": null, \"with_panels\": null}");
    HAS(text, "\"ways\": 1, \"lean\": {\"x\": 0.25, \"y\": 0.125}, \"enough\": false}");
}

Test(brace_json, says_null_where_nothing_is_known) {
    struct brace_answer *answer = answer_of();
    answer->fewest = -1;
    answer->brace_count = 0;
    answer->brace_stick = NULL;
    const char *text = json_of(answer);
    HAS(text, "\"fewest\": null");
    HAS(text, "\"braces\": []");
    HAS(text, "\"brace_stick\": null");
    HAS(text, "\"with_braces\": null");
}

/* ---- the words of checks ---- */

static const char *words_of(const char *kind, double demand, double limit, enum quantity quantity,
                            const char *governs) {
    struct check check = {
        .kind = kind, .demand = demand, .limit = limit, .quantity = quantity, .governs = governs};
    return numbers_in_words(arena, &check, UNITS_SI);
}

Test(check_words, name_what_presses_pulls_and_is_too_slim) {
    SAME_TEXT(words_of("bend", 0.26e6, 2e6, QUANTITY_STRESS, "push along the stick"),
              "pressed endways with 0.26 MPa, may be 2 MPa");
    SAME_TEXT(words_of("bend", 0.26e6, 2e6, QUANTITY_STRESS, "pull along the stick"),
              "pulled endways with 0.26 MPa, may be 2 MPa");
    SAME_TEXT(words_of("bend", 382.4, 50, QUANTITY_NUMBER, "too slim for a post"),
              "slimmer than allowed: 382 times its thickness, may be 50");
    SAME_TEXT(words_of("bend", 61.24, 50, QUANTITY_NUMBER, "too slim to stand on edge"),
              "too slim to stand on edge: slimness 61.2, may be 50");
    SAME_TEXT(words_of("bend", 1.4, 1, QUANTITY_NUMBER, "bending with push"), "bending with push");
}

Test(check_words, never_round_a_load_to_none) {
    SAME_TEXT(words_of("shear", 300.0, 0.9e6, QUANTITY_STRESS, ""),
              "sheared with next to nothing, may be 0.9 MPa");
    SAME_TEXT(words_of("shear", 0.0, 0.9e6, QUANTITY_STRESS, ""),
              "sheared with 0 MPa, may be 0.9 MPa");
}

Test(check_words, tell_how_far_it_is_from_swaying_over) {
    SAME_TEXT(words_of("sway", 2, 1, QUANTITY_NUMBER, ""),
              "stands until 1 times this load, must stand 2 times");
    SAME_TEXT(words_of("sway", 2, 1.9999, QUANTITY_NUMBER, ""),
              "stands until 1.99 times this load, must stand 2 times");
    SAME_TEXT(words_of("sway", 2, INFINITY, QUANTITY_NUMBER, ""),
              "no load of this kind sways it over");
    SAME_TEXT(words_of("sway", 2, NAN, QUANTITY_NUMBER, ""), "swaying over under its load");
    cr_assert(question_of("sway") == question_of("lean"));
    SAME_TEXT(question_words(question_of("panel-rack")), "Do the covers hold?");
}

Test(check_words, leave_out_what_prints_as_nothing) {
    struct check check = {.id = "sag/a",
                          .kind = "sag",
                          .where = "a",
                          .combination = "D",
                          .demand = 0.002,
                          .limit = 0.001,
                          .ratio = 2,
                          .quantity = QUANTITY_LENGTH,
                          .verdict = VERDICT_FAILS,
                          .place = "a",
                          .governs = "",
                          .advice = "",
                          .beside = {"its screws give", 1e-6, QUANTITY_LENGTH}};
    frame = (struct frame){.title = "", .units = UNITS_SI};
    struct result result = {.frame = &frame, .verdict = VERDICT_FAILS, .basis = "rules"};
    ARRAY_PUSH(arena, &result.checks, check);
    struct text text = text_new(arena);
    check_text(&text, &result, &(struct check_text_options){.frame_name = "-"});
    HAS_NOT(text_string(&text), "its screws give");
    HAS(text_string(&text), "batten why FRAME.yaml sag/a\n");
    result.checks.items[0].beside.value = 0.001;
    struct text again = text_new(arena);
    check_text(&again, &result, &(struct check_text_options){.frame_name = "-"});
    HAS(text_string(&again), "Beside that: its screws give 1 mm.\n");
}
