import type { Block, ReportDocument, Table } from '../../analysis/report/document.ts';
import { breaksOf, isWide } from '../../analysis/report/phrase.ts';
import { stripSvg } from './strip-svg.ts';
import { REPORT_STYLE } from './style.ts';
import { escape } from './escape.ts';

/** The report as one self-contained HTML file: no script, no outside address, fit for print on A4. */
export function renderReport(report: ReportDocument): string {
  const mark = report.synthetic ? '<p class="synthetic">SYNTHETIC DATA – describes no real rope</p>' : '';
  return `<!doctype html>
<html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escape(report.title)}</title><style>${REPORT_STYLE}</style></head>
<body><header>${mark}<h1>${escape(report.title)}</h1><p>${escape(report.subtitle)}</p></header>
<main>${report.blocks.map(renderBlock).join('\n')}</main></body></html>
`;
}

function renderBlock(block: Block): string {
  switch (block.kind) {
    case 'heading': return `<h2>${escape(block.text)}</h2>`;
    case 'paragraph': return `<p class="${block.tone}">${escape(block.text)}</p>`;
    case 'list': return `<ul class="${block.tone}">${block.items.map((item) => `<li>${escape(item)}</li>`).join('')}</ul>`;
    case 'facts': return `<table class="facts"><tbody>${block.rows.map((row) => `<tr><th scope="row">${escape(row.label)}</th><td>${escape(row.value)}</td><td class="note">${escape(row.note)}</td></tr>`).join('')}</tbody></table>`;
    case 'table': return renderTable(block);
    case 'strip': return `<figure><figcaption>${escape(block.caption)} [${escape(block.unit)}]</figcaption>${stripSvg(block)}</figure>`;
    case 'signature': return `<table class="signature"><tbody>${block.roles.map((role) => `<tr><th scope="row">${escape(role)}</th><td></td></tr>`).join('')}</tbody></table>`;
  }
}

function renderTable(table: Table): string {
  const caption = `<p class="caption">${escape(table.caption)}</p>`;
  if (table.rows.length === 0) return `${caption}<p class="empty">${escape(table.whenEmpty)}</p>`;
  const kind = (index: number) => (table.columns[index].numeric ? ' class="number"' : '');
  const cellKind = (cell: string, index: number) => {
    const breaks = breaksOf(cell);
    return breaks === null ? kind(index) : ` class="${breaks}"`;
  };
  const head = table.columns.map((column, index) => `<th scope="col"${kind(index)}>${escape(column.title)}</th>`).join('');
  const below = (index: number) => (table.below?.[index] ? `<tr class="below"><td colspan="${table.columns.length}">${escape(table.below[index])}</td></tr>` : '');
  const rows = table.rows.map((row, at) => `<tr${table.below?.[at] ? ' class="told"' : ''}>${row.map((cell, index) => `<td${cellKind(cell, index)}>${escape(cell)}</td>`).join('')}</tr>${below(at)}`).join('\n');
  return `${caption}<table${isWide(table) ? ' class="wide"' : ''}><thead><tr>${head}</tr></thead><tbody>${rows}</tbody></table>`;
}
