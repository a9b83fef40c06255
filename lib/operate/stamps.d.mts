export function sumOf(paths: string[], skip?: (relative: string) => boolean): Promise<string>;
export function isStamped(stampFile: string, sum: string): Promise<boolean>;
export function removeStamp(stampFile: string): Promise<void>;
export function writeStamp(stampFile: string, sum: string): Promise<void>;
