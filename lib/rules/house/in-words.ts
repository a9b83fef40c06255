/** A rule of the house in words: what it asks, and whose it is. Wording only. */
import { counted } from '../counted';
import { sayMeasured } from '../findings/measurements';
import { formatTenths } from '../hours';
import { dayInWords } from '../in-words';
import { purposeInWords } from '../purpose-in-words';
import { areaTitle } from '../walkaround/areas';
import type { HouseMark, HouseSetting, UnreadableSetting } from './house-rule';

/** "Rule of the house, by Gil Arden, 3 Mar 2026". */
export const markInWords = ({ by, on }: Pick<HouseMark, 'by' | 'on'>): string =>
  `Rule of the house, by ${by}, ${dayInWords(on)}`;

/** One sentence: "No flight with less than 6.0 qt of oil, read not more than 12 hours before departure." */
export function settingInWords(setting: HouseSetting | UnreadableSetting): string {
  switch (setting.kind) {
    case 'no-night-with-deferral':
      return 'No night flight while anything is deferred.';
    case 'no-ifr-with-deferral':
      return 'No IFR flight while anything is deferred.';
    case 'solo-never-with-limits':
      return 'No student solo flight that has a limit.';
    case 'no-students-at-night':
      return setting.flights === 'solo'
        ? 'No student solo flight at night.'
        : 'No student solo flight and no instruction at night.';
    case 'oil-minimum':
      return (
        `No flight with less than ${sayMeasured(setting.leastTenthsQuart, 'tenth-quart')} of oil, ` +
        `read not more than ${counted(setting.oldestHours, 'hour')} before departure.`
      );
    case 'walkaround-before-flight':
      return `No flight without a walkaround finished not more than ${counted(setting.oldestHours, 'hour')} before departure.`;
    case 'mechanic-looks-at':
      return `No flight before a mechanic has judged what is written up in: ${[
        ...setting.chapters.map((chapter) => `JASC chapter ${chapter}`),
        ...setting.areas.map((area) => areaTitle(area)),
      ].join(', ')}.`;
    case 'reserve-before-inspection':
      return `No flight that ends with less than ${formatTenths(setting.reserveTenths)} h left before ${
        setting.counts === 'hundred-hour' ? 'the 100-hour inspection' : 'anything due by hours'
      }, unless it is a flight to the inspection.`;
    case 'most-deferrals':
      return `No flight with more than ${counted(setting.most, 'open deferral')}.`;
    case 'deferral-no-older':
      return `No flight with a deferral older than ${counted(setting.days, 'day')}.`;
    case 'unreadable':
      return 'This program cannot read what the rule asks, so nothing flies under it.';
    case 'limit-in-own-words':
      return `A limit on ${setting.purposes.map(purposeInWords).join(', ')}: ${setting.words}`;
  }
}
