/* The reader: one file with every key, a shape, limits of input, and what it looks at afterwards.
 * Wrong files with the messages they get are in tests/bad/. */
#include "frame/frame.h"
#include "frame/geometry.h"
#include "frame/shape_values.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define LB 4.4482216152605
#define IN 0.0254
#define FT 0.3048
#define PSI (LB / (IN * IN))
#define PSF (LB / (FT * FT))
#define PI 3.14159265358979323846

static const char every_key[] =
    "batten: 1\n"
    "title: Potting stand\n"
    "units: us\n"
    "self-weight: yes\n"
    "sticks:\n"
    "  upright: {size: 2x2, species: spruce-pine-fir, grade: no-2, faces: front}\n"
    "  rail:    {size: 1x2, species: spruce-pine-fir, grade: ungraded, stands: on-edge, knots: 1/2 "
    "in, slope-of-grain: 1:12}\n"
    "  slat:    {size: 1x3, species: spruce-pine-fir, grade: ungraded, stands: flat, "
    "finger-jointed: yes}\n"
    "  board:   {size: 1x6, species: spruce-pine-fir, grade: no-2, stress-rated: yes}\n"
    "  tube:    {section: {A: 1.2 in2, Iy: 0.4 in4, Iz: 0.4 in4, J: 0.8 in4, Ay: 1 in2, Az: 1 "
    "in2}, material: {E: 29e6 psi, G: 11.2e6 psi, density: 490 pcf}}\n"
    "  plank:   {size: [20 mm, 90 mm], material: {E: 9 GPa, density: 420 kg/m3, Fb: 5 MPa, Fv: 0.9 "
    "MPa, Fc: 6 MPa, Ft: 3 MPa, Fcp: 2 MPa, Emin: 3.3 GPa}}\n"
    "joints:\n"
    "  a: [0, 0, 0]\n"
    "  b: {at: [0, 0, 60], host: post-1}\n"
    "  c: [36, 0, 0]\n"
    "  d: {at: [36, 0, 60], host: post-2}\n"
    "  e: [0, 24, 0]\n"
    "  f: [0, 24, 60]\n"
    "  g: [36, 24, 0]\n"
    "  h: [36, 24, 60]\n"
    "  fl: [0, 0, 20]\n"
    "  fr: [36, 0, 20]\n"
    "  bl: [0, 24, 20]\n"
    "  br: [36, 24, 20]\n"
    "members:\n"
    "  post-1: {from: a, to: b, stick: upright}\n"
    "  post-2: {from: c, to: d, stick: upright}\n"
    "  post-3: {from: e, to: f, stick: upright}\n"
    "  post-4: {from: g, to: h, stick: upright, faces: side}\n"
    "  rail-1: {from: fl, to: fr, stick: rail, ends: lap}\n"
    "  rail-2: {from: bl, to: br, stick: rail, ends: [lap, corner]}\n"
    "  brace:  {from: a, to: fr, stick: rail, ends: lap, acts-as: brace}\n"
    "  wire:   {from: fl, to: c, stick: tube, ends: pinned, acts-as: tie}\n"
    "  joist:  {from: b, to: d, stick: rail, held-along: yes, repetitive: yes}\n"
    "  strut:  {from: f, to: h, stick: rail, turn: 45 deg, length: 31-1/4 in}\n"
    "connections:\n"
    "  lap:     {type: screwed-lap, screw: 8, length: 2 in, count: 2}\n"
    "  corner:  {type: screwed-butt, screw: 8, length: 2-1/2 in, count: 2}\n"
    "  lagged:  {type: screwed-lap, lag: 1/4 in, length: 3 in, count: 1, spacing: 2 in}\n"
    "  nailed:  {type: screwed-butt, nail: 10d}\n"
    "  bolted:  {type: screwed-lap, bolt: 3/8 in, count: 1}\n"
    "  tested:  {type: springs, rotation: 3000 lb-in/rad, slip: 9000 lb/in}\n"
    "  default: lap\n"
    "supports:\n"
    "  a: foot\n"
    "  c: {foot: {on: paving, hold-down: 60 lb}}\n"
    "  e: pinned\n"
    "  g: fixed\n"
    "  b: [y, z]\n"
    "  d: {in-ground: 24 in}\n"
    "shelves:\n"
    "  lower:\n"
    "    rails: [rail-1, rail-2]\n"
    "    deck: {slats: slat, count: 9}\n"
    "    trays: {kind: tray-1020-wet, count: 4}\n"
    "    standing: long\n"
    "panels:\n"
    "  roof: {corners: [b, d, h, f], sheet: twin-wall-6mm, held: screwed, screw: 8, spacing: 12 "
    "in, runs: up-down, overhang: 1 in}\n"
    "  lid:  {corners: [fl, fr, br, bl], sheet: twin-wall-6mm, held: hinged, hinge: [fl, fr], "
    "opens: yes, stay: yes, framed: rail, weight: 24 lb}\n"
    "  back: {corners: [e, g, h, f], sheet: plywood-1/4in, held: screwed, screw: 6, spacing: 6 in, "
    "braces: yes}\n"
    "site: {place: outdoors, ground-snow: 25 psf, wind: 90 mph, exposure: C, wet-service: yes, "
    "heated: no, risk: 1, edition: asce7-16, beside: {house: {eave: 10 ft, depth: 20 ft, slope: 25 "
    "deg}}, push: 20 lb}\n"
    "limits: {shelf-sag: span/240, roof-sag: span/180, lean: height/100}\n"
    "prices: {upright: 3.20 per 8 ft, twin-wall-6mm: 68 per 4 ft x 8 ft, hinge: 4 each}\n"
    "parts: {left: [post-1, rail-1]}\n"
    "keep-open: [front]\n"
    "loads:\n"
    "  - {case: tray, joint: b, force: [0, 0, -100 lb], moment: [0, 0, 0]}\n"
    "  - {case: wind-left, member: rail-1, line: [0, 0, -2 plf]}\n"
    "  - {case: tray, member: rail-1, point: [0, 0, -50 lb], at: 12 in}\n"
    "combine: {service: {self: 1, tray: 1, duration: ten-years}}\n";

static const char cabinet[] =
    "batten: 1\n"
    "title: Seedling cabinet\n"
    "sticks:\n"
    "  post: {size: 1x2, species: spruce-pine-fir, grade: ungraded}\n"
    "  rail: {size: 1x2, species: spruce-pine-fir, grade: ungraded}\n"
    "  slat: {size: 1x2, species: spruce-pine-fir, grade: ungraded, stands: flat}\n"
    "connections:\n"
    "  default: {type: screwed-lap, screw: 8, length: 1-1/4 in, count: 2}\n"
    "shape:\n"
    "  kind: lean-to\n"
    "  wide: 36 in\n"
    "  deep: 24 in\n"
    "  high: 52 in\n"
    "  front-high: 44 in\n"
    "  shelves: {lower: 6 in, upper: 26 in}\n"
    "  deck: {slats: slat, count: 12}\n"
    "  trays: {kind: tray-1020-wet, count: 3}\n"
    "  covers: {front: hinged, left: screwed, right: screwed, roof: screwed}\n"
    "  sheet: twin-wall-6mm\n"
    "  braces: {back: 2, left: 2, right: 2}\n"
    "site: {place: outdoors, ground-snow: 25 psf, wind: 90 mph, exposure: B}\n";

static struct arena *arena;
static struct problems problems;

static void open_arena(void) {
    arena = arena_new();
    problems = problems_new(arena);
}

static void close_arena(void) {
    arena_free(arena);
}

TestSuite(frame, .init = open_arena, .fini = close_arena);

static struct frame *read_with(const char *text, bool large) {
    if (ARENA_TRAP(arena)) {
        cr_assert_fail("out of memory");
        return NULL;
    }
    return frame_read(arena, text, strlen(text), (struct frame_limits){.large = large}, &problems);
}

static struct frame *good(const char *text) {
    struct frame *frame = read_with(text, false);
    for (size_t k = 0; k < problems.count; k++)
        fprintf(stderr, "%d:%d: %s: %s\n", problems.items[k].place.line,
                problems.items[k].place.column, problems.items[k].key, problems.items[k].message);
    cr_assert(frame && problems.count == 0, "a good file was refused");
    return frame;
}

static void close_to(const char *what, double found, double expected) {
    cr_assert(isfinite(found) && fabs(found - expected) <= 1e-9 * fmax(1, fabs(expected)),
              "%s is %.17g, expected %.17g", what, found, expected);
}

static void given(const char *what, struct optional found, double expected) {
    cr_assert(found.given, "%s is not given", what);
    close_to(what, found.value, expected);
}

static int member(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->members.count; k++)
        if (strcmp(frame->members.items[k].name, name) == 0)
            return (int)k;
    cr_assert_fail("no member %s", name);
    return -1;
}

static int joint(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->joints.count; k++)
        if (strcmp(frame->joints.items[k].name, name) == 0)
            return (int)k;
    cr_assert_fail("no joint %s", name);
    return -1;
}

Test(frame, head_and_sticks) {
    const struct frame *frame = good(every_key);
    cr_assert_str_eq(frame->title, "Potting stand");
    cr_assert(frame->units == UNITS_US && frame->self_weight && !frame->plane);
    cr_assert_eq(frame->sticks.count, 6);
    const struct stick *upright = &frame->sticks.items[0], *rail = &frame->sticks.items[1];
    cr_assert_str_eq(upright->name, "upright");
    cr_assert_str_eq(table_size(upright->size)->name, "2x2");
    cr_assert_str_eq(table_species_name(upright->species), "spruce-pine-fir");
    cr_assert_str_eq(table_grade_name(upright->grade), "no-2");
    cr_assert(upright->faces == FACES_FRONT && upright->stands == STANDS_NOT_SAID);
    close_to("rail thickness", rail->thickness, 0.75 * IN);
    close_to("rail width", rail->width, 1.5 * IN);
    cr_assert(rail->stands == STANDS_ON_EDGE && rail->grade == GRADE_UNGRADED);
    given("knots", rail->knots, 0.5 * IN);
    given("slope of grain", rail->slope_of_grain, 1.0 / 12);
    cr_assert(frame->sticks.items[2].finger_jointed &&
              frame->sticks.items[2].stands == STANDS_FLAT);
    cr_assert(frame->sticks.items[3].stress_rated);
}

Test(frame, own_sections_and_materials) {
    const struct frame *frame = good(every_key);
    const struct stick *tube = &frame->sticks.items[4], *plank = &frame->sticks.items[5];
    cr_assert(tube->has_section && tube->has_material && !tube->has_size && tube->species == -1);
    close_to("A", tube->section.A, 1.2 * IN * IN);
    close_to("Iy", tube->section.Iy / pow(IN, 4), 0.4);
    close_to("J", tube->section.J / pow(IN, 4), 0.8);
    close_to("Ay", tube->section.Ay, IN * IN);
    close_to("E", tube->material.E, 29e6 * PSI);
    given("G", tube->material.G, 11.2e6 * PSI);
    given("density", tube->material.density, 490 * 0.45359237 / pow(FT, 3));
    cr_assert(!tube->material.Fb.given);
    cr_assert(plank->has_size && plank->size == -1);
    close_to("plank thickness", plank->thickness, 0.020);
    close_to("plank width", plank->width, 0.090);
    given("Fb", plank->material.Fb, 5e6);
    given("Fv", plank->material.Fv, 0.9e6);
    given("Fc", plank->material.Fc, 6e6);
    given("Ft", plank->material.Ft, 3e6);
    given("Fcp", plank->material.Fcp, 2e6);
    given("Emin", plank->material.Emin, 3.3e9);
}

Test(frame, joints_and_members) {
    const struct frame *frame = good(every_key);
    cr_assert_eq(frame->joints.count, 12);
    close_to("b z", frame->joints.items[joint(frame, "b")].at[2], 60 * IN);
    cr_assert_eq(frame->joints.items[joint(frame, "b")].host, member(frame, "post-1"));
    cr_assert_eq(frame->joints.items[joint(frame, "a")].host, -1);
    const struct member *members = frame->members.items;
    const struct member *rail_2 = &members[member(frame, "rail-2")];
    cr_assert_eq(rail_2->from, joint(frame, "bl"));
    cr_assert_eq(rail_2->to, joint(frame, "br"));
    cr_assert_str_eq(frame->connections.items[rail_2->ends[0]].name, "lap");
    cr_assert_str_eq(frame->connections.items[rail_2->ends[1]].name, "corner");
    cr_assert_eq(members[member(frame, "post-1")].ends[0], -1);
    cr_assert(members[member(frame, "post-4")].faces == FACES_SIDE);
    cr_assert(members[member(frame, "brace")].acts_as == ACTS_AS_BRACE);
    cr_assert(members[member(frame, "wire")].acts_as == ACTS_AS_TIE);
    cr_assert_eq(members[member(frame, "wire")].ends[1], CONNECTION_INDEX_PINNED);
    cr_assert(members[member(frame, "joist")].held_along &&
              members[member(frame, "joist")].repetitive);
    given("turn", members[member(frame, "strut")].turn, PI / 4);
    given("length", members[member(frame, "strut")].length, 31.25 * IN);
}

Test(frame, connections) {
    const struct frame *frame = good(every_key);
    const struct connection *all = frame->connections.items;
    cr_assert_str_eq(all[CONNECTION_INDEX_PINNED].name, "pinned");
    cr_assert_str_eq(all[CONNECTION_INDEX_RIGID].name, "rigid");
    cr_assert_str_eq(all[frame->default_connection].name, "lap");
    cr_assert(all[2].type == CONNECTION_SCREWED_LAP && all[2].fastener == FASTENER_SCREW);
    cr_assert_str_eq(all[2].size_name, "8");
    close_to("No.8", all[2].diameter, 0.164 * IN);
    given("length", all[2].length, 2 * IN);
    cr_assert(all[2].count == 2 && all[2].count_given && !all[2].spacing.given);
    cr_assert(all[3].type == CONNECTION_SCREWED_BUTT);
    cr_assert(all[4].fastener == FASTENER_LAG && all[4].count == 1);
    close_to("1/4 in lag", all[4].diameter, 0.25 * IN);
    given("spacing", all[4].spacing, 2 * IN);
    cr_assert(all[5].fastener == FASTENER_NAIL && all[5].count == 2 && !all[5].count_given);
    close_to("10d", all[5].diameter, 0.148 * IN);
    close_to("3/8 in bolt", all[6].diameter, 0.375 * IN);
    cr_assert(all[7].type == CONNECTION_SPRINGS);
    given("rotation", all[7].rotation, 3000 * LB * IN);
    given("slip", all[7].slip, 9000 * LB / IN);
    cr_assert(strstr(frame->cautions.items[0], "Connection nailed: how many"));
}

Test(frame, supports) {
    const struct frame *frame = good(every_key);
    const struct support *all = frame->supports.items;
    cr_assert_eq(frame->supports.count, 6);
    cr_assert(all[0].foot && all[0].held[2] && !all[0].held[3] && all[0].ground == -1);
    cr_assert_str_eq(table_ground_name(all[1].ground), "paving");
    given("hold-down", all[1].hold_down, 60 * LB);
    cr_assert(!all[2].foot && all[2].held[0] && !all[2].held[5]);
    cr_assert(all[3].held[0] && all[3].held[5]);
    cr_assert(!all[4].held[0] && all[4].held[1] && all[4].held[2] && !all[4].held[3]);
    given("in-ground", all[5].in_ground, 2 * FT);
    cr_assert(all[5].held[0] && !all[5].held[3] && !all[5].foot);
}

Test(frame, shelves_and_panels) {
    const struct frame *frame = good(every_key);
    const struct shelf *lower = &frame->shelves.items[0];
    cr_assert_eq(lower->rail_count, 2);
    cr_assert_eq(lower->rails[1], member(frame, "rail-2"));
    cr_assert(lower->deck == DECK_SLATS && lower->slat == 2 && lower->slat_count == 9);
    cr_assert(lower->trays == TRAYS_KIND && lower->tray_count == 4 && !lower->short_standing);
    cr_assert_str_eq(table_tray(lower->tray)->name, "tray-1020-wet");
    const struct panel *roof = &frame->panels.items[0], *lid = &frame->panels.items[1];
    cr_assert_str_eq(table_sheet(roof->sheet)->name, "twin-wall-6mm");
    cr_assert(roof->held == HELD_SCREWED && !roof->runs_across && !roof->opens && !roof->braces);
    cr_assert_eq(roof->corners[2], joint(frame, "h"));
    close_to("screw", roof->screw_diameter, 0.164 * IN);
    given("spacing", roof->spacing, FT);
    close_to("overhang", roof->overhang, IN);
    cr_assert(lid->held == HELD_HINGED && lid->opens && lid->stay && lid->framed == 1);
    cr_assert_eq(lid->hinge[1], joint(frame, "fr"));
    close_to("opens", lid->opens_angle, PI / 3);
    given("weight", lid->weight, 24 * LB);
    cr_assert(frame->panels.items[2].braces);
}

Test(frame, site_limits_and_prices) {
    const struct frame *frame = good(every_key);
    const struct site *site = &frame->site;
    cr_assert(site->given && site->place == PLACE_OUTDOORS && site->exposure == 'C');
    given("snow", site->ground_snow, 25 * PSF);
    given("wind", site->wind, 90 * 0.44704);
    cr_assert(!site->gust.given && site->wind_word == -1 && site->snow_kind == -1);
    cr_assert(site->wet_service_given && site->wet_service && site->heated_given && !site->heated);
    cr_assert(site->risk == 1 && site->edition == EDITION_ASCE7_16);
    cr_assert(site->beside_given && site->beside_house);
    close_to("eave", site->eave, 10 * FT);
    close_to("depth", site->depth, 20 * FT);
    close_to("slope", site->roof_slope, 25 * PI / 180);
    given("push", site->push, 20 * LB);
    close_to("shelf sag", frame->limits.shelf_sag.divisor, 240);
    close_to("lean", frame->limits.lean.divisor, 100);
    cr_assert_eq(frame->prices.count, 3);
    close_to("price", frame->prices.items[0].price.amount, 3.2);
    cr_assert(frame->prices.items[2].price.basis == PRICE_EACH);
    cr_assert_eq(frame->parts.items[0].member_count, 2);
    cr_assert_str_eq(frame->keep_open.items[0], "front");
}

Test(frame, loads_and_combinations) {
    const struct frame *frame = good(every_key);
    const struct load *loads = frame->loads.items;
    cr_assert(loads[0].type == LOAD_JOINT && loads[0].load_case == CASE_TRAY);
    close_to("force", loads[0].force[2], -100 * LB);
    cr_assert(loads[1].type == LOAD_LINE && loads[1].load_case == CASE_WIND_LEFT);
    close_to("line", loads[1].force[2], -2 * LB / FT);
    cr_assert(loads[2].type == LOAD_POINT && loads[2].member == member(frame, "rail-1"));
    close_to("at", loads[2].at, 12 * IN);
    cr_assert(frame->has_combine && frame->combinations.count == 1);
    const struct combination_entry *service = &frame->combinations.items[0];
    cr_assert(service->part_count == 2 && service->parts[1].load_case == CASE_TRAY);
    cr_assert(service->duration == DURATION_TEN_YEARS);
    cr_assert_eq(frame->cases.count, CASE_BUILT_IN);
    cr_assert_str_eq(frame->cases.items[CASE_PUSH_Y], "push-y");
}

Test(frame, a_shape) {
    const struct frame *frame = good(cabinet);
    const struct shape_values *shape = frame->shape.values;
    cr_assert(frame->shape.given && shape->kind == SHAPE_LEAN_TO);
    close_to("wide", shape->wide, 36 * IN);
    close_to("deep", shape->deep, 24 * IN);
    close_to("high", shape->high, 52 * IN);
    close_to("front", shape->low, 44 * IN);
    cr_assert(shape->posts == 0 && shape->rails == 1 && shape->slopes == 1 &&
              shape->diagonals == 1);
    cr_assert(shape->shelf_count == 2 && shape->rails_across == 2 && !shape->measured_axes);
    cr_assert_str_eq(shape->shelves[1].name, "upper");
    close_to("upper", shape->shelves[1].height, 26 * IN);
    cr_assert(shape->on_each.deck == DECK_SLATS && shape->on_each.slat == 2);
    cr_assert(shape->on_each.tray_count == 3);
    cr_assert(shape->covers[FACE_FRONT].covered && shape->covers[FACE_FRONT].held == HELD_HINGED);
    cr_assert(shape->covers[FACE_ROOF].covered && !shape->covers[FACE_BACK].covered);
    cr_assert(shape->braces[FACE_BACK].way == BRACE_BAYS && shape->braces[FACE_BACK].bays == 2);
    cr_assert(shape->braces[FACE_FRONT].way == BRACE_NONE);
}

#define HEAD "batten: 1\nsticks: {s: {size: 2x2, species: hem-fir, grade: no-2}}\n"

Test(frame, a_plane_frame) {
    const struct frame *frame = good(HEAD "joints: {a: [0, 0], b: [0, 60]}\n"
                                          "members: {m: {from: a, to: b, stick: s}}\n"
                                          "supports: {a: fixed}\n");
    cr_assert(frame->plane);
    close_to("y", frame->joints.items[1].at[1], 0);
    close_to("z", frame->joints.items[1].at[2], 60 * IN);
    close_to("length", frame_member_length(frame, 0), 60 * IN);
    cr_assert_eq(frame->default_connection, -1);
}

Test(frame, numbers_of_metric_files_are_metric) {
    const struct frame *frame = good(
        "batten: 1\nunits: si\nsticks: {s: {size: [20, 90], material: {E: 9000, density: 420}}}\n"
        "joints: {a: [0, 0], b: [0, 600]}\nmembers: {m: {from: a, to: b, stick: s}}\n"
        "supports: {a: fixed}\n");
    close_to("z", frame->joints.items[1].at[2], 0.6);
    close_to("width", frame->sticks.items[0].width, 0.09);
    close_to("E", frame->sticks.items[0].material.E, 9e9);
}

Test(frame, a_joint_on_an_axis_is_reached) {
    const struct frame *frame =
        good(HEAD "joints: {a: [0, 0], b: [0, 60], c: [0.03, 20]}\n"
                  "members: {m: {from: a, to: b, stick: s}}\nsupports: {a: fixed}\n");
    cr_assert(frame_joint_on_member(frame, 2, 0), "0.03 in is within 1 mm");
}

Test(frame, sticks_that_cross_without_a_joint_are_remarked_on) {
    const struct frame *frame =
        good(HEAD "joints: {a: [0, 0], b: [0, 60], c: [60, 0], d: [60, 60]}\n"
                  "members: {x: {from: a, to: d, stick: s}, y: {from: c, to: b, stick: s},\n"
                  "  p: {from: a, to: b, stick: s}, q: {from: c, to: d, stick: s}}\n"
                  "connections: {default: pinned}\nsupports: {a: pinned, c: pinned}\n");
    cr_assert_eq(frame->cautions.count, 1);
    cr_assert(strstr(frame->cautions.items[0], "Members x and y cross"));
}

/* A column of `count` joints, one member from the first to the last. */
static char *column(int count, double step) {
    size_t room = (size_t)count * 32 + 512;
    char *text = calloc(1, room);
    size_t used = (size_t)snprintf(text, room, HEAD "supports: {j0: fixed}\njoints:\n");
    for (int k = 0; k < count; k++)
        used += (size_t)snprintf(text + used, room - used, " j%d: [0,%g]\n", k, k * step);
    snprintf(text + used, room - used, "members: {m: {from: j0, to: j%d, stick: s}}\n", count - 1);
    return text;
}

Test(frame, the_limits_of_input) {
    char *most = column(5000, 1), *more = column(5001, 1);
    cr_assert(read_with(most, false) && problems.count == 0, "5 000 joints are allowed");
    cr_assert_null(read_with(more, false));
    cr_assert_eq(problems.count, 1);
    cr_assert_str_eq(problems.items[0].key, "joints");
    problems = problems_new(arena);
    cr_assert(read_with(more, true) && problems.count == 0, "--large allows 5 001");
    free(most);
    free(more);
}

Test(frame, a_large_frame_reads_in_time, .timeout = 30) {
    char *text = column(150000, 1);
    cr_assert(read_with(text, true) && problems.count == 0, "150 000 joints on one stick");
    free(text);
}

Test(frame, many_joints_in_one_place_are_told_in_time, .timeout = 30) {
    char *text = column(5000, 0.0001);
    cr_assert_null(read_with(text, false));
    cr_assert(problems.count > 1000 && problems.count < 1010, "%zu problems", problems.count);
    free(text);
}

Test(frame, every_problem_has_a_place_and_a_line_of_words) {
    cr_assert_null(read_with("batten: 2\ntitle: [a]\njoints: {a: [x, 0]}\nstick: {}\n", false));
    problems_sort(&problems);
    cr_assert(problems.count > 4, "%zu problems", problems.count);
    for (size_t k = 0; k < problems.count; k++) {
        cr_assert(problems.items[k].place.line >= 1 && problems.items[k].place.column >= 1);
        cr_assert(!strchr(problems.items[k].message, '\n') && *problems.items[k].message);
    }
}
