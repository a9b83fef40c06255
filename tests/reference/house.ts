/** Rules of the house, from the words the screens say them in (settingInWords) and their docstrings. */
import type { AircraftFacts } from '@/lib/rules/aircraft';
import type { Fact } from '@/lib/rules/facts';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { hundredHourDue } from './recurring';
import { addDays, lastDay, valueOf, type Sheet } from './sheet';

/** @param limited whether the law limits this flight */
export function judgeHouse(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  limited: boolean,
  sheet: Sheet,
): void {
  const deferrals = aircraft.discrepancies.flatMap(({ deferral }) => (deferral ? [deferral] : []));
  const night = use.light === 'night';
  const fresh = <T extends { readonly at: string }>(fact: Fact<T>, hours: number): T | null => {
    const read = valueOf(fact);
    if (read === null) return null;
    return Date.parse(use.departAt) - Date.parse(read.at) <= hours * 3_600_000 ? read : null;
  };
  let barsLimited = false;
  for (const { setting } of aircraft.houseRules) {
    switch (setting.kind) {
      case 'no-night-with-deferral':
        if (night && deferrals.length > 0) sheet.bar('house');
        break;
      case 'no-ifr-with-deferral':
        if (use.rules === 'IFR' && deferrals.length > 0) sheet.bar('house');
        break;
      case 'solo-never-with-limits':
        barsLimited = use.purpose === 'student-solo';
        break;
      case 'no-students-at-night': {
        const dual = setting.flights === 'solo-and-dual' && use.purpose === 'instruction-for-hire';
        if (night && (use.purpose === 'student-solo' || dual)) sheet.bar('house');
        break;
      }
      case 'oil-minimum': {
        const oil = fresh(aircraft.lastOil, setting.oldestHours);
        if (oil === null || oil.tenthsQuart < setting.leastTenthsQuart) sheet.bar('house');
        break;
      }
      case 'walkaround-before-flight':
        if (fresh(aircraft.lastWalkaround, setting.oldestHours) === null) sheet.bar('house');
        break;
      case 'mechanic-looks-at':
        for (const d of aircraft.discrepancies) {
          if (d.mechanicJudged !== null) continue;
          if (setting.chapters.includes(d.jasc.slice(0, 2)) || setting.areas.includes(d.station))
            sheet.bar('house');
        }
        break;
      case 'reserve-before-inspection':
        if (use.purpose !== 'to-inspection') reserve(aircraft, use, setting, sheet);
        break;
      case 'most-deferrals':
        if (deferrals.length > setting.most) sheet.bar('house');
        break;
      case 'deferral-no-older':
        if (deferrals.some(({ recordedOn }) => lastDay(use) > addDays(recordedOn, setting.days)))
          sheet.bar('house');
        break;
      case 'limit-in-own-words':
        if (setting.purposes.includes(use.purpose)) sheet.limit('house');
        break;
      case 'unreadable':
        sheet.bar('house');
        break;
    }
  }
  if (barsLimited && (limited || sheet.limits.length > 0)) sheet.bar('house');
}

/** The flight may end with exactly the reserve left. */
function reserve(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  {
    reserveTenths,
    counts,
  }: { readonly reserveTenths: number; readonly counts: 'hundred-hour' | 'all-by-hours' },
  sheet: Sheet,
): void {
  const now = valueOf(aircraft.ttisTenths);
  for (const row of aircraft.requirements) {
    const own =
      ['directive', 'life-limit', 'maker-interval'].includes(row.kind) &&
      row.binding &&
      row.intervalTenths !== null;
    if (row.kind !== 'hundred-hour' && !(counts === 'all-by-hours' && own)) continue;
    const done = valueOf(row.lastDone);
    if (now === null || done === null) {
      sheet.bar('house');
      continue;
    }
    const due =
      row.kind === 'hundred-hour'
        ? hundredHourDue(aircraft.requirements)
        : done.ttisTenths + (row.intervalTenths ?? 0);
    if (due !== null && now + use.plannedTenths + reserveTenths > due) sheet.bar('house');
  }
}
