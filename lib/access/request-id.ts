import { z } from 'zod';
import { said } from '../words/said';

/** Every write names itself: a UUID made by the client before the first try. */
export const requestId = z.uuid({ error: said('This request has no valid number of its own.') });
