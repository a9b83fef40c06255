/**
 * Settings that lie in files: for NAME, the file in NAME_FILE, as containers hand secrets over. And the refusals, in plain
 * words, when one is missing. Node's own parts only.
 */
import { readFileSync } from 'node:fs';

/**
 * Sets NAME from the file NAME_FILE for each of these names that has one. A setting given both ways is refused: nobody could
 * say which holds.
 * @param {readonly string[]} names
 * @param {NodeJS.ProcessEnv} [env]
 */
export function readSettingsFromFiles(names, env = process.env) {
  for (const name of names) {
    const file = env[`${name}_FILE`];
    if (!file) continue;
    if (env[name]) throw new Error(`${name} and ${name}_FILE are both set. Take one of them away.`);
    let text;
    try {
      text = readFileSync(file, 'utf8').trim();
    } catch (error) {
      const code = /** @type {NodeJS.ErrnoException} */ (error).code ?? 'unknown';
      throw new Error(`The file ${file} of ${name}_FILE cannot be read (${code}).`, { cause: error });
    }
    if (text === '') throw new Error(`The file ${file} of ${name}_FILE is empty.`);
    env[name] = text;
  }
}

/**
 * Throws unless each of these is set; `why` says what it is for.
 * @param {Readonly<Record<string, string>>} wanted name -> what it is for
 * @param {NodeJS.ProcessEnv} [env]
 */
export function requireSettings(wanted, env = process.env) {
  const missing = Object.entries(wanted).filter(([name]) => !env[name]?.trim());
  if (missing.length === 0) return;
  const list = missing.map(([name, why]) => `${name} (or ${name}_FILE): ${why}`).join('\n  ');
  throw new Error(
    `These settings are missing, and there is no default for them:\n  ${list}\nSee docs/operate.md.`,
  );
}

/** Says a refusal and ends. @param {unknown} error */
export function refuse(error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
}
