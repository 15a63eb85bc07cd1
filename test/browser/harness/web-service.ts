import type { AddressInfo } from 'node:net';
import { TestService } from '../../http/service.js';
import { builtWeb } from './build-web.js';

type Options = NonNullable<Parameters<typeof TestService.start>[0]>;

export interface WebService {
  /** 'http://127.0.0.1:40123' */
  readonly url: string;
  /** To set up data without the browser: `openSmallBook(web.service, 'mill')`. */
  readonly service: TestService;
  stop(): Promise<void>;
}

/** The whole service with the browser app, on a database and a port of its own. */
export async function startWebService(options: Options = {}): Promise<WebService> {
  const service = await TestService.start({ webFolder: builtWeb(), ...options });
  await service.app.listen(0, '127.0.0.1');
  const { port } = service.app.getHttpServer().address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}`, service, stop: () => service.stop() };
}
