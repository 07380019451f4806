import { instrumentKey } from './header-fingerprint.ts';
import type { Run } from './run.ts';
import { finding } from './findings.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Percent metres of evidence that decide for a group of runs: one percent over two metres. */
const ENOUGH = 2;

/**
 * Runs with the same columns come from one instrument, which writes loss one way. Their evidence is pooled, and a run that
 * was read the other way for want of evidence of its own is turned; it says so. A stated sign is never touched, and a stated
 * sign in the group decides for the others.
 */
export function agreeOnSign(runs: readonly Run[]): Run[] {
  const groups = new Map<string, Run[]>();
  for (const run of runs) {
    const key = instrumentKey(run.understanding);
    groups.set(key, [...(groups.get(key) ?? []), run]);
  }
  return runs.map((run) => {
    const sign = pooledSign(groups.get(instrumentKey(run.understanding))!);
    if (sign === 0 || !run.lossSign || run.lossSign.fixed || !run.trace.loss) return run;
    return sign === run.lossSign.written ? settled(run, sign) : turned(run, sign);
  });
}

function pooledSign(group: readonly Run[]): 1 | -1 | 0 {
  const stated = group.find((run) => run.lossSign?.fixed);
  if (stated) return stated.lossSign!.written;
  let up = 0;
  let down = 0;
  for (const { lossSign } of group) {
    if (!lossSign) continue;
    if (lossSign.evidence > 0) up += lossSign.evidence;
    else down -= lossSign.evidence;
  }
  if (up > ENOUGH && up > THRESHOLDS.signEvidence.value * down) return 1;
  if (down > ENOUGH && down > THRESHOLDS.signEvidence.value * up) return -1;
  return 0;
}

/** The doubt is gone where other runs of the instrument show the same sign. */
function settled(run: Run, sign: 1 | -1): Run {
  return run.quality.some((each) => each.code === 'sign-assumed') ? { ...withSign(run, sign), quality: run.quality.filter((each) => each.code !== 'sign-assumed') } : run;
}

function turned(run: Run, sign: 1 | -1): Run {
  const loss = run.trace.loss!;
  const { start, step, length } = run.trace;
  return {
    ...withSign(run, sign),
    trace: { ...run.trace, loss: { values: loss.values.map((value) => 0 - value), valid: loss.valid } },
    quality: [
      ...run.quality.filter((each) => each.code !== 'sign-assumed'),
      finding('sign-from-other-runs', 'info', start, start + (length - 1) * step, `Which way loss points was taken from the other runs with the same columns: loss is ${sign === 1 ? 'positive' : 'negative'}.`),
    ],
  };
}

function withSign(run: Run, sign: 1 | -1): Run {
  const reason = `loss is ${sign === 1 ? 'positive' : 'negative'}, as the runs with the same columns show together`;
  return {
    ...run, lossSign: { ...run.lossSign!, written: sign },
    understanding: {
      ...run.understanding, decisions: [...run.understanding.decisions, reason],
      columns: run.understanding.columns.map((each) => (each.role === 'lma' ? { ...each, certainty: Math.max(each.certainty, 0.75), reason: `${each.reason}; ${reason}` } : each)),
    },
  };
}
