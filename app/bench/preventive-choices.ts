import { PREVENTIVE_ITEMS } from '@/lib/rules/part-43/43-appendix-a-preventive-maintenance';

/** An item of part 43 Appendix A(c) as a choice. Made on the server: the text of the law stays out of the browser's load. */
export interface PreventiveChoice {
  readonly value: string;
  readonly label: string;
}

/** The 31 items, in order. */
export const PREVENTIVE_CHOICES: readonly PreventiveChoice[] = PREVENTIVE_ITEMS.map(({ item, task }) => ({
  value: String(item),
  label: `(${item}) ${task}`,
}));
