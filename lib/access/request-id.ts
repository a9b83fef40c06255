import { z } from 'zod';

/** Every write names itself: a UUID made by the client before the first try. */
export const requestId = z.uuid({ error: 'This request has no valid number of its own.' });
