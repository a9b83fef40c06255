import { said } from '@/lib/words/said';
import { type RequirementKind } from '@/lib/rules/aircraft';

/** What recurs, by kind, in the order a form offers them. */
export const REQUIREMENT_WORDS: Readonly<Record<RequirementKind, string>> = {
  annual: said('Annual inspection'),
  'hundred-hour': said('100-hour inspection'),
  'static-and-altimeter': said('Altimeter and static test'),
  transponder: said('Transponder test'),
  'elt-inspection': said('Emergency locator inspection'),
  'elt-battery': said('Emergency locator battery'),
  'vor-check': said('VOR check'),
  directive: said('Airworthiness directive'),
  'life-limit': said('Life limit (Airworthiness Limitations)'),
  'maker-interval': said('Maker’s interval, oil and the like'),
};
