import { command } from '../access/service';
import { keepPaperRecord } from './paper-record';
import { requireRequirement } from './requirement';
import { recordRequirementInput } from './requirement-schema';

/**
 * Something due was done by another shop, and its papers are here: whoever enters them signs for having copied them truly,
 * not for the work. Says who approved it and whether that person was authorized. May take the place of a wrong record. An
 * annual or 100-hour entered so still owes what became of each deferred item (91.405(c)).
 */
export const recordRequirement = command({
  verb: 'requirement.record',
  input: recordRequirementInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const requirement = await requireRequirement(context.tx, context.operatorId, input.requirementId);
    const kept = await keepPaperRecord(context, requirement, input, {
      what: 'requirement-record',
      statement: RECORD_STATEMENT,
    });
    const [hash] = kept.hashes;
    return {
      value: { complianceId: kept.complianceId, hash },
      audit: {
        subjectKind: 'requirement',
        subjectId: requirement.id,
        detail: {
          aircraft: requirement.aircraft.registration,
          requirement: requirement.name,
          doneOn: input.doneOn,
          hash,
        },
      },
    };
  },
});

/** What is signed by whoever copies a record from papers. */
export const RECORD_STATEMENT =
  'I have seen the papers named here, and this is what they say. I do not approve the work by this.';
