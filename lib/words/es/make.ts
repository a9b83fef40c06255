import { formsOf } from '../find-forms';
import { translate, type Catalog, type Translate } from '../translate';
import { dateInSpanish } from './dates';
import lib from './lib.json';
import ramp from './ramp.json';
import ui from './ui.json';

/** What every page needs, and all that the phone on the ramp needs. */
export const PHONE: Catalog = { ...ui, ...lib, ...ramp };

// Only what lib says comes in one piece.
const findForm = formsOf(lib);

export function spanish(catalog: Catalog): Translate {
  const t: Translate = translate('es', catalog, {
    value: dateInSpanish,
    whole: (text) => {
      const found = findForm(text);
      if (found) return t(found.message, spoken(found.values));
      const sentences = text.split(/(?<=[.?!]) (?=\p{Lu})/u);
      return sentences.length > 1 ? sentences.map((one) => t(one)).join(' ') : dateInSpanish(text);
    },
  });
  /** A value may be words of ours in its turn: "The reason" in "The reason is needed." */
  const spoken = (values: Readonly<Record<string, string | number>>) =>
    Object.fromEntries(
      Object.entries(values).map(([name, value]) => [name, typeof value === 'string' ? t(value) : value]),
    );
  return t;
}
