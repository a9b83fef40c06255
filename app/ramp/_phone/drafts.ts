'use client';

import { inTab } from '../../_ui/in-tab';
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
export async function readDraft(key: string): Promise<KeptDraft | null> {
  const kept = await inOne(['drafts'], 'readonly', (at) => at.get('drafts', key));
  const slip = inTab((tab) => JSON.parse(tab.getItem(slipOf(key)) ?? 'null') as KeptDraft | null);
  return slip ?? kept ?? null;
}

/**
 * Keeps what is typed in place of what was. The tab has it before this returns, and until the database has it: a page
 * that is loaded again within a keystroke's writing loses nothing.
 */
export async function keepDraft(draft: KeptDraft): Promise<void> {
  const slip = JSON.stringify(draft);
  inTab((tab) => tab.setItem(slipOf(draft.key), slip));
  await inOne(['drafts'], 'readwrite', (at) => at.put('drafts', draft));
  // What was typed since has a newer slip, which its own writing takes away.
  if (inTab((tab) => tab.getItem(slipOf(draft.key))) === slip) dropSlip(draft.key);
}

/** Takes a draft away. Its photos stay: they belong to the message it became, or are dropped one by one. */
export async function dropDraft(key: string): Promise<void> {
  dropSlip(key);
  await inOne(['drafts'], 'readwrite', (at) => at.drop('drafts', key));
}

/** Takes away what the tab keeps of a draft beside the database: for whoever drops the draft in a transaction of theirs. */
export function dropSlip(key: string): void {
  inTab((tab) => tab.removeItem(slipOf(key)));
}

const slipOf = (key: string): string => `wheelchock/typed/${key}`;
