/** Rules of the house about deferrals. Common practice of schools, no source. */
import type { AircraftFacts, DeferralFacts, DiscrepancyFacts } from '../aircraft';
import { counted } from '../counted';
import { dayInWords } from '../in-words';
import { lastDayWithinDays } from '../months';
import { aboutDiscrepancy } from '../part-91/91-213-item';
import { lastDayOf } from '../requirement-lines';
import type { UseOfAircraft } from '../operations';
import type { HouseFinding } from './house-rule';

type Deferred = DiscrepancyFacts & { readonly deferral: DeferralFacts };

const deferredOf = ({ discrepancies }: AircraftFacts): Deferred[] =>
  discrepancies.filter((d): d is Deferred => d.deferral !== null);

/** One line for every deferral: a screen can open each of them. */
export const barsEachDeferral = (aircraft: AircraftFacts, because: string): HouseFinding[] =>
  deferredOf(aircraft).map((d) => ({
    effect: 'bars',
    because: `${because}. ${d.number} ${d.title} is deferred.`,
    about: aboutDiscrepancy(d),
  }));

/** As many as `most` may be open; one more bars. */
export function mostDeferrals(aircraft: AircraftFacts, most: number): HouseFinding[] {
  const open = deferredOf(aircraft);
  if (open.length <= most) return [];
  const numbers = open.map(({ number }) => number).join(', ');
  return [
    {
      effect: 'bars',
      because: `At most ${counted(most, 'deferral')} at one time. Open are ${open.length}: ${numbers}.`,
      about: { kind: 'aircraft', id: aircraft.id, label: aircraft.registration },
    },
  ];
}

/** A flight may end on the last day: `days` days after the one on which the item was recorded inoperative. */
export const deferralNoOlder = (aircraft: AircraftFacts, days: number, use: UseOfAircraft): HouseFinding[] =>
  deferredOf(aircraft).flatMap((d): HouseFinding[] => {
    const through = lastDayWithinDays(d.deferral.recordedOn, days);
    if (lastDayOf(use) <= through) return [];
    return [
      {
        effect: 'bars',
        because:
          `No deferral lasts longer than ${counted(days, 'day')}. ${d.number} ${d.title}, recorded ` +
          `${dayInWords(d.deferral.recordedOn)}, was good through ${dayInWords(through)}.`,
        about: aboutDiscrepancy(d),
      },
    ];
  });
