export function readSettingsFromFiles(
  names: readonly string[],
  env?: Record<string, string | undefined>,
): void;
export function requireSettings(
  wanted: Readonly<Record<string, string>>,
  env?: Record<string, string | undefined>,
): void;
export function refuse(error: unknown): never;
