/**
 * What a phone takes along to the ramp, so that the walkaround opens with no network: the fleet as it was known at one
 * moment. Types only; the server fills it (read-pack.ts), the phone keeps it (app/ramp/_phone). A field may be added; a
 * change of meaning takes a new version.
 */
import type { Role } from '../access/policy';
import type { StoredLimit } from '../rules/findings/measured-against-limits';
import type { MeasureUnit } from '../rules/findings/measurements';
import type { StationKey } from '../rules/findings/stations';
import type { HouseMark } from '../rules/house/house-rule';
import type { ReleaseStateName } from '../rules/release-state';
import type { SampleResult } from '../rules/walkaround/answers';
import type { WalkaroundList } from '../rules/walkaround/plan';
import type { Units } from '../units/say';
import type { Effect, Outcome } from '../rules/verdict';

export interface RampPack {
  readonly version: 1;
  /** The server's clock when it was read: everything in it is "as of" then. */
  readonly asOf: string;
  readonly person: {
    readonly id: string;
    readonly name: string;
    readonly roles: readonly Role[];
    readonly operatorName: string;
    /** Packs from before do not say: US customary. */
    readonly units?: Units;
  };
  readonly bases: readonly PackBase[];
  readonly aircraft: readonly PackAircraft[];
  /** By aircraft type. */
  readonly lists: Readonly<Record<string, PackList>>;
  /** The usual findings, all of them; which fit where is said by their stations. */
  readonly findings: readonly PackFinding[];
  /**
   * What the phone needs to print a paragraph beside a line: its label where that is not the usual one, and any doubt about
   * its text. Cites that are not in here are printed as usual, without a doubt. The registry itself is too large to carry.
   */
  readonly paragraphs: Readonly<Record<string, { readonly label: string; readonly doubt: string | null }>>;
}

export interface PackBase {
  readonly id: string;
  readonly ident: string;
  readonly name: string;
  readonly zone: string;
}

export interface PackList {
  /** Null: the starting list, which nobody has fitted to the type yet. */
  readonly id: string | null;
  readonly version: number;
  readonly list: WalkaroundList;
}

export interface PackAircraft {
  readonly id: string;
  readonly registration: string;
  readonly typeId: string;
  readonly typeName: string;
  readonly baseId: string;
  readonly baseIdent: string;
  readonly zone: string;
  readonly forHire: boolean;
  /** Today's answer for its usual use, as of the pack. Never to be shown as a fresh go. */
  readonly answer: {
    readonly name: string;
    readonly outcome: Outcome;
    readonly headline: string | null;
    /** Only what bars or limits. */
    readonly lines: readonly PackLine[];
  } | null;
  /** Open and deferred, newest first. */
  readonly writeUps: readonly PackWriteUp[];
  /** Closed in the last 30 days, newest first. */
  readonly closed: readonly PackWriteUp[];
  readonly equipment: readonly {
    readonly id: string;
    readonly name: string;
    readonly function: string;
    readonly installed: number;
  }[];
  /** Limits stored for this very aircraft. */
  readonly limits: readonly StoredLimit[];
  readonly meters: PackMeters;
  /** Drains that did not run clean at once on the last finished walkaround. */
  readonly lastSamples: {
    readonly at: string;
    readonly by: string;
    readonly drains: Readonly<Record<string, readonly SampleResult[]>>;
  } | null;
  /** Released flights that are not back yet, soonest first. */
  readonly flights: readonly PackFlight[];
}

export interface PackMeters {
  readonly hobbsTenths: number | null;
  readonly tachTenths: number | null;
  /** When they were last read; null when no reading is on record. */
  readonly at: string | null;
}

export interface PackFlight {
  readonly releaseId: string;
  readonly departAt: string;
  readonly arriveAt: string;
  readonly pilotId: string | null;
  readonly pilotName: string | null;
  /** What has become of it; packs from before do not say. Void: nobody departs on it. */
  readonly state?: ReleaseStateName;
  /** As released; no go once it is void. */
  readonly outcome: Outcome;
  /** What limited it at release and what was warned of since; of a void one also what bars. */
  readonly limits: readonly PackLine[];
  /** Meters at departure, once they were read. */
  readonly out: { readonly hobbsTenths: number; readonly tachTenths: number; readonly at: string } | null;
}

export interface PackLine {
  readonly effect: Effect;
  readonly cite: string;
  readonly because: string;
  /** Whose rule it is, where it is one of the house and not law. Packs from before do not say. */
  readonly house?: HouseMark;
}

export interface PackWriteUp {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  /** Area of the aircraft. */
  readonly station: string;
  readonly place: string;
  readonly words: string;
  readonly jasc: string;
  readonly kind: string;
  readonly findingKey: string | null;
  readonly state: 'open' | 'deferred' | 'closed';
  readonly severity: 'grounding' | 'limiting' | 'watch' | 'note' | null;
  readonly openedAt: string;
  readonly closedAt: string | null;
  /** repaired, within-limits, serviced, cosmetic, could-not-duplicate. */
  readonly closedHow: string | null;
  readonly reportedBy: string;
  /** It stood on paper before: who vouches for that. Packs from before do not say. */
  readonly carried?: { readonly by: string; readonly on: string; readonly source: string } | null;
  readonly photos: number;
  /** Others who saw the same: how many, and the last one's words. */
  readonly observations: number;
  readonly placards: readonly {
    readonly id: string;
    readonly wording: string;
    readonly location: string;
    readonly placed: boolean;
  }[];
}

/** A usual finding, with what a form has to ask about it. */
export interface PackFinding {
  readonly key: string;
  readonly title: string;
  readonly jasc: string;
  readonly kind: string;
  readonly usualAction: string;
  readonly station: StationKey;
  readonly alsoAt: readonly StationKey[];
  /** The function on the equipment list it is about, when something does not work. */
  readonly equipmentFunction: string | null;
  readonly choices: readonly {
    readonly label: string;
    readonly jasc: string;
    readonly equipmentFunction: string | null;
  }[];
  readonly measurements: readonly {
    readonly key: string;
    readonly label: string;
    readonly unit: MeasureUnit;
    readonly needed: boolean;
  }[];
}
