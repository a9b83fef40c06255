import { hashSaid } from './words';

/** Said on every paper a pilot may carry: what it is not. The same words as at the foot of the screens. */
export const CAUTION =
  'A decision aid, not an approval. The pilot in command decides whether the aircraft is in condition for safe flight (14 CFR 91.7(b)). Only persons certificated for it approve an aircraft for return to service. The current regulations and the aircraft’s own documents govern, also where this paper says something else.';

/** The aircraft a paper is about. */
export interface PaperAircraft {
  readonly registration: string;
  readonly serial: string;
  readonly typeName: string;
  readonly operatorName: string;
  /** IANA zone of its base: the zone of every time on the paper. */
  readonly zone: string;
}

/** What every paper knows of itself. */
export interface PaperFrame {
  readonly aircraft: PaperAircraft;
  /** ISO text in UTC. */
  readonly madeAt: string;
}

/** A signature as it stands on a paper: name, certificate number and kind (43.9(a)(4)), day, and what binds it. */
export interface PaperSignature {
  readonly name: string;
  readonly certificateKind: string;
  readonly certificateNumber: string;
  readonly signedOn: string;
  readonly signedAt: string;
  readonly statement: string;
  readonly hash: string;
  /** In what way the record is no longer as it was signed; empty when it is. */
  readonly changes: readonly string[];
}

/** `N042QB-entry-3f9a1c.pdf`: letters, digits and dashes only, whatever is in the registration. */
export function fileName(
  registration: string,
  what: string,
  id: string,
  kind: 'pdf' | 'json' = 'pdf',
): string {
  const safe = (text: string) => text.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '');
  return `${[safe(registration), safe(what), safe(id).slice(0, 6)].filter(Boolean).join('-')}.${kind}`;
}

/** The foot of a paper about one signed record. */
export const footOf = (signature: PaperSignature): string => `Wheelchock, record ${hashSaid(signature.hash)}`;
