import { type HouseRulesView } from '@/lib/house-rules/read-house-rules';
import { type Translate } from '@/lib/words/translate';
import { AREAS, CHAPTERS, PURPOSES } from './choices';
import { type SettingChoices } from './setting-fields';

/** What can be chosen in the settings of a rule. Names of chapters and places are those of the records, in English. */
export const choicesFor = (t: Translate, { aircraft, types }: HouseRulesView): SettingChoices => ({
  chapters: CHAPTERS,
  areas: AREAS,
  purposes: PURPOSES.map(({ value, label }) => ({ value, label: t(label) })),
  aircraft: aircraft.map(({ id, registration }) => ({ value: id, label: registration })),
  types: types.map(({ id, name }) => ({ value: id, label: name })),
});
