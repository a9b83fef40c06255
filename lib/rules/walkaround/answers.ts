/**
 * What was answered on one walkaround. Item key to answer, placard to answer. An item without an answer was not looked
 * at: never silently good. Readings and samples are kept in the order taken: a second sample never replaces the first.
 */
export interface WalkAnswers {
  readonly items: Readonly<Record<string, ItemAnswer>>;
  /** By placard id. */
  readonly placards: Readonly<Record<string, 'there' | 'missing'>>;
}

export interface ItemAnswer {
  /** For something to look at; for numbers and samples the readings speak. Null: not answered. */
  readonly looked: 'good' | 'finding' | null;
  readonly readings: readonly Reading[];
  readonly samples: readonly Sample[];
}

export interface Reading {
  /** Whole number of the smallest unit of the item's measurement. */
  readonly value: number;
  readonly at: string;
  /** Taken back as mistyped, by whoever typed it. It stays on record and counts no more. */
  readonly struck: boolean;
}

export const SAMPLE_RESULTS = ['clean', 'water', 'sediment', 'wrong-fuel'] as const;
export type SampleResult = (typeof SAMPLE_RESULTS)[number];

export interface Sample {
  readonly result: SampleResult;
  readonly at: string;
}

export const NO_ANSWER: ItemAnswer = { looked: null, readings: [], samples: [] };

export type StationAnswer = 'good' | 'finding' | 'not-looked-at';
