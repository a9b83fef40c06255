export class Trouble extends Error {
  constructor(message: string, options?: { cause?: unknown });
}
export function say(line: string): void;
export function speaksOfFullDisk(text: string): boolean;
export function explain(error: unknown): string;
export function diskFull(): Trouble;
