#include "solve/element.h"

#include <math.h>
#include <string.h>

enum { U1, V1, W1, TX1, TY1, TZ1, U2, V2, W2, TX2, TY2, TZ2 };

void element_bending(double (*k)[ELEMENT_DOFS], const int dof[4], double EI, double phi, double L,
                     double sign) {
    double s = EI / (L * L * L * (1.0 + phi));
    double part[4][4] = {
        {12.0, 6.0 * L, -12.0, 6.0 * L},
        {6.0 * L, (4.0 + phi) * L * L, -6.0 * L, (2.0 - phi) * L * L},
        {-12.0, -6.0 * L, 12.0, -6.0 * L},
        {6.0 * L, (2.0 - phi) * L * L, -6.0 * L, (4.0 + phi) * L * L},
    };
    for (int i = 0; i < 4; i++)
        for (int j = 0; j < 4; j++) {
            bool mixed = (i % 2) != (j % 2);
            k[dof[i]][dof[j]] += s * part[i][j] * (mixed ? sign : 1.0);
        }
}

static void own_stiffness(struct element *element) {
    double L = element->length;
    double axial = element->EA / L, turning = element->GJ / L;
    element->k[U1][U1] = element->k[U2][U2] = axial;
    element->k[U1][U2] = element->k[U2][U1] = -axial;
    element->k[TX1][TX1] = element->k[TX2][TX2] = turning;
    element->k[TX1][TX2] = element->k[TX2][TX1] = -turning;
    element_bending(element->k, (const int[]){V1, TZ1, V2, TZ2}, element->EIz, element->phi_y, L,
                    1.0);
    element_bending(element->k, (const int[]){W1, TY1, W2, TY2}, element->EIy, element->phi_z, L,
                    -1.0);
}

/* Invert the sprung part of k + S by elimination. An end that nothing resists (a stick free to turn
 * about its axis at both ends, a section without inertia) stays where it is: its row is left out.
 */
static void invert_sprung(const struct element *element, const int *dofs, int count,
                          double inverse[ELEMENT_DOFS][ELEMENT_DOFS]) {
    double a[ELEMENT_DOFS][2 * ELEMENT_DOFS] = {{0}};
    bool used[ELEMENT_DOFS] = {false};
    for (int i = 0; i < count; i++) {
        for (int j = 0; j < count; j++)
            a[i][j] = element->k[dofs[i]][dofs[j]];
        a[i][i] += element->S[dofs[i]];
        a[i][count + i] = 1.0;
    }
    for (int p = 0; p < count; p++) {
        double own = element->k[dofs[p]][dofs[p]] + element->S[dofs[p]];
        if (!(a[p][p] > 1e-12 * own))
            continue;
        used[p] = true;
        double pivot = a[p][p];
        for (int j = 0; j < 2 * count; j++)
            a[p][j] /= pivot;
        for (int i = 0; i < count; i++) {
            double factor = a[i][p];
            if (i == p || factor == 0.0)
                continue;
            for (int j = 0; j < 2 * count; j++)
                a[i][j] -= factor * a[p][j];
        }
    }
    for (int i = 0; i < count; i++)
        for (int j = 0; j < count; j++)
            inverse[i][j] = used[i] && used[j] ? a[i][count + j] : 0.0;
}

static void condense(struct element *element, const int *dofs, int count) {
    double inverse[ELEMENT_DOFS][ELEMENT_DOFS] = {{0}};
    invert_sprung(element, dofs, count, inverse);
    bool sprung[ELEMENT_DOFS] = {false};
    for (int i = 0; i < count; i++)
        sprung[dofs[i]] = true;
    for (int r = 0; r < ELEMENT_DOFS; r++)
        if (!sprung[r])
            element->T[r][r] = 1.0;
    for (int i = 0; i < count; i++)
        for (int j = 0; j < count; j++) {
            element->flexibility[dofs[i]][dofs[j]] = inverse[i][j];
            element->T[dofs[i]][dofs[j]] += inverse[i][j] * element->S[dofs[j]];
            for (int r = 0; r < ELEMENT_DOFS; r++)
                if (!sprung[r])
                    element->T[dofs[i]][r] -= inverse[i][j] * element->k[dofs[j]][r];
        }
}

struct element element_of(const struct model *model, const struct segment *segment,
                          enum stiffness stiffness) {
    const struct model_member *member = &model->members[segment->member];
    double L = segment->length;
    struct element element = {.length = L,
                              .EA = member->E * member->A,
                              .EIy = member->E * member->Iy,
                              .EIz = member->E * member->Iz,
                              .GJ = member->G * member->J};
    if (member->Ay > 0.0)
        element.phi_y = 12.0 * element.EIz / (member->G * member->Ay * L * L);
    if (member->Az > 0.0)
        element.phi_z = 12.0 * element.EIy / (member->G * member->Az * L * L);
    /* an end that is free to turn about the axis leaves no torsion in this piece */
    for (int end = 0; end < 2; end++)
        if (segment->sprung[end] && member->ends[end].springs[stiffness].k[3] == 0.0)
            element.GJ = 0.0;
    memcpy(element.axes, member->axes, sizeof element.axes);
    own_stiffness(&element);
    int dofs[ELEMENT_DOFS], count = 0;
    for (int end = 0; end < 2; end++) {
        if (!segment->sprung[end])
            continue;
        const double *spring = member->ends[end].springs[stiffness].k;
        for (int c = 0; c < 6; c++)
            if (isfinite(spring[c])) {
                element.S[6 * end + c] = spring[c];
                dofs[count++] = 6 * end + c;
            }
    }
    element.sprung = count > 0;
    if (element.sprung)
        condense(&element, dofs, count);
    for (int i = 0; i < count; i++)
        element.sprung_dofs[i] = dofs[i];
    element.sprung_count = count;
    return element;
}

/* Where pins leave no stiffness at all, sums leave a little of 1e-16 of what the stick has without
 * them, which would hide that the joint is free. */
static void clear_round_off(const struct element *element, double K[ELEMENT_DOFS][ELEMENT_DOFS]) {
    const double round_off = 1e-14;
    for (int i = 0; i < ELEMENT_DOFS; i++) {
        if (K[i][i] > round_off * element->k[i][i])
            continue;
        for (int j = 0; j < ELEMENT_DOFS; j++)
            K[i][j] = K[j][i] = 0.0;
    }
}

/* K = T' k T + (I - T)' S (I - T), local. T is the unit matrix but for the rows of sprung ends. */
static void joint_stiffness(const struct element *element, double K[ELEMENT_DOFS][ELEMENT_DOFS]) {
    memcpy(K, element->k, sizeof element->k);
    if (!element->sprung)
        return;
    double kT[ELEMENT_DOFS][ELEMENT_DOFS];
    memcpy(kT, element->k, sizeof kT);
    for (int a = 0; a < element->sprung_count; a++) {
        int row = element->sprung_dofs[a];
        for (int i = 0; i < ELEMENT_DOFS; i++)
            kT[i][row] = 0.0;
    }
    for (int a = 0; a < element->sprung_count; a++) {
        int row = element->sprung_dofs[a];
        for (int i = 0; i < ELEMENT_DOFS; i++)
            if (element->k[i][row] != 0.0)
                for (int j = 0; j < ELEMENT_DOFS; j++)
                    kT[i][j] += element->k[i][row] * element->T[row][j];
    }
    memcpy(K, kT, sizeof kT);
    for (int a = 0; a < element->sprung_count; a++)
        memset(K[element->sprung_dofs[a]], 0, sizeof K[0]);
    for (int a = 0; a < element->sprung_count; a++) {
        int row = element->sprung_dofs[a];
        double open[ELEMENT_DOFS]; /* row of I - T */
        for (int j = 0; j < ELEMENT_DOFS; j++)
            open[j] = (j == row) - element->T[row][j];
        for (int i = 0; i < ELEMENT_DOFS; i++)
            for (int j = 0; j < ELEMENT_DOFS; j++)
                K[i][j] += element->T[row][i] * kT[row][j] + open[i] * element->S[row] * open[j];
    }
    clear_round_off(element, K);
}

void element_to_local(const struct element *element, const double global[ELEMENT_DOFS],
                      double local[ELEMENT_DOFS]) {
    for (int t = 0; t < 4; t++)
        for (int i = 0; i < 3; i++) {
            double sum = 0.0;
            for (int k = 0; k < 3; k++)
                sum += element->axes[i][k] * global[3 * t + k];
            local[3 * t + i] = sum;
        }
}

void element_to_global(const struct element *element, const double local[ELEMENT_DOFS],
                       double global[ELEMENT_DOFS]) {
    for (int t = 0; t < 4; t++)
        for (int k = 0; k < 3; k++) {
            double sum = 0.0;
            for (int i = 0; i < 3; i++)
                sum += element->axes[i][k] * local[3 * t + i];
            global[3 * t + k] = sum;
        }
}

void element_global_stiffness(const struct element *element, double K[ELEMENT_DOFS][ELEMENT_DOFS]) {
    double local[ELEMENT_DOFS][ELEMENT_DOFS];
    const double(*R)[3] = element->axes;
    joint_stiffness(element, local);
    /* block by block: R' K R, each block 3 x 3; the upper ones by symmetry */
    for (int I = 0; I < 12; I += 3)
        for (int J = 0; J <= I; J += 3) {
            double half[3][3];
            for (int i = 0; i < 3; i++)
                for (int j = 0; j < 3; j++)
                    half[i][j] = local[I + i][J] * R[0][j] + local[I + i][J + 1] * R[1][j] +
                                 local[I + i][J + 2] * R[2][j];
            for (int i = 0; i < 3; i++)
                for (int j = 0; j < 3; j++) {
                    double value =
                        R[0][i] * half[0][j] + R[1][i] * half[1][j] + R[2][i] * half[2][j];
                    K[I + i][J + j] = value;
                    K[J + j][I + i] = value;
                }
        }
}

/* A transverse force P at a: end forces of the joints on the stick in one bending plane (shear and
 * moment at either end), for a beam held fast at both ends, with shear term phi. */
static void fixed_point(double P, double a, double L, double phi, double out[4]) {
    double al = a / L, be = 1.0 - al;
    double m1 = P * L * al * be * (be + phi / 2.0) / (1.0 + phi);
    double m2 = P * L * al * be * (al + phi / 2.0) / (1.0 + phi);
    /* equilibrium of the beam: the moments are not equal, so they shift the shears */
    out[0] = -(P * be + (m1 - m2) / L);
    out[1] = -m1;
    out[2] = -(P * al - (m1 - m2) / L);
    out[3] = m2;
}

static void add_point(const struct element *element, double a, const double force[3],
                      double f[ELEMENT_DOFS]) {
    double L = element->length, out[4];
    f[U1] -= force[0] * (1.0 - a / L);
    f[U2] -= force[0] * a / L;
    fixed_point(force[1], a, L, element->phi_y, out);
    f[V1] += out[0];
    f[TZ1] += out[1];
    f[V2] += out[2];
    f[TZ2] += out[3];
    fixed_point(force[2], a, L, element->phi_z, out);
    f[W1] += out[0];
    f[TY1] -= out[1];
    f[W2] += out[2];
    f[TY2] -= out[3];
}

void element_fixed_end(const struct element *element, const struct element_load *load,
                       double f[ELEMENT_DOFS]) {
    if (!(load->b > load->a)) {
        add_point(element, load->a, load->force, f);
        return;
    }
    /* The influence of a point load is a cubic in its place: three Gauss points integrate a uniform
     * part exactly. */
    static const double at[3] = {-0.774596669241483377, 0.0, 0.774596669241483377};
    static const double weight[3] = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};
    double half = (load->b - load->a) / 2.0, middle = (load->b + load->a) / 2.0;
    for (int g = 0; g < 3; g++) {
        double force[3];
        for (int k = 0; k < 3; k++)
            force[k] = load->force[k] * half * weight[g];
        add_point(element, middle + half * at[g], force, f);
    }
}

void element_to_joints(const struct element *element, const double f[ELEMENT_DOFS],
                       double out[ELEMENT_DOFS]) {
    memcpy(out, f, ELEMENT_DOFS * sizeof *out);
    for (int a = 0; a < element->sprung_count; a++)
        out[element->sprung_dofs[a]] = 0.0;
    for (int a = 0; a < element->sprung_count; a++) {
        int row = element->sprung_dofs[a];
        for (int j = 0; j < ELEMENT_DOFS; j++)
            out[j] += element->T[row][j] * f[row];
    }
}

void element_own_ends(const struct element *element, const double u[ELEMENT_DOFS],
                      const double f[ELEMENT_DOFS], double x[ELEMENT_DOFS]) {
    memcpy(x, u, ELEMENT_DOFS * sizeof *x);
    for (int a = 0; a < element->sprung_count; a++) {
        int row = element->sprung_dofs[a];
        x[row] = 0.0;
        for (int j = 0; j < ELEMENT_DOFS; j++)
            x[row] += element->T[row][j] * u[j] - element->flexibility[row][j] * f[j];
    }
}
