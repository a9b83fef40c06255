'use client';

import { again, end, endHook } from './actions';
import { AskFirst } from './ask-first';

interface OfOne {
  readonly id: string;
  readonly name: string;
}

export function EndKey({ id, name }: OfOne) {
  return (
    <AskFirst
      label="End this key"
      name={name}
      question={`End the key “${name}”? Programs that use it are refused from then on. It cannot be undone.`}
      yes="Yes, end it"
      no="Keep it"
      action={({ requestId }) => end({ requestId, keyId: id })}
    />
  );
}

export function EndWebhook({ id, name }: OfOne) {
  return (
    <AskFirst
      label="End this webhook"
      name={name}
      question={`End the webhook “${name}”? Nothing more is sent there, not even what waits.`}
      yes="Yes, end it"
      no="Keep it"
      action={({ requestId }) => endHook({ requestId, webhookId: id })}
    />
  );
}

export function SendAgain({ id, name }: OfOne) {
  return (
    <AskFirst
      label="Send again"
      name={name}
      question="Send it once more? It keeps its number, so that the receiver can tell a repeat."
      yes="Yes, send it"
      no="Leave it"
      action={({ requestId }) => again({ requestId, deliveryId: id })}
    />
  );
}
