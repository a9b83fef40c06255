/** One paragraph we lean on. */
export interface LawEntry {
  /** How people write it: "14 CFR 91.213(d)(2)(iii)". */
  readonly label: string;
  /** What it says, in our own words, one or two sentences. */
  readonly gist: string;
  /**
   * `checked`: somebody read a copy of the text (named). `memory`: nobody has; the doubt is shown beside the rule.
   * `reading`: our own choice or the trade's habit, no text to read.
   */
  readonly status: 'checked' | 'memory' | 'reading';
  /** Which copy was read, or why it is in doubt. */
  readonly source: string;
}
