export function atEnd(act: () => Promise<void>): void;
export function isEnding(): boolean;
export function end(code: number): Promise<never>;
export function endOnSignals(code: number): void;
export function endWithNpm(code: number): void;
export function runScript(work: () => Promise<number>): Promise<void>;
