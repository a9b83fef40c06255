/**
 * Whether the aircraft's own documents stand behind its equipment list. 14 CFR 91.205(a) asks what the aircraft contains, and
 * 91.213(d)(2) what its type design and its equipment list require of each item: both are asked of this aircraft's papers, never
 * of a list made for aircraft in general. A line that came from a starting set, a file or a keyboard is trusted once a person has
 * held it against those papers and signed so; until then nothing may be judged by it, for any kind of operation. House caution:
 * no paragraph says how an operator comes by the list.
 */
import type { AircraftFacts, EquipmentFacts } from './aircraft';
import type { Line } from './verdict';

/** A barring line, with the fact that is missing, for every item nobody has confirmed. No line when all are. */
export const checkEquipmentConfirmed = ({ equipment }: AircraftFacts): Line[] =>
  equipment.flatMap(unconfirmed);

function unconfirmed({ id, name, confirmed }: EquipmentFacts): Line[] {
  if (confirmed.known) return [];
  const { missing } = confirmed;
  return [
    {
      effect: 'bars',
      cite: 'house-caution',
      because: `${missing.charAt(0).toUpperCase()}${missing.slice(1)}. Until then neither 91.205(a) nor 91.213(d)(2) can be judged by it.`,
      missing,
      about: { kind: 'equipment', id, label: name },
      strictReading: 'No paragraph says who confirms the list; we trust no line that nobody has signed for.',
    },
  ];
}
