/**
 * 14 CFR 91.411(a)(2), (a)(3) and 91.413(b): tests that work leaves owed. The dates of 91.411(a)(1) and 91.413(a) are in
 * `91-411-413-altimeter-transponder.ts`.
 *
 * - 91.411(a)(2): after the static system was opened and closed, it is tested to Appendix E(a). Use of the drain and of
 *   the alternate static valve is no opening.
 * - 91.411(a)(3): after work on the altitude reporting system that could introduce an error between what is reported and
 *   what the altimeter shows, the two together are tested to Appendix E(c).
 * - 91.413(b): the same after work on a transponder; until then nobody uses it.
 *
 * Both 91.411 paragraphs bar IFR in controlled airspace only. What was opened and what could be in error is a person's
 * answer about the work; nothing is taken for granted.
 * Read in an eCFR copy of 3 September 2026.
 */
import type { AircraftFacts, OwedTest, WorkFacts } from '../aircraft';
import type { PartOfAircraft } from '../jasc';
import type { CiteId } from '../law';
import type { UseOfAircraft } from '../operations';
import { isOutOfUse } from '../out-of-use';
import { barsForMissing, type Line } from '../verdict';

export type TestQuestionKey = 'staticOpened' | 'altitudeError' | 'transponderError';

/** Answers by question; one left out is unanswered. */
export type TestAnswers = Partial<Readonly<Record<TestQuestionKey, boolean>>>;

export interface TestQuestion {
  readonly key: TestQuestionKey;
  readonly test: OwedTest;
  readonly question: string;
  readonly hint: string;
  readonly cite: CiteId;
}

export const TEST_QUESTIONS: readonly TestQuestion[] = [
  {
    key: 'staticOpened',
    test: 'static-leak',
    question: 'Was the static system opened?',
    hint: 'Any line, fitting or instrument on it. Draining it, or using the alternate static valve, does not count.',
    cite: '14cfr91.411(a)(2)',
  },
  {
    key: 'altitudeError',
    test: 'altimeter-error',
    question: 'Could the altitude that is reported now differ from the altimeter?',
    hint: 'After work on the altimeter, the encoder, or what joins them.',
    cite: '14cfr91.411(a)(3)',
  },
  {
    key: 'transponderError',
    test: 'transponder-error',
    question: 'Could the transponder now send a wrong altitude?',
    hint: 'After fitting one, or work on it or its wiring.',
    cite: '14cfr91.413(b)',
  },
];

/**
 * The questions to ask about work on this part of this system: all three wherever an instrument or a radio was worked on,
 * and in the chapters of navigation (34) and autopilot (22). Strict: opening the panel for one instrument can disturb the
 * line of another. Elsewhere nobody is asked, and whoever opened a static line on the way says so.
 */
export function testQuestionsFor(part: PartOfAircraft, jasc: string): readonly TestQuestion[] {
  const near = part === 'instrument' || part === 'avionics' || ['22', '34'].includes(jasc.slice(0, 2));
  return near ? TEST_QUESTIONS : [];
}

/** The questions that were asked and have no answer. */
export const testQuestionsOpen = (
  asked: readonly TestQuestion[],
  answers: TestAnswers,
): readonly TestQuestion[] => asked.filter(({ key }) => answers[key] === undefined);

/** The tests owed by the answers, in the order of the paragraphs. Only a "yes" owes one. */
export const testsOwedBy = (answers: TestAnswers): readonly OwedTest[] =>
  TEST_QUESTIONS.filter(({ key }) => answers[key] === true).map(({ test }) => test);

/** What owed tests leave of a flight. */
export function checkTestsOwed(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  return aircraft.work.flatMap((work) =>
    work.testsOwed.flatMap((test) => owedLine(aircraft, work, test, use)),
  );
}

function owedLine(aircraft: AircraftFacts, work: WorkFacts, test: OwedTest, use: UseOfAircraft): Line[] {
  switch (test) {
    case 'static-leak':
      return barsIfr(work, use, '14cfr91.411(a)(2)', 'the static system was opened and its test is owed');
    case 'altimeter-error':
      return barsIfr(
        work,
        use,
        '14cfr91.411(a)(3)',
        'the test of altimeter and altitude reporting together is owed',
      );
    case 'transponder-error':
      return isOutOfUse(aircraft, 'transponder') ? [] : [transponderStaysOff(work, use)];
  }
}

/** 91.411: no IFR in controlled airspace. Whether the flight goes there has to be known. */
function barsIfr(work: WorkFacts, use: UseOfAircraft, cite: CiteId, owed: string): Line[] {
  const about = aboutWork(work);
  if (use.rules === 'VFR') {
    return [{ effect: 'notes', cite, because: `${work.title}: ${owed}. No IFR until then.`, about }];
  }
  if (!use.controlledAirspace.known) return [barsForMissing(cite, use.controlledAirspace.missing, about)];
  if (!use.controlledAirspace.value) {
    const because = `${work.title}: ${owed}. Stay out of controlled airspace under IFR.`;
    return [{ effect: 'limits', cite, because, about }];
  }
  return [
    {
      effect: 'bars',
      cite,
      because: `${work.title}: ${owed}. No IFR in controlled airspace until it is signed.`,
      about,
    },
  ];
}

/** 91.413(b): the transponder is not used, so the airspace that needs it is closed, VFR too. */
function transponderStaysOff(work: WorkFacts, use: UseOfAircraft): Line {
  const cite = '14cfr91.413(b)';
  const about = aboutWork(work);
  const owed = `${work.title}: the transponder is not used until its test is signed.`;
  if (!use.transponderAirspace.known) return barsForMissing(cite, use.transponderAirspace.missing, about);
  return use.transponderAirspace.value
    ? { effect: 'bars', cite, because: `${owed} This flight needs it.`, about }
    : {
        effect: 'limits',
        cite,
        because: `${owed} Leave it off and placard it; stay out of airspace that needs it.`,
        about,
      };
}

const aboutWork = (work: WorkFacts) => ({ kind: 'work', id: work.id, label: work.title }) as const;
