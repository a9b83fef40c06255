/** What usually recurs on a light aircraft by part 91, so that nobody has to know the paragraphs by heart. Plain data. */
import type { RequirementKind } from '../rules/aircraft';
import { said } from '../words/said';

export interface UsualRequirement {
  readonly kind: RequirementKind;
  readonly name: string;
  readonly reference: string;
  /** When it is wanted. */
  readonly when: string;
}

export const USUAL_SET: readonly UsualRequirement[] = [
  {
    kind: 'annual',
    name: 'Annual inspection',
    reference: '14 CFR 91.409(a)',
    when: said('Every aircraft.'),
  },
  {
    kind: 'hundred-hour',
    name: '100-hour inspection',
    reference: '14 CFR 91.409(b)',
    when: said('Carries persons for hire, or is used for instruction for hire.'),
  },
  {
    kind: 'static-and-altimeter',
    name: 'Altimeter and static system test',
    reference: '14 CFR 91.411',
    when: said('Flies under IFR in controlled airspace.'),
  },
  {
    kind: 'transponder',
    name: 'Transponder test',
    reference: '14 CFR 91.413',
    when: said('Has a transponder.'),
  },
  {
    kind: 'elt-inspection',
    name: 'Emergency locator transmitter inspection',
    reference: '14 CFR 91.207(d)',
    when: said('Has an emergency locator transmitter.'),
  },
  {
    kind: 'elt-battery',
    name: 'Emergency locator transmitter battery',
    reference: '14 CFR 91.207(c)',
    when: said('Has an emergency locator transmitter. The date on the battery is needed.'),
  },
  { kind: 'vor-check', name: 'VOR check', reference: '14 CFR 91.171', when: said('Flies under IFR by VOR.') },
];
