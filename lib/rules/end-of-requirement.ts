/**
 * Whether a recurring requirement may be taken off an aircraft. No regulation says how a school keeps its list; the strict
 * reading is that what a regulation asks for cannot be ended by anybody here: an annual and a 100-hour never (91.409), a
 * test of equipment only when the equipment is no longer installed (91.171, 91.207, 91.411, 91.413). What a directive, a
 * limitation or a maker asks for ends with a person's signed reason and the
 * document behind it: superseded, part replaced, no longer recommended.
 */
import type { EquipmentFacts, EquipmentFunction, RequirementKind } from './aircraft';
import { PARAGRAPH_OF_KIND } from './due-paragraphs';
import { barsForMissing, type Line } from './verdict';

/** The equipment without which nothing is left to test. Empty: no equipment could be gone. */
const TESTED: Partial<Record<RequirementKind, readonly EquipmentFunction[]>> = {
  annual: [],
  'hundred-hour': [],
  'static-and-altimeter': ['altimeter', 'altitude-reporting'],
  transponder: ['transponder'],
  'elt-inspection': ['elt'],
  'elt-battery': ['elt'],
  'vor-check': ['vor-receiver'],
};

/** What stands against ending it; no line when nothing does. An aircraft without an equipment list has nothing "gone". */
export function barsToEnding(
  kind: RequirementKind,
  equipment: readonly Pick<EquipmentFacts, 'function' | 'installed' | 'name' | 'confirmed'>[],
): Line[] {
  const tested = TESTED[kind];
  if (tested === undefined) return [];
  const cite = PARAGRAPH_OF_KIND[kind];
  const strictReading =
    'No paragraph says when a school may drop it from its list; while the rule stands, it stays.';
  if (tested.length === 0) {
    return [
      {
        effect: 'bars',
        cite,
        because: 'The regulation asks for it as long as the aircraft flies.',
        strictReading,
      },
    ];
  }
  const rows = equipment.filter((item) => tested.includes(item.function));
  if (rows.length === 0) {
    const because = 'The equipment list has no line for what is tested, so nobody can say it is gone.';
    return [{ effect: 'bars', cite, because, strictReading }];
  }
  return rows.flatMap(({ name, installed, confirmed }): Line[] => {
    if (installed > 0) {
      const because = `${name} is still installed. It can be ended when it is not.`;
      return [{ effect: 'bars', cite, because, strictReading }];
    }
    // That none is there has to be confirmed too.
    return confirmed.known ? [] : [barsForMissing(cite, confirmed.missing)];
  });
}
