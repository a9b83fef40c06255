import { proxiesBefore, senderOf } from '@/lib/access/sender';
import { senderLimit, UNKNOWN_SENDER, type Sender } from '@/lib/access/sender-limit';
import { sessionSecret } from './secret';

/** Whose tries to sign in this request counts with. */
export function senderIn(headers: Headers): Sender {
  const sender = senderOf(headers.get('x-forwarded-for'), proxiesBefore());
  const secret = sessionSecret();
  return sender === null || secret === undefined ? UNKNOWN_SENDER : senderLimit(sender, secret);
}
