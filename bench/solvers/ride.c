/* The ride's equations for CVODE, by backward differences and by Adams' rule.
 *
 * case.h, written by compare.py, holds the board's numbers as constants, which the compiler may fold; so the solver has
 * every advantage. State: distance, speed, charge, the two branches' voltages, and the temperatures of winding, case,
 * controller and cells, the last four as rises above the air, so that tolerances mean what they say.
 */
#define _POSIX_C_SOURCE 200809L
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>

#include "case.h"

enum { X, V, CHARGE, U1, U2, WINDING, CASE, CONTROLLER, CELLS, STATES };

static const double TWO_PI = 6.283185307179586476925286766559;

typedef struct {
    double swell, swell_metres, grade, hill_metres;
    long touched; /* how often a limit was met; the comparison holds only while this is 0 */
    long calls;
} Ride;

static double rest_volts(double charge)
{
    if (charge <= rest_knots[0]) return rest_cubics[0][0];
    int low = 0, high = REST_KNOTS - 1;
    if (charge > rest_knots[high]) charge = rest_knots[high];
    while (high - low > 1) {
        int middle = (low + high) / 2;
        if (charge >= rest_knots[middle]) low = middle;
        else high = middle;
    }
    const double *c = rest_cubics[low];
    double s = charge - rest_knots[low];
    return c[0] + s * (c[1] + s * (c[2] + s * c[3]));
}

static void locate(const double *places, int count, double x, int *before, int *after, double *along)
{
    if (x <= places[0]) { *before = *after = 0; *along = 0; return; }
    if (x >= places[count - 1]) { *before = *after = count - 1; *along = 0; return; }
    int i = 0;
    while (x >= places[i + 1]) i++;
    *before = i, *after = i + 1;
    *along = (x - places[i]) / (places[i + 1] - places[i]);
}

/* Linear over charge; over temperature the logarithm is straight in 1/T. */
static double cell_ohms(double charge, double kelvins)
{
    int left, right, below, above;
    double across, up;
    locate(resistance_charges, RESISTANCE_CHARGES, charge, &left, &right, &across);
    locate(resistance_kelvins, RESISTANCE_KELVINS, kelvins, &below, &above, &up);
    double low = resistances[left][below] + across * (resistances[right][below] - resistances[left][below]);
    if (below == above) return low;
    double high = resistances[left][above] + across * (resistances[right][above] - resistances[left][above]);
    return low * exp(up * (resistance_kelvins[above] / kelvins) * log(high / low));
}

static int rates(sunrealtype t, N_Vector state, N_Vector rate, void *data)
{
    (void)t;
    Ride *ride = data;
    const double *y = N_VGetArrayPointer(state);
    double *d = N_VGetArrayPointer(rate);
    double x = y[X], v = y[V];
    ride->calls++;

    /* The rider: half the slope of the square of the speed planned. */
    const double cruise2 = cruise * cruise;
    double tail = exp(-2 * accelerating * x / cruise2);
    double turn = TWO_PI * x / ride->swell_metres;
    double a = cruise2 / 2 * (2 * accelerating / cruise2 * tail * (1 + ride->swell * sin(turn))
        + (1 - tail) * ride->swell * TWO_PI / ride->swell_metres * cos(turn));

    /* The road. */
    double slope = ride->grade * sin(TWO_PI * x / ride->hill_metres);
    double cosine = 1 / sqrt(1 + slope * slope);
    double through = v + wind;
    double road = weight * cosine * (rolling + slope) + air * through * fabs(through);
    double force = mass * a + road;

    /* The motors. */
    double speed = v * turning;
    double torque = force / force_for_torque * (force >= 0 ? 1 / efficiency : efficiency);
    double drag = drag_torque + drag_slope * speed;
    double i = (torque + drag) / torque_constant;

    /* The pack. */
    double kelvins = ambient + y[CELLS];
    double r0 = (double)series / parallel * cell_ohms(y[CHARGE], kelvins);
    double open = series * rest_volts(y[CHARGE]) - y[U1] - y[U2];
    double inside = r0 + links;
    double ohms = inside + wiring;
    double phase = phase_ohms * (1 + copper_per_kelvin * (ambient + y[WINDING] - 293.15));
    double power = motors * (1.5 * (phase + switch_resistance) * i * i + torque_constant * i * speed) + idle_power;
    double switching = motors * switching_factor * fabs(i);
    double rest = open - switching * ohms;
    double root = rest * rest - 4 * power * ohms;
    if (root < 0) return 1;
    double volts = (rest + sqrt(root)) / 2;
    double amperes = (power + switching * volts) / volts;

    /* The limits, which this ride keeps clear of. */
    double controller = ambient + y[CONTROLLER];
    double fade = controller <= fade_start ? 1 : fmax(0, (fade_end - controller) / (fade_end - fade_start));
    double taper = volts >= taper_start ? 1 : fmax(0, (volts - taper_end) / (taper_start - taper_end));
    double electrical = pole_pairs * speed;
    double vd = electrical * phase_inductance * i, vq = phase * i + electrical * flux_linkage;
    double headroom = fmax(0, (full_voltage - open) / inside);
    if (i > phase_limit * fade || -i > brake_phase_limit * fade || amperes > pack_limit * taper || -amperes > fmin(regen_limit, headroom)
        || electrical > electrical_speed_limit || modulation * volts / sqrt(3) < sqrt(vd * vd + vq * vq)
        || fabs(force) > grip * weight_share * weight / 2)
        ride->touched++;

    d[X] = v;
    d[V] = a;
    d[CHARGE] = -amperes / coulombs;
    const double b1 = (double)series / parallel * r1, b2 = (double)series / parallel * r2;
    d[U1] = (b1 * amperes - y[U1]) / tau1;
    d[U2] = (b2 * amperes - y[U2]) / tau2;

    double copper = 1.5 * phase * i * i;
    double between = winding_to_case * (y[WINDING] - y[CASE]);
    d[WINDING] = (copper - between) / winding_capacity;
    d[CASE] = ((drag - oil_torque) * speed + between - case_to_air * y[CASE]) / case_capacity;
    double bridges = motors * (1.5 * switch_resistance * i * i + switching_factor * fabs(i) * volts) + idle_power;
    d[CONTROLLER] = (bridges / controllers - controller_to_air * y[CONTROLLER]) / controller_capacity;
    double in_cells = amperes * amperes * r0 + y[U1] * y[U1] / b1 + y[U2] * y[U2] / b2;
    d[CELLS] = (in_cells - pack_to_air * y[CELLS]) / cell_capacity;
    return 0;
}

static void require(int ok, const char *what)
{
    if (!ok) {
        fprintf(stderr, "%s failed\n", what);
        exit(1);
    }
}

/* From rest to a time; the number of steps, or -1 where the solver gives up. */
static long solve(SUNContext context, int method, Ride *ride, double until, double relative, const double *absolute, double *end)
{
    N_Vector y = N_VNew_Serial(STATES, context), tolerance = N_VNew_Serial(STATES, context);
    N_VConst(0, y);
    NV_Ith_S(y, CHARGE) = start_charge;
    for (int k = 0; k < STATES; k++) NV_Ith_S(tolerance, k) = absolute[k];
    void *solver = CVodeCreate(method == 0 ? CV_BDF : CV_ADAMS, context);
    require(CVodeInit(solver, rates, 0, y) == CV_SUCCESS, "CVodeInit");
    CVodeSVtolerances(solver, relative, tolerance);
    CVodeSetUserData(solver, ride);
    CVodeSetMaxNumSteps(solver, 10000000);
    CVodeSetStopTime(solver, until);
    CVodeSetErrFile(solver, NULL);
    SUNMatrix matrix = NULL;
    SUNLinearSolver linear = NULL;
    SUNNonlinearSolver fixed = NULL;
    if (method == 2) {
        fixed = SUNNonlinSol_FixedPoint(y, 0, context);
        CVodeSetNonlinearSolver(solver, fixed);
    } else {
        matrix = SUNDenseMatrix(STATES, STATES, context);
        linear = SUNLinSol_Dense(y, matrix, context);
        CVodeSetLinearSolver(solver, linear, matrix);
    }
    double t = 0;
    long steps = -1;
    if (CVode(solver, until, y, &t, CV_NORMAL) >= 0) {
        CVodeGetNumSteps(solver, &steps);
        memcpy(end, N_VGetArrayPointer(y), STATES * sizeof(double));
    }
    CVodeFree(&solver);
    if (linear) SUNLinSolFree(linear);
    if (matrix) SUNMatDestroy(matrix);
    if (fixed) SUNNonlinSolFree(fixed);
    N_VDestroy(y);
    N_VDestroy(tolerance);
    return steps;
}

static double processor(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return now.tv_sec + 1e-9 * now.tv_nsec;
}

static void print_row(const char *solver, double setting, double seconds, long steps, long calls, double until, const double *end)
{
    printf("{\"solver\": \"%s\", \"setting\": %.6g, \"seconds\": %.9g, \"steps\": %ld, \"calls\": %ld, \"end\": [%.15g", solver, setting, seconds, steps, calls, until);
    for (int k = 0; k < STATES; k++) printf(", %.15g", end[k] + (k >= WINDING ? ambient : 0));
    printf("]}\n");
}

/* ride SWELL SWELL_METRES GRADE HILL_METRES: a line of JSON for each solver and tolerance, the reference first. */
int main(int count, char **words)
{
    require(count == 5, "usage: four numbers of the ride;");
    Ride ride = { atof(words[1]), atof(words[2]), atof(words[3]), atof(words[4]), 0, 0 };
    SUNContext context;
    SUNContext_Create(NULL, &context);
    double end[STATES], absolute[STATES];

    /* The size of each state, which an absolute tolerance is a part of. */
    double typical[STATES] = { ride.swell_metres, cruise, 0.3, 0.3, 0.2, 10, 10, 5, 3 };

    /* The reference, and the time at which it has come all the way. */
    for (int k = 0; k < STATES; k++) absolute[k] = 1e-12 * typical[k];
    double until = metres / cruise;
    for (int round = 0; round < 6; round++) {
        require(solve(context, 0, &ride, until, 1e-12, absolute, end) > 0, "The reference");
        if (round < 5) until += (metres - end[X]) / end[V];
    }
    /* A wild solution at a loose tolerance may meet a limit; the ride itself must not. */
    require(ride.touched == 0, "Keeping clear of the limits");
    print_row("reference", 1e-12, 0, 0, 0, until, end);

    static const char *names[] = { "CVODE BDF", "CVODE Adams, Newton", "CVODE Adams, fixed point" };
    for (int method = 0; method < 3; method++) {
        for (int kind = 0; kind < 2; kind++) {
            for (int e = 2; e <= 18; e++) {
                /* Once relative and absolute together, once absolute alone, which is kinder to the distance. */
                double tolerance = pow(10, -0.5 * e);
                for (int k = 0; k < STATES; k++) absolute[k] = tolerance * typical[k];
                double relative = kind == 0 ? tolerance : 0;
                ride.calls = 0;
                long steps = solve(context, method, &ride, until, relative, absolute, end);
                if (steps < 0) continue;
                long calls = ride.calls;
                int pieces = 1;
                double seconds = 0, best = INFINITY;
                while (seconds < 0.05) {
                    double before = processor();
                    for (int k = 0; k < pieces; k++) solve(context, method, &ride, until, relative, absolute, end);
                    seconds = processor() - before;
                    if (seconds < 0.05) pieces *= 2;
                }
                for (int stint = 0; stint < 7; stint++) {
                    double before = processor();
                    for (int k = 0; k < pieces; k++) solve(context, method, &ride, until, relative, absolute, end);
                    seconds = (processor() - before) / pieces;
                    if (seconds < best) best = seconds;
                }
                char name[64];
                snprintf(name, sizeof name, "%s%s", names[method], kind == 0 ? "" : ", absolute");
                print_row(name, tolerance, best, steps, calls, until, end);
            }
        }
    }
    SUNContext_Free(&context);
    return 0;
}
