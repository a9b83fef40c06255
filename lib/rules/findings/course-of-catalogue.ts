import { known } from '../facts';
import type { Line } from '../verdict';
import { asks91_213, undecided, type Course } from './course';
import type { CatalogueFinding } from './finding';
import { judgeMeasured, type Measured, type StoredLimit } from './measured-against-limits';

/** Where the course comes from, shown beside the verdict. */
function sourceNote(finding: CatalogueFinding): Line {
  return {
    effect: 'notes',
    cite: finding.cite ?? (finding.status === 'design' ? 'house-caution' : 'trade-practice'),
    because: `Where this comes from: ${finding.source}.`,
  };
}

/**
 * The course of a catalogue finding: what was measured decides first; without a measurement the catalogue's proposal
 * stands. Nothing the catalogue grounds comes out lower unless every needed measurement is within a stored limit.
 */
export function courseOfCatalogue(
  finding: CatalogueFinding,
  input: { readonly measurements: Measured; readonly limits: readonly StoredLimit[] },
): Course {
  const measured = judgeMeasured(finding, input.measurements, input.limits);
  const settledBy = finding.settledBy;
  const course = ((): Course => {
    switch (measured.result) {
      case 'outside':
        return {
          severity: known('grounding'),
          settledBy: settledBy === 'anyone' ? 'mechanic' : settledBy,
          reasons: [],
        };
      case 'undecided':
        return undecided(
          measured.missing ?? 'what was measured',
          settledBy === 'anyone' ? 'mechanic' : settledBy,
        );
      case 'within':
        return {
          severity: known('watch'),
          settledBy: settledBy === 'anyone' ? 'mechanic' : settledBy,
          reasons: [
            {
              effect: 'bars',
              cite: '14cfr91.405(a)',
              because:
                settledBy === 'pilot-servicing'
                  ? 'Within the stored limit. Open until the servicing is recorded or a mechanic has found it good.'
                  : 'Within the stored limit, but a mechanic has still to find so.',
            },
          ],
        };
      case 'none':
        return unmeasured(finding);
    }
  })();
  return { ...course, reasons: [...course.reasons, ...measured.lines, sourceNote(finding)] };
}

function unmeasured(finding: CatalogueFinding): Course {
  const { settledBy } = finding;
  switch (finding.proposed) {
    case 'ground':
      return {
        severity: known('grounding'),
        settledBy,
        reasons: [
          {
            effect: 'bars',
            cite: '14cfr91.405(a)',
            because: `${finding.title}: no flight until it is put right and signed. ${finding.usualAction}`,
          },
        ],
      };
    case 'hold':
      return undecided(`what a mechanic finds on looking (${finding.title.toLowerCase()})`, settledBy);
    case 'ask-91.213':
      return { severity: known('limiting'), settledBy, reasons: [asks91_213(finding.usualAction)] };
    case 'service':
      return {
        severity: known('grounding'),
        settledBy,
        reasons: [
          {
            effect: 'bars',
            cite: '14cfr91.7(b)',
            because: `${finding.title}: no flight until serviced and recorded. ${finding.usualAction}`,
          },
        ],
      };
    case 'note':
      return {
        severity: known('note'),
        settledBy,
        reasons: [
          {
            effect: 'notes',
            cite: '14cfr91.7(b)',
            because: `${finding.usualAction} The pilot in command judges the condition.`,
          },
        ],
      };
  }
}
