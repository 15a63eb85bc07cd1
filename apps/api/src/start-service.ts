import { DataSource } from 'typeorm';
import { issueFirstStartLink } from '#lib/access';
import { BackgroundWork } from '#lib/platform';
import { type AppOptions, createApp } from './create-app.js';

export interface ServiceOptions extends AppOptions {
  readonly host: string;
  readonly port: number;
}

export interface RunningService {
  readonly url: string;
  /** Where the first practice is set up; only while the book is empty. */
  readonly firstStartLink?: string;
  close(): Promise<void>;
}

/** Starts the service on an address; port 0 takes a free one. */
export async function startService(options: ServiceOptions): Promise<RunningService> {
  const app = await createApp(options);
  try {
    await app.listen(options.port, options.host);
    const url = addressOf(options.host, app.getHttpServer().address(), options.port);
    const token = await issueFirstStartLink(app.get(DataSource));
    app.get(BackgroundWork).start();
    const close = () => app.close();
    if (token === undefined) return { url, close };
    return { url, firstStartLink: `${url}/first-start?token=${token}`, close };
  } catch (error) {
    await app.close();
    throw error;
  }
}

function addressOf(host: string, address: unknown, wanted: number): string {
  const bound = address as { readonly port: number } | null;
  const everywhere = host === '0.0.0.0' || host === '::';
  const name = everywhere ? 'localhost' : host.includes(':') ? `[${host}]` : host;
  return `http://${name}:${bound?.port ?? wanted}`;
}
