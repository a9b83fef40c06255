'use client';

import { type FieldValues } from 'react-hook-form';
import { z } from 'zod';
import { type Result } from '@/lib/problems';
import { useCommand, type CommandHandle } from '../../_ui/use-command';
import { useSaid } from '../acts';

interface ActOptions<Values extends FieldValues> {
  readonly action: (input: unknown) => Promise<Result<unknown>>;
  /** The service's own schema; the browser asks it first, the server again. */
  readonly schema: z.ZodType;
  /** What was typed, turned into the service's input: the ids it is about, and answers in its own types. */
  readonly input: (typed: Values) => object;
  readonly start: Values;
  /** Said when it is done. */
  readonly done: string;
  readonly afterDone?: 'start-again' | 'keep';
}

/** One act on the bench: a form whose typed values become the service's input, sent through its one door. */
export function useAct<Values extends FieldValues>(options: ActOptions<Values>): CommandHandle<Values> {
  const { action, schema, input, start, done, afterDone } = options;
  const said = useSaid();
  const asInput = (typed: Values) => ({ ...input(typed), requestId: typed.requestId as unknown });
  return useCommand<Values, unknown>({
    action: (typed) => action(asInput(typed)),
    schema: z.preprocess((typed) => asInput(typed as Values), schema),
    start,
    onDone: () => said(done),
    afterDone,
  });
}
