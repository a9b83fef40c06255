import { type KeptWalk, type NewOutgoing } from './shapes';

/** The message that says a walkaround has begun. */
export const startOf = (walk: KeptWalk, registration: string): NewOutgoing => ({
  id: walk.id,
  aircraftId: walk.aircraftId,
  kind: 'walk-start',
  label: `${registration}: walkaround begun`,
  path: 'walkarounds',
  message: { aircraftId: walk.aircraftId, startedAt: walk.startedAt, planId: walk.list.id },
  photoId: null,
  after: [],
});
