/** A line in front of two servers: each request goes to the other one than the request before. Streams pass as they come. */
import { createServer, request, type Server } from 'node:http';

export interface Line {
  readonly port: number;
  /** How many requests each server was handed. */
  readonly handed: readonly number[];
  /** Of each server, how many of them wrote (POST). */
  readonly wrote: readonly number[];
  close(): Promise<void>;
}

/** Listens on `port` of this machine; what is asked for is handed to `ports` in turn, the Host header as it came. */
export async function openLine(port: number, ports: readonly number[]): Promise<Line> {
  const handed = ports.map(() => 0);
  const wrote = ports.map(() => 0);
  let turn = 0;
  const server: Server = createServer((asked, answer) => {
    const which = turn++ % ports.length;
    handed[which]! += 1;
    if (asked.method === 'POST') wrote[which]! += 1;
    const onward = request(
      {
        host: '127.0.0.1',
        port: ports[which],
        method: asked.method,
        path: asked.url,
        headers: asked.headers,
      },
      (came) => {
        answer.writeHead(came.statusCode ?? 502, came.headers);
        // The first words of a stream may be long in coming; the browser wants to know that it is open.
        answer.flushHeaders();
        came.pipe(answer);
        came.on('error', () => answer.destroy());
      },
    );
    onward.on('error', () => (answer.headersSent ? answer.destroy() : answer.writeHead(502).end()));
    answer.on('close', () => onward.destroy());
    asked.on('error', () => onward.destroy());
    asked.pipe(onward);
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return {
    port,
    handed,
    wrote,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
