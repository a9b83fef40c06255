import { createHash } from 'node:crypto';

/** A UUID made from a name (version 5 of RFC 9562, without its namespaces): the same name gives the same id. */
export function demoId(name: string): string {
  const hex = createHash('sha1').update(`wheelchock demo/${name}`).digest('hex');
  const variant = ((parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16);
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `5${hex.slice(13, 16)}`,
    `${variant}${hex.slice(18, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}

/** Ids of what the plans name, so that any part of the loader can point to it. */
export const operatorId = (operator: string) => demoId(operator);
export const baseId = (operator: string, key: string) => demoId(`${operator}/base/${key}`);
export const personId = (operator: string, key: string) => demoId(`${operator}/person/${key}`);
export const typeId = (operator: string, key: string) => demoId(`${operator}/type/${key}`);
export const aircraftId = (operator: string, registration: string) =>
  demoId(`${operator}/aircraft/${registration}`);
export const equipmentId = (operator: string, registration: string, name: string) =>
  demoId(`${operator}/aircraft/${registration}/equipment/${name}`);
export const requirementId = (operator: string, registration: string, kind: string) =>
  demoId(`${operator}/aircraft/${registration}/requirement/${kind}`);
