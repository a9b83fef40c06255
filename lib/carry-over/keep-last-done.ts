import type { Context } from '../access/service';
import { keepPaperRecord } from '../inspections/paper-record';
import type { RequirementRow } from '../inspections/requirement';
import { vouch } from '../records/vouch';
import type { LastDone } from './last-done-columns';
import { recordOf } from './last-done-rows';
import { LAST_DONE_STATEMENT } from './statements';

/** One record of before, kept with who vouches for it. */
export const keepLastDone = (
  context: Context,
  requirement: RequirementRow,
  written: LastDone,
  takenInId: string | null,
) => {
  const { tx, operatorId, actor, now } = context;
  const { aircraft } = requirement;
  return keepPaperRecord(
    context,
    requirement,
    recordOf(written),
    { what: 'carried-over-record', statement: LAST_DONE_STATEMENT },
    {
      takenInId,
      vouches: (complianceId, record) =>
        vouch(tx, {
          operatorId,
          actor,
          now,
          zone: aircraft.base.zone,
          subjectKind: 'compliance',
          subjectId: complianceId,
          aircraftId: aircraft.id,
          source: written.document,
          statement: LAST_DONE_STATEMENT,
          content: record,
        }),
    },
  );
};
