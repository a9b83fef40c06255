import { namedId } from '../../lib/records/named-id';

/** The same name gives the same id on every loading. */
export const demoId = (name: string): string => namedId(`wheelchock demo/${name}`);

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
