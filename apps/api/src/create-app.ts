import { NestFactory } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Admission } from '#lib/access';
import type { Clock, MailOptions } from '#lib/platform';
import { appModule } from './app.module.js';
import { httpAdapter, prepareFastify } from './fastify.js';
import { type LogLevel, ServiceLog } from './log.js';
import { serveDocs } from './serve-docs.js';
import { builtWebFolder, serveWeb } from './serve-web.js';

export interface AppOptions {
  readonly databaseUrl: string;
  readonly clock?: Clock | undefined;
  readonly logLevel?: LogLevel | undefined;
  /** The most connections to the database at once. */
  readonly poolSize?: number | undefined;
  /** Commits do not wait for the disk: only to fill a book that can be filled again. */
  readonly relaxedCommit?: boolean | undefined;
  readonly secureCookies?: boolean | undefined;
  /** Through which server e-mail goes out; none when left out. */
  readonly mail?: MailOptions | undefined;
  /** Whose X-Forwarded-* headers are believed: addresses or ranges, by default this machine's. */
  readonly trustedProxies?: string | undefined;
  /** Where the built browser app lies, if not where the build puts it. */
  readonly webFolder?: string | undefined;
}

/** The whole service, ready to answer but not yet listening. */
export async function createApp(options: AppOptions): Promise<NestFastifyApplication> {
  const adapter = httpAdapter({
    logLevel: options.logLevel ?? 'warn',
    trustedProxies: options.trustedProxies ?? 'loopback',
  });
  const fastify = adapter.getInstance();
  const app = await NestFactory.create<NestFastifyApplication>(appModule(options), adapter, {
    abortOnError: false,
    bodyParser: false,
    logger: new ServiceLog(fastify.log),
  });
  app.setGlobalPrefix('api');
  const admission = app.get(Admission, { strict: false });
  await prepareFastify(fastify, (...asked) => admission.admit(...asked));
  serveDocs(app);
  const folder = options.webFolder ?? builtWebFolder();
  if (folder !== undefined) await serveWeb(fastify, folder);
  await app.init();
  await fastify.ready();
  return app;
}
