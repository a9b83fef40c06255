/** One line of airports.json. Empty text: no such code. Elevation null: not in the source. */
export type AirportRow = readonly [
  ident: string,
  iata: string,
  local: string,
  name: string,
  municipality: string,
  country: string,
  latitudeDeg: number,
  longitudeDeg: number,
  elevationFt: number | null,
  zone: string,
];
