/**
 * What a paragraph is about, in two or three words, for somebody who does not know it by its number: "the anticollision light
 * rule of 91.205(b)(11)". Words of ours; the paragraph decides.
 */
import { LAW, type CiteId } from './law';

/** The longest beginning of a paragraph that is listed counts. */
const SUBJECTS: readonly (readonly [begins: string, subject: string])[] = [
  ['14cfr91.203(a)(1)', 'airworthiness certificate'],
  ['14cfr91.203(a)(2)', 'registration'],
  ['14cfr47.40', 'registration'],
  ['14cfr91.9(b)', 'flight manual'],
  ['14cfr91.205(a)', 'standard category'],
  ['14cfr91.205(b)(1)', 'airspeed indicator'],
  ['14cfr91.205(b)(2)', 'altimeter'],
  ['14cfr91.205(b)(3)', 'magnetic direction indicator'],
  ['14cfr91.205(b)(4)', 'tachometer'],
  ['14cfr91.205(b)(5)', 'oil pressure'],
  ['14cfr91.205(b)(6)', 'coolant temperature'],
  ['14cfr91.205(b)(7)', 'oil temperature'],
  ['14cfr91.205(b)(8)', 'manifold pressure'],
  ['14cfr91.205(b)(9)', 'fuel gauge'],
  ['14cfr91.205(b)(10)', 'landing gear position'],
  ['14cfr91.205(b)(11)', 'anticollision light'],
  ['14cfr91.205(b)(12)', 'flotation gear'],
  ['14cfr91.205(b)(13)', 'safety belt'],
  ['14cfr91.205(b)(14)', 'shoulder harness'],
  ['14cfr91.205(b)(15)', 'emergency locator transmitter'],
  ['14cfr91.205(b)(17)', 'shoulder harness'],
  ['14cfr91.205(c)(2)', 'position light'],
  ['14cfr91.205(c)(3)', 'anticollision light'],
  ['14cfr91.205(c)(4)', 'landing light'],
  ['14cfr91.205(c)(5)', 'electrical source'],
  ['14cfr91.205(c)(6)', 'spare fuse'],
  ['14cfr91.205(d)(2)', 'radio and navigation'],
  ['14cfr91.205(d)(3)', 'rate of turn'],
  ['14cfr91.205(d)(4)', 'slip and skid'],
  ['14cfr91.205(d)(5)', 'sensitive altimeter'],
  ['14cfr91.205(d)(6)', 'clock'],
  ['14cfr91.205(d)(7)', 'generator'],
  ['14cfr91.205(d)(8)', 'pitch and bank'],
  ['14cfr91.205(d)(9)', 'directional gyro'],
  ['14cfr91.205(e)', 'flight level 240'],
  ['14cfr91.207', 'emergency locator transmitter'],
  ['14cfr91.209', 'lights'],
  ['14cfr91.213', 'inoperative equipment'],
  ['14cfr91.215', 'transponder'],
  ['14cfr91.225', 'ADS-B Out'],
  ['14cfr91.405', 'discrepancy'],
  ['14cfr91.407', 'return to service'],
  ['14cfr91.409(a)', 'annual inspection'],
  ['14cfr91.409(b)', '100-hour inspection'],
  ['14cfr141.39', '100-hour inspection'],
  ['14cfr91.411', 'altimeter and static system'],
  ['14cfr91.413', 'transponder test'],
  ['14cfr91.171', 'VOR check'],
  ['14cfr91.403', 'life limit'],
  ['14cfr91.417', 'time in service'],
  ['14cfr91.7', 'airworthy condition'],
  ['14cfr39', 'airworthiness directive'],
];

/** "the anticollision light rule of 91.205(b)(11)"; what is not listed by its paragraph alone. */
export function ruleInWords(cite: CiteId): string {
  const [, subject] = SUBJECTS.filter(([begins]) => cite.startsWith(begins)).reduce<
    readonly [string, string | null]
  >((longest, next) => (next[0].length > longest[0].length ? next : longest), ['', null]);
  const paragraph = LAW[cite].label.replace(/^14 CFR /, '');
  return subject === null ? paragraph : `the ${subject} rule of ${paragraph}`;
}
