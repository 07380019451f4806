import type { Host } from '../host/host.ts';
import { REPORT_STYLE } from '../ui/report-style.ts';
import { troubleOf } from './open-rope.ts';
import { change } from './store.ts';

/** Prints the report: the desktop makes a file of it, elsewhere the window's own printing does. */
export async function printReport(title: string, host: Host | null): Promise<void> {
  try {
    const outcome = host?.hasShell === true ? await host.call('printReport', { html: reportHtml(title) }) : { saved: null };
    if (outcome.saved === null) window.print();
    else change({ spoken: `Report saved as ${outcome.saved}` });
  } catch (error) {
    change({ trouble: troubleOf(error, 'The report could not be printed') });
  }
}

export function saveReport(title: string): void {
  download('rope-report.html', reportHtml(title), 'text/html');
}

/** Hands a text to the user as a file; the browser asks where to put it. */
export function download(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** The report on the screen as one file that needs nothing else and runs nothing. */
function reportHtml(title: string): string {
  const article = document.querySelector('article.report');
  if (article === null) throw new Error('the report is not on the screen yet');
  const copy = article.cloneNode(true) as Element;
  copy.querySelector('style')?.remove();
  const head = document.createElement('title');
  head.textContent = title;
  return `<!doctype html>\n<html lang="en-GB"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">${head.outerHTML}<style>${REPORT_STYLE}</style></head><body>${copy.outerHTML}</body></html>\n`;
}
