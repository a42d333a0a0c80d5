#include "cli/asking.h"

#include "base/near.h"
#include "base/text.h"
#include "cli/output.h"
#include "quick/fastener.h"
#include "report/fastener_text.h"

#include <math.h>
#include <string.h>

static const double RIGHT_ANGLE = 1.57079632679489661923; /* pi / 2 */

static enum dowel_kind ask_kind(struct asking *asking) {
    const char *names[DOWEL_KIND_COUNT];
    for (int k = 0; k < DOWEL_KIND_COUNT; k++)
        names[k] = dowel_kind_name((enum dowel_kind)k);
    const struct name_list list = {"", "", names, DOWEL_KIND_COUNT};
    return (enum dowel_kind)asked_name(asking, OPTION_KIND, true, &list, DOWEL_SCREW);
}

static enum nail_kind ask_nail(struct asking *asking, enum dowel_kind kind) {
    const char *names[NAIL_KIND_COUNT];
    for (int k = 0; k < NAIL_KIND_COUNT; k++)
        names[k] = nail_kind_name((enum nail_kind)k);
    const struct name_list list = {"", "", names, NAIL_KIND_COUNT};
    if (kind != DOWEL_NAIL && asking->call->options.given[OPTION_NAIL])
        asking_wrong(asking, OPTION_NAIL, "only goes with --kind nail");
    return (enum nail_kind)asked_name(asking, OPTION_NAIL, false, &list, NAIL_COMMON);
}

static void unknown_size(struct asking *asking, enum dowel_kind kind, enum nail_kind nail,
                         const char *size) {
    static const char *const WHAT[] = {/* ORDER DOWEL KIND */ [DOWEL_SCREW] = "wood screw number",
                                       [DOWEL_NAIL] = "nail size",
                                       [DOWEL_LAG] = "diameter of a lag",
                                       [DOWEL_BOLT] = "diameter of a bolt"};
    struct text known = text_new(asking->call->arena);
    for (size_t k = 0; table_fastener_name(kind, nail, k); k++)
        text_print(&known, "%s%s", k ? ", " : "", table_fastener_name(kind, nail, k));
    asking_wrong(asking, OPTION_SIZE, "'%s' is no %s%s%s that the tables know; known are %s%s",
                 size, kind == DOWEL_NAIL ? nail_kind_name(nail) : "",
                 kind == DOWEL_NAIL ? " " : "", WHAT[kind], text_string(&known),
                 kind == DOWEL_LAG || kind == DOWEL_BOLT ? " in" : "");
}

/* By name; a lag or bolt also by any length that is its diameter, such as 0.25 in. */
static bool find(struct arena *arena, enum dowel_kind kind, enum nail_kind nail, const char *size,
                 struct dowel *out) {
    double diameter;
    const char *why;
    if (dowel_find(kind, nail, size, out))
        return true;
    return (kind == DOWEL_LAG || kind == DOWEL_BOLT) &&
           quantity_read(arena, size, QUANTITY_LENGTH, UNITS_US, &diameter, &why) &&
           dowel_of_diameter(kind, nail, diameter, out);
}

static struct dowel ask_dowel(struct asking *asking) {
    struct dowel dowel = {.kind = ask_kind(asking)};
    enum nail_kind nail = ask_nail(asking, dowel.kind);
    const char *size = asked_text(asking, OPTION_SIZE, true);
    bool found = size && find(asking->call->arena, dowel.kind, nail, size, &dowel);
    if (size && !found && asking->call->options.given[OPTION_KIND])
        unknown_size(asking, dowel.kind, nail, size);
    double length =
        asked_quantity(asking, OPTION_LENGTH, dowel.kind != DOWEL_NAIL, QUANTITY_LENGTH, true);
    if (found && length > 0.0)
        dowel_set_length(&dowel, length);
    return dowel;
}

static void ask_gravity(struct asking *asking, enum option option, const char *typed,
                        struct cited *gravity) {
    struct cited least = table_fastener_factor("gravity-from"),
                 most = table_fastener_factor("gravity-to");
    struct arena *arena = asking->call->arena;
    const char *why;
    if (!quantity_read(arena, typed, QUANTITY_NUMBER, UNITS_US, &gravity->value, &why))
        asking_wrong(asking, option, "%s", why);
    else if (!(gravity->value >= least.value && gravity->value <= most.value))
        asking_wrong(asking, option,
                     "a specific gravity of %s: the published values go from %s to %s", typed,
                     quantity_print(arena, least.value, QUANTITY_NUMBER, UNITS_US),
                     quantity_print(arena, most.value, QUANTITY_NUMBER, UNITS_US));
}

/* A species by its name, or a specific gravity as a number. Returns the name of the species, NULL
 * for a number. */
static const char *ask_wood(struct asking *asking, enum option option, struct cited *gravity) {
    const struct name_list *species = name_list_find(asking->call->arena, "species");
    const char *typed = asked_text(asking, option, true);
    *gravity = (struct cited){NAN, "", MARK_TRADE};
    if (!typed)
        return NULL;
    if (strchr("0123456789.+-", typed[0])) {
        ask_gravity(asking, option, typed, gravity);
        return NULL;
    }
    int found = table_species_find(typed);
    if (found >= 0 && table_specific_gravity(found, gravity))
        return table_species_name(found);
    const char *near = near_name(typed, species->names, species->count);
    if (near)
        asking_wrong(asking, option, "unknown '%s'; did you mean %s?", typed, near);
    else
        asking_wrong(asking, option,
                     "unknown '%s'; a species (batten table lists them) or a specific gravity such "
                     "as 0.42 was expected",
                     typed);
    return NULL;
}

static double ask_angle(struct asking *asking, enum option option) {
    double angle = asked_quantity(asking, option, false, QUANTITY_ANGLE, false);
    if (angle > RIGHT_ANGLE * (1.0 + 1e-12))
        asking_wrong(asking, option, "an angle between load and grain is 0 to 90 deg, found %s",
                     asking->call->options.value[option]);
    return angle;
}

static struct fastener_question ask(struct asking *asking) {
    const bool *given = asking->call->options.given;
    struct fastener_question question = {.dowel = ask_dowel(asking)};
    question.side.thickness = asked_quantity(asking, OPTION_SIDE, true, QUANTITY_LENGTH, true);
    question.side_wood = ask_wood(asking, OPTION_SIDE_WOOD, &question.side.gravity);
    question.main.thickness = INFINITY;
    if (given[OPTION_MAIN])
        question.main.thickness = asked_quantity(asking, OPTION_MAIN, true, QUANTITY_LENGTH, true);
    question.main_wood = ask_wood(asking, OPTION_MAIN_WOOD, &question.main.gravity);
    question.main.end_grain = given[OPTION_END_GRAIN];
    question.side.angle = ask_angle(asking, OPTION_ANGLE_SIDE);
    question.main.angle = ask_angle(asking, OPTION_ANGLE_MAIN);
    question.service.wet = asked_wet(asking);
    question.service.duration = asked_duration(asking);
    return question;
}

enum exit_status fastener_command(const struct call *call) {
    bool as_json = call->options.given[OPTION_JSON];
    struct asking asking = asking_of(call);
    struct fastener_question question = ask(&asking);
    if (asking.problems.count)
        return output_problems(call->arena, NULL, &asking.problems, as_json);
    struct fastener_answer answer = fastener_answer(call->arena, &question, !as_json);
    if (as_json) {
        fastener_json(json_new(call->arena, output_sink()), &answer);
        return EXIT_HOLDS;
    }
    struct text text = text_new(call->arena);
    fastener_text(&text, &question, &answer);
    output_text(&text);
    return EXIT_HOLDS;
}
