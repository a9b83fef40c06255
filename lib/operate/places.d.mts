export const ROOT: string;
export const DATA: string;
export function inRepository(...parts: string[]): string;
