import { createHash } from 'node:crypto';

/** What `taken_in` keeps of a file. */
export const sha256Of = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');
