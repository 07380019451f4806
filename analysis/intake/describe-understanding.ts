import type { Run } from './run.ts';

/** How a scan file was read, one line per decision, for people who check the result: what each column is and why, then the rest. */
export function describeUnderstanding({ understanding, positionsFell, trace }: Run): string[] {
  const { columns, decisions, encoding } = understanding;
  const used = columns.filter((each) => each.role !== 'unused');
  const unused = columns.filter((each) => each.role === 'unused');
  return [
    ...used.map((each) => `column ${each.index + 1} ${JSON.stringify(each.name)}: ${WORDS[each.role]}${each.unit === '' ? '' : ` in ${each.unit}`} (${each.reason}; certainty ${Math.round(100 * each.certainty)} %)`),
    ...(unused.length > 0 ? [`not used: ${unused.map((each) => JSON.stringify(each.name)).slice(0, 12).join(', ')}`] : []),
    `encoding ${encoding}`, ...decisions,
    ...(positionsFell ? ['positions fall through the file: its samples were turned round'] : []),
    `${trace.length} places every ${(trace.step * 1000).toFixed(3)} mm from ${trace.start.toFixed(3)} m`,
  ];
}

const WORDS = { position: 'position along the rope', lma: 'loss of metallic area', lf: 'local fault', speed: 'speed', time: 'time', unused: '' } as const;
