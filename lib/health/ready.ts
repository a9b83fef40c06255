import { missingMigrations } from '../db/needed-migrations';
import { log } from '../log';
import { probePhotoStore } from '../photos/chosen-store';
import { isDraining } from '../shutdown';

/** What a server needs to take requests. Words for whoever runs it; they say nothing about anybody. */
export type Part = 'draining' | 'database' | 'migrations' | 'photos';

export interface Readiness {
  readonly ready: boolean;
  /** What keeps it from being ready; empty when nothing does. */
  readonly parts: readonly Part[];
}

/** Whoever asks in between gets the last answer: this may be asked by anybody, and must not cost much. */
const KEPT_MS = 2000;
const PATIENCE_MS = 3000;

interface Asked {
  readonly at: number;
  readonly parts: Promise<readonly Part[]>;
}
let asked: Asked | undefined;
let saidNotReady = '';

/** Whether this server can take requests. Draining is told at once, the rest looked at every two seconds at most. */
export async function readiness(): Promise<Readiness> {
  if (isDraining()) return { ready: false, parts: ['draining'] };
  const now = Date.now();
  if (!asked || now - asked.at > KEPT_MS) asked = { at: now, parts: look() };
  const parts = await asked.parts;
  return { ready: parts.length === 0, parts };
}

/** For tests: the next question is asked anew. */
export const forgetReadiness = (): void => {
  asked = undefined;
};

async function look(): Promise<readonly Part[]> {
  const [database, photos] = await Promise.all([databaseParts(), photoParts()]);
  const parts = [...database, ...photos];
  const why = parts.join('.');
  // Once for each change, not for every question.
  if (why !== saidNotReady && why !== '') log.warn('not ready', { why });
  saidNotReady = why;
  return parts;
}

async function databaseParts(): Promise<Part[]> {
  try {
    return (await soon(missingMigrations())).length === 0 ? [] : ['migrations'];
  } catch (error) {
    // A database before the first migration has no list of them.
    return isMissingTable(error) ? ['migrations'] : ['database'];
  }
}

async function photoParts(): Promise<Part[]> {
  try {
    await soon(probePhotoStore());
    return [];
  } catch {
    return ['photos'];
  }
}

/** SQLSTATE 42P01, undefined table; 42501, a right that the migrations give. */
const isMissingTable = (error: unknown): boolean =>
  /42P01|42501|does not exist|permission denied for table/.test(
    `${(error as { message?: string }).message ?? ''} ${JSON.stringify((error as { meta?: unknown }).meta ?? {})}`,
  );

function soon<T>(work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('No answer in time.')), PATIENCE_MS);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
