#include "model/fastening.h"

#include "base/vector.h"

#include <math.h>

enum { ALONG_X, ALONG_Y, ALONG_Z, ABOUT_X, ABOUT_Y, ABOUT_Z };

static struct end_springs all_rigid(void) {
    struct end_springs springs;
    for (int k = 0; k < 6; k++)
        springs.k[k] = INFINITY;
    return springs;
}

/* Local axis (1 or 2) of `stick` nearer to `direction`; z where equally near. */
static int nearer_axis(const struct model_member *stick, const double direction[3]) {
    double y = fabs(vector_dot(stick->axes[1], direction));
    double z = fabs(vector_dot(stick->axes[2], direction));
    return y > z + 1e-9 * vector_length(direction) ? 1 : 2;
}

/* The size of a stick in the plane across the screws: across its other lateral axis. */
static double size_in_plane(const struct model_member *stick, int screw_axis) {
    return screw_axis == 1 ? stick->size_z : stick->size_y;
}

double fastening_density(const struct model_member *stick) {
    double density;
    if (lumber_slip_density(&stick->lumber, &density) && density > 0.0)
        return density;
    struct cited gravity;
    int weakest = table_species_find("northern-species");
    struct lumber lumber = stick->lumber;
    lumber.has_gravity = table_specific_gravity(weakest, &gravity);
    lumber.gravity = gravity;
    lumber.has_density = false;
    lumber.basis = LUMBER_UNGRADED;
    return lumber_slip_density(&lumber, &density) ? density : NAN;
}

double fastening_slip(double density, double diameter, bool wet) {
    double d_mm = diameter * 1000.0;
    double newton_per_mm =
        density * sqrt(density) * d_mm / table_constant("slip-modulus-divisor").value;
    return newton_per_mm * 1000.0 * (wet ? table_constant("wet-slip").value : 1.0);
}

static double one_screw_slip(const struct fastening *fastening) {
    double rho = sqrt(fastening_density(fastening->ending) * fastening_density(fastening->host));
    return fastening_slip(rho, fastening->connection->diameter, fastening->wet);
}

/* Sum of squared distances from the middle of `count` screws spread evenly over `line`. */
static double line_sum_r2(int count, double line) {
    if (count < 2)
        return 0.0;
    double n = count;
    return line * line * n * (n + 1.0) / (12.0 * (n - 1.0));
}

struct lap_plane fastening_plane(const struct fastening *fastening) {
    const struct model_member *ending = fastening->ending, *host = fastening->host;
    double normal[3];
    vector_cross(ending->axes[0], host->axes[0], normal);
    struct lap_plane plane = {.parallel = vector_length(normal) < 1e-6};
    plane.normal = plane.parallel ? 2 : nearer_axis(ending, normal);
    plane.across = 3 - plane.normal;
    int host_normal = nearer_axis(host, ending->axes[plane.normal]);
    plane.width_ending = size_in_plane(ending, plane.normal);
    plane.width_host = size_in_plane(host, host_normal);
    plane.thick_ending = size_in_plane(ending, plane.across);
    plane.thick_host = size_in_plane(host, 3 - host_normal);
    return plane;
}

struct lap fastening_lap(const struct fastening *fastening) {
    const struct connection *connection = fastening->connection;
    struct lap lap = {.plane = fastening_plane(fastening)};
    double width_ending = lap.plane.width_ending, width_host = lap.plane.width_host;
    double edge = 2.0 * table_constant("lap-edge-diameters").value * connection->diameter;
    double fits = hypot(fmax(0.0, width_ending - edge), fmax(0.0, width_host - edge));
    int count = connection->count;
    lap.line = count > 1 ? fits : 0.0;
    if (connection->spacing.given && count > 1) {
        double asked = connection->spacing.value * (count - 1);
        lap.line_cut = asked > fits + 1e-9;
        lap.line = fmin(asked, fits);
    }
    lap.slip = one_screw_slip(fastening);
    lap.sum_r2 = line_sum_r2(count, lap.line);
    return lap;
}

/* Share of the reference turning stiffness of a 38 mm stick. */
static double size_share(double size) {
    double share = size / table_constant("turn-reference-size").value;
    return share * share;
}

void fastening_slip_range(double range[STIFFNESS_COUNT]) {
    range[STIFFNESS_LOW] = table_constant("lap-slip-low").value;
    range[STIFFNESS_MIDDLE] = 1.0;
    range[STIFFNESS_HIGH] = table_constant("lap-slip-high").value;
}

/* Of what turns by friction and clamping. */
static void turn_range(double range[STIFFNESS_COUNT]) {
    range[STIFFNESS_LOW] = table_constant("turn-low").value;
    range[STIFFNESS_MIDDLE] = 1.0;
    range[STIFFNESS_HIGH] = table_constant("turn-high").value;
}

static void lap_springs(const struct fastening *fastening,
                        struct end_springs springs[STIFFNESS_COUNT]) {
    double lap_range[STIFFNESS_COUNT], single_range[STIFFNESS_COUNT];
    fastening_slip_range(lap_range);
    turn_range(single_range);
    struct lap lap = fastening_lap(fastening);
    const struct lap_plane *plane = &lap.plane;
    double both_ways = lap.slip * fastening->connection->count;
    /* A lone screw, or screws on one spot, still turn with friction and clamping. */
    bool single = !(lap.sum_r2 > 0.0);
    double turn = single ? table_constant("single-screw-turn").value *
                               size_share(fmin(plane->width_ending, plane->width_host))
                         : lap.slip * lap.sum_r2;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        springs[s].k[ALONG_X] = both_ways * lap_range[s];
        springs[s].k[plane->across] = both_ways * lap_range[s];
        springs[s].k[3 + plane->normal] = turn * (single ? single_range[s] : lap_range[s]);
        springs[s].k[3 + plane->across] = 0.0;
    }
}

static void butt_springs(const struct fastening *fastening,
                         struct end_springs springs[STIFFNESS_COUNT]) {
    double range[STIFFNESS_COUNT];
    turn_range(range);
    int pairs = fastening->connection->count / 2;
    double turn = pairs > 0 ? pairs * table_constant("butt-pair-turn").value
                            : table_constant("butt-single-turn").value;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        springs[s].k[ABOUT_Y] = turn * size_share(fastening->ending->size_z) * range[s];
        springs[s].k[ABOUT_Z] = turn * size_share(fastening->ending->size_y) * range[s];
    }
}

static void given_springs(const struct connection *connection,
                          struct end_springs springs[STIFFNESS_COUNT]) {
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        if (connection->slip.given)
            springs[s].k[ALONG_X] = connection->slip.value;
        springs[s].k[ABOUT_Y] = connection->rotation.given ? connection->rotation.value : 0.0;
        springs[s].k[ABOUT_Z] = springs[s].k[ABOUT_Y];
    }
}

/* Glue holds the turning in the plane of the lap; across it the faces peel. */
static void glued_springs(const struct fastening *fastening,
                          struct end_springs springs[STIFFNESS_COUNT]) {
    const double range[STIFFNESS_COUNT] = {table_constant("glued-lap-turn-low").value, 1.0,
                                           table_constant("glued-lap-turn-high").value};
    struct lap_plane plane = fastening_plane(fastening);
    double turn = table_constant("glued-lap-turn").value *
                  size_share(fmin(plane.width_ending, plane.width_host));
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        springs[s].k[3 + plane.normal] = turn * range[s];
        springs[s].k[3 + plane.across] = 0.0;
    }
}

/* A thin steel angle bends open at its corner: E I / (2 a), a from the corner to the nearest
 * screw. */
static void bracket_springs(const struct fastening *fastening,
                            struct end_springs springs[STIFFNESS_COUNT]) {
    double range[STIFFNESS_COUNT];
    turn_range(range);
    const struct connection *connection = fastening->connection;
    double thick = connection->steel;
    double inertia = connection->wide * thick * thick * thick / 12.0;
    double turn =
        table_constant("steel-E").value * inertia / (2.0 * table_constant("bracket-elbow").value);
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        springs[s].k[ABOUT_Y] = springs[s].k[ABOUT_Z] = turn * range[s];
    }
}

double fastening_gusset_line(const struct connection *connection) {
    double spacing = connection->spacing.given ? connection->spacing.value
                                               : table_constant("gusset-spacing").value;
    return spacing * (connection->count - 1);
}

/* Two groups of screws in series, one in each stick; the plate itself is taken as stiff. */
static void gusset_springs(const struct fastening *fastening,
                           struct end_springs springs[STIFFNESS_COUNT]) {
    double range[STIFFNESS_COUNT], single_range[STIFFNESS_COUNT];
    fastening_slip_range(range);
    turn_range(single_range);
    const struct connection *connection = fastening->connection;
    struct lap_plane plane = fastening_plane(fastening);
    double slip = one_screw_slip(fastening) * connection->plates;
    double sum_r2 = line_sum_r2(connection->count, fastening_gusset_line(connection));
    bool single = !(sum_r2 > 0.0);
    double turn = single ? table_constant("single-screw-turn").value *
                               size_share(fmin(plane.width_ending, plane.width_host))
                         : slip * sum_r2 / 2.0;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        springs[s].k[ALONG_X] = springs[s].k[plane.across] =
            slip * connection->count / 2.0 * range[s];
        springs[s].k[3 + plane.normal] = turn * (single ? single_range[s] : range[s]);
        springs[s].k[3 + plane.across] = 0.0;
    }
}

/* The block slips down the post on its screws; the stick on it turns freely. */
static void cleat_springs(const struct fastening *fastening,
                          struct end_springs springs[STIFFNESS_COUNT]) {
    double range[STIFFNESS_COUNT];
    fastening_slip_range(range);
    int down = nearer_axis(fastening->ending, fastening->host->axes[0]);
    double slip = one_screw_slip(fastening) * fastening->connection->count;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        springs[s] = all_rigid();
        springs[s].k[down] = slip * range[s];
        springs[s].k[ABOUT_Y] = springs[s].k[ABOUT_Z] = 0.0;
    }
}

/* What is let in rocks on the notch about as a butt with one screw does. */
static void notched_springs(const struct fastening *fastening,
                            struct end_springs springs[STIFFNESS_COUNT]) {
    struct connection one_screw = *fastening->connection;
    struct fastening butt = *fastening;
    one_screw.count = 1;
    butt.connection = &one_screw;
    butt_springs(&butt, springs);
}

static void free_to_turn(struct end_springs springs[STIFFNESS_COUNT]) {
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        for (int k = ABOUT_X; k <= ABOUT_Z; k++)
            springs[s].k[k] = 0.0;
}

bool fastening_springs(const struct fastening *fastening,
                       struct end_springs springs[STIFFNESS_COUNT]) {
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        springs[s] = all_rigid();
    switch (fastening->connection->type) {
    case CONNECTION_PINNED:
    case CONNECTION_HINGE:
        free_to_turn(springs);
        return false;
    case CONNECTION_RIGID:
        return false;
    case CONNECTION_SPRINGS:
        given_springs(fastening->connection, springs);
        return false;
    case CONNECTION_SCREWED_LAP:
        lap_springs(fastening, springs);
        return true;
    case CONNECTION_SCREWED_BUTT:
        butt_springs(fastening, springs);
        return true;
    case CONNECTION_GLUED_LAP:
        glued_springs(fastening, springs);
        return true;
    case CONNECTION_BRACKET:
        bracket_springs(fastening, springs);
        return true;
    case CONNECTION_GUSSET:
        gusset_springs(fastening, springs);
        return true;
    case CONNECTION_CLEAT:
        cleat_springs(fastening, springs);
        return true;
    case CONNECTION_NOTCHED:
        notched_springs(fastening, springs);
        return true;
    }
    return false;
}
