/**
 * 14 CFR 91.213 as questions, in the order in which the section asks them, answered from the lines the rules gave. For
 * showing the regulation as it was read; it never answers differently from the lines.
 */
import { kindsInWords } from '../kinds-in-words';
import { LAW, type CiteId } from '../law';
import type { OperationKind } from '../operations';
import type { Line } from '../verdict';
import type { StepOwed } from './91-213-steps';

export interface Question {
  readonly question: string;
  readonly cite: CiteId;
  /** `depends`: on the kind of operation. */
  readonly answer: 'yes' | 'no' | 'unknown' | 'depends';
  readonly because: string;
  /** Whether this answer closes the way for every kind of operation, or keeps the deferral from being complete. */
  readonly stops: boolean;
}

interface Row {
  readonly kind: OperationKind;
  readonly lines: readonly Line[];
}

interface Read {
  readonly path: 'not-equipment' | 'mel' | 'paragraph-d' | 'closed';
  readonly gate: readonly Line[];
  readonly table: readonly Row[];
  readonly deferrable: boolean;
  readonly steps: readonly StepOwed[];
}

/** The questions of the gate, by the paragraph that asks. `supports` says which answer a supporting line is. */
const GATE_QUESTIONS: readonly {
  readonly cites: readonly CiteId[];
  readonly question: string;
  readonly supports: 'yes' | 'no';
  readonly bars: 'yes' | 'no';
}[] = [
  {
    cites: ['14cfr91.213(a)'],
    question: 'Is it installed equipment that does not work, and not damage, wear or a leak?',
    supports: 'yes',
    bars: 'no',
  },
  {
    cites: ['14cfr91.213(a)(1)'],
    question: 'Is there an approved minimum equipment list for this aircraft?',
    supports: 'no',
    bars: 'no',
  },
  {
    cites: ['14cfr91.213(a)(2)'],
    question: 'Are the minimum equipment list and its letter of authorization aboard?',
    supports: 'yes',
    bars: 'no',
  },
  {
    cites: ['14cfr91.213(a)(3)(ii)'],
    question: 'Does the list provide for this item being inoperative?',
    supports: 'yes',
    bars: 'no',
  },
  {
    cites: ['14cfr91.213(d)(1)', '14cfr91.213(d)(1)(i)', '14cfr91.213(d)(1)(ii)'],
    question: 'Is paragraph (d) open to this kind of aircraft?',
    supports: 'yes',
    bars: 'no',
  },
];

/** The four tests of (d)(2). A yes bars. (iii) takes every line of part 91 that is not one of the others. */
const D2_QUESTIONS: readonly { readonly cite: CiteId; readonly question: string }[] = [
  {
    cite: '14cfr91.213(d)(2)(i)',
    question: 'Is it part of the VFR-day equipment the type was certificated with?',
  },
  { cite: '14cfr91.213(d)(2)(ii)', question: 'Does the equipment list require it for this kind of flight?' },
  {
    cite: '14cfr91.213(d)(2)(iii)',
    question: 'Does 91.205 or another rule of part 91 require it for this kind of flight?',
  },
  { cite: '14cfr91.213(d)(2)(iv)', question: 'Does an airworthiness directive require it to work?' },
];

/** All questions as far as the section was read: the gate, then the tests, then the steps. */
export function treeOf({ path, gate, table, deferrable, steps }: Read): readonly Question[] {
  const before = gate.flatMap(questionOfGate);
  if (path === 'not-equipment' || path === 'closed') return before;
  const tests = path === 'paragraph-d' ? testsOfD2(table) : testsOfList(table, gate);
  const fork: readonly Question[] = deferrable
    ? []
    : [
        {
          question: 'Is any kind of operation left?',
          cite: '14cfr91.405(a)',
          answer: 'no',
          because: 'Every kind of operation is barred: the item is repaired, not deferred.',
          stops: true,
        },
      ];
  return [...before, ...tests, ...fork, ...steps.map(questionOfStep)];
}

function questionOfGate(line: Line): readonly Question[] {
  const asked = GATE_QUESTIONS.find(({ cites }) => cites.includes(line.cite));
  if (asked === undefined) return [];
  const bars = line.effect === 'bars';
  const answer = line.missing !== undefined ? 'unknown' : bars ? asked.bars : asked.supports;
  return [{ question: asked.question, cite: line.cite, answer, because: line.because, stops: bars }];
}

function testsOfD2(table: readonly Row[]): readonly Question[] {
  const own: readonly CiteId[] = D2_QUESTIONS.map(({ cite }) => cite);
  const gateCites = GATE_QUESTIONS.flatMap(({ cites }) => cites);
  return D2_QUESTIONS.map(({ cite, question }) => {
    const isOf = (line: Line) =>
      cite === '14cfr91.213(d)(2)(iii)'
        ? line.cite === cite || !(own.includes(line.cite) || gateCites.includes(line.cite))
        : line.cite === cite;
    return answerOver(table, isOf, question, cite, { barred: 'yes', clear: 'no' });
  });
}

function testsOfList(table: readonly Row[], gate: readonly Line[]): readonly Question[] {
  if (gate.some((line) => line.effect === 'bars')) return [];
  const question = 'Do the list and its conditions allow it for this kind of flight?';
  const isOf = (line: Line) => line.cite !== '14cfr91.213(a)(2)';
  return [answerOver(table, isOf, question, '14cfr91.213(a)(5)', { barred: 'no', clear: 'yes' })];
}

/** One answer over all kinds: the same for each, or `depends` with the kinds and paragraphs that bar. */
function answerOver(
  table: readonly Row[],
  isOf: (line: Line) => boolean,
  question: string,
  cite: CiteId,
  words: { readonly barred: 'yes' | 'no'; readonly clear: 'yes' | 'no' },
): Question {
  const rows = table.map(({ kind, lines }) => ({
    kind,
    bars: lines.filter((line) => isOf(line) && line.effect === 'bars'),
  }));
  const barred = rows.filter(({ bars }) => bars.length > 0);
  const first = table.flatMap(({ lines }) => lines).find(isOf);
  if (barred.length === 0) {
    return {
      question,
      cite,
      answer: words.clear,
      because: first?.because ?? 'Nothing bars it.',
      stops: false,
    };
  }
  const all = barred.flatMap(({ bars }) => bars);
  const because = reasonsInWords(all, barred);
  if (barred.length < rows.length) return { question, cite, answer: 'depends', because, stops: false };
  const plain = barred.every(({ bars }) => bars.some((line) => line.missing === undefined));
  return { question, cite, answer: plain ? words.barred : 'unknown', because, stops: true };
}

/** "Night VFR: Landing light required ... (14 CFR 91.205(c)(4))": each reason once, with the kinds it bars. */
function reasonsInWords(
  lines: readonly Line[],
  rows: readonly { readonly kind: OperationKind; readonly bars: readonly Line[] }[],
): string {
  const cites = [...new Set(lines.map((line) => line.cite))];
  return cites
    .map((cite) => {
      const kinds = rows
        .filter(({ bars }) => bars.some((line) => line.cite === cite))
        .map(({ kind }) => kind);
      const because = lines.find((line) => line.cite === cite)?.because ?? '';
      return `Not ${kindsInWords(kinds).join(', ')} (${LAW[cite].label}): ${because}`;
    })
    .join(' ');
}

const STEP_QUESTIONS: Record<StepOwed['id'], string> = {
  record: 'Do the aircraft records describe it?',
  'remove-or-deactivate': 'Is it removed or deactivated?',
  'part-43-record': 'Is the part 43 record signed, where the work is maintenance?',
  placard: 'Is it placarded?',
  'elt-removal-record': 'Is the record of the removal complete?',
  determination: 'Has a rated pilot or mechanic determined that it is no hazard?',
  'mel-procedures': 'Are the procedures of the list done?',
};

const questionOfStep = (step: StepOwed): Question => ({
  question: STEP_QUESTIONS[step.id],
  cite: step.cite,
  answer: step.done ? 'yes' : step.missing === undefined ? 'no' : 'unknown',
  because: step.text,
  stops: !step.done,
});
