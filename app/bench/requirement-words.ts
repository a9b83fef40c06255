import { type RequirementKind } from '@/lib/rules/aircraft';

/** What recurs, by kind, in the order a form offers them. */
export const REQUIREMENT_WORDS: Readonly<Record<RequirementKind, string>> = {
  annual: 'Annual inspection',
  'hundred-hour': '100-hour inspection',
  'static-and-altimeter': 'Altimeter and static test',
  transponder: 'Transponder test',
  'elt-inspection': 'Emergency locator inspection',
  'elt-battery': 'Emergency locator battery',
  'vor-check': 'VOR check',
  directive: 'Airworthiness directive',
  'life-limit': 'Life limit (Airworthiness Limitations)',
  'maker-interval': 'Maker’s interval, oil and the like',
};
