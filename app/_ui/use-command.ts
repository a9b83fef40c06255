'use client';

import { useWords } from '#words';
import { zodResolver } from '@hookform/resolvers/zod';
import { unstable_rethrow } from 'next/navigation';
import { useRef, useState, type FormEvent } from 'react';
import {
  useForm,
  type DefaultValues,
  type FieldValues,
  type Path,
  type Resolver,
  type UseFormReturn,
} from 'react-hook-form';
import { type z } from 'zod';
import { type Problem, type Result } from '@/lib/problems';
import { newRequestId } from './request-id';

/** Why nothing came back: the request never arrived, or the answer could not be read. */
export type Unsent = 'no-connection' | 'no-answer';

export interface CommandHandle<Values extends FieldValues> {
  readonly form: UseFormReturn<Values>;
  readonly submit: (event?: FormEvent) => Promise<void>;
  readonly pending: boolean;
  readonly problem: Problem | null;
  readonly unsent: Unsent | null;
}

interface CommandOptions<Values extends FieldValues, Value> {
  /** The server action. It gets the values as typed plus `requestId`, and returns a Result, never throws. */
  readonly action: (input: Values & { requestId: string }) => Promise<Result<Value>>;
  readonly start: Values;
  /** Checked in the browser before sending; the server checks again. Must accept the values as typed. */
  readonly schema?: z.ZodType;
  readonly onDone?: (value: Value) => void;
  /** After success: `start` again (a form that stays open for the next one) or as typed. */
  readonly afterDone?: 'start-again' | 'keep';
}

/**
 * One form, one command. The request keeps one number from the first try to the last, so that a lost answer and a
 * second press write once. Whatever goes wrong, everything typed stays: the form is never handed to `action=`, which
 * would empty it.
 */
export function useCommand<Values extends FieldValues, Value>(
  options: CommandOptions<Values, Value>,
): CommandHandle<Values> {
  const { action, start, schema, onDone, afterDone = 'start-again' } = options;
  const t = useWords();
  const draft = useRef<string | null>(null);
  const busy = useRef(false);
  const [pending, setPending] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [unsent, setUnsent] = useState<Unsent | null>(null);
  const form = useForm<Values>({
    defaultValues: start as DefaultValues<Values>,
    ...(schema ? { resolver: asTyped<Values>(schema) } : {}),
  });

  async function send(values: Values): Promise<void> {
    draft.current ??= newRequestId();
    try {
      const result = await action({ ...values, requestId: draft.current });
      if (!result.ok) {
        refuse(result.problem);
        return;
      }
      draft.current = null;
      if (afterDone === 'start-again') form.reset(start as DefaultValues<Values>);
      onDone?.(result.value);
    } catch (error) {
      unstable_rethrow(error);
      console.error(error);
      setUnsent(navigator.onLine && !(error instanceof TypeError) ? 'no-answer' : 'no-connection');
    }
  }

  function refuse(refusal: Problem): void {
    // The number has been used for something else; the next press is a new request, and the notice says so.
    if (refusal.code === 'conflict') draft.current = null;
    for (const [path, messages] of Object.entries(refusal.fields ?? {})) {
      if (path)
        form.setError(path as Path<Values>, {
          type: 'server',
          message: messages.map((message) => t(message)).join(' '),
        });
    }
    setProblem(refusal);
  }

  async function submit(event?: FormEvent): Promise<void> {
    event?.preventDefault();
    if (busy.current) return;
    busy.current = true;
    setPending(true);
    setProblem(null);
    setUnsent(null);
    // Messages from the last answer would otherwise hold the form back, those of unshown fields for ever.
    form.clearErrors();
    try {
      await form.handleSubmit(send)(event);
    } finally {
      busy.current = false;
      setPending(false);
    }
  }

  return { form, submit, pending, problem, unsent };
}

/** Validates as the service will, but passes on what was typed: the service does its own transforming. */
function asTyped<Values extends FieldValues>(schema: z.ZodType): Resolver<Values> {
  const check = zodResolver(schema as never, undefined, { raw: true }) as unknown as Resolver<Values>;
  // Any valid number will do here; the real one is put in when it is sent.
  return (values, context, settings) => check({ ...values, requestId: newRequestId() }, context, settings);
}
