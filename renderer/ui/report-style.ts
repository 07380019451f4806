/** Looks of the report, on the screen and in the file that leaves the program. Verdicts are told by words and weight, so that a copy without colour says the same. */
export const REPORT_STYLE = `
.report { font: 10.5pt/1.45 ui-sans-serif, system-ui, sans-serif; color: #16191b; background: #fff; max-width: 186mm; margin: 0 auto; padding: 14mm 12mm; }
.report h1 { font-size: 19pt; line-height: 1.2; margin: 0 0 2pt; } .report h2 { font-size: 12.5pt; margin: 18pt 0 5pt; border-bottom: 1.5pt solid #16191b; break-after: avoid; }
.report p { margin: 0 0 6pt; } .report ul { margin: 0 0 6pt; padding-left: 16pt; list-style: disc; }
.report table { border-collapse: collapse; width: 100%; font-size: 8.5pt; } .report th, .report td { text-align: left; vertical-align: top; padding: 2pt 8pt 2pt 0; border-bottom: .5pt solid #b9b9b3; overflow-wrap: break-word; } .report .long { overflow-wrap: anywhere; } .report .day { white-space: nowrap; } .report tr.told td { border-bottom: 0; padding-bottom: 0; font-weight: 600; } .report tr.told { break-after: avoid; } .report tr.below td { color: #333a3e; padding-bottom: 5pt; } .report .wide { font-size: 7.3pt; line-height: 1.35; } .report .wide th, .report .wide td { padding-right: 5pt; hyphens: auto; } .report .wide .number { padding-right: 9pt; }
.report thead th { border-bottom: 1pt solid #16191b; } .report .number { text-align: right; font-variant-numeric: tabular-nums; white-space: normal; } .report tr { break-inside: avoid; }
.report caption { text-align: left; font-weight: 600; padding: 6pt 0 2pt; } .report .when-empty { font-style: italic; color: #40484c; } .report .fact-note { color: #40484c; }
.report .verdict { font-size: 13pt; font-weight: 700; border: 1.5pt solid #16191b; padding: 6pt 9pt; } .report .tone-caution { border-left: 3pt solid #a84300; padding-left: 9pt; } .report ul.tone-caution { padding-left: 22pt; }
.report .report-synthetic { display: inline-block; border: 1.5pt dashed #16191b; padding: 2pt 8pt; font-weight: 700; letter-spacing: .08em; }
.report figure { margin: 8pt 0; break-inside: avoid; } .report figcaption { font-weight: 600; font-size: 9pt; } .report svg { display: block; width: 100%; height: auto; }
.report .signature td { height: 26pt; width: 62%; border-bottom: .75pt solid #16191b; }
@page { size: A4; margin: 12mm; } @media print { .report { padding: 0; max-width: none; } }
`;
