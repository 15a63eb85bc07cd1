import { createServer } from 'node:net';
import { StartupError } from '#lib/platform';

/** Finds out before anything is touched whether the service will be able to listen. */
export async function checkPort(host: string, port: number): Promise<void> {
  const code = await tryListening(host, port);
  if (code === undefined) return;
  if (code === 'EADDRINUSE') {
    throw new StartupError(
      `Port ${port} is taken by another program. Stop that one, or set PORT to another number.`,
    );
  }
  if (code === 'EACCES') {
    throw new StartupError(`Port ${port} may not be used by this user: set PORT to 1024 or more.`);
  }
  throw new StartupError(`HOST ${host} is not an address of this machine (${code}).`);
}

function tryListening(host: string, port: number): Promise<string | undefined> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? error.message));
    probe.listen({ host, port, exclusive: true }, () => probe.close(() => resolve(undefined)));
  });
}
