/**
 * Proposals that move a flight in time. Times are whole minutes, as a form has them, cut and never rounded up: a border
 * at 16:58:40 is met by landing at 16:58.
 */
import type { HoursTenths, Instant } from './facts';
import { formatTenths } from './hours';
import { clockInWords } from './in-words';
import { instantOfMs, msOf } from './light-over-time';
import { localDate, startOfDay } from './months';
import type { Place, ProposedFlight } from './operations';
import { fewestTenths, mostTenths } from './planned-hours';
import type { Ask, EarlierReturn, LeaveEarlier } from './proposals';
import type { BookedFlight } from './spent-hours';
import { nextSunEvent, type SunEvent } from './sun';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

const wholeMinute = (ms: number): number => Math.floor(ms / MINUTE_MS) * MINUTE_MS;

/**
 * A local flight back sooner: the latest minute of arrival with which it may go, found by halving, because a longer
 * flight never gets a better answer; the result is asked once more by nature. The planned time shrinks in proportion,
 * rounded up, within what can be planned for the shorter flight (planned-hours.ts). Not for a flight to somewhere else, which takes as long as it takes, and not
 * for less than half of the flight, which would be another one. House caution, no source.
 */
export function earlierReturn(flight: ProposedFlight, ask: Ask): readonly EarlierReturn[] {
  if (flight.from.ident !== flight.to.ident) return [];
  const departMs = msOf(flight.departAt);
  const fullMs = msOf(flight.arriveAt) - departMs;
  const backAt = (arriveMs: number): ProposedFlight => ({
    ...flight,
    arriveAt: instantOfMs(arriveMs),
    plannedTenths: shareOf(flight.plannedTenths, arriveMs - departMs, fullMs),
  });
  let good = wholeMinute(departMs + Math.ceil(fullMs / 2) + MINUTE_MS - 1);
  let bad = wholeMinute(departMs + fullMs - 1) + MINUTE_MS;
  if (good >= bad) return [];
  let proven = ask({ flight: backAt(good) });
  if (proven === null) return [];
  while (bad - good > MINUTE_MS) {
    const middle = wholeMinute((good + bad) / 2);
    const better = ask({ flight: backAt(middle) });
    if (better === null) bad = middle;
    else [good, proven] = [middle, better];
  }
  const { arriveAt, plannedTenths } = backAt(good);
  const because = `Be back by ${clockInWords(arriveAt, flight.to.zone)} at ${flight.to.ident}, ${formatTenths(plannedTenths)} h flown.`;
  return [{ kind: 'earlier-return', because, ...proven, arriveAt, plannedTenths }];
}

/** `tenths` in proportion, rounded up, and never more or fewer than the part can hold. */
const shareOf = (tenths: HoursTenths, partMs: number, fullMs: number): HoursTenths =>
  Math.min(
    mostTenths(partMs),
    Math.max(1, fewestTenths(partMs), Math.min(tenths, Math.ceil((tenths * partMs) / fullMs))),
  );

/**
 * The whole flight sooner, so that it ends at the latest border of light or date before its planned end with which it may
 * go. Not into the past, not over another booking of the aircraft, at most a day.
 */
export function leaveEarlier(
  flight: ProposedFlight,
  booked: readonly BookedFlight[],
  now: Instant,
  ask: Ask,
): readonly LeaveEarlier[] {
  const lengthMs = msOf(flight.arriveAt) - msOf(flight.departAt);
  const earliestMs = Math.max(msOf(now), msOf(flight.departAt) - DAY_MS);
  for (const arriveMs of arrivalsBefore(flight, earliestMs + lengthMs)) {
    const departAt = instantOfMs(arriveMs - lengthMs);
    const arriveAt = instantOfMs(arriveMs);
    if (!isFree(booked, arriveMs - lengthMs, arriveMs)) continue;
    const proven = ask({ flight: { ...flight, departAt, arriveAt } });
    if (proven === null) continue;
    const leave = `${clockInWords(departAt, flight.from.zone)} at ${flight.from.ident}`;
    const back = `${clockInWords(arriveAt, flight.to.zone)} at ${flight.to.ident}`;
    const because = `Leave earlier: from ${leave}, on the ground by ${back}.`;
    return [{ kind: 'leave-earlier', because, ...proven, departAt, arriveAt }];
  }
  return [];
}

/** Arrivals worth asking about, latest first: at a border, and the minute before (landing at midnight is the next day). */
function arrivalsBefore({ from, to, arriveAt }: ProposedFlight, earliestMs: number): number[] {
  const arriveMs = msOf(arriveAt);
  const borders = [from, to].flatMap((place) => bordersAt(place, earliestMs, arriveMs));
  const minutes = borders.flatMap((ms) => [wholeMinute(ms), wholeMinute(ms) - MINUTE_MS]);
  return [...new Set(minutes)].filter((ms) => ms >= earliestMs && ms < arriveMs).sort((a, b) => b - a);
}

/** Sunsets, dusks and midnights at a place in the stretch before a flight's end. */
function bordersAt(place: Place, fromMs: number, untilMs: number): number[] {
  const borders: number[] = [];
  for (const event of ['sunset', 'civilDusk'] satisfies SunEvent[]) {
    for (let searchMs = fromMs - MINUTE_MS; searchMs < untilMs;) {
      const next = nextSunEvent(event, place, instantOfMs(searchMs), (untilMs - searchMs) / DAY_MS);
      if (next === null) break;
      borders.push(msOf(next));
      searchMs = Math.max(searchMs, msOf(next)) + MINUTE_MS;
    }
  }
  let midnight = msOf(startOfDay(localDate(instantOfMs(untilMs), place.zone), place.zone));
  while (midnight >= fromMs) {
    borders.push(midnight);
    midnight = msOf(startOfDay(localDate(instantOfMs(midnight - 1), place.zone), place.zone));
  }
  return borders;
}

const isFree = (booked: readonly BookedFlight[], departMs: number, arriveMs: number): boolean =>
  booked.every((other) => msOf(other.departAt) >= arriveMs || msOf(other.arriveAt) <= departMs);
