#include "second_frame.h"

#include <criterion/criterion.h>
#include <gsl/gsl_errno.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

double random_next(uint64_t *state) {
    *state = *state * 6364136223846793005u + 1442695040888963407u;
    return (double)(*state >> 11) / 9007199254740992.0;
}

enum { MOST_JOINTS = 25, MOST_MEMBERS = 80 };

struct sketch {
    struct random_frame how;
    uint64_t state;
    double at[MOST_JOINTS][3]; /* mm */
    int joints;
    int from[MOST_MEMBERS], to[MOST_MEMBERS];
    int members;
    FILE *out;
};

static double between(struct sketch *s, double low, double high) {
    return low + (high - low) * random_next(&s->state);
}

static int pick(struct sketch *s, int count) {
    return (int)(random_next(&s->state) * count);
}

static bool chance(struct sketch *s, double share) {
    return random_next(&s->state) < share;
}

static double apart(const double a[3], const double b[3]) {
    return sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) +
                (a[2] - b[2]) * (a[2] - b[2]));
}

static bool add_joint(struct sketch *s, const double at[3]) {
    if (s->joints == MOST_JOINTS)
        return false;
    for (int j = 0; j < s->joints; j++)
        if (apart(s->at[j], at) < 60.0)
            return false;
    memcpy(s->at[s->joints++], at, sizeof s->at[0]);
    return true;
}

static void add_member(struct sketch *s, int from, int to) {
    if (s->members == MOST_MEMBERS || from == to)
        return;
    for (int m = 0; m < s->members; m++)
        if ((s->from[m] == from && s->to[m] == to) || (s->from[m] == to && s->to[m] == from))
            return;
    s->from[s->members] = from;
    s->to[s->members++] = to;
}

/* A free joint; some straight above or level with another one. */
static void scatter(struct sketch *s) {
    double at[3];
    for (int c = 0; c < 3; c++)
        at[c] = round(between(s, 0.0, 1500.0));
    if (s->joints && chance(s, 0.5)) {
        const double *other = s->at[pick(s, s->joints)];
        bool above = chance(s, 0.6);
        for (int c = 0; c < 3; c++)
            if ((c < 2) == above)
                at[c] = other[c];
    }
    if (s->how.plane)
        at[1] = 0.0;
    int joint = s->joints;
    if (!add_joint(s, at) || joint == 0)
        return;
    add_member(s, joint, pick(s, joint));
}

/* A joint on a stick, and a stick that ends at it, or one that crosses there. */
static void branch(struct sketch *s) {
    int m = pick(s, s->members), other = pick(s, s->joints);
    double share = between(s, 0.2, 0.8), at[3], far[3];
    for (int c = 0; c < 3; c++)
        at[c] = s->at[s->from[m]][c] + share * (s->at[s->to[m]][c] - s->at[s->from[m]][c]);
    int joint = s->joints;
    if (!add_joint(s, at))
        return;
    if (!chance(s, 0.5)) {
        add_member(s, joint, other);
        return;
    }
    double beyond = between(s, 0.3, 0.9);
    for (int c = 0; c < 3; c++)
        far[c] = at[c] + beyond * (at[c] - s->at[other][c]);
    int end = s->joints;
    if (!add_joint(s, far)) {
        add_member(s, joint, other);
        return;
    }
    if (chance(s, 0.5))
        add_member(s, other, end);
    else
        add_member(s, end, other);
    add_member(s, end, pick(s, joint));
    if (chance(s, 0.7))
        add_member(s, end, pick(s, joint));
}

static void build(struct sketch *s) {
    int wanted = 5 + pick(s, 18), base = 4 + pick(s, 6);
    for (int k = 0; k < 100 && s->joints < base; k++)
        scatter(s);
    for (int k = 0; k < base + 2; k++)
        add_member(s, pick(s, s->joints), pick(s, s->joints));
    for (int k = 0; k < 100 && s->joints < wanted; k++)
        branch(s);
    for (int k = 0; k < 4; k++)
        add_member(s, pick(s, s->joints), pick(s, s->joints));
}

/* A joint beside a stick, but so near that it counts as on it, is a test of its own. */
static bool beside_a_stick(const struct sketch *s) {
    for (int m = 0; m < s->members; m++)
        for (int j = 0; j < s->joints; j++) {
            const double *a = s->at[s->from[m]], *b = s->at[s->to[m]];
            double length = apart(a, b), along = 0.0, on[3];
            for (int c = 0; c < 3; c++)
                along += (s->at[j][c] - a[c]) * (b[c] - a[c]) / (length * length);
            for (int c = 0; c < 3; c++)
                on[c] = a[c] + along * (b[c] - a[c]);
            double off = apart(s->at[j], on);
            if (along > -0.01 && along < 1.01 && off > 1e-9 && off < 3.0)
                return true;
        }
    return false;
}

/* ---- writing ---- */

static void write_length(struct sketch *s, double mm) {
    fprintf(s->out, "%.17g", s->how.us ? mm / 25.4 : mm);
}

static void write_triple(struct sketch *s, const double v[3], double unit) {
    fprintf(s->out, "[%.17g, %.17g, %.17g]", v[0] / unit, v[1] / unit, v[2] / unit);
}

static const char stick_text[] =
    "sticks:\n"
    "  spf-2x4: {size: 2x4, species: spruce-pine-fir, grade: no-2, faces: side}\n"
    "  dfl-2x2: {size: 2x2, species: douglas-fir-larch, grade: no-2}\n"
    "  hf-2x6: {size: 2x6, species: hem-fir, grade: no-2, stands: flat}\n"
    "  spf-1x2: {size: 1x2, species: spruce-pine-fir, grade: ungraded, turn: 20 deg}\n"
    "  dfl-1x3: {size: 1x3, species: douglas-fir-larch, grade: ungraded}\n"
    "  spf-4x4: {size: 4x4, species: spruce-pine-fir, grade: no-2}\n"
    "  own: {size: [70 mm, 45 mm], material: {E: 9 GPa, density: 420 kg/m3}, stands: on-edge}\n"
    "  tube: {section: {A: 900 mm2, Iy: 300000 mm4, Iz: 450000 mm4, J: 500000 mm4, Ay: 400 mm2, "
    "Az: 350 mm2}, material: {E: 11 GPa, G: 0.6 GPa, density: 500 kg/m3}}\n"
    "  bar: {section: {A: 1500 mm2, Iy: 120000 mm4, Iz: 260000 mm4, J: 220000 mm4}, material: {E: "
    "10 GPa, density: 450 kg/m3}}\n";
static const char *const stick_names[] = {"spf-2x4", "dfl-2x2", "hf-2x6", "spf-1x2", "dfl-1x3",
                                          "spf-4x4", "own",     "tube",   "bar"};
static const char connection_text[] =
    "connections:\n"
    "  soft: {type: springs, rotation: 300 N-m/rad}\n"
    "  slips: {type: springs, rotation: 2000 N-m/rad, slip: 1500 N/mm}\n"
    "  lap1: {type: screwed-lap, screw: 8, length: 1-1/4 in, count: 1}\n"
    "  lap2: {type: screwed-lap, screw: 8, length: 2 in, count: 2}\n"
    "  lap3: {type: screwed-lap, screw: 10, length: 2 in, count: 3}\n"
    "  near2: {type: screwed-lap, screw: 6, length: 2 in, count: 2, spacing: 12 mm}\n"
    "  wide3: {type: screwed-lap, screw: 8, length: 2 in, count: 3, spacing: 80 mm}\n"
    "  butt1: {type: screwed-butt, screw: 8, length: 2-1/2 in, count: 1}\n"
    "  butt2: {type: screwed-butt, screw: 8, length: 2-1/2 in, count: 2}\n"
    "  butt5: {type: screwed-butt, lag: 1/4 in, length: 3 in, count: 5}\n";
static const char *const end_names[] = {"pinned", "rigid", "soft",  "slips", "lap1",
                                        "lap2",   "lap3",  "near2", "wide3", "butt1",
                                        "butt2",  "butt5", "rigid"};

static void write_members(struct sketch *s) {
    fprintf(s->out, "members:\n");
    for (int m = 0; m < s->members; m++) {
        fprintf(s->out, "  m%d: {from: j%d, to: j%d, stick: %s", m, s->from[m], s->to[m],
                stick_names[pick(s, 9)]);
        const char *first = end_names[pick(s, 13)], *second = end_names[pick(s, 13)];
        if (s->how.seed % 7 == 3)
            first = second = "pinned";
        if (!chance(s, 0.1))
            fprintf(s->out, ", ends: [%s, %s]", first, second);
        if (chance(s, 0.3) && !s->how.plane)
            fprintf(s->out, ", turn: %.17g deg", round(between(s, -170.0, 170.0)) + 0.3);
        if (chance(s, 0.2))
            fprintf(s->out, ", stands: %s", chance(s, 0.5) ? "flat" : "on-edge");
        if (chance(s, 0.2))
            fprintf(s->out, ", faces: %s", chance(s, 0.5) ? "side" : "front");
        fprintf(s->out, "}\n");
    }
    if (s->how.seed % 2)
        fprintf(s->out, "%s", connection_text);
    else
        fprintf(s->out, "%s  default: lap2\n", connection_text);
}

static void write_joints(struct sketch *s) {
    fprintf(s->out, "joints:\n");
    for (int j = 0; j < s->joints; j++) {
        int named = -1;
        for (int m = 0; m < s->members; m++)
            if ((s->from[m] == j || s->to[m] == j) && chance(s, 0.15))
                named = m;
        fprintf(s->out, "  j%d: {at: [", j);
        for (int c = 0; c < 3; c++) {
            if (c == 1 && s->how.plane)
                continue;
            fprintf(s->out, c ? ", " : "");
            write_length(s, s->at[j][c]);
        }
        fprintf(s->out, "]");
        if (named >= 0)
            fprintf(s->out, ", host: m%d", named);
        fprintf(s->out, "}\n");
    }
}

static void write_supports(struct sketch *s) {
    static const char *const kinds[] = {"pinned",
                                        "fixed",
                                        "foot",
                                        "[x, z]",
                                        "[y]",
                                        "[z, ry]",
                                        "{in-ground: 24 in}",
                                        "{foot: {on: paving}}",
                                        "[x, y, z, rz]",
                                        "[rx, x]"};
    /* a foot that nothing pulls off the ground */
    static const char *const all_held[] = {"pinned", "{foot: {on: soil, hold-down: 1000 kN}}",
                                           "fixed", "{in-ground: 24 in}"};
    fprintf(s->out, "supports:\n  j0: %s\n", s->how.seed % 3 == 1 ? "pinned" : "fixed");
    for (int j = 1; j < s->joints; j++)
        if (j < 3 || chance(s, 0.15))
            fprintf(s->out, "  j%d: %s\n", j,
                    s->how.held ? all_held[pick(s, 4)]
                    : j == 1    ? "pinned"
                                : kinds[pick(s, 10)]);
}

static void write_loads(struct sketch *s) {
    double newton = s->how.us ? 4.4482216152605 : 1.0,
           turning = newton * (s->how.us ? 0.0254 : 1.0);
    double per_metre = s->how.us ? 4.4482216152605 / 0.3048 : 1.0, v[3];
    fprintf(s->out, "loads:\n");
    for (int k = 0; k < 12; k++) {
        const char *name = k == 10 ? "tray" : k == 11 ? "self" : k < 3 ? "a" : k < 6 ? "b" : "c";
        bool flat = s->how.plane;
        for (int c = 0; c < 3; c++)
            v[c] = flat && c == 1 ? 0.0 : s->how.factor * between(s, -300.0, 300.0);
        fprintf(s->out, "  - {case: %s, ", name);
        if (k < 3 || k > 9) {
            fprintf(s->out, "joint: j%d, force: ", pick(s, s->joints));
            write_triple(s, v, newton);
            for (int c = 0; c < 3; c++)
                v[c] = flat && c != 1 ? 0.0 : s->how.factor * between(s, -30.0, 30.0);
            bool twist = chance(s, 0.4);
            if (k < 3 && twist && !s->how.held) {
                fprintf(s->out, ", moment: ");
                write_triple(s, v, turning);
            }
        } else if (k < 6) {
            fprintf(s->out, "member: m%d, line: ", pick(s, s->members));
            write_triple(s, v, per_metre);
        } else {
            int m = pick(s, s->members);
            double length = apart(s->at[s->from[m]], s->at[s->to[m]]);
            fprintf(s->out, "member: m%d, point: ", m);
            write_triple(s, v, newton);
            fprintf(s->out, ", at: ");
            write_length(s, length * between(s, 0.01, 0.99));
        }
        fprintf(s->out, "}\n");
    }
    if (s->how.combine)
        fprintf(s->out, "combine: {service: {self: 1, a: 1, b: 1, c: 1, duration: ten-years}}\n");
}

const char *random_frame_text(struct arena *arena, struct random_frame how) {
    struct sketch s = {.how = how, .state = 0x9e3779b97f4a7c15u * (how.seed + 1u)};
    char *text = NULL;
    size_t length = 0;
    for (int k = 0; k < 5; k++)
        random_next(&s.state);
    do {
        s.joints = s.members = 0;
        build(&s);
    } while (beside_a_stick(&s));
    s.out = open_memstream(&text, &length);
    fprintf(s.out, "batten: 1\nunits: %s\nself-weight: %s\n%s", how.us ? "us" : "si",
            how.seed % 5 ? "yes" : "no", stick_text);
    write_joints(&s);
    write_members(&s);
    write_supports(&s);
    fprintf(s.out, "site: {place: %s}\n", how.seed % 4 ? "indoors" : "outdoors");
    write_loads(&s);
    fclose(s.out);
    const char *copy = arena_copy(arena, text, length);
    free(text);
    return copy;
}

struct frame *frame_of_text(struct arena *arena, const char *text) {
    gsl_set_error_handler_off(); /* as the program does first of all */
    struct problems problems = problems_new(arena);
    struct frame *frame =
        frame_read(arena, text, strlen(text), (struct frame_limits){0}, &problems);
    cr_assert(frame && problems.count == 0, "line %d: %s: %s",
              problems.count ? problems.items[0].place.line : 0,
              problems.count ? problems.items[0].key : "",
              problems.count ? problems.items[0].message : "not read");
    return frame;
}

const char *text_of_file(struct arena *arena, const char *path) {
    FILE *file = fopen(path, "rb");
    cr_assert(file != NULL, "%s cannot be read (run the tests from the top folder)", path);
    static char bytes[1 << 16];
    size_t length = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    return arena_copy(arena, bytes, length);
}
