"""The same work by general-purpose peers: numpy's reader and numpy's arithmetic. Prints milliseconds."""
import sys
import time

import numpy

year, corpus_clients = sys.argv[1], int(sys.argv[2])


def best(work, rounds=5):
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return 1000 * min(times)


def load():
    return numpy.loadtxt(year, delimiter=",", skiprows=1, dtype=[("t", "datetime64[m]"), ("g", float)],
                         converters={0: lambda s: numpy.datetime64(s if isinstance(s, str) else s.decode(), "m")})


print(f"numpy loadtxt, a year of minutes: {best(load, 2):.1f} ms")

rng = numpy.random.default_rng(1)
clients = rng.integers(45, 390, size=(corpus_clients, 4032)).astype(numpy.int32)
table = numpy.arange(1001, dtype=float)
with numpy.errstate(all="ignore"):
    f = 1.509 * (numpy.log(numpy.clip(table, 20, 600)) ** 1.084 - 5.381)
low_risk = numpy.where(f < 0, 10 * f * f, 0)
high_risk = numpy.where(f > 0, 10 * f * f, 0)


def one(g):
    mean = g.mean()
    sd = g.std(ddof=1)
    counts = numpy.histogram(g, bins=[0, 54, 70, 180.5, 250.5, 1000])[0]
    quarters = numpy.percentile(g.reshape(14, 96, 3).transpose(1, 0, 2).reshape(96, 42), [5, 25, 50, 75, 95], axis=1)
    return len(g), mean, sd, 100 * sd / mean, 3.31 + 0.02392 * mean, counts, low_risk[g].mean(), high_risk[g].mean(), quarters


def all_clients():
    for g in clients:
        one(g)


print(f"numpy, core of a client: {1000 * best(all_clients, 3) / corpus_clients:.1f} us")
