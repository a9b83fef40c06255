import { calendarDateOrNull, instant } from '../db/dates';
import type { Prisma } from '../db/client';
import { ROLES, type Role } from '../access/policy';
import type { CalendarDate, Instant } from '../rules/facts';
import type { LinkKind } from './link-letter';

/** here: signs in. invited: has chosen no password yet. left. erased: has left, and the data is gone. */
export type PersonState = 'here' | 'invited' | 'left' | 'erased';

export const PERSON_ROW = {
  homeBase: { select: { id: true, ident: true, zone: true } },
  links: { orderBy: { madeAt: 'desc' }, take: 1, include: { letter: { select: { state: true } } } },
} as const satisfies Prisma.PersonInclude;
type PersonRow = Prisma.PersonGetPayload<{ include: typeof PERSON_ROW }>;

export interface LinkState {
  readonly id: string;
  readonly kind: LinkKind;
  readonly handedOver: 'mail' | 'printed';
  readonly madeAt: Instant;
  readonly expiresAt: Instant;
  /** open: can still be used. */
  readonly state: 'open' | 'used' | 'ended' | 'over';
  /** Of one that goes by mail; null for a printed one. */
  readonly letter: 'waiting' | 'sent' | 'given-up' | null;
}

export interface PersonHead {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
  readonly base: { readonly id: string; readonly ident: string } | null;
  readonly zone: string;
  readonly state: PersonState;
  readonly leftOn: CalendarDate | null;
  /** The newest link; null: none was ever made. */
  readonly link: LinkState | null;
}

/** A person as the office shows one. `zone` is for whoever has no home base. */
export function personHead(row: PersonRow, now: Date, zone: string): PersonHead {
  const [newest] = row.links;
  return {
    id: row.id,
    name: row.name,
    email: row.email,
    roles: ROLES.filter((role) => row.roles.includes(role)),
    base: row.homeBase && { id: row.homeBase.id, ident: row.homeBase.ident },
    zone: row.homeBase?.zone ?? zone,
    state: row.erasedAt ? 'erased' : row.leftOn ? 'left' : row.passwordSetAt ? 'here' : 'invited',
    leftOn: calendarDateOrNull(row.leftOn),
    link: newest ? linkState(newest, now) : null,
  };
}

function linkState(link: PersonRow['links'][number], now: Date): LinkState {
  return {
    id: link.id,
    kind: link.kind as LinkKind,
    handedOver: link.handedOver as LinkState['handedOver'],
    madeAt: instant(link.madeAt),
    expiresAt: instant(link.expiresAt),
    state: link.usedAt ? 'used' : link.endedAt ? 'ended' : link.expiresAt <= now ? 'over' : 'open',
    letter: (link.letter?.state ?? null) as LinkState['letter'],
  };
}
