/* basis/eu_wind.c - EN 1991-1-4:2005: peak velocity pressure (Pa) at a height (m) above ground, and
 * the structural factor cs cd of a swaying body by Annex B, procedure 1. SI. */
#include "basis/inside.h"

#include <math.h>

typedef struct {
    double z_0, z_min; /* m */
} terrain;

/* EN 1991-1-4 Table 4.1, categories 0 to IV: I and III READ where others quote the table, the rest
 * FROM MEMORY, as is (4.5), which stands in one step with them. */
static const terrain terrains[] = {
    {0.003, 1.0}, {0.01, 1.0}, {0.05, 2.0}, {0.3, 5.0}, {1.0, 10.0},
};

/* A category that does not exist counts as 0, the windiest. */
static const terrain *terrain_of(const tt_wind_site *site)
{
    const int n = (int)(sizeof terrains / sizeof *terrains);
    return &terrains[site->exposure >= 0 && site->exposure < n ? site->exposure : 0];
}

typedef struct {
    double v_m; /* mean speed, m/s */
    double I_v; /* intensity of turbulence */
} mean_wind;

/* EN 1991-1-4 4.2 eq. (4.2), K = 0.2, n = 0.5; 1 at 50 years. */
static double probability(const tt_wind_site *site, tt_steps *steps)
{
    const double K = 0.2, p = 1.0 / site->once_in;
    const double c_prob = sqrt((1.0 - K * log(-log(1.0 - p))) / (1.0 - K * log(-log(0.98))));
    tt_say(steps, TT_S_en_probability, "cprob", "", c_prob,
           "((1 - K ln(-ln(1 - p))) / (1 - K ln(-ln 0.98)))^0.5, K = 0.2",
           "p = 1 / %.4g: once in so many years", site->once_in);
    return c_prob;
}

static mean_wind mean_wind_at(const tt_wind_site *site, double z, tt_steps *steps)
{
    const terrain *ground = terrain_of(site);
    const double height = fmax(z, ground->z_min), c_o = site->orography;
    const double logarithm = log(height / ground->z_0);
    const double c_prob = site->once_in > 0.0 ? probability(site, steps) : 1.0;
    const double v_b = site->direction_factor * site->season_factor * c_prob * site->basic_speed;
    const double k_r = 0.19 * pow(ground->z_0 / 0.05, 0.07);
    const double c_r = k_r * logarithm;
    const mean_wind wind = {.v_m = c_r * c_o * v_b, .I_v = 1.0 / (c_o * logarithm)};
    tt_say(steps, TT_S_en_wind_speed, "vb", "m/s", v_b, "cdir cseason cprob vb,0",
           "%.3g * %.3g * %.4g * %.4g", site->direction_factor, site->season_factor, c_prob,
           site->basic_speed);
    tt_say(steps, TT_S_en_terrain, "kr", "", k_r, "0.19 (z0 / 0.05)^0.07",
           "0.19 (%.3g / 0.05)^0.07", ground->z_0);
    tt_say(steps, TT_S_en_roughness, "cr", "", c_r, "kr ln(max(z, zmin) / z0)",
           "%.4f ln(max(%.4g, %.3g) / %.3g)", k_r, z, ground->z_min, ground->z_0);
    tt_say(steps, TT_S_en_mean_wind, "vm", "m/s", wind.v_m, "cr co vb", "%.4f * %.4g * %.4g", c_r,
           c_o, v_b);
    tt_say(steps, TT_S_en_turbulence, "Iv", "", wind.I_v, "1 / (co ln(max(z, zmin) / z0))",
           "1 / (%.4g ln(%.4g / %.3g))", c_o, height, ground->z_0);
    return wind;
}

double tt_eu_pressure(const tt_wind_site *site, double z, tt_steps *steps)
{
    const mean_wind wind = mean_wind_at(site, z, steps);
    const double q_p = (1.0 + 7.0 * wind.I_v) * 0.5 * site->air * wind.v_m * wind.v_m;
    tt_say(steps, TT_S_en_peak_pressure, "qp", "Pa", q_p, "(1 + 7 Iv) rho vm^2 / 2",
           "(1 + 7 * %.4f) %.4g * %.4g^2 / 2", wind.I_v, site->air, wind.v_m);
    return q_p;
}

static double turbulence_length(const terrain *ground, double z, tt_steps *steps)
{
    const double alpha = 0.67 + 0.05 * log(ground->z_0);
    const double L = 300.0 * pow(z / 200.0, alpha);
    tt_say(steps, TT_S_en_length, "L", "m", L, "300 (zs / 200)^(0.67 + 0.05 ln z0)",
           "300 (%.4g / 200)^%.4f", z, alpha);
    return L;
}

static double background(const tt_wind_body *body, double L, tt_steps *steps)
{
    const double B2 = 1.0 / (1.0 + 0.9 * pow((body->breadth + body->height) / L, 0.63));
    tt_say(steps, TT_S_en_background, "B2", "", B2, "1 / (1 + 0.9 ((b + h) / L)^0.63)",
           "1 / (1 + 0.9 ((%.4g + %.4g) / %.4g)^0.63)", body->breadth, body->height, L);
    return B2;
}

static double damping(const tt_wind_site *site, const tt_wind_body *body, double v_m,
                      tt_steps *steps)
{
    const double delta_a = tt_air_damping(body, site->air, v_m);
    tt_say(steps, TT_S_en_air_damping, "delta_a", "", delta_a,
           "rho vm sum(cf A phi^2) / (2 n1 sum(m phi^2))", "%.4g * %.4g * %.4g / (2 * %.4g * %.4g)",
           site->air, v_m, body->drag_area_modal, body->frequency, body->mass_modal);
    return body->log_decrement + delta_a;
}

static double admittance(const char *symbol, double size, double L, double f_L, tt_steps *steps)
{
    const double eta = 4.6 * size / L * f_L, R = tt_gust_admittance(eta);
    tt_say(steps, TT_S_en_admittance, symbol, "", R,
           "1 / eta - (1 - exp(-2 eta)) / (2 eta^2), eta = 4.6 size fL / L",
           "eta = 4.6 * %.4g * %.4g / %.4g = %.4g", size, f_L, L, eta);
    return R;
}

/* R2; nothing resonates in a body without a mode. */
static double resonance(const tt_wind_site *site, const tt_wind_body *body, double v_m, double L,
                        tt_steps *steps)
{
    if (body->frequency <= 0.0) return 0.0;
    const double f_L = body->frequency * L / v_m;
    const double S_L = 6.8 * f_L / pow(1.0 + 10.2 * f_L, 5.0 / 3.0);
    tt_say(steps, TT_S_en_spectrum, "fL", "", f_L, "n1 L / vm", "%.4g * %.4g / %.4g",
           body->frequency, L, v_m);
    tt_say(steps, TT_S_en_spectrum, "SL", "", S_L, "6.8 fL / (1 + 10.2 fL)^(5/3)",
           "6.8 * %.4g / (1 + 10.2 * %.4g)^(5/3)", f_L, f_L);
    const double delta = damping(site, body, v_m, steps);
    const double R_h = admittance("Rh", body->height, L, f_L, steps);
    const double R_b = admittance("Rb", body->breadth, L, f_L, steps);
    const double R2 = TT_PI * TT_PI / (2.0 * delta) * S_L * R_h * R_b;
    tt_say(steps, TT_S_en_resonance, "R2", "", R2, "pi^2 / (2 (delta_s + delta_a)) SL Rh Rb",
           "pi^2 / (2 * %.4g) * %.4g * %.4g * %.4g", delta, S_L, R_h, R_b);
    return R2;
}

static double peak_factor(double frequency, double B2, double R2, tt_steps *steps)
{
    const double nu = fmax(0.08, frequency * sqrt(R2 / (B2 + R2)));
    const double root = sqrt(2.0 * log(600.0 * nu));
    const double k_p = fmax(3.0, root + 0.6 / root);
    tt_say(steps, TT_S_en_up_crossing, "nu", "Hz", nu, "n1 sqrt(R2 / (B2 + R2)), not below 0.08",
           "%.4g sqrt(%.4g / (%.4g + %.4g))", frequency, R2, B2, R2);
    tt_say(steps, TT_S_en_peak_factor, "kp", "", k_p,
           "r + 0.6 / r, r = sqrt(2 ln(600 nu)), not below 3", "r = sqrt(2 ln(600 * %.4g)) = %.4g",
           nu, root);
    return k_p;
}

double tt_eu_gust(const tt_wind_site *site, const tt_wind_body *body, tt_steps *steps)
{
    const terrain *ground = terrain_of(site);
    const double zs = fmax(body->base_height + 0.6 * body->height, ground->z_min);
    tt_say(steps, TT_S_gust_height, "zs", "m", zs, "max(base + 0.6 h, zmin)",
           "max(%.4g + 0.6 * %.4g, %.3g)", body->base_height, body->height, ground->z_min);
    const mean_wind wind = mean_wind_at(site, zs, steps);
    const double L = turbulence_length(ground, zs, steps);
    const double B2 = background(body, L, steps);
    const double R2 = resonance(site, body, wind.v_m, L, steps);
    const double k_p = peak_factor(body->frequency, B2, R2, steps);
    const double I_v = wind.I_v;
    const double factor = (1.0 + 2.0 * k_p * I_v * sqrt(B2 + R2)) / (1.0 + 7.0 * I_v);
    tt_say(steps, TT_S_en_structural_factor, "cs cd", "", factor,
           "(1 + 2 kp Iv sqrt(B2 + R2)) / (1 + 7 Iv)",
           "(1 + 2 * %.4g * %.4f sqrt(%.4g + %.4g)) / (1 + 7 * %.4f)", k_p, I_v, B2, R2, I_v);
    if (factor >= 1.0) return factor;
    tt_say(steps, TT_S_assumption, "cs cd used", "", 1.0, "not below 1", "max(%.4f, 1)", factor);
    return 1.0;
}
