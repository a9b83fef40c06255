import { dayInWords } from './in-words';
import type { CalendarDate } from './facts';
import type { CiteId } from './law';
import type { SignerFacts } from './people';
import { helperBarred43_3d, pilotPerforms43_3g } from './part-43/43-3-who-may-perform';
import { pilotApproves43_7f, repairStation43_7c } from './part-43/43-7-who-may-approve';
import { whyItemDoesNotFit, preventiveItem } from './part-43/43-appendix-a-preventive-maintenance';
import {
  excluded65_81a,
  majorNotApproved65_85and65_87,
  rated65_85and65_87,
  recent65_83,
  vouches65_81,
} from './part-65/65-81-to-87-mechanic';
import {
  bothRatings65_92a,
  expires65_92a,
  firstYear65_93c,
  privileges65_95a,
} from './part-65/65-91-to-95-inspection-authorization';
import { rulingOf, type Ruling } from './ruling';
import type { Line } from './verdict';
import type { WorkToSign } from './work-to-sign';

export { signersFor, whoCanSentence } from './signers-for';
export type { WorkKind, WorkToSign } from './work-to-sign';

/**
 * Who may approve return to service: joins 43.3, 43.7, 65.81 to 65.95, 91.411(b) and 91.413(c) into one ruling about
 * one person and one piece of work. The paragraphs themselves stand in part-43 and part-65.
 */

/** The certificate a signature is given under: 43.9(a)(4) wants its number and kind in the entry. */
export type Capacity = 'inspection-authorization' | 'mechanic' | 'repair-station' | 'pilot';

export interface CapacityRuling extends Ruling {
  readonly capacity: Capacity;
  readonly certificate: { readonly number: string; readonly kind: string };
}

export interface SigningRuling extends Ruling {
  /** The certificate to sign under; null when the ruling refuses. */
  readonly under: Pick<CapacityRuling, 'capacity' | 'certificate'> | null;
}

/** A person who has left the operator signs nothing, from the day of leaving on. Empty when still there. */
export function leftBars(signer: SignerFacts, on: CalendarDate): readonly Line[] {
  if (signer.leftOn === null || on < signer.leftOn) return [];
  return [
    {
      effect: 'bars',
      cite: 'ac120-78b',
      because: `${signer.name} left on ${dayInWords(signer.leftOn)} and can sign nothing here since that day.`,
      about: { kind: 'person', id: signer.id, label: signer.name },
    },
  ];
}

/**
 * A pilot certificate or a repair station's that names a last day carries nothing after it; the day itself is good. Empty when it
 * names none. Of a mechanic and an inspection authorization 65.83 and 65.92 say it.
 */
export function expiredBars(
  what: 'pilot certificate' | 'repair station certificate',
  held: { readonly number: string; readonly expiresOn?: CalendarDate | null },
  on: CalendarDate,
  cite: CiteId,
): readonly Line[] {
  const through = held.expiresOn ?? null;
  if (through === null || on <= through) return [];
  const because = `The ${what} ${held.number} was good through ${dayInWords(through)}.`;
  return [{ effect: 'bars', cite, because }];
}

/** 91.413(c), and 91.411(b) for the altimeter: never a mechanic. */
function altimeterTransponderBars(work: WorkToSign): Line {
  return {
    effect: 'bars',
    cite: work.part === 'avionics' ? '14cfr91.413(c)' : '14cfr91.411(b)',
    because:
      'Altimeter, altitude reporting and transponder tests need a rated repair station or the maker; no mechanic.',
  };
}

/** Preventive maintenance by a mechanic still has to be on the list, or it is a minor repair under another name. */
function preventiveForMechanic(work: WorkToSign): readonly Line[] {
  if (work.kind !== 'preventive') return [];
  const item = preventiveItem(work.preventiveItem);
  if (!item.known)
    return [
      {
        effect: 'bars',
        cite: '14cfr43appA(c)',
        because: `Not known: ${item.missing}. Enter it as a minor repair, or name the item.`,
        missing: item.missing,
      },
    ];
  const misfit = whyItemDoesNotFit(item.value, work);
  return misfit ? [{ effect: 'bars', cite: item.value.cite, because: misfit }] : [];
}

function helper(work: WorkToSign): readonly Line[] {
  if (work.performedBySigner) return [];
  const barred = helperBarred43_3d(work);
  return barred
    ? [barred]
    : [
        {
          effect: 'notes',
          cite: '14cfr43.3(d)',
          because:
            'Done by somebody else: certificated for it, or watched by you as far as needed, with you at hand in person.',
        },
      ];
}

function asMechanic(signer: SignerFacts, work: WorkToSign, on: CalendarDate): readonly Line[] {
  const mechanic = signer.mechanic;
  if (!mechanic) return [];
  const recent = recent65_83(mechanic, on);
  if (work.kind === 'altimeter-transponder-test') return [altimeterTransponderBars(work), recent];
  if (work.kind === 'annual')
    return [
      {
        effect: 'bars',
        cite: '14cfr65.95(a)(2)',
        because:
          'An annual inspection needs an inspection authorization in effect; mechanic ratings alone do not reach it.',
      },
      recent,
    ];
  const excluded = excluded65_81a(work);
  if (excluded) return [excluded, recent];
  if (work.kind === 'major') return [majorNotApproved65_85and65_87(mechanic, work), recent];
  if (work.kind === 'static-test') {
    const rated = rated65_85and65_87(mechanic, 'airframe');
    const cited: Line =
      rated.effect === 'bars'
        ? {
            ...rated,
            cite: '14cfr91.411(b)',
            because: `A static system test by a mechanic needs the airframe rating. ${rated.because}`,
          }
        : {
            effect: 'supports',
            cite: '14cfr91.411(b)',
            because: 'A mechanic with an airframe rating may test the static system.',
          };
    return [cited, recent, ...helper(work), ...vouches65_81];
  }
  return [
    rated65_85and65_87(mechanic, work.part),
    recent,
    ...preventiveForMechanic(work),
    ...helper(work),
    ...vouches65_81,
  ];
}

/** Only for what the authorization adds (major, annual); the rest of an inspector's work is signed as mechanic. */
function asInspector(signer: SignerFacts, work: WorkToSign, on: CalendarDate): readonly Line[] {
  const authorization = signer.inspectionAuthorization;
  if (!authorization || (work.kind !== 'major' && work.kind !== 'annual')) return [];
  const recent: Line = signer.mechanic
    ? recent65_83(signer.mechanic, on)
    : { effect: 'bars', cite: '14cfr65.83', because: 'No mechanic certificate is on file.' };
  return [
    ...privileges65_95a(work),
    bothRatings65_92a(signer),
    expires65_92a(authorization, on),
    firstYear65_93c(authorization, on),
    recent,
    ...(work.kind === 'annual' ? helper(work) : []),
    ...vouches65_81,
  ];
}

function asPilot(signer: SignerFacts, work: WorkToSign, on: CalendarDate): readonly Line[] {
  if (!signer.pilot) return [];
  return [
    ...pilotPerforms43_3g(signer, work),
    pilotApproves43_7f(signer.pilot.grade),
    ...expiredBars('pilot certificate', signer.pilot, on, '14cfr43.7(f)'),
  ];
}

/**
 * One ruling for each certificate the person holds that has anything to say about this work. A screen may offer the
 * allowed ones; signing under more than one certificate is never needed. Empty for a person with no certificate.
 */
export function rulingsByCapacity(
  signer: SignerFacts,
  work: WorkToSign,
  on: CalendarDate,
): readonly CapacityRuling[] {
  const left = leftBars(signer, on);
  const entry = (
    capacity: Capacity,
    number: string,
    kind: string,
    lines: readonly Line[],
  ): CapacityRuling[] =>
    lines.length === 0 ? [] : [{ capacity, certificate: { number, kind }, ...rulingOf([...left, ...lines]) }];
  const { mechanic, inspectionAuthorization: inspector, repairStation: station, pilot } = signer;
  return [
    ...(inspector
      ? entry(
          'inspection-authorization',
          inspector.number,
          'inspection authorization',
          asInspector(signer, work, on),
        )
      : []),
    ...(mechanic
      ? entry(
          'mechanic',
          mechanic.number,
          `mechanic, ${mechanic.ratings.join(' and ')}`,
          asMechanic(signer, work, on),
        )
      : []),
    ...(station
      ? entry('repair-station', station.number, 'repair station', [
          ...repairStation43_7c(station, work),
          ...expiredBars('repair station certificate', station, on, '14cfr43.7(c)'),
          ...(work.kind === 'major'
            ? [
                {
                  effect: 'limits' as const,
                  cite: '14cfr43appB(b)' as const,
                  because:
                    'On approved data, with the major repair form (337) or the signed work order and release.',
                },
              ]
            : []),
        ])
      : []),
    ...(pilot
      ? entry('pilot', pilot.number, `${pilot.grade.replaceAll('-', ' ')} pilot`, asPilot(signer, work, on))
      : []),
  ];
}

/**
 * May this person approve return to service after this work, on this day (date at the base)? Tries each certificate
 * held and answers with the first that carries it; if none does, all reasons of all of them are given. Refuses a person
 * who has left, and a person without certificate. For a whole 100-hour inspection see {@link mayApproveHundredHour}.
 */
export function mayApproveReturnToService(
  signer: SignerFacts,
  work: WorkToSign,
  on: CalendarDate,
): SigningRuling {
  const left = leftBars(signer, on);
  if (left.length > 0) return { ...rulingOf(left), under: null };
  const rulings = rulingsByCapacity(signer, work, on);
  const good = rulings.find((ruling) => ruling.allowed);
  if (good)
    return {
      allowed: true,
      lines: good.lines,
      under: { capacity: good.capacity, certificate: good.certificate },
    };
  const against = rulings.flatMap((ruling) => ruling.lines.filter((line) => line.effect === 'bars'));
  const lines: readonly Line[] =
    against.length > 0
      ? against
      : [{ effect: 'bars', cite: '14cfr43.7', because: 'No certificate on file that 43.7 names.' }];
  return { ...rulingOf(lines), under: null };
}

/** A 100-hour inspection of the whole aircraft: the airframe half and the engine and propeller half must both be good. */
export function mayApproveHundredHour(
  signer: SignerFacts,
  work: Pick<WorkToSign, 'aircraftCategory' | 'performedBySigner'>,
  on: CalendarDate,
): Ruling {
  const half = (part: 'airframe' | 'powerplant') =>
    mayApproveReturnToService(
      signer,
      { ...work, part, kind: 'hundred-hour', preventiveItem: null, swapOnly: false },
      on,
    );
  return rulingOf([...half('airframe').lines, ...half('powerplant').lines]);
}
