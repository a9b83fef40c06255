/**
 * How the library's rules are written here. A rule is data: conditions over plain facts, and what they do to the outcome under
 * which paragraph. All facts of one run are one flat object, `given`, reached by plain keys: the library's own way to read facts
 * (JSONPath) is slower, and the comparison is to be with the library at its best.
 */
import { Engine, type RuleProperties, type TopLevelCondition } from 'json-rules-engine';
import type { Effect } from '@/lib/rules/verdict';

export type Condition = Extract<TopLevelCondition, { all: unknown }>['all'][number];
export type Given = Readonly<Record<string, unknown>>;

/** What a rule that holds says. `cite` may begin with @: then it stands for paragraphs that the facts carry. */
export interface Said {
  readonly effect: Effect;
  readonly cite: string;
}

/** The value of another fact, to compare with. */
export const fact = (path: string): unknown => ({ fact: 'given', path });

export const is = (path: string, operator: string, value: unknown): Condition => ({
  fact: 'given',
  path,
  operator,
  value,
});
export const eq = (path: string, value: unknown): Condition => is(path, 'equal', value);
export const ne = (path: string, value: unknown): Condition => is(path, 'notEqual', value);
export const all = (...conditions: Condition[]): Condition => ({ all: conditions });
export const any = (...conditions: Condition[]): Condition => ({ any: conditions });

/** Set by a rule of higher priority in the same run. */
export const flagged = (flag: string): Condition => ({ fact: flag, operator: 'equal', value: true });
export const unflagged = (flag: string): Condition => ({ fact: flag, operator: 'notEqual', value: true });

/** Higher priorities are asked first, and only later ones see the flags they set. */
export const PRIORITY = { first: 30, second: 20, usual: 10, last: 1 } as const;

interface Options {
  readonly flag?: string;
  readonly priority?: number;
}

/** A rule that says something. */
export const rule = (
  effect: Effect,
  cite: string,
  conditions: readonly Condition[],
  options: Options = {},
): RuleProperties => event(effect, { cite }, conditions, options);

/** A rule that only lets later rules know. */
export const flagWhen = (flag: string, conditions: readonly Condition[], priority: number): RuleProperties =>
  event('flag', {}, conditions, { flag, priority });

/** A rule whose event another run reads. */
export const event = (
  type: string,
  params: Record<string, unknown>,
  conditions: readonly Condition[],
  { flag, priority = PRIORITY.usual }: Options = {},
): RuleProperties => ({
  conditions: { all: [...conditions] },
  event: { type, params },
  priority,
  ...(flag === undefined ? {} : { onSuccess: (_event, almanac) => void almanac.addFact(flag, true) }),
});

export const engineOf = (rules: readonly RuleProperties[]): Engine =>
  new Engine([...rules], {
    allowUndefinedFacts: true,
    pathResolver: (value, path) => (value as Given)[path],
  });

export interface Happened {
  readonly type: string;
  readonly params?: Record<string, unknown>;
}

/** The events of the rules that held. */
export async function run(engine: Engine, given: Given): Promise<readonly Happened[]> {
  const { events } = await engine.run({ given });
  return events;
}

const EFFECTS: readonly string[] = ['bars', 'limits', 'notes', 'supports'];

/** What the rules that held say about the outcome. */
export const saidBy = (events: readonly Happened[]): Said[] =>
  events.flatMap(({ type, params }) =>
    EFFECTS.includes(type) ? [{ effect: type as Effect, cite: String(params?.cite) }] : [],
  );
