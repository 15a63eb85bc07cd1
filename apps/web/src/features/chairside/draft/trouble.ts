import type { Problem } from '../../../api/problem.js';
import type { Planned } from './request.js';

/** A sentence for each control that is wrong, by the name of the control. */
export type Trouble = Readonly<Record<string, string>>;

/** The name of a control of one restoration: also the end of its id on the page. */
export const ofRestoration = (key: string, field: string): string => `${key}.${field}`;
export const ofLine = (line: string): string => `line ${line}`;
export const ofLot = (lotId: string): string => `lot ${lotId}`;

type Sent = Planned<{ readonly scanned?: readonly { readonly lotId: string }[] | null }>;

const OF_VISIT = [
  ...['chartReference', 'dentistId', 'locationId', 'visitedOn'],
  ...['minutes', 'assistantMinutes'],
];

/** Which control of ours a field of the request is; undefined where none shows it. */
function controlOf(field: string, { keys, lines, body }: Sent): string | undefined {
  const [, list, at, rest] = /^(\w+)\[(\d+)\]\.(\w+)/.exec(field) ?? [];
  const index = Number(at);
  if (list === 'restorations' && rest !== undefined) {
    const key = keys[index];
    return key === undefined ? undefined : ofRestoration(key, rest);
  }
  if (list === 'usage') {
    const line = lines[index];
    return line === undefined ? undefined : ofLine(line);
  }
  if (list === 'scanned') {
    const lot = body.scanned?.[index];
    return lot === undefined ? undefined : ofLot(lot.lotId);
  }
  return OF_VISIT.find((own) => own === field);
}

interface Placed {
  readonly trouble: Trouble;
  /** What no control shows. */
  readonly rest: readonly string[];
}

/** Puts the words of the service to the controls they are about. */
export function placeProblem(
  { errors = [], detail }: Pick<Problem, 'errors' | 'detail'>,
  sent: Sent,
  words: (message: string) => string,
): Placed {
  const trouble: Record<string, string> = {};
  const rest: string[] = [];
  for (const { field, message } of errors) {
    const control = controlOf(field, sent);
    if (control === undefined) rest.push(`${field}: ${words(message)}`);
    else trouble[control] ??= words(message);
  }
  if (errors.length === 0) rest.push(detail);
  return { trouble, rest };
}

/** Changed amounts of lines that the templates no longer plan: nobody needs them. */
export function staleLines(problem: Pick<Problem, 'errors'>, sent: Sent): string[] {
  return (problem.errors ?? []).flatMap(({ field, message }) => {
    const at = /^usage\[(\d+)\]\.line$/.exec(field)?.[1];
    const line = at === undefined ? undefined : sent.lines[Number(at)];
    return line !== undefined && message.startsWith('names no line') ? [line] : [];
  });
}
