/**
 * A line of bare TCP between the application and PostgreSQL, at a port that stays when the server behind it is started anew,
 * and that can be cut at the end of a sign-off.
 */
import { connect, createServer, type AddressInfo, type Server, type Socket } from 'node:net';

/** Cut when the COMMIT of a sign-off is about to pass, or when it has passed and its answer is on the way back. */
export type Cut = 'before-commit' | 'after-commit';

const SIGN_OFF = /INSERT INTO "public"\."sign_off"/;
/** A message "Query" of the protocol whose text is COMMIT. */
const COMMIT = /Q\0\0\0.COMMIT\0/s;

export class Pipe {
  /** Port of the server behind it. */
  target = 0;
  /** How often it was cut. */
  cuts = 0;
  private next: Cut | null = null;
  private readonly sockets = new Set<Socket>();
  private readonly server: Server;

  constructor() {
    this.server = createServer((socket) => this.take(socket));
  }

  async open(): Promise<number> {
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    return (this.server.address() as AddressInfo).port;
  }

  /** Cuts the next sign-off that passes, once. */
  cutNext(cut: Cut): void {
    this.next = cut;
  }

  async close(): Promise<void> {
    this.sockets.forEach((socket) => socket.destroy());
    await new Promise((resolve) => this.server.close(resolve));
  }

  private take(near: Socket): void {
    const far = connect(this.target, '127.0.0.1');
    const end = () => {
      for (const socket of [near, far]) {
        socket.destroy();
        this.sockets.delete(socket);
      }
    };
    for (const socket of [near, far]) {
      this.sockets.add(socket);
      socket.setNoDelay(true).on('error', end).on('close', end);
    }
    let signing = false;
    let isLost = false;
    near.on('data', (chunk: Buffer) => {
      const text = this.next ? chunk.toString('latin1') : '';
      if (SIGN_OFF.test(text)) signing = true;
      if (this.next && signing && COMMIT.test(text)) {
        isLost = true;
        this.cuts += 1;
        const cut = this.next;
        this.next = null;
        if (cut === 'before-commit') return end();
      }
      far.write(chunk);
    });
    far.on('data', (chunk: Buffer) => {
      // The COMMIT was done: this is its answer, and it does not come through.
      if (isLost) end();
      else near.write(chunk);
    });
  }
}
