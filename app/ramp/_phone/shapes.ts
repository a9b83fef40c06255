/**
 * What the phone keeps in its own database (IndexedDB), and what waits there to be sent. Everything carries the person, so
 * that the next one to sign in on a shared phone neither sees nor sends what somebody else left.
 */
import { type FindingDraft } from '@/lib/findings/compose-finding';
import { type PhotoMark } from '@/lib/photos/marks';
import { type Problem } from '@/lib/problems';
import { type ItemAnswer } from '@/lib/rules/walkaround/answers';
import { type PackList, type RampPack } from '@/lib/walkarounds/pack';

export { type PhotoMark } from '@/lib/photos/marks';

/** A walkaround under way. Its number is made before anybody is asked, so starting twice begins once. */
export interface KeptWalk {
  readonly id: string;
  readonly personId: string;
  readonly aircraftId: string;
  readonly startedAt: string;
  /** The list as it was when the walk began: a new version meanwhile does not change a walk under way. */
  readonly list: PackList;
  readonly items: Readonly<Record<string, ItemAnswer>>;
  readonly placards: Readonly<Record<string, 'there' | 'missing'>>;
  /** Findings and observations written on this walk: by station, the numbers of their messages. */
  readonly findings: readonly {
    readonly station: string;
    readonly itemKey: string | null;
    readonly id: string;
  }[];
}

/** A photo from the camera, made small enough to send. Belongs to a draft until that is sent, then to its message. */
export interface KeptPhoto {
  readonly id: string;
  readonly personId: string;
  /** The draft it was taken for, or the finding it is added to; the same as `KeptDraft.bundle`. */
  readonly bundle: string;
  readonly picture: Blob;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PhotoMark[];
  readonly takenAt: string;
}

/** A finding being typed. */
export interface KeptDraft {
  readonly key: string;
  readonly personId: string;
  /** Number of the message it will be sent as. */
  readonly requestId: string;
  readonly bundle: string;
  readonly foundAt: string;
  readonly values: FindingDraft;
}

export type OutgoingKind =
  'walk-start' | 'walk-finish' | 'finding' | 'observation' | 'photo' | 'meters-out' | 'meters-in';

/** Where a message goes, under /api/sync/. */
export type SyncPath =
  'walkarounds' | 'walkarounds/finish' | 'findings' | 'observations' | 'photos' | 'meters';

/** A message on its way. It is taken away only by the person, after it was sent, or after it was refused and put right. */
export interface Outgoing {
  /** Order of sending over everything on this phone. */
  readonly seq: number;
  /** Number of the request: sent again it is still written once. */
  readonly id: string;
  readonly personId: string;
  readonly aircraftId: string | null;
  readonly kind: OutgoingKind;
  /** What people call it: "N041QB: Tyre worn". */
  readonly label: string;
  readonly path: SyncPath;
  /** JSON to send; for a photo what goes beside the picture. `version` and `requestId` are put in when it is sent. */
  readonly message: Readonly<Record<string, unknown>>;
  /** For a photo: the kept photo it carries. */
  readonly photoId: string | null;
  /** Messages that have to be sent before it: a photo after its finding, a finding after the start of its walk. */
  readonly after: readonly string[];
  readonly state: 'waiting' | 'sending' | 'sent' | 'refused';
  /** Why it was refused, as the server said it. */
  readonly problem: Problem | null;
  /** What the server answered. */
  readonly answer: unknown;
  readonly queuedAt: string;
  readonly sentAt: string | null;
  readonly tries: number;
}

/** What is new about a message when it is queued; the rest the queue fills in. */
export type NewOutgoing = Pick<
  Outgoing,
  'id' | 'aircraftId' | 'kind' | 'label' | 'path' | 'message' | 'photoId' | 'after'
>;

/** How sending stands, for the bar on every page of the ramp. */
export interface SyncState {
  readonly waiting: number;
  readonly refused: number;
  readonly isSending: boolean;
  /** Why nothing moves, when nothing does. `other-person`: somebody else is signed in; theirs is sent, this waits. */
  readonly stuck: null | 'no-connection' | 'no-answer' | 'signed-out' | 'other-person';
  readonly lastTriedAt: string | null;
  /** The phone refuses to keep things (no room, private window): what is typed is lost with the page. */
  readonly isNotKept: boolean;
}

export type KeptPack = { readonly pack: RampPack; readonly keptAt: string };
