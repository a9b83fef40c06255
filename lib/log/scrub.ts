const WITHHELD = '[withheld]';

/** Longest message kept. */
const LONGEST = 400;

/**
 * The words of an error without what somebody wrote: databases and parsers quote the value they choke on.
 *
 * - Of several lines the first and the last: what stands between is what a query was called with.
 * - `Key (email)=(…)` and `Failing row contains (…)` keep the columns' names and lose the values.
 * - What follows the first quotation mark goes, to the end of the line: a value may hold marks of its own, or be cut off.
 *   Names of columns, tables and the like, which stand after such a word, stay.
 * - Addresses of people, programs and machines go, and so does what looks like a secret.
 */
export function scrub(message: string): string {
  const lines = message
    .split(/[\r\n\u2028\u2029]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const kept = lines.length > 1 ? [lines[0], lines.at(-1)] : lines;
  return kept
    .map((line) => scrubLine(line ?? ''))
    .join(' … ')
    .slice(0, LONGEST);
}

function scrubLine(line: string): string {
  const names: string[] = [];
  const keep = (text: string) => {
    names.push(text);
    return `\u0001${names.length - 1}\u0002`;
  };
  return (
    line
      // The marks used below must not come from outside.
      .replace(/[\u0000-\u001f]/g, ' ')
      .replace(
        /\b(Failing row contains|DETAIL:(?!\s*Key \()|PARAMETERS?:|parameters?:).*$/i,
        (_, what: string) => `${what} ${WITHHELD}`,
      )
      .replace(
        /(\([\w, "]{1,200}\)\s*=\s*)\(.*$/,
        (_, columns: string) => `${columns.replace(/"/g, '')}(${WITHHELD})`,
      )
      .replace(NAMED, (_, before: string, quoted: string) => `${before}${keep(quoted)}`)
      .replace(CALL, (quoted) => keep(quoted))
      .replace(UUID, (id) => keep(id))
      .replace(QUOTED, WITHHELD)
      .replace(/[a-z][a-z0-9+.-]*:\/\/\S+/gi, WITHHELD)
      .replace(/\S+@\S+/g, WITHHELD)
      .replace(/\b\d{1,3}(?:\.\d{1,3}){3}\b|\[?(?:[0-9a-f]{0,4}:){3,7}[0-9a-f]{0,4}\]?/gi, WITHHELD)
      .replace(/\?\S*=\S*/g, WITHHELD)
      .replace(/[\w+/=~.-]{24,}/g, (text) => (/^[a-z_.]+$/i.test(text) ? text : WITHHELD))
      // Telephone numbers and the like.
      .replace(/\+?\d[\d ()-]{7,}\d/g, WITHHELD)
      .replace(/\u0001(\d+)\u0002/g, (_, index: string) => names[Number(index)] ?? WITHHELD)
  );
}

const UUID = /\b[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\b/g;
/** Quotation marks of a name of the program's or the database's own, after a word that says so. */
const NAMED =
  /\b((?:column|columns|relation|constraint|table|role|database|function|schema|index|reading|setting|property|argument|policy|trigger|sequence|module|package)\s+)(["'`][A-Za-z_$][\w$.-]{0,62}["'`])/gi;
const CALL = /`[a-z][\w$.]{0,80}\(\)`/g;
/** From the first mark to the end of the line; an apostrophe within a word is none. */
const QUOTED = /(?:["`“”«»„‘]|(?<![A-Za-z])'|'(?![A-Za-z])).*$/;
