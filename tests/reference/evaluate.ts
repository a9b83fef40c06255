/** The whole reading: what is written up, work, what recurs, papers, equipment; then the permit; then the house. */
import type { AircraftFacts, PaperKind } from '@/lib/rules/aircraft';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { judgeEquipment } from './equipment';
import { judgeHouse } from './house';
import { judgeWriteUp } from './inoperative';
import { judgeRecurring, outOfUse } from './recurring';
import { firstDay, lastDay, Sheet, valueOf, type Bar } from './sheet';

export interface Reading {
  readonly outcome: 'go' | 'go-with-limits' | 'no-go';
  /** Paragraphs that bar, of the law. */
  readonly bars: readonly string[];
  /** Whether a rule of the house bars. */
  readonly houseBars: boolean;
}

export function readSlowly(aircraft: AircraftFacts, use: UseOfAircraft): Reading {
  const sheet = new Sheet();
  for (const d of aircraft.discrepancies) judgeWriteUp(aircraft, d, use, sheet);
  judgeWork(aircraft, use, sheet);
  judgeRecurring(aircraft, use, sheet);
  judgePapers(aircraft, use, sheet);
  judgeEquipment(aircraft, use, sheet);
  judgePermit(aircraft, use, sheet);
  const house = new Sheet();
  judgeHouse(aircraft, use, sheet.limits.length > 0, house);
  const bars = [...new Set(sheet.bars.map(({ cite }) => cite))].sort();
  const houseBars = house.bars.length > 0;
  const limited = sheet.limits.length + house.limits.length > 0;
  return {
    outcome: bars.length > 0 || houseBars ? 'no-go' : limited ? 'go-with-limits' : 'go',
    bars,
    houseBars,
  };
}

const PRIVATE_OR_HIGHER = ['private', 'commercial', 'airline-transport'];

/** 91.407, and the tests that work leaves owed: 91.411(a)(2), (a)(3), 91.413(b). */
function judgeWork(aircraft: AircraftFacts, use: UseOfAircraft, sheet: Sheet): void {
  for (const work of aircraft.work) {
    if (work.state === 'started') sheet.bar('91.407(a)(2)');
    else if (work.state === 'entered') sheet.bar('91.407(a)(1)');
    else {
      const flight = valueOf(work.checkFlight);
      const grade = valueOf(use.pilotInCommandGrade);
      if (flight === null) sheet.unknown('91.407(b)');
      if (flight === 'owed') {
        const crew = valueOf(use.crewOnly) === true;
        const able = grade !== null && PRIVATE_OR_HIGHER.includes(grade);
        if (use.purpose === 'check-flight' && crew && able) sheet.limit('91.407(b)');
        else sheet.bar('91.407(b)');
      }
    }
    for (const test of work.testsOwed) {
      if (test === 'transponder-error') {
        // Nobody uses one that is out of use.
        if (outOfUse(aircraft, 'transponder')) continue;
        const inside = valueOf(use.transponderAirspace);
        if (inside === null) sheet.unknown('91.413(b)');
        if (inside === true) sheet.bar('91.413(b)');
        if (inside === false) sheet.limit('91.413(b)');
      } else if (use.rules === 'IFR') {
        const cite = test === 'static-leak' ? '91.411(a)(2)' : '91.411(a)(3)';
        const controlled = valueOf(use.controlledAirspace);
        if (controlled === null) sheet.unknown(cite);
        if (controlled === true) sheet.bar(cite);
        if (controlled === false) sheet.limit(cite);
      }
    }
  }
}

const PAPERS: Record<PaperKind, string> = {
  'airworthiness-certificate': '91.203(a)(1)',
  registration: '91.203(a)(2)',
  'flight-manual': '91.9(b)',
  'weight-and-balance': '91.9(b)',
};

/** 91.203 and 91.9(b): one of each kind aboard and good to the last day. A registration always ends: 47.40. */
function judgePapers(aircraft: AircraftFacts, use: UseOfAircraft, sheet: Sheet): void {
  for (const kind of Object.keys(PAPERS) as PaperKind[]) {
    const wrong = aircraft.papers
      .filter((paper) => paper.kind === kind)
      .map((paper): string | null => {
        if (valueOf(paper.aboard) !== true) return PAPERS[kind];
        const ends = kind === 'registration' ? '47.40(a)' : PAPERS[kind];
        if (!paper.validThrough.known) return ends;
        const until = paper.validThrough.value;
        const good = until === null ? kind !== 'registration' : lastDay(use) <= until;
        return good ? null : ends;
      });
    if (wrong.includes(null)) continue;
    if (wrong.length === 0) sheet.bar(PAPERS[kind]);
    for (const cite of wrong) sheet.bar(cite ?? '');
  }
}

/** What a permit stands in for when it names it: airworthiness and inspection, and nothing that nobody knows. */
const LIFTABLE =
  /^(91\.409\(|141\.39\(a\)\(3\)|39\.|91\.403\(|91\.7\(|91\.405\(|91\.205\(b\)|91\.213|mmel-category-)/;

/** 21.197, 21.199, 91.213(e). */
function judgePermit(aircraft: AircraftFacts, use: UseOfAircraft, sheet: Sheet): void {
  const permit = use.specialFlightPermit;
  if (permit === null) return;
  const names = ({ about }: Bar): boolean => {
    if (about.kind !== 'equipment') return permit.covers.includes(about.id);
    const writeUps = aircraft.discrepancies.filter(
      (d) => d.kind === 'inoperative' && d.equipmentId === about.id,
    );
    return writeUps.length > 0 && writeUps.every(({ id }) => permit.covers.includes(id));
  };
  const lifted = sheet.bars.filter((bar) => !bar.unknown && LIFTABLE.test(bar.cite) && names(bar));
  sheet.bars = sheet.bars.filter((bar) => !lifted.includes(bar));
  sheet.limit('21.199');
  if (permit.limits.length === 0) sheet.unknown('21.199');
  if (firstDay(use) < permit.goodFrom || lastDay(use) > permit.goodThrough) sheet.bar('21.199');
  if (use.from.ident !== permit.fromIdent || use.to.ident !== permit.toIdent) sheet.bar('21.199(a)');
  if (permit.used) sheet.bar('21.199(a)');
  if (permit.inspection === 'owed') sheet.bar('21.199(b)');
  if (!use.crewOnly.known) sheet.unknown('21.197(a)');
  else if (use.hire || use.purpose === 'student-solo' || !use.crewOnly.value) sheet.bar('21.197(a)');
}
