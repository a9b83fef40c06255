'use client';

import { inOne } from './database';
import { type KeptDraft } from './shapes';

/** A draft's key: one per person, aircraft, station and item. */
export const draftKey = (
  personId: string,
  aircraftId: string,
  station: string,
  itemKey: string | null,
): string => `${personId}/${aircraftId}/${station}/${itemKey ?? ''}`;

/** What was typed under a key, or null. */
export const readDraft = async (key: string): Promise<KeptDraft | null> =>
  (await inOne(['drafts'], 'readonly', (at) => at.get('drafts', key))) ?? null;

/** Keeps what is typed in place of what was. */
export const keepDraft = (draft: KeptDraft): Promise<void> =>
  inOne(['drafts'], 'readwrite', (at) => at.put('drafts', draft));

/** Takes a draft away. Its photos stay: they belong to the message it became, or are dropped one by one. */
export const dropDraft = (key: string): Promise<void> =>
  inOne(['drafts'], 'readwrite', (at) => at.drop('drafts', key));
