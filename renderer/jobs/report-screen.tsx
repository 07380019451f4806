import { download, printReport, saveReport } from '../state/keep-report.ts';
import { useApp } from '../state/store.ts';
import { useAnswer } from '../state/use-answer.ts';
import { Panel } from '../ui/panel.tsx';
import { ReportView } from './report-view.tsx';
import { useView } from './use-inspections.ts';

/** The report as it will be printed and signed. */
export function ReportScreen() {
  const { answer, failure } = useAnswer('report', {});
  const host = useApp((state) => state.host);
  const { assessment } = useView();
  return (
    <div className="report-screen">
      <div className="report-acts" role="group" aria-label="Keep the report">
        <button type="button" className="button-strong" disabled={answer === null} onClick={() => { if (answer !== null) void printReport(answer.title, host); }}>Print…</button>
        <button type="button" disabled={answer === null} onClick={() => { if (answer !== null) saveReport(answer.title); }}>Save as one HTML file</button>
        <button type="button" onClick={() => download('assessment.json', JSON.stringify(assessment, null, 2), 'application/json')}>Save assessment.json</button>
        <span className="quiet">Advice to a competent person, who decides and signs.</span>
      </div>
      <div className="report-paper scrolls" tabIndex={0} role="region" aria-label="Report">
        {failure !== null && <p role="alert" className="remark">The report could not be built: {failure}</p>}
        {answer === null && failure === null && <p className="empty">Building the report…</p>}
        {answer !== null && <Panel name="The report"><ReportView report={answer} /></Panel>}
      </div>
    </div>
  );
}
