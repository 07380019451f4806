#!/usr/bin/env python3
"""Writes signal_reference.json beside itself: what scipy, numpy and pandas make of the recorded signals in this folder."""
import json, pathlib, platform
import numpy as np, pandas as pd, scipy
from scipy import ndimage, signal, stats

HERE = pathlib.Path(__file__).parent
load = lambda name: np.loadtxt(HERE / name, delimiter=',', skiprows=1)[:, 1]
long_ecg, ecg = load('ecg_mitbih208_10s.csv'), load('ecg_mitbih208_17000_18000.csv')
sunspots, well = load('sunspots_monthly.csv'), load('../changepoint/well_log_4050.csv')
SIGNALS = {'ecg': ecg, 'long ecg': long_ecg, 'sunspots': sunspots, 'well': well}


def plain(a):
    a = np.asarray(a)
    if a.ndim == 0:
        return a.item()
    if a.dtype.kind in 'iu':
        return [int(v) for v in a]
    return [None if np.isnan(v) else float('%.15g' % v) for v in a]


def peaks(name, prominence, width):
    x = SIGNALS[name]
    found, held = signal.find_peaks(x, prominence=prominence, width=width)
    return dict(signal=name, prominence=prominence, width=width, index=plain(found), prominences=plain(held['prominences']), widths=plain(held['widths']), heights=plain(held['width_heights']))


def with_gaps(x):
    x = x.copy()
    for start, end in [(0, 3), (100, 101), (200, 260), (990, 1000)]:
        x[start:end] = np.nan
    return x


gaps = with_gaps(ecg)
rolling = lambda width: pd.Series(gaps).rolling(width, center=True, min_periods=1)
frequency, power = signal.welch(sunspots, nperseg=1024, detrend=False)
band = (frequency >= 1 / 240) & (frequency <= 1 / 60)

json.dump(dict(
    versions=dict(scipy=scipy.__version__, numpy=np.__version__, pandas=pd.__version__, python=platform.python_version()),
    find_peaks=[peaks('ecg', 0, 0), peaks('ecg', 0.3, 0), peaks('ecg', 1, 20), peaks('long ecg', 0.6, 2), peaks('sunspots', 60, 0), peaks('well', 1e4, 2), peaks('well', 0, 0)],
    find_peaks_documented=dict(source='scipy.signal.find_peaks, docstring example: prominence=1, width=20', prominences=[1.495, 2.3], widths=[36.93773946, 39.32723577]),
    savgol=[dict(width=w, degree=d, y=plain(signal.savgol_filter(ecg, w, d))) for w, d in [(5, 2), (11, 2), (31, 3), (9, 4)]],
    savgol_coeffs=[dict(width=w, degree=d, c=plain(signal.savgol_coeffs(w, d))) for w, d in [(5, 2), (7, 2), (9, 4)]],
    medfilt=[dict(width=w, y=plain(signal.medfilt(ecg, w))) for w in (3, 9, 51)],
    uniform_filter1d=[dict(width=w, y=plain(ndimage.uniform_filter1d(ecg, w, mode='nearest'))) for w in (25,)],
    rolling=[dict(width=w, median=plain(rolling(w).median().to_numpy()), mean=plain(rolling(w).mean().to_numpy())) for w in (3, 9, 51)],
    interp=plain(np.interp(np.arange(1000), np.flatnonzero(~np.isnan(gaps)), gaps[~np.isnan(gaps)])),
    gaps=[i for i, v in enumerate(gaps) if np.isnan(v)],
    rfft=[dict(bin=k, re=float(v.real), im=float(v.imag)) for k, v in enumerate(np.fft.rfft(ecg, 1024)) if k % 16 == 0],
    fft=[dict(bin=k, re=float(v.real), im=float(v.imag)) for k, v in enumerate(np.fft.fft(ecg[:512] + 1j * ecg[488:1000])) if k % 16 == 0],
    robust=[dict(signal=n, median=plain(np.median(x)), mad=plain(stats.median_abs_deviation(x)), mad_normal=plain(stats.median_abs_deviation(x, scale='normal')), quantiles={str(q): plain(np.quantile(x, q)) for q in (0, 0.05, 0.2, 0.5, 0.95, 1)}) for n, x in SIGNALS.items()],
    welch_sunspots=dict(size=1024, low=1 / 240, high=1 / 60, peak_frequency=float(frequency[band][np.argmax(power[band])])),
), open(HERE / 'signal_reference.json', 'w'), indent=0)
