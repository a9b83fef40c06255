import { FINDING_CATALOGUE } from '../rules/findings/catalogue';
import { measurementOf } from '../rules/findings/measurements';
import { LAW, type LawEntry } from '../rules/law';
import { citeInWords, DOUBTS } from '../rules/law/in-words';
import type { PackFinding, RampPack } from './pack';

/** The usual findings with what a form asks about each. */
export const PACK_FINDINGS: readonly PackFinding[] = FINDING_CATALOGUE.map((finding) => ({
  key: finding.key,
  title: finding.title,
  jasc: finding.jasc,
  kind: finding.kind,
  usualAction: finding.usualAction,
  station: finding.station,
  alsoAt: finding.alsoAt,
  equipmentFunction: finding.equipmentFunction,
  choices: finding.choices,
  measurements: finding.measurements.flatMap(({ key, role }) => {
    const measurement = measurementOf(key);
    return measurement
      ? [{ key, label: measurement.label, unit: measurement.unit, needed: role === 'needed' }]
      : [];
  }),
}));

/** The paragraphs that are not printed as usual: an own label, or a doubt about the text. */
export const PACK_PARAGRAPHS: RampPack['paragraphs'] = Object.fromEntries(
  Object.entries<LawEntry>(LAW)
    .filter(([cite, { label, status }]) => label !== citeInWords(cite) || status !== 'checked')
    .map(([cite, { label, status }]) => [cite, { label, doubt: DOUBTS[status] }]),
);
