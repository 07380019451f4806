import { Fragment } from 'react';
import type { Block, ReportDocument, Table } from '../../analysis/report/document.ts';
import { breaksOf, isWide } from '../../analysis/report/phrase.ts';
import { ReportFigure } from '../strip/report-figure.tsx';
import { REPORT_STYLE } from '../ui/report-style.ts';

/** Draws the report's content. It says nothing of its own. */
export function ReportView({ report }: { readonly report: ReportDocument }) {
  return (
    <article className="report" aria-label={report.title}>
      <style>{REPORT_STYLE}</style>
      {report.synthetic && <p className="report-synthetic">SYNTHETIC DATA: describes no real rope</p>}
      <h1>{report.title}</h1>
      <p>{report.subtitle}</p>
      {report.blocks.map((block, index) => <BlockView key={index} block={block} />)}
    </article>
  );
}

function BlockView({ block }: { readonly block: Block }) {
  switch (block.kind) {
    case 'heading': return <h2>{block.text}</h2>;
    case 'paragraph': return <p className={block.tone === 'verdict' ? 'verdict' : `tone-${block.tone}`}>{block.text}</p>;
    case 'list': return <ul className={`tone-${block.tone}`}>{block.items.map((item, index) => <li key={index}>{item}</li>)}</ul>;
    case 'facts': return <table className="facts"><tbody>{block.rows.map((row, index) => <tr key={index}><th scope="row">{row.label}</th><td>{row.value}</td><td className="fact-note">{row.note}</td></tr>)}</tbody></table>;
    case 'table': return <TableView table={block} />;
    case 'strip': return <ReportFigure figure={block} />;
    case 'signature': return <table className="signature"><tbody>{block.roles.map((role) => <tr key={role}><th scope="row">{role}</th><td /></tr>)}</tbody></table>;
  }
}

function TableView({ table }: { readonly table: Table }) {
  if (table.rows.length === 0) return <p><b>{table.caption}.</b> <span className="when-empty">{table.whenEmpty}</span></p>;
  const kind = (index: number) => (table.columns[index]?.numeric ? 'number' : undefined);
  return (
    <div className="report-table">
      <table className={isWide(table) ? 'wide' : undefined}>
        <caption>{table.caption}</caption>
        <thead><tr>{table.columns.map((column, index) => <th key={index} scope="col" className={kind(index)}>{column.title}</th>)}</tr></thead>
        <tbody>
          {table.rows.map((row, index) => (
            <Fragment key={index}>
              <tr className={table.below?.[index] ? 'told' : undefined}>{row.map((cell, at) => <td key={at} className={breaksOf(cell) ?? kind(at)}>{cell}</td>)}</tr>
              {table.below?.[index] && <tr className="below"><td colSpan={table.columns.length}>{table.below[index]}</td></tr>}
            </Fragment>
          ))}
        </tbody>
      </table>
    </div>
  );
}
