/** For HEALTHCHECK: ends with 0 when the server in this container can take requests. Node's own parts only. */
const port = process.env['PORT'] || '3000';
try {
  const answer = await fetch(`http://127.0.0.1:${port}/api/health/ready`, {
    signal: AbortSignal.timeout(4000),
  });
  process.stdout.write(`${await answer.text()}\n`);
  process.exitCode = answer.ok ? 0 : 1;
} catch {
  process.stdout.write('no answer\n');
  process.exitCode = 1;
}
