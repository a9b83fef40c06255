import { command } from '../access/service';
import { requireRequirement } from '../inspections/requirement';
import { inColumns } from './columns-of-record';
import { keepLastDone } from './keep-last-done';
import { carryOverLastDoneInput } from './schema';

/**
 * When an inspection or test was last done, from the record of before; signed by whoever vouches for that record. The same
 * questions as for papers that come from another shop (`requirement.record`), and one more answer: not known who approved it
 * was authorized, which bars.
 */
export const carryOverLastDone = command({
  verb: 'last-done.carry-over',
  input: carryOverLastDoneInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const requirement = await requireRequirement(context.tx, context.operatorId, input.requirementId);
    const { aircraft } = requirement;
    try {
      const kept = await keepLastDone(context, requirement, input, null);
      return {
        value: { complianceId: kept.complianceId },
        audit: {
          subjectKind: 'requirement',
          subjectId: requirement.id,
          detail: {
            aircraft: aircraft.registration,
            requirement: requirement.name,
            doneOn: input.done_on,
            carriedOver: true,
            document: input.document,
            hashes: kept.hashes,
          },
        },
      };
    } catch (error) {
      throw inColumns(error);
    }
  },
});
