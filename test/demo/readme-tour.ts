import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** One answer that README shows: what is asked, and the excerpt that stands there. */
export interface TourStep {
  readonly path: string;
  /** Later steps may use parts of this answer under the name. */
  readonly name: string | undefined;
  readonly excerpt: unknown;
}

const README = fileURLToPath(new URL('../../README.md', import.meta.url));
const BLOCK = /<!-- GET (\S+)(?: as (\w+))? -->\n```json\n([\s\S]*?)```/g;

/** The tour of README: comments such as <!-- GET /api/lots?number=K1 as lot --> before a JSON block. */
export function readTour(): TourStep[] {
  return [...readFileSync(README, 'utf8').matchAll(BLOCK)].map(
    ([, path = '', name, json = '']) => ({
      path,
      name,
      excerpt: JSON.parse(json) as unknown,
    }),
  );
}

/** Puts parts of earlier answers into a path: {lot.items.0.id}. */
export function fillPath(path: string, answers: ReadonlyMap<string, unknown>): string {
  return path.replace(/\{(\w+)\.([\w.]+)\}/g, (_, name: string, parts: string) => {
    let value = answers.get(name);
    for (const part of parts.split('.')) value = (value as Record<string, unknown>)[part];
    return encodeURIComponent(String(value));
  });
}

/** The part of an answer that an excerpt shows: the same keys, and of a list the first entries. */
export function cutTo(excerpt: unknown, answer: unknown): unknown {
  if (Array.isArray(excerpt) && Array.isArray(answer)) {
    return excerpt.map((part, i) => cutTo(part, answer[i]));
  }
  if (typeof excerpt !== 'object' || excerpt === null) return answer;
  if (typeof answer !== 'object' || answer === null) return answer;
  return Object.fromEntries(
    Object.entries(excerpt).map(([key, part]) => [
      key,
      cutTo(part, (answer as Record<string, unknown>)[key]),
    ]),
  );
}
