/* basis/us_wind.c - ASCE 7-16 and 7-22: velocity pressure (Pa, with Kd in it) at a height (m) above
 * ground, and the gust-effect factor of a body. SI; the table stands in feet where the standard's
 * own figures do. */
#include "basis/inside.h"

#include <math.h>

#define FEET(x) ((x)*0.3048)

typedef struct {
    double alpha, z_g; /* profile: exponent, gradient height m */
    double a, b;       /* a-bar, b-bar: mean hourly speed */
    double c;          /* turbulence at 10 m */
    double l, epsilon; /* length of turbulence, m */
    double z_min;      /* m */
} exposure;

/* ASCE 7 Table 26.11-1, exposures B, C, D: B and D of edition 16 READ in sample sheets, the rest
 * FROM MEMORY, as are the formulas, which stand in one step with them. */
static const exposure exposures_16[] = {
    {7.0, FEET(1200.0), 1.0 / 4.0, 0.45, 0.30, FEET(320.0), 1.0 / 3.0, FEET(30.0)},
    {9.5, FEET(900.0), 1.0 / 6.5, 0.65, 0.20, FEET(500.0), 1.0 / 5.0, FEET(15.0)},
    {11.5, FEET(700.0), 1.0 / 9.0, 0.80, 0.15, FEET(650.0), 1.0 / 8.0, FEET(7.0)},
};
static const exposure exposures_22[] = {
    {7.5, FEET(3280.0), 1.0 / 4.5, 0.47, 0.30, FEET(320.0), 1.0 / 3.0, FEET(30.0)},
    {9.8, FEET(2460.0), 1.0 / 6.4, 0.66, 0.20, FEET(500.0), 1.0 / 5.0, FEET(15.0)},
    {11.5, FEET(1935.0), 1.0 / 8.0, 0.78, 0.15, FEET(650.0), 1.0 / 8.0, FEET(7.0)},
};

/* An exposure that does not exist counts as D, the windiest. */
static const exposure *exposure_of(const tt_wind_site *site)
{
    const exposure *rows = site->edition == 22 ? exposures_22 : exposures_16;
    return &rows[site->exposure == 'B' ? 0 : site->exposure == 'C' ? 1 : 2];
}

static double profile(const tt_wind_site *site, double z, tt_steps *steps)
{
    const exposure *e = exposure_of(site);
    const bool newer = site->edition == 22;
    const double top = newer ? 2.41 : 2.01;
    const double height = fmin(fmax(z, FEET(15.0)), e->z_g);
    const double K_z = top * pow(height / e->z_g, 2.0 / e->alpha);
    tt_say(steps, newer ? TT_S_asce_kz_22 : TT_S_asce_kz_16, "Kz", "", K_z,
           newer ? "2.41 (max(z, 4.572) / zg)^(2 / alpha)"
                 : "2.01 (max(z, 4.572) / zg)^(2 / alpha)",
           "%.2f (max(%.4g, 4.572) / %.4g)^(2 / %.3g)", top, z, e->z_g, e->alpha);
    return K_z;
}

/* ASCE 7 Fig. 26.8-1: k for exposures B, C, D; gamma; mu, of both sides the larger, since the wind
 * may come from either. */
static const struct {
    double k[3], gamma, mu;
} hills[] = {[TT_RIDGE] = {{1.30, 1.45, 1.55}, 3.0, 1.5},
             [TT_ESCARPMENT] = {{0.75, 0.85, 0.95}, 2.5, 4.0},
             [TT_ROUND_HILL] = {{0.95, 1.05, 1.15}, 4.0, 1.5}};

/* ASCE 7 Eq. 26.8-1. Low and gentle hills, which the standard lets count as level ground, are not
 * left out: the factor falls to 1 by itself. */
static double topography(const tt_wind_site *site, double z, tt_steps *steps)
{
    const tt_hill *hill = &site->hill;
    if (hill->kind == TT_NO_HILL) return site->orography;
    const int row = site->exposure == 'B' ? 0 : site->exposure == 'C' ? 1 : 2;
    const double k = hills[hill->kind].k[row], gamma = hills[hill->kind].gamma;
    const double mu = hills[hill->kind].mu, slope = fmin(0.5, hill->height / hill->half_length);
    const double L = fmax(hill->half_length, 2.0 * hill->height);
    const double K_1 = k * slope, K_2 = fmax(0.0, 1.0 - hill->from_crest / (mu * L));
    const double K_3 = exp(-gamma * z / L), root = 1.0 + K_1 * K_2 * K_3;
    tt_say(steps, TT_S_asce_hill, "K1", "", K_1, "k H / Lh, H / Lh not over 0.5", "%.3g * %.4g", k,
           slope);
    tt_say(steps, TT_S_asce_hill, "K2", "", K_2, "1 - x / (mu L), L = max(Lh, 2 H)",
           "1 - %.4g / (%.3g * %.4g)", hill->from_crest, mu, L);
    tt_say(steps, TT_S_asce_hill, "K3", "", K_3, "exp(-gamma z / L)", "exp(-%.3g * %.4g / %.4g)",
           gamma, z, L);
    tt_say(steps, TT_S_asce_hill, "Kzt", "", root * root, "(1 + K1 K2 K3)^2",
           "(1 + %.4g * %.4g * %.4g)^2", K_1, K_2, K_3);
    return root * root;
}

/* A speed of the service level is brought to that of strength: decision 9 of ours. */
static double speed_of(const tt_wind_site *site, tt_steps *steps)
{
    if (!site->service) return site->basic_speed;
    const double V = sqrt(1.6) * site->basic_speed;
    tt_say(steps, TT_S_service_speed, "V", "m/s", V, "sqrt(1.6) V service", "sqrt(1.6) %.4g",
           site->basic_speed);
    return V;
}

/* Edition 22 multiplies the force by Kd, edition 16 the pressure: the product is the same. */
double tt_us_pressure(const tt_wind_site *site, double z, tt_steps *steps)
{
    const bool newer = site->edition == 22;
    const double K_z = profile(site, z, steps);
    const double K_e = exp(-0.000119 * site->elevation);
    tt_say(steps, TT_S_asce_ke, "Ke", "", K_e, "exp(-0.000119 elevation)", "exp(-0.000119 * %.4g)",
           site->elevation);
    const double V = speed_of(site, steps), K_d = site->directionality;
    const double K_zt = topography(site, z, steps);
    const double q_z = 0.613 * K_z * K_zt * K_d * K_e * V * V;
    tt_say(steps, newer ? TT_S_asce_pressure_22 : TT_S_asce_pressure_16, "qz", "Pa", q_z,
           newer ? "0.613 Kz Kzt Kd Ke V^2; Kd, which this edition puts into the force, stands here"
                 : "0.613 Kz Kzt Kd Ke V^2; Kd stands here, not in the force",
           "0.613 * %.4f * %.4g * %.3g * %.4f * %.4g^2", K_z, K_zt, K_d, K_e, V);
    return q_z;
}

/* What a gust is like at the reference height. */
typedef struct {
    const exposure *e;
    double z; /* reference height, m */
    double I; /* intensity of turbulence */
    double L; /* its length, m */
    double Q; /* background response */
} gust;

static gust gust_at(const tt_wind_site *site, const tt_wind_body *body, tt_steps *steps)
{
    const exposure *e = exposure_of(site);
    gust g = {.e = e, .z = fmax(body->base_height + 0.6 * body->height, e->z_min)};
    g.I = e->c * pow(10.0 / g.z, 1.0 / 6.0);
    g.L = e->l * pow(g.z / 10.0, e->epsilon);
    g.Q = sqrt(1.0 / (1.0 + 0.63 * pow((body->breadth + body->height) / g.L, 0.63)));
    tt_say(steps, TT_S_gust_height, "z-bar", "m", g.z, "max(base + 0.6 h, zmin)",
           "max(%.4g + 0.6 * %.4g, %.4g)", body->base_height, body->height, e->z_min);
    tt_say(steps, TT_S_asce_gust_table, "Iz", "", g.I, "c (10 / z-bar)^(1/6)",
           "%.3g (10 / %.4g)^(1/6)", e->c, g.z);
    tt_say(steps, TT_S_asce_gust_table, "Lz", "m", g.L, "l (z-bar / 10)^epsilon",
           "%.5g (%.4g / 10)^%.4g", e->l, g.z, e->epsilon);
    tt_say(steps, TT_S_asce_rigid, "Q", "", g.Q, "sqrt(1 / (1 + 0.63 ((B + h) / Lz)^0.63))",
           "sqrt(1 / (1 + 0.63 ((%.4g + %.4g) / %.5g)^0.63))", body->breadth, body->height, g.L);
    return g;
}

static double rigid(const gust *g, tt_steps *steps)
{
    /* ASCE 7 Eq. 26.11-6, gQ = gv = 3.4. */
    const double G = 0.925 * (1.0 + 1.7 * 3.4 * g->I * g->Q) / (1.0 + 1.7 * 3.4 * g->I);
    tt_say(steps, TT_S_asce_rigid, "G", "", G, "0.925 (1 + 1.7 gQ Iz Q) / (1 + 1.7 gv Iz)",
           "0.925 (1 + 1.7 * 3.4 * %.4f * %.4f) / (1 + 1.7 * 3.4 * %.4f)", g->I, g->Q, g->I);
    return G;
}

/* beta, as a share of critical. */
static double damping(const tt_wind_body *body, double V_z, tt_steps *steps)
{
    const double air = 1.225; /* kg/m3: the 0.613 of ASCE 7 Eq. 26.10-1 is half of it */
    const double delta_a = tt_air_damping(body, air, V_z);
    const double beta = (body->log_decrement + delta_a) / (2.0 * TT_PI);
    tt_say(steps, TT_S_gust_air_damping, "delta_a", "", delta_a,
           "1.225 Vz sum(Cf A phi^2) / (2 n1 sum(m phi^2))",
           "1.225 * %.4g * %.4g / (2 * %.4g * %.4g)", V_z, body->drag_area_modal, body->frequency,
           body->mass_modal);
    tt_say(steps, TT_S_gust_air_damping, "beta", "", beta, "(delta_s + delta_a) / (2 pi)",
           "(%.4g + %.4g) / (2 pi)", body->log_decrement, delta_a);
    return beta;
}

static double admittance(const char *symbol, double eta, tt_steps *steps)
{
    const double R = tt_gust_admittance(eta);
    tt_say(steps, TT_S_asce_resonance, symbol, "", R, "1 / eta - (1 - exp(-2 eta)) / (2 eta^2)",
           "eta = %.4g", eta);
    return R;
}

/* R, the resonant response. */
static double resonance(const tt_wind_site *site, const tt_wind_body *body, const gust *g,
                        tt_steps *steps)
{
    const double V = speed_of(site, NULL);
    const double V_z = g->e->b * pow(g->z / 10.0, g->e->a) * V;
    const double N_1 = body->frequency * g->L / V_z, per_metre = body->frequency / V_z;
    const double R_n = 7.47 * N_1 / pow(1.0 + 10.3 * N_1, 5.0 / 3.0);
    tt_say(steps, TT_S_asce_gust_table, "Vz", "m/s", V_z, "b (z-bar / 10)^a V",
           "%.3g (%.4g / 10)^%.4g * %.4g", g->e->b, g->z, g->e->a, V);
    tt_say(steps, TT_S_asce_resonance, "N1", "", N_1, "n1 Lz / Vz", "%.4g * %.5g / %.5g",
           body->frequency, g->L, V_z);
    tt_say(steps, TT_S_asce_resonance, "Rn", "", R_n, "7.47 N1 / (1 + 10.3 N1)^(5/3)",
           "7.47 * %.4g / (1 + 10.3 * %.4g)^(5/3)", N_1, N_1);
    const double beta = damping(body, V_z, steps);
    const double R_h = admittance("Rh", 4.6 * body->height * per_metre, steps);
    const double R_B = admittance("RB", 4.6 * body->breadth * per_metre, steps);
    const double R_L = admittance("RL", 15.4 * body->depth * per_metre, steps);
    const double R = sqrt(R_n * R_h * R_B * (0.53 + 0.47 * R_L) / beta);
    tt_say(steps, TT_S_asce_resonance, "R", "", R, "sqrt(Rn Rh RB (0.53 + 0.47 RL) / beta)",
           "sqrt(%.4g * %.4g * %.4g (0.53 + 0.47 * %.4g) / %.4g)", R_n, R_h, R_B, R_L, beta);
    return R;
}

static double flexible(const tt_wind_body *body, const gust *g, double R, tt_steps *steps)
{
    /* Below one sway in six minutes the peak factor has no meaning. */
    const double root = sqrt(2.0 * log(fmax(10.0, 3600.0 * body->frequency)));
    const double g_R = root + 0.577 / root, g_Q = 3.4;
    /* ASCE 7 Eq. 26.11-10. */
    const double response = sqrt(g_Q * g_Q * g->Q * g->Q + g_R * g_R * R * R);
    const double G_f = 0.925 * (1.0 + 1.7 * g->I * response) / (1.0 + 1.7 * 3.4 * g->I);
    tt_say(steps, TT_S_asce_resonance, "gR", "", g_R, "r + 0.577 / r, r = sqrt(2 ln(3600 n1))",
           "r = sqrt(2 ln(3600 * %.4g)) = %.4g", body->frequency, root);
    tt_say(steps, TT_S_asce_flexible, "Gf", "", G_f,
           "0.925 (1 + 1.7 Iz sqrt(gQ^2 Q^2 + gR^2 R^2)) / (1 + 1.7 gv Iz)",
           "0.925 (1 + 1.7 * %.4f sqrt(3.4^2 * %.4f^2 + %.4f^2 * %.4f^2)) / (1 + 1.7 * 3.4 * %.4f)",
           g->I, g->Q, g_R, R, g->I);
    return G_f;
}

/* A body without a mode counts as rigid. One with a mode takes Gf at every frequency, although the
 * standard lets it count as rigid from 1 Hz on (assumption of this program): a bronze figure has so
 * little damping that Gf at 5 Hz still lies a quarter above the rigid value, and a limit there
 * would be a step in the load.
 */
double tt_us_gust(const tt_wind_site *site, const tt_wind_body *body, tt_steps *steps)
{
    const bool sways = body->frequency > 0.0;
    const gust g = gust_at(site, body, steps);
    const double factor =
        sways ? flexible(body, &g, resonance(site, body, &g, steps), steps) : rigid(&g, steps);
    if (factor >= 0.85) return factor;
    tt_say(steps, TT_S_assumption, "G used", "", 0.85, "not below 0.85", "max(%.4f, 0.85)", factor);
    return 0.85;
}
