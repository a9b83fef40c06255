/**
 * Days as app/_ui/moment.tsx writes them, "Wed 25 Nov 2026, 08:58 PST" or "25 Nov 2026", in Spanish. They are made where no language
 * is known; their form is ours alone.
 */
const DAYS: Readonly<Record<string, string>> = {
  Mon: 'lun',
  Tue: 'mar',
  Wed: 'mié',
  Thu: 'jue',
  Fri: 'vie',
  Sat: 'sáb',
  Sun: 'dom',
};
const MONTHS: Readonly<Record<string, string>> = {
  Jan: 'ene',
  Feb: 'feb',
  Mar: 'mar',
  Apr: 'abr',
  May: 'may',
  Jun: 'jun',
  Jul: 'jul',
  Aug: 'ago',
  Sep: 'sep',
  Oct: 'oct',
  Nov: 'nov',
  Dec: 'dic',
};
const DATE =
  /^(?:(Mon|Tue|Wed|Thu|Fri|Sat|Sun) )?(\d{1,2}) (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) (\d{4})(, \d\d:\d\d \S+)?$/;

/** Only a text that is such a day and nothing else: what a person typed stays as it is. */
export function dateInSpanish(text: string): string {
  const [, day, of, month, year, clock = ''] = DATE.exec(text) ?? [];
  if (of === undefined || month === undefined) return text;
  return `${[day && DAYS[day], of, MONTHS[month], year].filter(Boolean).join(' ')}${clock}`;
}
