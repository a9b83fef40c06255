/**
 * "Is it this one?": which write-ups on the books a finding being typed is likely the same as. An explained score, no
 * learning: whole points for and against, each with its sentence. Pure and light, it runs on the phone.
 *
 * - Finding: same finding of the catalogue +38; one easily taken for it +20; another -24. Another code within the same
 *   finding (altimeter, not airspeed) -34. Without the same finding: same four-digit code +16, same system (first two
 *   digits) +6, another system -10, same kind of trouble +4.
 * - Place: same area +20, one that touches it +12, apart -26; nothing where one of them is the walk up, the cabin with
 *   power on or the last look, for what is noted there may sit anywhere.
 * - Position (left or right, upper or lower, front or rear, inboard or outboard, nose or main wheel, number 1 or 2), from
 *   the words, else from the area's name: shared +8; contradicted -60 each time, for the left tyre is not the right one.
 * - Words after plain normalising: a part named by both +12 (akin: +7), a trouble +6, another word +4, together 28 at most;
 *   twins of one family (rudder, not elevator) -26, else only other parts -16.
 *
 * From 28 points on it is shown, from 62 on it is strong. Closed ones count like open ones: it may be back. A missed one
 * makes a twin write-up, which is a nuisance; one shown in vain costs a glance. So more is shown rather than less.
 *
 * Measured on our own invented set (tests/fixtures/labelled-pairs.ts: 270 pairs, 78 % of them hard; nothing from outside, so
 * this says how it does there, no more):
 *
 * | half     | pairs | shown: precision | recall | strong: precision | recall |
 * | -------- | ----- | ---------------- | ------ | ----------------- | ------ |
 * | tuning   | 136   | 0.915            | 0.987  | 1.000             | 0.605  |
 * | held out | 134   | 0.872            | 0.971  | 0.951             | 0.557  |
 *
 * Points were tuned on the tuning half alone. Totals of the held-out half were seen meanwhile, and the lower of two
 * thresholds for showing (28, not 31) was taken with them in view: its 0.971 is a little flattered by that.
 */
import { areaInWords, comparePositions, nearness, positionsWritten, type Positions } from './places-compared';
import { compareParts, inCommon, meaningOf, wordsOf, type Meaning } from './words-compared';

/** What is being written up, as far as it is known while it is typed. Empty text: nothing typed yet. */
export interface MatchDraft {
  /** Area of the aircraft. */
  readonly station: string;
  /** Finding of the catalogue; null for "something else" or not chosen yet. */
  readonly findingKey: string | null;
  /** Title of that finding, where the caller has it: its words help against a write-up without a finding. */
  readonly title?: string | null;
  readonly kind: string | null;
  /** Four-digit system code: the one chosen, else the finding's own; null when not known. */
  readonly jasc: string | null;
  readonly place: string;
  readonly words: string;
}

/** What is on the books. `PackWriteUp` and `WriteUpSummary` with a finding key fit. */
export interface MatchWriteUp {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly station: string;
  readonly place: string;
  readonly words: string;
  /** '' while no system is named. */
  readonly jasc: string;
  readonly kind: string;
  readonly findingKey: string | null;
  readonly state: string;
}

export interface LikelySame<W extends MatchWriteUp> {
  readonly writeUp: W;
  readonly score: number;
  /** So likely that the pilot should be asked before anything else. */
  readonly strong: boolean;
  /** A sentence for everything that counted, for it or against. */
  readonly because: readonly string[];
}

const POINTS = {
  sameFinding: 38,
  sisterFinding: 20,
  otherFinding: -24,
  sameCode: 16,
  sameSystem: 6,
  otherSystem: -10,
  otherChoice: -34,
  sameArea: 20,
  neighbours: 12,
  apart: -26,
  samePosition: 8,
  otherPosition: -60,
  part: 12,
  akinPart: 7,
  trouble: 6,
  word: 4,
  twinPart: -26,
  otherPart: -16,
  sameKind: 4,
} as const;

/** Most points for words alone, so that a long story does not outweigh where and what. */
const MOST_FOR_WORDS = 28;

/** From here on it is shown; from here on it is asked first. */
export const SHOWN_FROM = 28;
export const STRONG_FROM = 62;

/** Findings of the catalogue that one person calls this and the next one that. */
const SISTERS: readonly (readonly string[])[] = [
  ['propeller-nick', 'propeller-erosion', 'propeller-crack', 'propeller-bent'],
  ['tyre-worn', 'tyre-cord', 'tyre-flat-spot', 'tyre-cut'],
  ['nose-strut-low', 'strut-leak'],
  ['brake-leak', 'brake-soft'],
  ['brake-pads-worn', 'brake-soft'],
  ['water-cleared', 'water-keeps-coming', 'fuel-dirt'],
  ['fuel-stain', 'fuel-drain-drips', 'fuel-cap-seal'],
  ['engine-oil-leak', 'oil-cooler-leak', 'oil-low'],
  ['exhaust-crack', 'muffler-crack'],
  ['alternator-belt', 'alternator-dead', 'battery-weak'],
  ['position-light-dead', 'light-lens-broken'],
  ['landing-light-dead', 'light-lens-broken'],
  ['anticollision-light-dead', 'light-lens-broken'],
  ['pitot-blocked', 'pitot-heat-dead'],
  ['control-stiff', 'control-cable-wire'],
  ['control-stiff', 'surface-hinge-loose'],
  ['baffle-torn', 'inlet-nest'],
  ['cowl-fastener-missing', 'baffle-torn'],
];

const areSisters = (one: string, other: string): boolean =>
  SISTERS.some((family) => family.includes(one) && family.includes(other));

interface Evidence {
  readonly points: number;
  readonly say: string;
}

/**
 * Which write-ups of the aircraft a draft is likely the same as, likeliest first. The order of `writeUps` never matters;
 * equal scores go by state (open, deferred, closed), then by number. The caller gives write-ups of one aircraft only.
 */
export function likelyTheSame<W extends MatchWriteUp>(
  draft: MatchDraft,
  writeUps: readonly W[],
): readonly LikelySame<W>[] {
  const typed = readText(draft, draft.title ?? '');
  return writeUps
    .map((writeUp) => {
      const evidence = evidenceFor(draft, typed, writeUp);
      const score = evidence.reduce((sum, { points }) => sum + points, 0);
      return { writeUp, score, strong: score >= STRONG_FROM, because: evidence.map(({ say }) => say) };
    })
    .filter(({ score }) => score >= SHOWN_FROM)
    .toSorted(likelierFirst);
}

/** What one writing says, read once. */
interface ReadText {
  readonly positions: Positions;
  /** What the reporter wrote. */
  readonly own: Meaning;
  /** What the title of its finding adds. */
  readonly title: Meaning;
}

const GEAR_PARTS: readonly string[] = ['tyre', 'wheel', 'wheel fairing', 'brake', 'leg'];

function readText(
  of: Pick<MatchDraft, 'station' | 'findingKey' | 'place' | 'words'>,
  title: string,
): ReadText {
  const words = wordsOf(`${of.place} ${of.words}`);
  const own = meaningOf(words);
  // What is written at the gear, or about a finding of the gear, is about a wheel: main or nose.
  const isAboutGear =
    /^(tyre|brake|wheel|gear)-/.test(of.findingKey ?? '') || GEAR_PARTS.some((part) => own.parts.has(part));
  return {
    positions: positionsWritten(of.station, words, isAboutGear),
    own,
    title: meaningOf(wordsOf(title)),
  };
}

const together = ({ own, title }: ReadText): Meaning => ({
  parts: new Set([...own.parts, ...title.parts]),
  troubles: new Set([...own.troubles, ...title.troubles]),
  others: new Set([...own.others, ...title.others]),
});

const STATES: readonly string[] = ['open', 'deferred', 'closed'];

function likelierFirst(one: LikelySame<MatchWriteUp>, other: LikelySame<MatchWriteUp>): number {
  const byScore = other.score - one.score;
  const byState = STATES.indexOf(one.writeUp.state) - STATES.indexOf(other.writeUp.state);
  return (
    byScore ||
    byState ||
    inOrder(one.writeUp.number, other.writeUp.number) ||
    inOrder(one.writeUp.id, other.writeUp.id)
  );
}

const inOrder = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

function evidenceFor(draft: MatchDraft, typed: ReadText, writeUp: MatchWriteUp): readonly Evidence[] {
  const filed = readText(writeUp, writeUp.title);
  // Titles of the same finding are the same; they would only say twice what is counted already.
  const isSame = draft.findingKey !== null && draft.findingKey === writeUp.findingKey;
  return [
    ...ofFinding(draft, writeUp),
    ...ofArea(draft, writeUp),
    ...ofPositions(typed.positions, filed.positions),
    ...(isSame ? ofWords(typed.own, filed.own) : ofWords(together(typed), together(filed))),
  ];
}

function ofFinding(draft: MatchDraft, writeUp: MatchWriteUp): Evidence[] {
  const given: Evidence[] = [];
  const [one, other] = [draft.findingKey, writeUp.findingKey];
  const isSame = one !== null && one === other;
  if (isSame) given.push({ points: POINTS.sameFinding, say: `Same finding: ${writeUp.title}.` });
  else if (one !== null && other !== null)
    given.push(
      areSisters(one, other)
        ? { points: POINTS.sisterFinding, say: `A finding easily taken for this one: ${writeUp.title}.` }
        : { points: POINTS.otherFinding, say: `But another finding: ${writeUp.title}.` },
    );
  given.push(...ofSystem(draft.jasc ?? '', writeUp.jasc, isSame));
  if (!isSame && draft.kind !== null && draft.kind === writeUp.kind)
    given.push({ points: POINTS.sameKind, say: `Same kind of trouble: ${writeUp.kind}.` });
  return given;
}

/** The same finding already says the same system; another code then is another instrument or surface. */
function ofSystem(one: string, other: string, isSameFinding: boolean): Evidence[] {
  if (one === '' || other === '') return [];
  if (one === other)
    return isSameFinding ? [] : [{ points: POINTS.sameCode, say: `Same part of the system: ${other}.` }];
  if (isSameFinding)
    return [{ points: POINTS.otherChoice, say: `But another of its kind: ${one}, not ${other}.` }];
  const system = other.slice(0, 2);
  return one.startsWith(system)
    ? [{ points: POINTS.sameSystem, say: `Same system: ${system}.` }]
    : [{ points: POINTS.otherSystem, say: `But another system: ${one.slice(0, 2)}, not ${system}.` }];
}

function ofArea(draft: MatchDraft, writeUp: MatchWriteUp): Evidence[] {
  const there = areaInWords(writeUp.station);
  switch (nearness(draft.station, writeUp.station)) {
    case 'same':
      return [{ points: POINTS.sameArea, say: `Same place: ${there}.` }];
    case 'neighbours':
      return [{ points: POINTS.neighbours, say: `Right beside: ${there}.` }];
    case 'open':
      return [];
    case 'apart':
      return [{ points: POINTS.apart, say: `But another place: ${there}.` }];
  }
}

function ofPositions(typed: Positions, filed: Positions): Evidence[] {
  const { shared, against } = comparePositions(typed, filed);
  if (against.length > 0)
    return against.map(([here, there]) => ({
      points: POINTS.otherPosition,
      say: `But the other one: ${there}, not ${here}.`,
    }));
  return shared.length > 0
    ? [{ points: POINTS.samePosition, say: `Same position: ${shared.join(', ')}.` }]
    : [];
}

function ofWords(here: Meaning, there: Meaning): Evidence[] {
  const parts = compareParts(here.parts, there.parts);
  const troubles = inCommon(here.troubles, there.troubles);
  const others = inCommon(here.others, there.others);
  const points =
    parts.shared.length * POINTS.part +
    parts.akin.length * POINTS.akinPart +
    troubles.length * POINTS.trouble +
    others.length * POINTS.word;
  const given: Evidence[] = [];
  if (points > 0)
    given.push({
      points: Math.min(points, MOST_FOR_WORDS),
      say: `Both speak of: ${[...parts.shared, ...parts.akin, ...troubles, ...others].join(', ')}.`,
    });
  if (parts.twins)
    given.push({
      points: POINTS.twinPart,
      say: `But another part: ${parts.twins[1]}, not ${parts.twins[0]}.`,
    });
  else if (parts.isApart)
    given.push({
      points: POINTS.otherPart,
      say: `But another part: ${[...there.parts].join(', ')}, not ${[...here.parts].join(', ')}.`,
    });
  return given;
}
