import { pathToFileURL } from 'node:url';
import { CAMPAIGNS } from '../support/proving-ground/campaigns.ts';
import { emptyTally, quantileOf, sumOf } from '../support/proving-ground/figures.ts';
import type { Tally } from '../support/proving-ground/figures.ts';
import { runWorld } from '../support/proving-ground/run-world.ts';

/**
 * Random ropes with known truth through the whole pipeline, and every figure that was asked beside the one measured.
 * Arguments: --ropes N (each campaign, 12 without), --only a,b (campaigns), --seed N (one rope, or with --ropes as many from there on: ropes never looked at before), --blame (what went wrong where).
 */
export async function run(args: string[]): Promise<void> {
  const option = (name: string): string | undefined => (args.includes(name) ? args[args.indexOf(name) + 1] : undefined);
  const ropes = Number(option('--ropes') ?? (option('--seed') ? 1 : 12));
  const asked = option('--only');
  // A name may hold a comma: it is taken whole before it is taken as a list.
  const only = CAMPAIGNS.some(({ profile }) => profile.name === asked) ? [asked] : asked?.split(',');
  const tally = emptyTally();
  for (const campaign of CAMPAIGNS) {
    if (only && !only.includes(campaign.profile.name)) continue;
    const first = Number(option('--seed') ?? campaign.firstSeed);
    const seeds = Array.from({ length: ropes }, (_, i) => first + i);
    let seconds = 0;
    for (const seed of seeds) {
      try {
        const trial = await runWorld(seed, campaign.profile);
        seconds += trial.seconds;
        campaign.score(trial, tally);
        tally.hit(`${campaign.profile.name} finished`, true);
      } catch (error) {
        tally.hit(`${campaign.profile.name} finished`, false);
        tally.blame(`${campaign.profile.name} did not finish`, seed, error instanceof Error ? `${error.message} ${error.stack?.split('\n')[1] ?? ''}` : String(error));
      }
    }
    process.stdout.write(`${campaign.profile.name}: ${seeds.length} ropes, seeds ${seeds[0]}-${seeds[seeds.length - 1]}, ${(seconds / seeds.length).toFixed(2)} s a rope\n`);
  }
  process.stdout.write(`\n${tableOf(tally)}\n`);
  if (args.includes('--blame')) process.stdout.write(`\n${blameOf(tally, Number(option('--most') ?? 6))}\n`);
}

/** Every figure: what is asked, what was measured, over how many. A figure without data is left out. */
export function tableOf(tally: Tally): string {
  const rows: [string, string, string, number][] = [];
  const share = (label: string, figure: string, asked: string) => {
    const { good, all } = tally.share(figure);
    if (all > 0) rows.push([label, asked, `${((100 * good) / all).toFixed(1)} %`, all]);
  };
  const value = (label: string, figure: string, at: number, asked: string, unit: string, digits = 3) => {
    const values = tally.values(figure);
    if (values.length > 0) rows.push([label, asked, `${quantileOf(values, at).toFixed(digits)} ${unit}`, values.length]);
  };
  for (const { profile } of CAMPAIGNS) share(`assessment made, ${profile.name}`, `${profile.name} finished`, '100 %');
  share('faults found, peak over noise 6 and more', 'faults snr 6 up', '>= 98 %');
  share('faults found, 4 to 6', 'faults snr 4-6', '>= 90 %');
  share('crowded faults with a call, 6 and more', 'faults crowded snr 6 up', '(reported)');
  if (tally.values('metres').length > 0) rows.push(['false calls per 100 m', '<= 0.3', ((100 * sumOf(tally.values('false calls'))) / sumOf(tally.values('metres'))).toFixed(3), tally.values('metres').length]);
  value('fault position error, median', 'fault position error', 0.5, '<= 0.010 m', 'm', 4);
  share('zones found', 'zones found', '>= 95 %');
  value('zone overlap foot to foot, median', 'zone overlap', 0.5, '>= 0.85', '');
  value('zone overlap at half depth, median', 'zone overlap half', 0.5, '(reported)', '');
  value('zone mean loss error, median', 'zone mean error', 0.5, '<= 0.15', 'points');
  value('zone mean loss error, 95 %', 'zone mean error', 0.95, '(reported)', 'points');
  share('zone mean loss within 0.15', 'zone mean within', '(reported)');
  share('zone kind right', 'zone kind', '>= 95 %');
  share('sound ropes without a zone', 'no zone on sound rope', '100 %');
  share('damaged ropes without a zone beside the true ones', 'no zone beside the true ones', '(reported)');
  for (const name of ['align', 'featureless']) {
    value(`${name}: error away from slips, median`, `${name} error`, 0.5, name === 'align' ? '<= 0.010 m' : '(reported)', 'm');
    value(`${name}: error away from slips, 95 %`, `${name} error`, 0.95, name === 'align' ? '<= 0.050 m' : '(reported)', 'm');
    value(`${name}: error everywhere, 95 %`, `${name} all`, 0.95, '(reported)', 'm');
    value(`${name}: error within 5 m of a slip, 95 %`, `${name} beside slip`, 0.95, name === 'align' ? '<= 0.150 m' : '(reported)', 'm');
    share(`${name}: positions inside the claimed bound`, `${name} covered`, '>= 95 %');
    share(`${name}: scans with 95 % inside their bound`, `${name} scan covered`, '100 %');
    value(`${name}: median bound over 95 % error, median`, `${name} bound ratio`, 0.5, name === 'align' ? '<= 3' : '(reported)', '', 2);
    value(`${name}: median bound over 95 % error, 90 %`, `${name} bound ratio`, 0.9, '(reported)', '', 2);
  }
  for (const name of ['growth', 'unchanged', 'gain only']) {
    share(`${name}: states right`, `${name} state`, '>= 95 %');
    share(`${name}: states of zones right`, `${name} state zone`, '(reported)');
    share(`${name}: states of faults right`, `${name} state fault`, '(reported)');
    share(`${name}: ropes with nothing invented`, `${name} nothing invented`, name === 'gain only' ? '100 %' : '(reported)');
  }
  for (const name of ['life', 'life under gains']) {
    share(`${name}: dates stated where growth is true`, `${name} stated`, '(reported)');
    share(`${name}: 80 % interval holds the date`, `${name} coverage`, '75-88 %');
    for (const count of ['2', '3', '4-5', '6-7', '8']) share(`${name}: the same, ${count} inspections`, `${name} coverage ${count}`, '75-88 %');
    value(`${name}: relative error, median`, `${name} error beside a straight line`, 0.5, '< the line below', '', 3);
    value(`${name}: the same of a straight line per place`, `${name} straight line error`, 0.5, '', '', 3);
    value(`${name}: width of interval over time left, median`, `${name} width`, 0.5, '(reported)', '', 2);
  }
  const wide = Math.max(...rows.map((row) => row[0].length));
  return rows.map(([label, asked, measured, n]) => `${label.padEnd(wide)}  ${asked.padEnd(16)} ${measured.padStart(14)}   n ${n}`).join('\n');
}

export function blameOf(tally: Tally, most: number): string {
  return [...tally.blamed].map(([figure, cases]) => `${figure}: ${cases.length}\n${cases.slice(0, most).map((each) => `    seed ${each.seed}: ${each.detail}`).join('\n')}`).join('\n');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) void run(process.argv.slice(2));
