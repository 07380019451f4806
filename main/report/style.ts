/** Looks of the printed report. Verdicts are told by words and weight, so that a black-and-white copy says the same. */
export const REPORT_STYLE = `
@page { size: A4; margin: 15mm }
body { font: 10pt/1.4 system-ui, sans-serif; color: #111; max-width: 190mm; margin: 1em auto; padding: 0 1em }
h1 { font-size: 18pt; margin: 0 } h2 { font-size: 12pt; margin: 1.6em 0 .4em; border-bottom: 1px solid #777; break-after: avoid }
table { border-collapse: collapse; width: 100%; font-size: 8.5pt } th, td { text-align: left; vertical-align: top; padding: 2px 6px 2px 0; border-bottom: 1px solid #ccc; overflow-wrap: break-word } .long { overflow-wrap: anywhere } .day { white-space: nowrap } tr.told td { border-bottom: 0; padding-bottom: 0; font-weight: 600 } tr.told { break-after: avoid } tr.below td { color: #333; padding-bottom: 5px } .wide { font-size: 7.3pt; line-height: 1.35 } .wide th, .wide td { padding-right: 5px; hyphens: auto } .wide .number { padding-right: 10px }
th { font-weight: 600 } tr { break-inside: avoid } .number { text-align: right; font-variant-numeric: tabular-nums; padding-right: 10px }
.caption { font-weight: 600; margin: .8em 0 .2em; break-after: avoid } .empty, .note { color: #444 }
.verdict { font-size: 13pt; font-weight: 700; border: 2px solid #111; padding: .5em .8em }
.caution { border-left: 4px solid #b35900; padding-left: .8em } ul.caution { padding-left: 2em }
.synthetic { font-weight: 700; letter-spacing: .08em; border: 2px dashed #111; padding: .3em .6em; text-align: center }
.signature td { height: 2.6em; width: 65% } figure { margin: .8em 0; break-inside: avoid } figcaption { font-weight: 600 } svg { width: 100%; height: auto }
`;
