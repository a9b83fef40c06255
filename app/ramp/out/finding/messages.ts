import { type FindingDraft, type ObservationMade } from '@/lib/findings/compose-finding';
import { type ReportFindingInput } from '@/lib/findings/schema';
import { type NewOutgoing } from '../../_phone/shapes';

/** What the outbox takes for a finding. It goes after the start of its walkaround. */
export function findingMessage({ requestId, ...message }: ReportFindingInput, label: string): NewOutgoing {
  return {
    id: requestId,
    aircraftId: message.aircraftId,
    kind: 'finding',
    label,
    path: 'findings',
    message,
    photoId: null,
    after: message.walkaroundId === null ? [] : [message.walkaroundId],
  };
}

/** The same for an observation of a write-up that is there already. */
export function observationMessage(
  { requestId, ...message }: ObservationMade,
  aircraftId: string,
  label: string,
): NewOutgoing {
  return {
    id: requestId,
    aircraftId,
    kind: 'observation',
    label,
    path: 'observations',
    message,
    photoId: null,
    after: message.walkaroundId === null ? [] : [message.walkaroundId],
  };
}

/** Whether there is anything in a draft worth keeping, beyond what the address filled in. */
export function isTyped(draft: FindingDraft, start: FindingDraft): boolean {
  const { measurements: typed, ...answers } = draft;
  const { measurements: before, ...startAnswers } = start;
  const keys = new Set([...Object.keys(typed), ...Object.keys(before)]);
  return (
    Object.entries(answers).some(([name, answer]) => answer !== startAnswers[name as keyof typeof answers]) ||
    [...keys].some((key) => (typed[key] ?? '') !== (before[key] ?? ''))
  );
}
