/** What is asked for, as it stands in an address of the page and of the files. */
export interface AskedInAddress {
  readonly days?: string;
  readonly from?: string;
  readonly until?: string;
  readonly aircraft?: string;
  readonly base?: string;
}

/** The address as the service takes it; a field left empty is nothing asked. */
export const askedOf = (address: AskedInAddress) => ({
  days: address.days || null,
  from: address.from || null,
  until: address.until || null,
  aircraftId: address.aircraft || null,
  baseId: address.base || null,
});

/** The same as text behind the question mark. Days count only where no day is named. */
export function inAddress({ days, from, until, aircraft, base }: AskedInAddress): string {
  const dated = Boolean(from) || Boolean(until);
  const parts = { days: dated ? undefined : days, from, until, aircraft, base };
  return new URLSearchParams(
    Object.entries(parts).flatMap(([name, value]) => (value ? [[name, value]] : [])),
  ).toString();
}
