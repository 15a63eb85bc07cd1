import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { CreatePerson, CreatePractice } from '#lib/access';
import { type Actor, ROLES, type Role } from '#lib/platform';
import { type AppOptions, createApp } from '../../apps/api/src/index.js';
import { createTestDatabase } from '../harness/database.js';

export interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | number | undefined>;
  readonly text: string;
  readonly body: Record<string, unknown>;
}

export interface Sent {
  readonly cookie?: string | undefined;
  readonly token?: string | undefined;
  readonly headers?: Record<string, string>;
  readonly body?: unknown;
}

export const PASSWORD = 'a long pass phrase';

/** The service on a database of its own, asked without a network. */
export class TestService {
  private constructor(
    readonly app: NestFastifyApplication,
    readonly databaseUrl: string,
    private readonly drop: () => Promise<void>,
  ) {}

  static async start(options: Partial<AppOptions> = {}): Promise<TestService> {
    const database = await createTestDatabase();
    const app = await createApp({ databaseUrl: database.url, logLevel: 'error', ...options });
    return new TestService(app, database.url, () => database.drop());
  }

  async stop(): Promise<void> {
    await this.app.close();
    await this.drop();
  }

  async send(method: string, url: string, sent: Sent = {}): Promise<Answer> {
    const isText = typeof sent.body === 'string';
    const response = await this.app.inject({
      method: method as 'GET',
      url,
      headers: {
        ...(sent.body === undefined ? {} : { 'content-type': 'application/json' }),
        ...(sent.cookie ? { cookie: `traybook_session=${sent.cookie}` } : {}),
        ...(sent.token ? { authorization: `Bearer ${sent.token}` } : {}),
        ...sent.headers,
      },
      ...(sent.body === undefined
        ? {}
        : { payload: isText ? (sent.body as string) : JSON.stringify(sent.body) }),
    });
    const json =
      String(response.headers['content-type'] ?? '').includes('json') &&
      response.headers['content-encoding'] === undefined;
    return {
      status: response.statusCode,
      headers: response.headers,
      text: response.body,
      body: json ? (JSON.parse(response.body) as Record<string, unknown>) : {},
    };
  }

  async signIn(signInName: string, password = PASSWORD): Promise<string> {
    const answer = await this.send('POST', '/api/session', { body: { signInName, password } });
    if (answer.status !== 201) throw new Error(`Sign-in of ${signInName}: ${answer.text}`);
    return sessionOf(answer);
  }

  /** A practice with one signed-in person per role; names begin with the prefix. */
  async openPractice(prefix: string): Promise<TestPractice> {
    const owner = await this.app.get(CreatePractice).run({
      practice: { name: `${prefix} practice`, timeZone: 'Europe/Berlin', currency: 'EUR' },
      owner: { displayName: `${prefix} owner`, signInName: `${prefix}.owner`, password: PASSWORD },
    });
    const people = {} as Record<Role, { id: string; cookie: string }>;
    for (const role of ROLES) {
      const signInName = `${prefix}.${role}`;
      const id =
        role === 'owner'
          ? owner.personId
          : (
              await this.app
                .get(CreatePerson)
                .run(owner, { displayName: signInName, signInName, password: PASSWORD, role })
            ).id;
      people[role] = { id, cookie: await this.signIn(signInName) };
    }
    return { owner, people };
  }
}

export interface TestPractice {
  readonly owner: Actor;
  readonly people: Readonly<Record<Role, { id: string; cookie: string }>>;
}

function sessionOf(answer: Answer): string {
  const header = String(answer.headers['set-cookie']);
  return /traybook_session=([^;]*)/.exec(header)?.[1] ?? '';
}
