/**
 * What people write holds more letters than a font does. A paper must lose none of them: a letter the font cannot draw is
 * printed as its Unicode number in brackets, so that it can be looked up. Right-to-left words are shaped by the font but
 * set one after another from the left.
 */

const INVISIBLE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cs}]/u;
const LINE_ENDS = /\r\n?|\u0085|\u2028|\u2029/g;

/** `[U+1F6E9]` for a letter that cannot be drawn. */
const numbered = (letter: string): string =>
  `[U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;

/** The text as it can be drawn: line ends as newlines, tabs as spaces, everything undrawable by its number. */
export function drawable(text: string, hasGlyph: (codePoint: number) => boolean): string {
  return [...text.replace(LINE_ENDS, '\n').replaceAll('\t', '    ')]
    .map((letter) => {
      if (letter === '\n' || letter === ' ') return letter;
      const drawn = !INVISIBLE.test(letter) && hasGlyph(letter.codePointAt(0) ?? 0);
      return drawn ? letter : numbered(letter);
    })
    .join('');
}
