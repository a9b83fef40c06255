import { clockInWords, dayInWords } from '../rules/in-words';
import { localDate } from '../rules/months';
import type { LetterText } from '../notices/give-notices';
import { linkPath, TOKEN_PLACE } from './link-token';

export type LinkKind = 'invitation' | 'password-reset';

interface LinkTidings {
  readonly kind: LinkKind;
  readonly operatorName: string;
  /** Null: the person asked for it at the sign-in page. */
  readonly byName: string | null;
  /** ISO instant, and the zone to tell it in. */
  readonly expiresAt: string;
  readonly zone: string;
  /** Where this server is reached. */
  readonly address: string;
}

const oneLine = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ').trim();

/**
 * Subject and text of the letter with a link. The token itself is put in when it is sent: until then it is kept sealed,
 * beside the letter and not in it.
 */
export function writeLinkLetter(tidings: LinkTidings): LetterText {
  const { kind, byName, expiresAt, zone, address } = tidings;
  const school = oneLine(tidings.operatorName);
  const until = `${dayInWords(localDate(expiresAt, zone))}, ${clockInWords(expiresAt, zone)} (${zone})`;
  const link = new URL('/join', address).href.replace(/\/join$/, linkPath(TOKEN_PLACE));
  const why =
    kind === 'invitation'
      ? `${oneLine(byName ?? school)} has entered you at ${school}. Choose a password and you can sign in.`
      : byName === null
        ? `Somebody, most likely you, asked for a new password at ${school}.`
        : `${oneLine(byName)} sends you this to choose a new password at ${school}.`;
  const body = [
    why,
    `Open this address: ${link}`,
    `It works once, until ${until}. Whoever has it can choose your password: pass it on to nobody.`,
    kind === 'invitation'
      ? 'If you do not know the school, do nothing.'
      : 'If you did not want this, do nothing: your password stays as it is.',
    `-- \nWheelchock wrote this by itself for ${school}. Nobody reads an answer to it.`,
  ].join('\n\n');
  const subject = kind === 'invitation' ? `Invitation to ${school}` : `New password at ${school}`;
  return { subject: oneLine(subject), body: `${body}\n` };
}
