import { describe, expect, it } from 'vitest';
import type { ReportDocument } from '../../analysis/report/document.ts';
import { provenanceWords, verdictWords } from '../../analysis/report/phrase.ts';
import { renderReport } from '../../main/report/html.ts';

const report = (blocks: ReportDocument['blocks'], title = 'Rope'): ReportDocument => ({ title, subtitle: 's', synthetic: true, generated: '2026-01-01', blocks });

describe('the printed report', () => {
  it('prints text as text, whatever a rope is called', () => {
    const html = renderReport(report([{ kind: 'paragraph', tone: 'plain', text: '<img src=x onerror=alert(1)>' }], '<script>alert(1)</script> & "co"'));
    expect(html).not.toMatch(/<script|<img/);
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;co&quot;');
  });

  it('loads nothing and marks synthetic data', () => {
    const html = renderReport(report([]));
    expect(html).toContain("default-src 'none'");
    expect(html).not.toMatch(/https?:\/\/(?!www\.w3\.org)/);
    expect(html).toContain('SYNTHETIC DATA');
  });

  it('says what an empty table means and hatches what was not inspected', () => {
    const html = renderReport(report([
      { kind: 'table', caption: 'Faults', columns: [{ title: 'a', numeric: false }], rows: [], whenEmpty: 'No fault above the threshold.' },
      { kind: 'strip', caption: 'LMA', unit: '%', from: 0, to: 10, lines: [{ label: 'x', columns: [{ at: 1, low: 0, high: 1 }] }], notInspected: [{ from: 2, to: 4 }], marks: [] },
    ]));
    expect(html).toContain('No fault above the threshold.');
    expect(html).toMatch(/<rect[^>]*url\(#unseen\)[^>]*><title>NOT INSPECTED/);
  });

  it('marks limits that need confirming', () => {
    expect(provenanceWords('memory')).toMatch(/confirm/);
    expect(provenanceWords('disputed')).toMatch(/confirm/);
    expect(verdictWords('may-be-reached')).toBe('may be reached');
  });
});
