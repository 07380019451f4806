import { METRES_PER_FOOT } from '../rope/units.ts';
import type { ColumnGuess } from './run.ts';

export type Role = Exclude<ColumnGuess['role'], 'unused'>;

/** Unit as written in a header -> factor to SI (m, m/s, s) or to percent. Exact definitions; 1 ft = 0.3048 m. */
export const LENGTH_UNITS: Readonly<Record<string, number>> = {
  m: 1, metre: 1, metres: 1, meter: 1, meters: 1, metri: 1, mètre: 1, mètres: 1, metros: 1, metry: 1, м: 1, метр: 1, метры: 1, 米: 1, mtr: 1, mts: 1,
  mm: 0.001, мм: 0.001, 毫米: 0.001, millimetre: 0.001, millimeter: 0.001, cm: 0.01, см: 0.01, 厘米: 0.01, km: 1000, км: 1000,
  ft: METRES_PER_FOOT, feet: METRES_PER_FOOT, foot: METRES_PER_FOOT, "'": METRES_PER_FOOT, fuss: METRES_PER_FOOT, piedi: METRES_PER_FOOT, pieds: METRES_PER_FOOT, pies: METRES_PER_FOOT, 英尺: METRES_PER_FOOT, in: 0.0254, inch: 0.0254, inches: 0.0254, '"': 0.0254, yd: 0.9144,
};
export const COUNT_UNITS = new Set(['counts', 'count', 'cts', 'pulses', 'pulse', 'imp', 'impulse', 'impulses', 'pls', 'inc', 'ticks', 'имп', '脉冲']);
export const SPEED_UNITS: Readonly<Record<string, number>> = {
  'm/s': 1, 'м/с': 1, mps: 1, 'm/sec': 1, 'ms-1': 1, 'm·s-1': 1, 'm s-1': 1, 'm/min': 1 / 60, 'м/мин': 1 / 60, 'mm/s': 0.001, 'cm/s': 0.01, 'km/h': 1 / 3.6, 'км/ч': 1 / 3.6, kmh: 1 / 3.6, 'm/h': 1 / 3600, 'ft/h': METRES_PER_FOOT / 3600, 'mm/min': 0.001 / 60, 'cm/min': 0.01 / 60, 'ft/s': METRES_PER_FOOT, fps: METRES_PER_FOOT, 'ft/min': METRES_PER_FOOT / 60, fpm: METRES_PER_FOOT / 60,
};
export const TIME_UNITS: Readonly<Record<string, number>> = {
  s: 1, sec: 1, secs: 1, second: 1, seconds: 1, sek: 1, с: 1, сек: 1, 秒: 1, ms: 0.001, мс: 0.001, 毫秒: 0.001, us: 1e-6, µs: 1e-6, min: 60, h: 3600, 'hh:mm:ss': 1,
};
const PERCENT_UNITS = new Set(['%', 'percent', 'prozent', 'pct', '％']);
const AREA_UNITS = new Set(['mm2', 'mm²', 'mm^2', 'мм2', 'мм²', 'sq mm', 'sqmm', 'mmq']);
const SIGNAL_UNITS = new Set(['v', 'mv', 'mt', 't', 'a.u.', 'a.u', 'au', 'a. u.', 'arb', 'arb.', 'counts', 'digits', 'lsb', 'µv', 'uv', 'db', 'd.u.', 'du', 'rel', '-', '1', 'мв', 'в', '°c', 'degc', 'c', 'hz']);

const LONGEST_UNIT = 24;
const LONGEST_NAME = 120;

export function normaliseUnit(unit: string): string {
  return unit.trim().toLowerCase().replace(/\.$/, '').replace(/\s*\/\s*/, '/');
}

export function isPercent(unit: string): boolean {
  return PERCENT_UNITS.has(normaliseUnit(unit));
}
export function isArea(unit: string): boolean {
  return AREA_UNITS.has(normaliseUnit(unit));
}

/** Whether a cell is nothing but a unit, with or without brackets: such cells make a row of units. */
export function looksLikeUnit(cell: string): boolean {
  if (cell.length > LONGEST_UNIT) return false;
  const bare = normaliseUnit(cell.replace(/^[[({<]\s*|\s*[\])}>]$/g, ''));
  return bare in LENGTH_UNITS || bare in SPEED_UNITS || bare in TIME_UNITS || COUNT_UNITS.has(bare) || PERCENT_UNITS.has(bare) || AREA_UNITS.has(bare) || SIGNAL_UNITS.has(bare);
}

/** Name and unit of a header such as `Position [ft]`, `LMA (%)`, `pos_m`, `Weg in m`, `speed / m/s`. */
export function splitUnit(header: string): { readonly name: string; readonly unit: string } {
  const text = header.slice(0, LONGEST_NAME).trim();
  const bracket = /^(.*?)\s*[[({<]\s*([^\])}>]{1,12})\s*[\])}>]\s*(.*)$/.exec(text);
  if (bracket && (looksLikeUnit(bracket[2]) || bracket[1] !== '')) return { name: `${bracket[1]} ${bracket[3]}`.trim(), unit: looksLikeUnit(bracket[2]) ? bracket[2].trim() : '' };
  const worded = /^(.+?)(?:\s+in\s+|\s*[,:]\s*|\s+\/\s+|\s+)(\S+)$/.exec(text);
  if (worded && looksLikeUnit(worded[2]) && !/^[-1"']$/.test(worded[2])) return { name: worded[1], unit: worded[2] };
  const pace = /^(.+?)_(mm|cm|km|m|ft)_(?:per_)?(s|sec|min|h)$/i.exec(text);
  if (pace) return { name: pace[1], unit: `${pace[2]}/${pace[3].replace(/sec/i, 's')}`.toLowerCase() };
  const joined = /^(.+)_(m|mm|cm|km|ft|feet|in|s|ms|pct|percent|mm2|mv|v|mps|kmh|fps|fpm|counts|pulses|ticks)$/i.exec(text);
  if (joined) return { name: joined[1], unit: joined[2].toLowerCase().replace(/^mps$/, 'm/s').replace(/^pct$|^percent$/, '%') };
  const percent = /^(.+?)\s*%$/.exec(text) ?? /^%\s*(.+)$/.exec(text);
  if (percent) return { name: percent[1], unit: '%' };
  return { name: text, unit: '' };
}

interface Word {
  readonly role: Role;
  readonly pattern: RegExp;
  readonly why: string;
  readonly weight: number;
}

const word = (role: Role, weight: number, why: string, pattern: RegExp): Word => ({ role, weight, why, pattern });

/**
 * Trade terms for the columns of a scan. `\b` knows Latin letters only, so other scripts are matched anywhere.
 * A heavier weight wins where two terms meet, so `LMA position` is a position and `speed over position` a speed.
 */
export const COLUMN_WORDS: readonly Word[] = [
  word('lma', 0.98, 'trade term for loss of metallic area', /\blma\b|loss[ _]of[ _]metal|metal(lic)?[ _-]*(cross[ _-]*section(al)?[ _-]*)?(area[ _-]*)?loss|area[ _-]*loss|loss[ _-]*(of[ _-]*)?area/i),
  word('lma', 0.95, 'term for loss of metallic section (German)', /querschnitts?(verlust|minderung|schw[aä]chung|[aä]nderung|fl[aä]che)|metallverlust|\bqv\b/i),
  word('lma', 0.95, 'term for loss of metallic section (French)', /perte[ _]*(de[ _]*)?(section|m[eé]tal)|section[ _]m[eé]tallique/i),
  word('lma', 0.95, 'term for loss of metallic section (Italian)', /perdita[ _]*(di[ _]*)?(sezione|area|metall)|riduzione[ _]*(di[ _]*)?sezione|sezione[ _]metallica/i),
  word('lma', 0.95, 'term for loss of metallic section (Spanish, Portuguese)', /p[eé]rdida[ _]*(de[ _]*)?(secci[oó]n|[aá]rea|metal)|perda[ _]*(de[ _]*)?(se[cç]{1,2}[aã]o|[aá]rea|metal)|secci[oó]n[ _]met[aá]lica/i),
  word('lma', 0.95, 'term for loss of metallic section (Polish, Czech)', /ubytek|ubytk|przekr[oó]j|[uú]bytek|pr[uů][rř]ez/i),
  word('lma', 0.95, 'term for loss of metallic section (Russian)', /потер[яи].*(сеч|метал)|сечени[ея]|пс\b|\bпотеря/i),
  word('lma', 0.95, 'term for loss of metallic section (Chinese, Japanese)', /金属(截面|断面)?(积|積)?(损失|損失|面积|面積)|截面(积)?损失|断面(积|積)?(损失|損失|減少)|损失/),
  word('lma', 0.9, 'term for remaining metallic area', /(remaining|residual|metallic|steel)[ _-]*(cross[ _-]*section(al)?[ _-]*)?area|restquerschnitt|section[ _]restante|sezione[ _]resid|\bcsa\b|^loss$|^verlust$|^perte$|^perdita$|^p[eé]rdida$/i),
  word('lf', 0.98, 'trade term for local fault', /\blf\d*\b|local[ _-]*(fault|flaw|defect|f\b)|\bld\b|wire[ _-]*break|broken[ _-]*wire|flaw[ _-]*signal|leakage|\bmfl\b/i),
  word('lf', 0.95, 'term for local fault (German)', /lokal(er|e)?[ _-]*(fehler|schaden|defekt)|[öo]rtlich(er)?[ _-]*fehler|drahtbr(uch|[üu]che)|streufluss|streufeld|fehlersignal/i),
  word('lf', 0.95, 'term for local fault (French)', /d[eé]faut[ _]*(local|localis[eé])?|fil[ _]cass[eé]|rupture/i),
  word('lf', 0.95, 'term for local fault (Italian)', /difett[oi]([ _]*local[ei])?|fili?[ _]rott[oi]/i),
  word('lf', 0.95, 'term for local fault (Spanish, Portuguese)', /(defecto|fallo|falla|falha|defeito)([ _]*loca[l])?|alambre[ _]roto/i),
  word('lf', 0.95, 'term for local fault (Polish, Czech)', /uszkodzeni[ea]|wad[ay][ _]*(lokaln|miejscow)|lok[aá]ln[ií]/i),
  word('lf', 0.95, 'term for local fault (Russian)', /локальн|\bлд\b|^лд|обрыв/i),
  word('lf', 0.95, 'term for local fault (Chinese, Japanese)', /局部|断丝|斷絲|断線|漏磁/),
  word('speed', 0.97, 'term for speed', /\bspeed\b|velocit|\bvel\b|geschwindigkeit|vitesse|velocidad(e)?|pr[eę]dko[sś][cć]|rychlost|скорост|速度|\bv_?(rope|seil)\b/i),
  word('time', 0.97, 'term for time', /\btime(stamp)?\b|\bzeit\b|temps|\btempo\b|tiempo|\bczas\b|\b[cč]as\b|врем|时间|時間|\belapsed\b|uhrzeit/i),
  word('position', 0.97, 'term for position along the rope', /posi[tcz]i[oó]n|posizione|posi[cç][aã]o|\bpos\b|\bdist(ance|anz|anza|ancia)?\b|chainage|encoder|odomet|rope[ _-]*(length|position|metre|meter)|\bs?eilposition|seill[aä]nge|\bweg\b|wegstrecke|\bstelle\b|\bort\b|laufmeter|longueur|abscisse|progressiva|lunghezza|longitud|comprimento|\bodleg|po[lł]o[zż]eni|d[lł]ugo[sś][cć]|pozycj|poloha|позици|положени|расстояни|дистанци|координат|длина|位置|距离|距離|里程|长度/i),
  word('position', 0.9, 'word for pulses of an encoder', /^(encoder[ _-]*)?(counts?|pulses?|ticks|impulse?|импульс\w*|脉冲)$/i),
  word('position', 0.75, 'short name often used for position', /^(x|s|z|l|m|metre|meter|metres|meters|mm|cm|km|depth|length|location|loc|station|ft|foot|feet|м|米)$/i),
  word('speed', 0.7, 'short name often used for speed', /^v$/i),
  word('time', 0.7, 'short name often used for time', /^t$/i),
];

/** Names that say the values are what is left, not what is lost. */
export const REMAINING_WORDS = /remain|residual|rest(querschnitt)?\b|restante|resid|rimanent|pozosta|остат|剩余|残/i;
/** Names that say a loss is written as a positive number. */
export const LOSS_WORDS = /\bloss\b|verlust|minderung|schw[aä]chung|perte|perdita|riduzione|p[eé]rdida|perda|ubyt|потер|损失|損失/i;

/** Role that a name speaks for, with its reason; underscores and camel case count as blanks. */
export function roleOfName(name: string): { readonly role: Role; readonly certainty: number; readonly reason: string } | null {
  const spaced = name.slice(0, LONGEST_NAME).replace(/([a-z])([A-Z])/g, '$1 $2').replace(/[_]+/g, ' ');
  let best: Word | null = null;
  for (const each of COLUMN_WORDS) if (each.pattern.test(spaced) && (best === null || each.weight > best.weight)) best = each;
  return best === null ? null : { role: best.role, certainty: best.weight, reason: `its name holds a ${best.why}` };
}
