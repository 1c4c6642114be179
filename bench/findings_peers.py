"""The work of findings_bench.cpp by numpy (and scipy where it is there). Prints milliseconds.

Invented series of the same size and kind as there, drawn anew: what these steps cost hardly depends on the values.
"""
import math
import time

import numpy

try:
    import scipy.optimize
    import scipy.stats
    print("scipy", scipy.__version__, "numpy", numpy.__version__)
except ImportError:
    scipy = None
    print("scipy is not here: its Student t and its nnls are left out or done in numpy; numpy", numpy.__version__)

rng = numpy.random.default_rng(1)
GRID = -0.5 + 0.05 * numpy.arange(29)


def best(name, work, rounds=7):
    times = []
    for _ in range(rounds):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    print(f"{name}: {1000 * min(times):.3f} ms")


def nights(causes, adjusters=0):
    count = 60
    noise = numpy.zeros(count)
    for i in range(1, count):
        noise[i] = 0.3 * noise[i - 1] + 12 * rng.standard_normal()
    wears = numpy.repeat(numpy.eye(4), 15, axis=0)
    x = numpy.hstack([rng.standard_normal((count, causes + adjusters)), wears])
    return x, 130 + 6 * x[:, 0] + noise


def grid_regression(x, y, told):
    """AR(1) regression, the correlation integrated on the grid; intervals of the first `told` coefficients."""
    n, k = x.shape
    starts = numpy.arange(n) % 15 == 0
    log_weights, centres, scales = [], [], []
    for rho in GRID:
        own = numpy.where(starts, math.sqrt(1 - rho * rho), 1.0)
        before = numpy.where(starts, 0.0, rho)
        xw = own[:, None] * x - before[:, None] * numpy.roll(x, 1, axis=0)
        yw = own * y - before * numpy.roll(y, 1)
        q, r = numpy.linalg.qr(xw)
        inverse = numpy.linalg.inv(r)
        b = inverse @ (q.T @ yw)
        miss = yw - xw @ b
        rss = miss @ miss
        log_weights.append(-(n - k) / 2 * math.log(rss) - numpy.log(numpy.abs(numpy.diag(r))).sum()
                           + 0.5 * starts.sum() * math.log(1 - rho * rho) - 0.5 * ((rho - 0.2) / 0.25) ** 2)
        centres.append(b[:told])
        scales.append(numpy.sqrt((inverse[:told] ** 2).sum(axis=1) * rss / (n - k)))
    weights = numpy.exp(numpy.array(log_weights) - max(log_weights))
    weights /= weights.sum()
    centres, scales = numpy.array(centres), numpy.array(scales)
    if scipy is None:
        return weights @ centres
    ends = []
    for j in range(told):
        for p in (0.025, 0.975):
            def miss(v):
                return weights @ scipy.stats.t.cdf((v - centres[:, j]) / scales[:, j], n - k) - p
            reach = 20 * scales[:, j].max()
            ends.append(scipy.optimize.brentq(miss, centres[:, j].min() - reach, centres[:, j].max() + reach))
    return ends


x3, y3 = nights(3)
best("grid regression of 60 nights, three causes", lambda: grid_regression(x3, y3, 3))

differences = rng.normal(2, 6, 20)


def sign_flips(draws):
    signs = 2.0 * rng.integers(0, 2, size=(draws, 20)) - 1
    return (numpy.abs(signs @ differences) >= abs(differences.sum()) * (1 - 1e-12)).mean()


best("10,000 sign flips of 20 blocks, drawn", lambda: sign_flips(10_000))


def all_patterns():
    sums = numpy.zeros(1)
    for d in differences:
        sums = numpy.concatenate([sums - d, sums + d])
    return (numpy.abs(sums) >= abs(differences.sum()) * (1 - 1e-12)).mean()


best("all 1,048,576 sign flips of 20 blocks", all_patterns)

day_means = rng.normal(140, 15, 14)
day_sums = 288 * numpy.column_stack([numpy.ones(14), day_means, day_means ** 2 + rng.normal(40, 8, 14) ** 2])


def bootstrap_of_cv():
    n, length, draws = 14, 2, 1999
    first = rng.integers(0, n, size=(draws, n // length))
    days = ((first[:, :, None] + numpy.arange(length)) % n).reshape(draws, n)
    counts = numpy.bincount((days + n * numpy.arange(draws)[:, None]).ravel(), minlength=n * draws).reshape(draws, n)
    readings, total, squares = (counts @ day_sums).T
    mean = total / readings
    cv = 100 * numpy.sqrt((squares / readings - mean * mean) * readings / (readings - 1)) / mean
    return numpy.percentile(cv, [2.5, 97.5])


best("1,999 block-bootstrap draws of CV", bootstrap_of_cv)

# A fortnight at 5 minutes, four meals a day, by day.
MINUTES = 5.0 * numpy.arange(288)
HARMONICS = numpy.column_stack([f(k * 2 * math.pi * ((MINUTES / 60 + 4) % 24) / 24) for k in (1, 2)
                                for f in (numpy.cos, numpy.sin)])
BASE = numpy.hstack([numpy.ones((288, 1)), HARMONICS])


def kernel(eaten, peak):
    t = numpy.maximum(0.0, MINUTES[:, None] - eaten[None, :]) / peak
    return t * numpy.exp(1 - t) * (t * peak < 480)


days = []
for _ in range(14):
    eaten = numpy.sort(60.0 * numpy.array([3, 8, 11, 15]) + 20 * rng.standard_normal(4))
    wander = numpy.zeros(288)
    for i in range(1, 288):
        wander[i] = 0.95 * wander[i - 1] + 12 * math.sqrt(1 - 0.95 ** 2) * rng.standard_normal()
    days.append((eaten, 125 + wander + kernel(eaten, 50) @ numpy.maximum(0, 45 + 15 * rng.standard_normal(4))))


def whitened(rows, correlation):
    result = rows.copy()
    result[1:] = (rows[1:] - correlation * rows[:-1]) / math.sqrt(1 - correlation ** 2)
    return result


def normals(peak, correlation):
    sums = []
    for eaten, level in days:
        rows = whitened(numpy.hstack([BASE, kernel(eaten, peak), level[:, None]]), correlation)
        sums.append(rows.T @ rows)
    return sums


def non_negative(gram, moment):
    """Lawson & Hanson on the normal equations."""
    if scipy is not None:
        root = numpy.linalg.cholesky(gram)
        return scipy.optimize.nnls(root.T, numpy.linalg.solve(root, moment))[0]
    x = numpy.zeros(len(moment))
    free = numpy.zeros(len(moment), bool)
    for _ in range(30 * len(moment)):
        pull = moment - gram @ x
        pull[free] = 0
        if pull.max() <= 1e-12 * numpy.abs(moment).max():
            break
        free[pull.argmax()] = True
        while True:
            wanted = numpy.zeros(len(moment))
            wanted[free] = numpy.linalg.solve(gram[numpy.ix_(free, free)], moment[free])
            if (wanted[free] > 0).all():
                break
            out = free & (wanted <= 0)
            x += (x[out] / (x[out] - wanted[out])).min() * (wanted - x)
            free &= x > 1e-14
        x = wanted
    return x


def amplitudes(sums, baseline, ridge, means):
    return [non_negative(s[5:9, 5:9] + ridge * numpy.eye(4), s[5:9, 9] - s[5:9, :5] @ baseline + ridge * means) for s in sums]


best("amplitudes of a fortnight, the kernel given",
     lambda: amplitudes(normals(50, 0.95), numpy.array([125.0, 0, 0, 0, 0]), 0.36, numpy.full(4, 45.0)))


def baseline_of(sums, found, left_out=None):
    kept = [i for i in range(len(sums)) if i != left_out]
    return numpy.linalg.solve(sum(sums[i][:5, :5] for i in kept),
                              sum(sums[i][:5, 9] - sums[i][:5, 5:9] @ found[i] for i in kept))


def means_of(found, left_out=None):
    kept = numpy.array([a for i, a in enumerate(found) if i != left_out])
    return (kept.sum(axis=0) + kept.mean()) / (len(kept) + 1)


def score(peak, correlation, deviation, sums):
    found, means, noise = [numpy.full(4, 40.0)] * len(sums), numpy.full(4, 40.0), 20.0
    for _ in range(12):
        baseline = baseline_of(sums, found)
        found = amplitudes(sums, baseline, (noise / deviation) ** 2, means)
        whole = [numpy.concatenate([baseline, a, [-1.0]]) for a in found]
        noise = math.sqrt(sum(w @ s @ w for w, s in zip(whole, sums)) / (288 * len(sums)))
        means = means_of(found)
    total = -len(sums) * 287 * 0.5 * math.log(1 - correlation ** 2)
    for d, s in enumerate(sums):
        w = numpy.concatenate([baseline_of(sums, found, d), means_of(found, d), [-1.0]])
        pull = -(s @ w)[5:9]
        inner = s[5:9, 5:9] / noise ** 2 + numpy.eye(4) / deviation ** 2
        total -= 0.5 * (288 * 2 * math.log(noise) + w @ s @ w / noise ** 2 - pull @ numpy.linalg.solve(inner, pull) / noise ** 4
                        + numpy.linalg.slogdet(inner)[1] + 4 * 2 * math.log(deviation))
    return total


def search():
    found = (-math.inf, 0, 0)

    def take(peak, correlation):
        nonlocal found
        sums = normals(peak, correlation)
        found = max(found, (max(score(peak, correlation, d, sums) for d in (10, 20, 40, 80)), peak, correlation))

    peaks, correlations = [25, 35, 45, 55, 65, 75, 90], [0.90, 0.95, 0.97, 0.985]

    def halfway(grid, value):
        i = grid.index(value)
        return [(grid[j] + value) / 2 for j in (i - 1, i + 1) if 0 <= j < len(grid)]

    for correlation in correlations:
        take(55, correlation)
    for peak in peaks:
        take(peak, found[2])
    for peak in halfway(peaks, found[1]):
        take(peak, found[2])
    at = found[2]
    for correlation in correlations:
        if correlation != at:
            take(found[1], correlation)
    for correlation in (halfway(correlations, found[2]) if found[2] in correlations else []):
        take(found[1], correlation)
    return found


best("kernel, correlation and ridge searched leaving days out", search, 2)

candidates = [nights(1, 2) for _ in range(60)]
best("scan of 60 candidates", lambda: [grid_regression(x, y, 1) for x, y in candidates], 2)
