# Reference for the Benjamini-Hochberg adjustment: scipy.stats.false_discovery_control, method 'bh'.
import json, sys
import numpy, scipy
from scipy.stats import false_discovery_control, norm

rng = numpy.random.default_rng(20260101)
cases = [[0.01, 0.04, 0.03], [0.001, 0.008, 0.039, 0.041, 0.042, 0.06, 0.074, 0.205, 0.212, 0.216], [0.5], list(rng.uniform(0, 1, 50) ** 3), [0.02] * 5]
json.dump({
    "source": f"scipy {scipy.__version__} stats.false_discovery_control(ps, method='bh')",
    "cases": [{"p": list(map(float, c)), "adjusted": list(map(float, false_discovery_control(c, method="bh")))} for c in cases],
    "two_sided": [{"z": z, "p": float(2 * norm.sf(z))} for z in [0.0, 0.5, 1.0, 1.959964, 2.5, 3.0, 4.0]],
}, sys.stdout, indent=1)
