import { createServer, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import { Clock } from '../../libs/platform/src/index.js';

/** A clock that stands where a test sets it. */
export class SetClock extends Clock {
  constructor(public at: Date) {
    super();
  }

  override now(): Date {
    return this.at;
  }

  override today(timeZone: string): string {
    return new Intl.DateTimeFormat('en-CA', { timeZone }).format(this.at);
  }

  pass(minutes: number): void {
    this.at = new Date(this.at.getTime() + minutes * 60_000);
  }
}

export interface MailBox {
  readonly url: string;
  readonly mails: ParsedMail[];
  /** Answers the next mail with a refusal, as a full mailbox does. */
  refuseNext(): void;
  close(): Promise<void>;
}

/** A real SMTP server on this machine that keeps what it is given. */
export async function openMailBox(): Promise<MailBox> {
  const mails: ParsedMail[] = [];
  let refuse = false;
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, _session, done) {
      simpleParser(stream).then(
        (mail) => {
          if (refuse) {
            refuse = false;
            done(Object.assign(new Error('Mailbox full'), { responseCode: 452 }));
            return;
          }
          mails.push(mail);
          done();
        },
        (error: Error) => done(error),
      );
    },
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.server.address() as AddressInfo;
  return {
    url: `smtp://127.0.0.1:${port}`,
    mails,
    refuseNext: () => {
      refuse = true;
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}

export interface HookCall {
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

export interface Hook {
  readonly url: string;
  readonly calls: HookCall[];
  /** Statuses of the next answers; 204 when there are none left. */
  readonly answers: number[];
  close(): Promise<void>;
}

/** A real HTTP server on this machine that keeps what is posted to it. */
export async function openHook(): Promise<Hook> {
  const calls: HookCall[] = [];
  const answers: number[] = [];
  const server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      calls.push({ headers: request.headers, body: Buffer.concat(parts).toString('utf8') });
      const status = answers.shift() ?? 204;
      response.writeHead(status, status === 302 ? { location: '/elsewhere' } : {}).end();
    });
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/alerts`,
    calls,
    answers,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
