import type { ChildProcess, SpawnOptions } from 'node:child_process';

export function startChild(command: string, args: string[], options?: SpawnOptions): ChildProcess;
export function runToEnd(
  command: string,
  args: string[],
  options?: {
    env?: Record<string, string | undefined>;
    cwd?: string;
    show?: boolean;
    timeoutMs?: number;
    shell?: boolean;
  },
): Promise<{ code: number; output: string }>;
export function runOrStop(
  what: string,
  command: string,
  args: string[],
  options?: { env?: Record<string, string | undefined>; cwd?: string; show?: boolean; shell?: boolean },
): Promise<string>;
export function stopChild(child: ChildProcess): Promise<void>;
export function stopChildren(): Promise<void>;
