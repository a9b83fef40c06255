/**
 * 14 CFR 91.203 and 91.9: papers that must be aboard.
 *
 * - 91.203(a)(1): an appropriate and current airworthiness certificate.
 * - 91.203(a)(2): an effective registration certificate; how long it lasts is 47.40.
 * - 91.9(b): the approved flight manual (b)(1), or approved manual material, markings and placards (b)(2). Weight and
 *   balance data are read as part of that material: 91.9 does not name them.
 *
 * Not decided here: display of the airworthiness certificate (91.203(b)), Form 337 for a tank in the cabin (91.203(c)),
 * and whether what is aboard is the right edition, which a person has to look at.
 */
import { PAPER_KINDS, type AircraftFacts, type PaperFacts, type PaperKind } from '../aircraft';
import { dayInWords } from '../in-words';
import type { CiteId } from '../law';
import type { UseOfAircraft } from '../operations';
import { lastDayOf } from '../requirement-lines';
import { barsForMissing, type Line } from '../verdict';

interface PaperLaw {
  readonly name: string;
  readonly cite: CiteId;
  /** The paragraph that makes it run out, or null where a paper may be without an end. */
  readonly expiryCite: CiteId | null;
  readonly strictReading?: string;
}

const PAPER_LAW: Record<PaperKind, PaperLaw> = {
  'airworthiness-certificate': {
    name: 'Airworthiness certificate',
    cite: '14cfr91.203(a)(1)',
    expiryCite: null,
  },
  registration: { name: 'Registration', cite: '14cfr91.203(a)(2)', expiryCite: '14cfr47.40(a)' },
  'flight-manual': { name: 'Flight manual', cite: '14cfr91.9(b)', expiryCite: null },
  'weight-and-balance': {
    name: 'Weight and balance data',
    cite: '14cfr91.9(b)',
    expiryCite: null,
    strictReading:
      '91.9(b) does not name weight and balance; it is read as part of the approved manual material.',
  },
};

/**
 * Lines for all papers of {@link PAPER_KINDS}. A kind that is not on the list of papers bars, like one that is not
 * aboard. Where several papers of a kind are listed (old and new registration), one in order is enough.
 */
export function checkPapers(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  return PAPER_KINDS.flatMap((kind) => checkKind(kind, aircraft, use));
}

function checkKind(kind: PaperKind, aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const law = PAPER_LAW[kind];
  const judged = aircraft.papers
    .filter((paper) => paper.kind === kind)
    .map((paper) => checkPaper(paper, law, use));
  const inOrder = judged.find((line) => line.effect === 'supports');
  if (inOrder !== undefined) return [inOrder];
  if (judged.length > 0) return judged;
  const about = { kind: 'paper', id: `${aircraft.id}/${kind}`, label: law.name } as const;
  return [barsForMissing(law.cite, `whether the ${law.name.toLowerCase()} is aboard`, about)];
}

function checkPaper(paper: PaperFacts, law: PaperLaw, use: UseOfAircraft): Line {
  const about = { kind: 'paper', id: paper.id, label: law.name } as const;
  const expiryCite = law.expiryCite ?? law.cite;
  const { strictReading } = law;
  if (!paper.aboard.known) return barsForMissing(law.cite, paper.aboard.missing, about);
  if (!paper.aboard.value) {
    return { effect: 'bars', cite: law.cite, because: `${law.name} not aboard.`, about, strictReading };
  }
  if (!paper.validThrough.known) return barsForMissing(expiryCite, paper.validThrough.missing, about);

  const through = paper.validThrough.value;
  if (through === null) {
    return law.expiryCite === null
      ? { effect: 'supports', cite: law.cite, because: `${law.name} aboard.`, about, strictReading }
      : barsForMissing(law.expiryCite, `when the ${law.name.toLowerCase()} runs out`, about);
  }
  return lastDayOf(use) <= through
    ? {
        effect: 'supports',
        cite: law.cite,
        because: `${law.name} aboard, good through ${dayInWords(through)}.`,
        about,
      }
    : { effect: 'bars', cite: expiryCite, because: `${law.name} ran out ${dayInWords(through)}.`, about };
}
