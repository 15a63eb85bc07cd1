import { connect, createServer, type Server } from 'node:net';

/**
 * A proxy before PostgreSQL that counts how often the server says it is ready for the next query
 * (protocol 3.0, message Z): each is one round trip that somebody waited for.
 */
export class CountingProxy {
  roundTrips = 0;
  private constructor(
    private readonly server: Server,
    readonly url: string,
  ) {}

  static async before(databaseUrl: string): Promise<CountingProxy> {
    const target = new URL(databaseUrl);
    let proxy: CountingProxy | undefined;
    const server = createServer((client) => {
      const upstream = connect(Number(target.port || 5432), target.hostname);
      client.pipe(upstream);
      let waiting = Buffer.alloc(0);
      upstream.on('data', (part) => {
        client.write(part);
        waiting = Buffer.concat([waiting, part]);
        while (waiting.length >= 5) {
          const length = waiting.readUInt32BE(1) + 1;
          if (waiting.length < length) break;
          if (waiting[0] === 0x5a && proxy) proxy.roundTrips += 1;
          waiting = waiting.subarray(length);
        }
      });
      const end = () => {
        client.destroy();
        upstream.destroy();
      };
      for (const socket of [client, upstream]) socket.on('close', end).on('error', end);
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('The proxy has no port');
    const url = new URL(databaseUrl);
    url.hostname = '127.0.0.1';
    url.port = String(address.port);
    proxy = new CountingProxy(server, url.href);
    return proxy;
  }

  close(): void {
    this.server.close();
  }
}
