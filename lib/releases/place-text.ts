/**
 * How the flight form writes a place and reads it back: "ZZQB, Quillback Field". Pure, shared by browser and tests. What was
 * typed without choosing from the list is read the same way, so that an identifier typed in a hurry is enough.
 */

/** A place the form knows by name: a base of the operator, or an airport. */
export interface NamedPlace {
  readonly ident: string;
  readonly name: string;
  /** "Decorah, US", where it helps to tell it from others. */
  readonly where?: string;
  /** IANA zone. */
  readonly zone: string;
}

/** A place as the form shows it once it is chosen. */
export const placeText = ({ ident, name }: Pick<NamedPlace, 'ident' | 'name'>): string => `${ident}, ${name}`;

/** The identifier in a typed place: what stands before the first comma, in capitals. */
export const identIn = (text: string): string => (text.split(',')[0] ?? '').trim().toUpperCase();

/** The base a typed place means, or undefined when it is none of the operator's. */
export const baseIn = <B extends { readonly ident: string }>(
  text: string,
  bases: readonly B[],
): B | undefined => {
  const ident = identIn(text);
  return ident === '' ? undefined : bases.find((base) => base.ident.toUpperCase() === ident);
};
