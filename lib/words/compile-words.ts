/**
 * The part of ICU MessageFormat that our messages use: `{name}`, `{n, plural, one {# flight} other {# flights}}` (also
 * `=0 {…}`) and `{who, select, pilot {…} other {…}}`. A whole parser would weigh more than all the rest of the words' code on
 * the phone. No quoting: a message never needs a brace of its own. tests/rules/words-compiler.test.ts holds this against
 * Lingui's own compiler.
 */
export type Token =
  | string
  | readonly [name: string]
  | readonly [name: string, kind: string, arms: Readonly<Record<string, Token[]>>];

const kept = new Map<string, string | Token[]>();

export function compileWords(message: string): string | Token[] {
  if (!message.includes('{')) return message;
  const before = kept.get(message);
  if (before) return before;
  const made = new Reader(message).all();
  kept.set(message, made);
  return made;
}

class Reader {
  private at = 0;
  constructor(private readonly text: string) {}

  all(): Token[] {
    const tokens = this.tokens(false);
    if (this.at < this.text.length) throw this.wrong();
    return tokens;
  }

  /** Up to the closing brace. Inside a plural `#` is the number. */
  private tokens(counts: boolean): Token[] {
    const tokens: Token[] = [];
    for (;;) {
      const plain = this.take(counts ? /[^{}#]+/y : /[^{}]+/y);
      if (plain) tokens.push(plain[0]);
      else if (counts && this.take(/#/y)) tokens.push('#');
      else if (this.take(/\{/y)) tokens.push(this.argument());
      else return tokens;
    }
  }

  private argument(): Token {
    const head = this.take(/\s*(\w+)\s*(?:,\s*(plural|select)\s*,\s*)?/y);
    const [, name, kind] = head ?? [];
    if (name === undefined) throw this.wrong();
    const arms: Record<string, Token[]> = {};
    if (kind !== undefined) {
      for (;;) {
        const arm = this.take(/=?(\w+)\s*\{/y)?.[1];
        if (arm === undefined) break;
        arms[arm] = this.tokens(kind === 'plural');
        if (!this.take(/\}\s*/y)) throw this.wrong();
      }
    }
    if (!this.take(/\}/y)) throw this.wrong();
    return kind === undefined ? [name] : [name, kind, arms];
  }

  private take(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found) this.at = pattern.lastIndex;
    return found;
  }

  private wrong(): Error {
    return new Error(`Not a message, at ${this.at}: ${this.text}`);
  }
}
