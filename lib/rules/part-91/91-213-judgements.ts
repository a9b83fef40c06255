/**
 * 14 CFR 91.213: what no data can answer. The section asks a person, and the questions stand here in its order, unanswered
 * until somebody signs them with the deferral.
 *
 * - (a): it is instruments or equipment that do not work, not damage. Where the one comes from the other, the damage is
 *   made safe first (our reading, W4 of the trade limits).
 * - (d)(3): removed, or deactivated and placarded; whether deactivating it is maintenance.
 * - (a)(5): the procedures of a list are carried out.
 * - (d)(4): no hazard to the aircraft: alone, and together with everything else that is out or limited now. That the
 *   combination is asked of its own is a reading: the text speaks of the aircraft, and the aircraft has them all. Under a
 *   list (d)(4) does not speak; we ask it all the same, as what the pilot in command will have to answer (91.7(b)).
 */
import type { AircraftFacts, DiscrepancyFacts } from '../aircraft';
import type { CiteId } from '../law';

export type JudgementId =
  | 'equipment-or-damage'
  | 'removed-or-deactivated'
  | 'is-maintenance'
  | 'procedures-done'
  | 'hazard-alone'
  | 'hazard-together';

/** One question for a person. */
export interface Judgement {
  readonly id: JudgementId;
  readonly cite: CiteId;
  readonly question: string;
  /** What to look at before answering. */
  readonly look: string;
}

/** Another deferral or limit of the same aircraft, as the person who determines has it before them. */
export interface CountedTogether {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly why: 'deferred' | 'limiting';
}

/** (d)(4): every other live deferral, and every other open write-up that is judged limiting. */
export const countedTogether = (aircraft: AircraftFacts, d: DiscrepancyFacts): readonly CountedTogether[] =>
  aircraft.discrepancies
    .filter((other) => other.id !== d.id)
    .flatMap(({ id, number, title, deferral, severity }): CountedTogether[] => {
      if (deferral !== null) return [{ id, number, title, why: 'deferred' }];
      const limits = severity.known && severity.value === 'limiting';
      return limits ? [{ id, number, title, why: 'limiting' }] : [];
    });

/** The questions for a deferral not yet begun, in the order of the section. */
export function judgementsOf(given: {
  readonly name: string;
  readonly withList: boolean;
  readonly procedures: boolean;
  readonly together: readonly CountedTogether[];
}): readonly Judgement[] {
  const { name, withList, procedures, together } = given;
  const hazard: CiteId = withList ? '14cfr91.7(b)' : '14cfr91.213(d)(4)';
  const names = together.map((other) => `${other.number} ${other.title} (${other.why})`).join('; ');
  return [
    {
      id: 'equipment-or-damage',
      cite: '14cfr91.213(a)',
      question: `Is it only that ${name} does not work, with nothing damaged?`,
      look: 'Broken glass, loose wire or a burnt housing is damage: made safe first, and judged so.',
    },
    {
      id: 'removed-or-deactivated',
      cite: withList ? '14cfr91.213(a)(5)' : '14cfr91.213(d)(3)',
      question: 'Was it removed, or deactivated?',
      look: 'Deactivated means that nobody can make it work from the cockpit; a placard alone is not enough.',
    },
    {
      id: 'is-maintenance',
      cite: withList ? '14cfr43.9(a)' : '14cfr91.213(d)(3)(ii)',
      question: 'Was that maintenance?',
      look: 'If so it is done and recorded under part 43. Taking a unit out always is; a breaker pulled and collared may not be.',
    },
    ...(procedures
      ? [
          {
            id: 'procedures-done' as const,
            cite: '14cfr91.213(a)(5)' as const,
            question: 'Are the procedures of the list done?',
            look: 'All of them, (M) and (O), as the entry states them.',
          },
        ]
      : []),
    {
      id: 'hazard-alone',
      cite: hazard,
      question: `Does ${name} out of use, by itself, constitute no hazard to the aircraft?`,
      look: 'For the flights it will make, by the one who signs.',
    },
    ...(together.length > 0
      ? [
          {
            id: 'hazard-together' as const,
            cite: hazard,
            question: 'And together with everything else that is out or limited on this aircraft?',
            look: `Counted together: ${names}.`,
          },
        ]
      : []),
  ];
}
