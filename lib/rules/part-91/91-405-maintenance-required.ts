/**
 * 14 CFR 91.405: what the owner or operator has to have done.
 *
 * (a) Has the aircraft inspected under subpart E and, between inspections, has discrepancies repaired under part 43,
 *   except as (c) allows.
 * (b) Sees that maintenance people make the entries: not coded here, see 91.407.
 * (c) Has any item that 91.213(d)(2) permits to be inoperative repaired, replaced, removed or inspected at the next
 *   required inspection.
 * (d) Placards when listed discrepancies include inoperative items: not coded here, the placard of a deferral is owed
 *   by 91.213(d)(3) already.
 */
import type { AircraftFacts, DeferralFacts, DiscrepancyFacts } from '../aircraft';
import type { CalendarDate, Fact, HoursTenths } from '../facts';
import { dayInWords } from '../in-words';
import { lastDayOfCalendarMonthAfter } from '../months';
import type { UseOfAircraft } from '../operations';
import { barsForMissing, type Line } from '../verdict';
import { aboutDiscrepancy } from './91-213-item';
import { ANNUAL_MONTHS, hundredHourDue } from './91-409-inspections';

/**
 * (a): a discrepancy that is not inoperative equipment is repaired before flight, unless a mechanic found it within a
 * limit that has a source; it is then not a defect that (a) speaks of, and a note says who found it.
 */
export function repairBetweenInspections(d: DiscrepancyFacts): readonly Line[] {
  const about = aboutDiscrepancy(d);
  const cite = '14cfr91.405(a)';
  if (d.withinLimits === null) {
    const because = `${d.title}: not repaired, and nobody has found it within limits.`;
    return [{ effect: 'bars', cite, because, about }];
  }
  const { by, on, limit, source } = d.withinLimits;
  if ([by, limit, source].some((text) => text.trim() === '')) {
    return [
      barsForMissing(cite, 'who found it within limits, the limit and where the limit is published', about),
    ];
  }
  const because = `${d.title}: found within limits by ${by} on ${dayInWords(on)}: ${limit} (${source}).`;
  return [{ effect: 'notes', cite, because, about }];
}

/**
 * (c): what became of a deferred item at each required inspection since it was deferred. An inspection that passed
 * without a word on it ends the deferral. Repaired, replaced or removed for good would have closed the discrepancy.
 */
export function dispositionAtInspections(d: DiscrepancyFacts, deferral: DeferralFacts): readonly Line[] {
  const about = aboutDiscrepancy(d);
  return deferral.inspectionsSince.map(({ name, on, disposition }) =>
    disposition === null
      ? {
          effect: 'bars',
          cite: '14cfr91.405(c)',
          because: `${name} of ${dayInWords(on)} passed without a word on this item. It is to be repaired, replaced, removed or inspected, and recorded.`,
          about,
          ...(deferral.basis === 'mel'
            ? {
                strictReading:
                  '91.405(c) names 91.213(d)(2) only; we hold an item under a list to it as well.',
              }
            : {}),
        }
      : {
          effect: 'supports',
          cite: 'counsel-letter-2018',
          because: `${name} of ${dayInWords(on)}: inspected, and 91.213(d) found still met.`,
          about,
          strictReading:
            'That inspecting suffices follows the letter of 2018; each further inspection needs a fresh disposition.',
        },
  );
}

/**
 * (c), before an inspection is signed: every live deferral has its disposition there. One line for each that has none;
 * repaired, replaced or removed for good it would not be live any more.
 * @param disposed ids of the deferrals found inspected at this very inspection
 */
export function dispositionsOwed(
  open: readonly DiscrepancyFacts[],
  disposed: ReadonlySet<string>,
): readonly Line[] {
  return open.flatMap((d): Line[] => {
    if (d.deferral === null || disposed.has(d.deferral.id)) return [];
    const because = `${d.number} ${d.title} is deferred: at this inspection it is repaired, replaced, removed or inspected, and recorded.`;
    return [
      {
        effect: 'bars',
        cite: '14cfr91.405(c)',
        because,
        about: aboutDiscrepancy(d),
        ...(d.deferral.basis === 'mel'
          ? {
              strictReading: '91.405(c) names 91.213(d)(2) only; we hold an item under a list to it as well.',
            }
          : {}),
      },
    ];
  });
}

/** When a deferral comes up under 91.405(c). Null sides are not applicable, or not known as `missing` then says. */
export interface NextInspection {
  readonly name: string;
  /** Last day, from the annual. */
  readonly dueOn: CalendarDate | null;
  /** Time in service, from the 100-hour. */
  readonly dueTenths: HoursTenths | null;
  readonly missing: string | null;
}

/**
 * (c), "the next required inspection": the annual, or the 100-hour where this aircraft is kept on one, whichever comes
 * first. Dates and hours cannot be compared, so both are given. For one private use of an aircraft that is known not to
 * be a part 141 one, the 100-hour is not required and only the annual counts.
 */
export function nextRequiredInspection(aircraft: AircraftFacts, use: UseOfAircraft | 'any'): NextInspection {
  const annual = aircraft.requirements.find((row) => row.kind === 'annual');
  const hundred = needsHundredHour(aircraft, use)
    ? aircraft.requirements.find((row) => row.kind === 'hundred-hour')
    : undefined;
  const missing = [
    annual === undefined ? 'when the last annual inspection was done' : missingOf(annual.lastDone),
    hundred === undefined ? null : missingOf(hundred.lastDone),
  ].filter((text) => text !== null);
  return {
    name: hundred === undefined ? 'annual inspection' : 'annual or 100-hour inspection, whichever is first',
    dueOn: annual?.lastDone.known
      ? lastDayOfCalendarMonthAfter(annual.lastDone.value.on, ANNUAL_MONTHS)
      : null,
    dueTenths: hundred === undefined ? null : hundredHourDue(hundred, aircraft.requirements),
    missing: missing.length === 0 ? null : missing.join('; '),
  };
}

const missingOf = (fact: Fact<unknown>): string | null => (fact.known ? null : fact.missing);

function needsHundredHour(aircraft: AircraftFacts, use: UseOfAircraft | 'any'): boolean {
  if (use === 'any' || use.hire) return true;
  return !aircraft.part141.known || aircraft.part141.value;
}
