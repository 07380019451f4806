const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
const month = new Intl.DateTimeFormat('en-GB', { month: 'short', year: 'numeric', timeZone: 'UTC' });

/** `3 Mar 2026`; what is not a date is shown as it is. */
export function dayOf(iso: string): string {
  const time = Date.parse(iso);
  return Number.isFinite(time) ? day.format(time) : iso;
}

export function monthOf(iso: string): string {
  const time = Date.parse(iso);
  return Number.isFinite(time) ? month.format(time) : iso;
}

/** Metres with as many decimals as the length in view deserves. */
export function metres(value: number, inView = 1): string {
  return `${fixed(value, inView > 200 ? 1 : inView > 5 ? 2 : 3)} m`;
}

/** A length of rope, or one position where both ends are the same to a centimetre. */
export function stretch(from: number, to: number): string {
  return to - from < 0.015 ? `${fixed((from + to) / 2, 2)} m` : `${fixed(from, 2)} – ${fixed(to, 2)} m`;
}

/** Three significant figures, without needless zeros, with a true minus sign. */
export function figure(value: number): string {
  if (!Number.isFinite(value)) return '–';
  const size = Math.abs(value);
  return fixed(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 0.0995 || size === 0 ? 2 : 3).replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '');
}

export function fixed(value: number, decimals: number): string {
  return value.toFixed(decimals).replace(/^-(?=0(\.0*)?$)/, '').replace('-', '−');
}

/** A count with narrow gaps between thousands: `62 600`. */
export function grouped(count: number): string {
  return fixed(count, 0).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

/** A remark with its first letter large and a full stop. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  return trimmed === '' ? '' : `${trimmed[0].toUpperCase()}${trimmed.slice(1)}${/[.!?]$/.test(trimmed) ? '' : '.'}`;
}

export function share(value: number): string {
  return `${Math.round(value * 100)} %`;
}

/** A place on the rope with its half width, where that is known: `12.30 m ± 0.4 m`. */
export function placed(position: number, within: number | null): string {
  return `${fixed(position, 2)} m${within === null ? '' : ` ± ${figure(within)} m`}`;
}

/** `1 place`, `3 places`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
