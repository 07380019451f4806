/** A scan of 60 m at half a metre a second with the time of day on each row; `reversed`: from the other end. */
function timedScan(first: string, reversed: boolean): string {
  const begin = Date.parse(`${first}Z`);
  const rows = Array.from({ length: 6000 }, (_, i) => {
    const texture = Math.round((reversed ? 59.99 - i * 0.01 : i * 0.01) * 100);
    const loss = 0.3 * Math.sin(texture * texture * 0.37) + 0.4 * Math.sin(texture * 0.011) + 0.3 * Math.sin(texture * 0.0031);
    return `${new Date(begin + i * 20).toISOString().slice(11, 23)},${(i * 0.01).toFixed(2)},${loss.toFixed(3)},${(3 * Math.sin(texture * 78.233 + texture * texture)).toFixed(2)},0.50`;
  });
  return `Time,Position [m],LMA [%],LF [mV],Speed [m/s]\n${rows.join('\n')}\n`;
}

/** Record and scans of two inspections that tell the time and share a folder of photos; one note with a photo is named. */
export const TIMED_ROPE: Readonly<Record<string, string>> = {
  'record.json': JSON.stringify({
    schema: 1, rope: { id: 'SYNTHETIC-P', application: 'funicular haul rope', construction: '6x19S-FC', diameter_mm: 30, length_m: 60 },
    inspections: [
      { id: 'spring', date: '2024-05-01', runs: [{ file: 'spring.csv' }], photos: 'photos' },
      { id: 'autumn', date: '2024-09-01', runs: [{ file: 'autumn.csv', direction: 'reverse' }], notes: 'notes.csv', photos: 'photos' },
    ],
  }),
  'spring.csv': timedScan('2024-05-01T10:00:00', false), 'autumn.csv': timedScan('2024-09-01T10:00:00', true),
  'notes.csv': 'position_m,kind,value,unit,severity,photo,remark\n12.5,heat,,,,noted 99m.jpg,\n',
};
