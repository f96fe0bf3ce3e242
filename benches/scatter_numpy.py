"""The work of a scatter in numpy and scipy, for comparison with `cargo bench --bench scatter`.

A million parts: two cut normal sizes, nine even inputs, expansion of both parts read from grids by linear interpolation,
the time until the placing clearance is gone by bisection over 97 times, force, two states of service, percentiles, and
indices of Sobol' from 8192 base draws. Grids hold an exponential approach instead of a plan's histories: the same sizes, so
the same reading; making them is not counted.

Run as: python3 benches/scatter_numpy.py
"""
import time

import numpy
import scipy
from scipy import stats
from scipy.interpolate import RegularGridInterpolator

DRAWS, BASE, STEPS = 1_000_000, 8192, 96
random = numpy.random.Generator(numpy.random.PCG64(1))
times = 2.0 * (7201.0 ** (numpy.arange(STEPS + 1) / STEPS) - 1.0)


def cut(low, high, n):
    deviation = (high - low) / 6
    return stats.truncnorm.rvs(-3, 3, (low + high) / 2, deviation, n, random_state=random)


def draw(n):
    even = [random.uniform(a, b, n) for a, b in
            [(252, 258), (0, 1), (6840, 7560), (338, 368), (0, 1), (5130, 5670), (0, 1), (14, 26), (0.04, 0.1)]]
    return [cut(0.061987, 0.062, n), cut(0.061961, 0.061991, n), *even]


def leaving(shop, medium, hold):
    m, f, t = numpy.linspace(*medium, 3), numpy.linspace(0, 1, 17), numpy.linspace(*hold, 5)
    grid = m[:, None, None] + (shop - m[:, None, None]) * numpy.exp(-t * (1 + f[None, :, None]) / 2400)
    return RegularGridInterpolator((m, f, t), grid, bounds_error=False, fill_value=None), (grid.min(), grid.max())


def bench(shop, ends, slope):
    e, a = numpy.linspace(*ends, 6), numpy.linspace(0, 1, 7)
    grid = slope * (shop - 293.15 + (e[:, None, None] - shop) * numpy.exp(-times * (1 + a[None, :, None]) / 1800))
    return RegularGridInterpolator((e, a, times), grid, bounds_error=False, fill_value=None)


inner_end, inner_ends = leaving(294.15, (252, 258), (6840, 7560))
outer_end, outer_ends = leaving(294.15, (338, 368), (5130, 5670))
inner_bench, outer_bench = bench(294.15, inner_ends, 11.5e-6), bench(294.15, outer_ends, 22.5e-6)


def evaluate(x):
    inner, outer, m1, f1, h1, m2, f2, h2, air, carry, friction = x
    ends = inner_end((m1, f1, h1)), outer_end((m2, f2, h2))

    def clearance(t):
        return outer - inner + outer * outer_bench((ends[1], air, t)) - inner * inner_bench((ends[0], air, t))

    at_seat = clearance(carry)
    low, high = numpy.zeros(len(inner), int), numpy.full(len(inner), STEPS)
    for _ in range(7):
        middle = (low + high) // 2
        free = clearance(times[middle]) >= 15e-6
        low, high = numpy.where(free, middle, low), numpy.where(free, high, middle)
    force = friction * 8e8 * numpy.maximum(-at_seat, 0)
    service = inner - outer - 3e-5 * outer, inner - outer + 3e-5 * outer
    return [inner - outer, at_seat, times[low], force, *service]


def sobol():
    a, b = draw(BASE), draw(BASE)
    of_a, of_b = numpy.array(evaluate(a)), numpy.array(evaluate(b))
    variance = numpy.var(numpy.concatenate([of_a, of_b], axis=1), axis=1) + 1e-300
    for i in range(len(a)):
        mixed = numpy.array(evaluate([*a[:i], b[i], *a[i + 1:]]))
        yield (of_b * (mixed - of_a)).mean(1) / variance, 0.5 * ((mixed - of_a) ** 2).mean(1) / variance


start, worked = time.perf_counter(), time.process_time()
outputs = evaluate(draw(DRAWS))
for output in outputs:
    numpy.percentile(output, [0.1, 1, 5, 50, 95, 99, 99.9])
list(sobol())
wall, work = time.perf_counter() - start, time.process_time() - worked
print(f"numpy {numpy.__version__}, scipy {scipy.__version__}: {wall:.2f} s, of which {work:.2f} s on a core")
