import { mkdir, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { createTransport, type SendMailOptions } from 'nodemailer';
import { isPlainAddress, type LetterSettings, type Mailbox, type SmtpServer } from './letter-settings';

/** One letter as it is kept. */
export interface LetterToSend {
  readonly id: string;
  readonly to: string;
  readonly subject: string;
  readonly body: string;
}

/** Takes letters away. `send` resolves when somebody else answers for the letter now, and throws otherwise. */
export interface Post {
  send(letter: LetterToSend): Promise<void>;
}

/** No use trying again: the server refused this very letter for good (RFC 5321, 4.2.1: 5yz). */
export class RefusedForGood extends Error {}

/** Nothing was said about this letter: the server was not reached, or did not let us in. The next letter fares no better. */
export class PostShut extends Error {}

/** The post by the server's settings. */
export const openPost = (settings: LetterSettings): Post =>
  settings.way === 'smtp'
    ? smtpPost(settings.server, settings.from)
    : outboxPost(settings.folder, settings.from);

/**
 * The letter as nodemailer takes it. The Message-ID hangs on the letter's id, so that one sent twice is known for the same
 * (RFC 5322, 3.6.4); Auto-Submitted keeps other machines from answering (RFC 3834, 5); lines end in CR LF (RFC 5322, 2.1).
 */
function messageOf(letter: LetterToSend, from: Mailbox): SendMailOptions {
  if (!isPlainAddress(letter.to)) throw new RefusedForGood('This is no address a letter could go to.');
  return {
    from: { ...from },
    to: { name: '', address: letter.to },
    subject: letter.subject,
    text: letter.body,
    textEncoding: 'quoted-printable',
    newline: 'windows',
    messageId: `<${letter.id}@${from.address.split('@')[1]}>`,
    headers: { 'Auto-Submitted': 'auto-generated' },
    xMailer: false,
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}

const CONNECT_WITHIN_MS = 10_000;
const SILENT_AT_MOST_MS = 30_000;
/** However slowly it drips, the server has this long; the letter is claimed for longer (send-letters.ts). */
export const SEND_WITHIN_MS = 120_000;

function smtpPost(server: SmtpServer, from: Mailbox): Post {
  const { host, port, secure, login } = server;
  const transport = createTransport({
    host,
    port,
    secure,
    ...(login ? { auth: login } : {}),
    // A password goes over the open network only inside TLS.
    requireTLS: login !== null && !secure,
    connectionTimeout: CONNECT_WITHIN_MS,
    greetingTimeout: CONNECT_WITHIN_MS,
    socketTimeout: SILENT_AT_MOST_MS,
  });
  return {
    async send(letter) {
      const message = messageOf(letter, from);
      try {
        await within(SEND_WITHIN_MS, transport.sendMail(message));
      } catch (error) {
        throw asTrouble(error);
      }
    },
  };
}

/**
 * What a failure means. Only an answer about the sender, the recipient or the text is about the letter; a refused login or
 * a server that is not there is about us, and may be put right before the next try.
 */
function asTrouble(error: unknown): Error {
  if (!(error instanceof Error)) return new Error(String(error));
  const { code, responseCode } = error as Error & { code?: string; responseCode?: number };
  const aboutTheLetter = code === 'EENVELOPE' || code === 'EMESSAGE';
  if (!aboutTheLetter) return new PostShut(error.message);
  // No code at all: nodemailer itself would not put this address on the wire.
  return (responseCode ?? 500) >= 500 ? new RefusedForGood(error.message) : error;
}

async function within<T>(patienceMs: number, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('The server took too long.')), patienceMs);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** One file a letter, whole or not there: written beside its place and moved into it. A second try replaces the first. */
function outboxPost(folder: string, from: Mailbox): Post {
  const transport = createTransport({ streamTransport: true, buffer: true });
  return {
    async send(letter) {
      const { message } = await transport.sendMail(messageOf(letter, from));
      await mkdir(folder, { recursive: true });
      const place = path.join(folder, `${letter.id}.eml`);
      await writeFile(`${place}.part`, message as Buffer);
      await rename(`${place}.part`, place);
    },
  };
}
