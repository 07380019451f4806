import type { VisualKind } from './visual-note.ts';

/** Spellings of each kind, in trade terms of several languages; tried in this order, so that the special comes before the general. */
const SPELLINGS: readonly (readonly [VisualKind, RegExp])[] = [
  ['broken-wires-valley', /valley|gap[ -]break|\bnip|talbruch|zwischen.*litze|fond[ ]de[ ]toron|valle|впадин|谷/i],
  ['broken-wires-termination', /(broken|wire|break|draht|bruch|fil|rott|обрыв|断).*(terminat|socket|end[ -]*(fitting|attachment|connection)|clamp|endbefest|attache|заделк)|terminat.*(break|wire|broken)/i],
  ['broken-wires-adjacent', /adjacent|neighbou?r|benachbart|adjacent|contig|сосед|相邻/i],
  ['broken-wires-strand', /(broken|wire|break|bruch|rott|обрыв|断).*(one|same|single|per|in a)[ -]*strand|strand[ -]*(break|broken)|litzenbruch|(in|per) (einer )?litze/i],
  ['loose-wire', /(loose|slack|protruding|raised)[ -]*wire|lose[rn]?[ -]*dr[aä]ht|fil[s]?[ ]l[aâ]che|fil[io] allentat/i],
  ['outer-wire-wear', /wear|abrasi|worn|verschlei|abrieb|usure|usura|desgaste|zu[zż]yci|износ|истир|磨损/i],
  ['broken-wires', /broken|wire[ -]*break|\bbreaks?\b|\bbw\b|crown|drahtbr|fils?[ ]cass|rupture|fil[io][ ]rott|alambres?[ ]rot|p[eę]kni[eę]|zerwan|обрыв|断丝/i],
  ['corrosion-internal', /intern\w*[ -]*(corros|rust)|(corros|rust|korros|rost)\w*.*intern|innen(korrosion|rost)|innere[ -]*korros|corrosion[ ]interne|corrosione[ ]interna|внутр.*корроз|内部.*(锈|腐)/i],
  ['corrosion-external', /corros|korros|\brust|\brost|ruggine|herrumb|rouille|rdza|коррози|ржав|锈|腐蚀/i],
  ['diameter', /diamet|durchmesser|diam[eè]tre|[sś]rednic|диаметр|直径|\bdia\b|^d$/i],
  ['lay-length', /lay|schlagl[aä]nge|pas[ ]de[ ]c[aâ]bl|passo|paso|skok|шаг|捻距/i],
  ['waviness', /wav(i|y)|welligkeit|ondula|falisto|волнист|波浪/i],
  ['distortion', /distort|deform|kink|bird|basket|flatten|crush|protru|verform|knick|korb|d[eé]form|cage|schiaccia|искаж|деформ|变形/i],
  ['lubrication', /lubric|grease|schmier|fett|lubrif|graiss|smar|смаз|润滑/i],
  ['heat', /heat|burn|arc\b|lightning|martens|hitze|brand|blitz|chaleur|calore|нагрев|热/i],
  ['end-attachment', /end[ -]*(attach|fitting|connection|fixing)|socket|terminat|endbefest|attache|attacco|заделк|索节/i],
  ['opened', /open|ge[oö]ffnet|ouvert|apert|abiert|otwart|вскрыт|打开/i],
  ['photo', /photo|picture|image|\bfoto|bild|imagen|zdj[eę]|фото|照片/i],
];

/** The kind that a word in a notes file means; 'other' where none is known. */
export function visualKindOf(written: string): VisualKind {
  const text = written.trim().replace(/[_]+/g, ' ');
  const exact = SPELLINGS.find(([kind]) => kind === written.trim().toLowerCase().replace(/[\s_]+/g, '-'));
  return (exact ?? SPELLINGS.find(([, spelling]) => spelling.test(text)))?.[0] ?? 'other';
}
