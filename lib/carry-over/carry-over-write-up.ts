import { command } from '../access/service';
import { Refusal } from '../problems';
import { aircraftOfPapers } from './aircraft-of-paper';
import { keepWriteUp } from './keep-write-up';
import { carryOverWriteUpInput } from './schema';
import { writeUpOnPaper, type FaultOnPaper } from './write-up-on-paper';
import { said } from '../words/said';

/** An open write-up from before, with its deferral if one stands on paper; signed by whoever vouches for the document. */
export const carryOverWriteUp = command({
  verb: 'write-up.carry-over',
  input: carryOverWriteUpInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, now } = context;
    const [aircraft] = await aircraftOfPapers(tx, operatorId, now, input.aircraftId);
    if (!aircraft) throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const read = writeUpOnPaper(input, aircraft);
    if (!read.ok) throw new Refusal('invalid', { fields: fieldsOf(read.faults) });
    const { hashes, ...value } = await keepWriteUp(context, aircraft, read.value, null);
    return {
      value: { ...value, deferral: value.deferral && { ...value.deferral, hashes: undefined } },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: value.discrepancyId,
        detail: {
          number: value.number,
          aircraft: aircraft.registration,
          title: value.title,
          carriedOver: true,
          document: input.document,
          deferralId: value.deferral?.deferralId ?? null,
          hashes,
        },
      },
    };
  },
});

export function fieldsOf(faults: readonly FaultOnPaper[]): Record<string, string[]> {
  const fields: Record<string, string[]> = {};
  for (const { field, message } of faults) (fields[field] ??= []).push(message);
  return fields;
}
