"""Makes samples.csv: the interference of scenario S31 by scipy, sizes as its sentence has them.

Run as: python3 make_samples.py > samples.csv
"""
import numpy
import scipy
from scipy import stats

DRAWS, SEED = 4_000_000, 20_260_101
PERCENTILES = [0.1, 1, 5, 50, 95, 99, 99.9]
random = numpy.random.Generator(numpy.random.PCG64(SEED))


def cut(low, high, capability):
    deviation = (high - low) / 6 / capability
    edge = (high - low) / 2 / deviation
    return stats.truncnorm.rvs(-edge, edge, (low + high) / 2, deviation, DRAWS, random_state=random)


def even(low, high):
    return stats.uniform.rvs(low, high - low, DRAWS, random_state=random)


print(f"# Interference (um) of a ring 0/-13 in a bore -39/-9; {DRAWS} draws, PCG64({SEED}).")
print(f"# numpy {numpy.__version__}, scipy {scipy.__version__}: stats.truncnorm.rvs and stats.uniform.rvs as in make_samples.py,")
print("# percentiles by numpy.percentile (linear), loose: share below zero. errors: standard errors of mean and share.")
print("sizes,mean,deviation,loose," + ",".join(f"p{p}" for p in PERCENTILES))
for name, draw in [
    ("uniform", even),
    ("normal 1", lambda a, b: cut(a, b, 1.0)),
    ("normal 1.33", lambda a, b: cut(a, b, 1.33)),
    ("normal 0.5", lambda a, b: cut(a, b, 0.5)),
]:
    x = draw(-13, 0) - draw(-39, -9)
    rows = [x.mean(), x.std(ddof=1), (x < 0).mean(), *numpy.percentile(x, PERCENTILES)]
    print(name + "," + ",".join(f"{v:.6g}" for v in rows))
