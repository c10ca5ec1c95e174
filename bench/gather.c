/* The yardstick of the light engine's gather: for every receiver the sum over the
   cloth's points of exitance * c / (pi r^4) * (x - a, y - b, -c), the vector that
   light/gather.go adds up, as a plain double loop. Points per side as the argument;
   prints ns per term (one receiver times one point). */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double seconds(void) {
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec + 1e-9 * t.tv_nsec;
}

static void gather(int n, const double *x, const double *y, const double *value, double a, double b, double c, double out[3]) {
	double plain = 0, along_u = 0, along_v = 0;
	for (int j = 0; j < n; j++) {
		double dy = y[j] - b, off = dy * dy + c * c, row = 0, row_u = 0;
		for (int i = 0; i < n; i++) {
			double dx = x[i] - a, r2 = dx * dx + off, q = value[j * n + i] / (r2 * r2);
			row += q;
			row_u += q * dx;
		}
		plain += row;
		along_u += row_u;
		along_v += dy * row;
	}
	const double pi = 3.14159265358979323846;
	out[0] = c / pi * along_u;
	out[1] = c / pi * along_v;
	out[2] = -c * c / pi * plain;
}

int main(int argc, char **argv) {
	int n = argc > 1 ? atoi(argv[1]) : 24;
	if (n < 1 || n > 4096) return 2;
	double *x = malloc(sizeof *x * n), *value = malloc(sizeof *value * n * n);
	for (int i = 0; i < n; i++) x[i] = 3.6 * ((i + 0.5) / n - 0.5);
	for (int i = 0; i < n * n; i++) value[i] = (1 + i % 7 / 7.0) * 3.6 * 3.6 / n / n;
	double sum = 0, out[3], best = 1e9;
	int rounds = 20000000 / (n * n) + 1;
	for (int k = 0; k < 5; k++) {
		double start = seconds();
		for (int i = 0; i < rounds; i++) {
			gather(n, x, x, value, i % 33 / 16.0 - 1, 0.5, 3, out);
			sum += out[2];
		}
		double took = (seconds() - start) / rounds / n / n * 1e9;
		if (took < best) best = took;
	}
	printf("%.3f %g\n", best, sum);
	return 0;
}
