"""The same work by general-purpose peers: numpy's reader and numpy's arithmetic. Prints milliseconds and microseconds.

The clients are the first files of the corpus that `measures` is timed on and that measures_bench.cpp makes for itself.
"""
import sys
import time

import numpy

year, corpus, clients = sys.argv[1], sys.argv[2], int(sys.argv[3])


def best(work, rounds=5):
    times = []
    for _ in range(rounds):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return 1000 * min(times)


def load():
    return numpy.loadtxt(year, delimiter=",", skiprows=1, dtype=[("t", "datetime64[m]"), ("g", float)])


print(f"numpy loadtxt, a year of minutes: {best(load, 2):.1f} ms")


def levels_of(number):
    with open(f"{corpus}/{number:04d}.csv", encoding="ascii") as file:
        return numpy.array([int(line[17:]) for line in file.readlines()[1:]])


traces = [levels_of(number) for number in range(clients)]
levels = numpy.arange(601)
with numpy.errstate(all="ignore"):
    f = 1.509 * (numpy.log(numpy.clip(levels, 20, 600)) ** 1.084 - 5.381)
squares = levels.astype(float) ** 2
low_risk = numpy.where(f < 0, 10 * f * f, 0)
high_risk = numpy.where(f > 0, 10 * f * f, 0)
edges = [0, 54, 70, 181, 251]
places = numpy.array([0.05, 0.25, 0.5, 0.75, 0.95]) * 41
below = places.astype(int)
share = places - below


def one(g):
    """From a table of how often each level was read, as ours; percentiles of sorted quarter hours."""
    times = numpy.bincount(g, minlength=601)
    n = len(g)
    mean = times @ levels / n
    sd = numpy.sqrt((times @ squares - n * mean * mean) / (n - 1))
    bands = numpy.add.reduceat(times, edges)
    quarters = g.astype(numpy.int16).reshape(14, 96, 3).transpose(1, 0, 2).reshape(96, 42)
    quarters.sort(axis=1)
    lower = quarters[:, below]
    lines = lower + share * (quarters[:, below + 1] - lower)
    return n, mean, sd, 100 * sd / mean, 3.31 + 0.02392 * mean, bands, times @ low_risk / n, times @ high_risk / n, lines


def all_clients():
    for g in traces:
        one(g)


print(f"numpy, core of a client: {1000 * best(all_clients, 5) / clients:.1f} us")
