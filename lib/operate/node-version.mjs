/** The oldest Node that every kept library runs on; the same number stands under `engines` in package.json. */
const OLDEST = [20, 19];

/**
 * Stops with plain words when Node is too old. Written so that an old Node can still read it.
 * @returns {void}
 */
export function requireNode() {
  const parts = process.versions.node.split('.').map(Number);
  const major = parts[0] || 0;
  const minor = parts[1] || 0;
  if (major > OLDEST[0] || (major === OLDEST[0] && minor >= OLDEST[1])) {
    return;
  }
  console.error(
    `Wheelchock needs Node ${OLDEST.join('.')} or newer; this is Node ${process.versions.node}. ` +
      'Install a newer Node from nodejs.org or your package manager and try again.',
  );
  process.exit(1);
}
