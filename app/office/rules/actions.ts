'use server';

import { revalidatePath } from 'next/cache';
import { signedInRef } from '@/app/_session/actor-ref';
import { changeOperator } from '@/lib/access/account/change-operator';
import { endHouseRule } from '@/lib/house-rules/end-house-rule';
import { composeRule, houseRuleAsTyped } from '@/lib/house-rules/form';
import { previewHouseRule, type HousePreview } from '@/lib/house-rules/preview-house-rule';
import { setHouseRule } from '@/lib/house-rules/set-house-rule';
import { PROBLEMS, type Problem, type Result } from '@/lib/problems';

/** Of which rule it is the next version, as the writer saw it; null for a new one. */
export type NextOf = { ruleId: string; seenVersion: number } | null;

export async function saveRule(input: unknown, of: NextOf): Promise<Result<{ ruleId: string }>> {
  const typed = houseRuleAsTyped.loose().safeParse(input);
  if (!typed.success) return { ok: false, problem: { code: 'invalid', say: PROBLEMS.invalid.say } };
  const composed = composeRule(typed.data);
  if (!composed.ok) return refused(composed.fields);
  const { setting, reach } = composed;
  const { why, requestId } = typed.data;
  const result = await setHouseRule(await signedInRef(), { requestId, of, setting, reach, why });
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export async function endRule(input: unknown) {
  const result = await endHouseRule(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export async function previewRule(input: unknown, ruleId: string | null): Promise<Result<HousePreview>> {
  const typed = houseRuleAsTyped.loose().safeParse(input);
  if (!typed.success) return { ok: false, problem: { code: 'invalid', say: PROBLEMS.invalid.say } };
  const composed = composeRule(typed.data);
  if (!composed.ok) return refused(composed.fields);
  const { setting, reach } = composed;
  return previewHouseRule(await signedInRef(), { ruleId, setting, reach });
}

export async function saveUnits(input: unknown) {
  const result = await changeOperator(await signedInRef(), input);
  if (result.ok) revalidatePath('/', 'layout');
  return result;
}

export const previewEnd = async (ruleId: string): Promise<Result<HousePreview>> =>
  previewHouseRule(await signedInRef(), { ruleId, setting: null, reach: null });

function refused(fields: Record<string, string[]>): { ok: false; problem: Problem } {
  return { ok: false, problem: { code: 'invalid', say: PROBLEMS.invalid.say, fields } };
}
