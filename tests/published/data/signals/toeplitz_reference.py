"""Solutions of symmetric Toeplitz systems by scipy.linalg.solve_toeplitz, for tests/published/signal-filters.test.ts.

Matrices: autocovariances of the recorded electrocardiogram beside this file (10 s, first differences), of a first-order
process, and one that is not positive definite. Run in this folder: python3 toeplitz_reference.py > toeplitz_reference.json
"""
import json

import numpy
import scipy
from scipy.linalg import eigvalsh, solve_toeplitz, toeplitz

with open('ecg_mitbih208_10s.csv') as file:
    rows = [line.strip().split(',')[-1] for line in file if line.strip() and not line.startswith('#')]
ecg = numpy.diff(numpy.array([float(row) for row in rows if row.replace('.', '', 1).replace('-', '', 1).replace('e', '', 1).isdigit()]))
ecg -= ecg.mean()
autocovariance = numpy.array([float(ecg[: len(ecg) - lag] @ ecg[lag:]) / len(ecg) for lag in range(48)])
pulse = numpy.exp(-0.5 * (numpy.arange(-12, 13) / 3.0) ** 2)

cases = []
for name, column, right in [
    ('electrocardiogram', autocovariance[:25], pulse),
    ('electrocardiogram, long', autocovariance, numpy.cos(numpy.arange(48) / 5.0)),
    ('first-order process', 0.8 ** numpy.arange(25), pulse),
    ('one value', numpy.array([4.0]), numpy.array([2.0])),
]:
    assert eigvalsh(toeplitz(column))[0] > 0
    cases.append({'name': name, 'column': column.tolist(), 'right': right.tolist(), 'x': solve_toeplitz(column, right).tolist()})
indefinite = [1.0, 1.2, 1.0]
assert eigvalsh(toeplitz(indefinite))[0] < 0
print(json.dumps({'versions': {'scipy': scipy.__version__, 'numpy': numpy.__version__}, 'cases': cases, 'indefinite': indefinite}))
