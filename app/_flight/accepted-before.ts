import { said } from '@/lib/words/said';
import { type ReleaseStanding } from '@/lib/releases/history';

/** What tells whether an acceptance has been overtaken by a warning. */
export type AcceptedStanding = Pick<ReleaseStanding, 'state' | 'acceptedBeforeWarning'>;

/** The pilot in command accepted, and was warned since: what was signed for is no longer all there is. */
export const isAcceptedBefore = ({ state, acceptedBeforeWarning }: AcceptedStanding): boolean =>
  acceptedBeforeWarning !== null && state.name === 'released';

/** Told to the pilot and at the desk in the same words. */
export const ACCEPTED_BEFORE = said('Accepted before the newest warning: read it and accept again.');
