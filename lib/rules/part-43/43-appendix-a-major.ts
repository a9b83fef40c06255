import { known, unknown, type Fact } from '../facts';
import type { PartOfAircraft } from '../jasc';
import type { CiteId } from '../law';
import type { Line } from '../verdict';

/**
 * Part 43 Appendix A(b): major repairs, as questions a mechanic answers about the work just done.
 * (b)(1) airframe: strengthening, splicing or making of primary structure; damage beyond size; fabric; tanks.
 * (b)(2) powerplant: splitting certain crankcases; welding or plating structural engine parts.
 * (b)(3) propeller: steel blades, hubs, shortening, straightening, deep damage, overhaul of controllable ones.
 * (b)(4) appliance: calibration and repair of instruments, calibration of radios, complex hydraulics, carburettors.
 *
 * Any "yes" makes the work major. The appendix gives examples of a wider idea (work that could affect weight,
 * balance, strength, performance or handling if done wrongly), so each group ends with that question. Minor only
 * when every question of the group is answered "no"; an unanswered one leaves the kind of work unknown.
 */

export type MajorGroup = 'airframe' | 'powerplant' | 'propeller' | 'appliance';

export interface MajorQuestion {
  readonly key: string;
  readonly group: MajorGroup;
  readonly question: string;
  readonly cite: CiteId;
  /** `checked`: the example stands in the appendix. `reading`: from the definition behind it. */
  readonly status: 'checked' | 'reading';
}

const ask =
  (group: MajorGroup, cite: CiteId) =>
  (key: string, question: string, status: 'checked' | 'reading'): MajorQuestion => ({
    key,
    group,
    question,
    cite,
    status,
  });

const airframe = ask('airframe', '14cfr43appA(b)(1)');
const powerplant = ask('powerplant', '14cfr43appA(b)(2)');
const propeller = ask('propeller', '14cfr43appA(b)(3)');
const appliance = ask('appliance', '14cfr43appA(b)(4)');

const WIDER =
  'If done wrongly, could it appreciably affect weight, balance, strength, performance, engine operation or handling?';

export const MAJOR_QUESTIONS: readonly MajorQuestion[] = [
  airframe(
    'airframe-primary-structure',
    'Was a spar, rib, stringer, longeron, bulkhead, strut, skin panel, engine mount, gear leg, axle or control system part strengthened, spliced or made new?',
    'checked',
  ),
  airframe('airframe-material', 'Was material of another kind put in place of the original?', 'checked'),
  airframe(
    'airframe-skin-over-six-inches',
    'Was damage to stressed skin larger than 6 inches in any direction repaired?',
    'checked',
  ),
  airframe('airframe-skin-seams', 'Were seams added or skin sheets spliced?', 'checked'),
  airframe(
    'airframe-three-ribs',
    'Were three or more neighbouring ribs, or the leading edge between them, repaired?',
    'checked',
  ),
  airframe('airframe-fabric', 'Was fabric covering replaced (more than a simple patch)?', 'checked'),
  airframe('airframe-tanks', 'Was a fuel or oil tank repaired?', 'checked'),
  airframe('airframe-wider', WIDER, 'reading'),
  powerplant(
    'powerplant-split-case',
    'Was the crankcase or crankshaft taken apart on an engine with built-in supercharger or with other than spur-type propeller reduction gearing?',
    'checked',
  ),
  powerplant(
    'powerplant-structural-welding',
    'Was a structural engine part repaired by welding, plating or metal spraying?',
    'checked',
  ),
  powerplant('powerplant-wider', WIDER, 'reading'),
  propeller('propeller-straightened', 'Was a blade straightened?', 'checked'),
  propeller('propeller-shortened', 'Were blades shortened?', 'checked'),
  propeller(
    'propeller-deep-damage',
    'Was a deep dent, nick, cut or scar repaired (more than light dressing inside the maker’s limits)?',
    'checked',
  ),
  propeller('propeller-hub', 'Was the hub machined or repaired?', 'checked'),
  propeller('propeller-steel', 'Was a steel blade repaired?', 'checked'),
  propeller(
    'propeller-wood-composite',
    'Was a wooden blade retipped or relaminated, or a composite blade repaired?',
    'checked',
  ),
  propeller(
    'propeller-internals',
    'Was a controllable propeller overhauled, its inside repaired, or its governor repaired?',
    'checked',
  ),
  propeller('propeller-wider', WIDER, 'reading'),
  appliance('appliance-instrument', 'Was an instrument calibrated or repaired?', 'checked'),
  appliance('appliance-radio', 'Was radio equipment calibrated?', 'checked'),
  appliance('appliance-field-coil', 'Was a field coil of an electrical accessory rewound?', 'checked'),
  appliance('appliance-hydraulic', 'Was a complex hydraulic valve taken fully apart?', 'checked'),
  appliance('appliance-carburettor', 'Was a pressure carburettor or a pressure pump overhauled?', 'checked'),
  appliance('appliance-wider', WIDER, 'reading'),
];

/** Answers by question key. A question left out is unanswered; there is no default. */
export type MajorAnswers = Readonly<Record<string, boolean | undefined>>;

/** The questions of one group, in the order of the appendix. */
export const majorQuestionsFor = (group: MajorGroup): readonly MajorQuestion[] =>
  MAJOR_QUESTIONS.filter((question) => question.group === group);

/**
 * Chapters of the JASC table whose work can be a repair of an appliance, (b)(4): electrical machines, hydraulics and
 * brakes, pumps and carburettors. Our own grouping, no source; a chapter too many only asks more questions.
 */
const APPLIANCE_CHAPTERS: readonly string[] = ['24', '28', '29', '32', '73', '74', '79', '80'];

/**
 * The questions asked about work on this part of this system, each text once. Instruments and radios are appliances; on
 * airframe and engine the appliance questions come along where the system has appliances of the list.
 */
export function majorQuestionsAsked(part: PartOfAircraft, jasc: string): readonly MajorQuestion[] {
  if (part === 'instrument' || part === 'avionics') return majorQuestionsFor('appliance');
  const own = majorQuestionsFor(part);
  if (part === 'propeller' || !APPLIANCE_CHAPTERS.includes(jasc.slice(0, 2))) return own;
  const said = new Set(own.map(({ question }) => question));
  const appliance = majorQuestionsFor('appliance').filter(({ question }) => !said.has(question));
  return [...appliance, ...own];
}

/**
 * Major or minor from a mechanic's answers. One "yes" is enough for major, whatever else is open; minor needs "no" to
 * every question of the group. The lines name the questions that decided.
 */
export const classifyWork = (group: MajorGroup, answers: MajorAnswers): Classified =>
  classifyAnswers(majorQuestionsFor(group), group, answers);

/** The same over the questions asked about work on this part of this system. */
export const classifyAsked = (part: PartOfAircraft, jasc: string, answers: MajorAnswers): Classified =>
  classifyAnswers(majorQuestionsAsked(part, jasc), part, answers);

export interface Classified {
  readonly kind: Fact<'major' | 'minor'>;
  readonly lines: readonly Line[];
}

function classifyAnswers(
  questions: readonly MajorQuestion[],
  what: string,
  answers: MajorAnswers,
): Classified {
  const yes = questions.filter((question) => answers[question.key] === true);
  if (yes.length > 0) {
    return {
      kind: known('major'),
      lines: yes.map((question) => ({
        effect: 'limits',
        cite: question.cite,
        because: `Answered yes, so this is a major repair: ${question.question}`,
      })),
    };
  }
  const open = questions.filter((question) => answers[question.key] !== false);
  const firstOpen = open[0];
  if (firstOpen) {
    const missing = `whether this ${what} work is major (${open.length} of ${questions.length} questions open; first: ${firstOpen.question})`;
    return {
      kind: unknown(missing),
      lines: [{ effect: 'bars', cite: firstOpen.cite, because: `Not known: ${missing}`, missing }],
    };
  }
  return {
    kind: known('minor'),
    lines: [
      {
        effect: 'supports',
        cite: '14cfr43appA(b)',
        because: `All ${questions.length} questions on major ${what} repairs were answered no.`,
      },
    ],
  };
}
