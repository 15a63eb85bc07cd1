import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readLabel } from '#lib/labels';
import { projectFolder } from '#lib/platform';

/** Labels read per second on one core, on the published examples and on what a delivery looks like. */
const LIMIT = 50_000;
const SECONDS = 2;
const WARM_UP = 20_000;
const OPTIONS = { currentYear: 2026 };
const KINDS = [
  'bracketed-parse',
  'concatenated-parse',
  'digital-link-parse',
  'element-string-parse',
  'primary-parse',
  'scan-data-parse',
  'secondary-parse',
  'udi-normalise',
];

const DELIVERY = [
  ']d201095212345432131726123110ABC123\u001d21S-1',
  ']C101095212345432131726123110ABC123',
  '(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234',
  'https://id.gs1.org/01/09520123456788/10/ABC1/21/12345?17=180426',
  '+A99912345/$$902345710X3/16D20111212/14D20200906/S77DEFG45F',
  ']E09521234543213',
];

function published(): string[] {
  const file = join(projectFolder(), 'libs/labels/src/vectors.json');
  const { vectors } = JSON.parse(readFileSync(file, 'utf8')) as { vectors: [string, unknown][] };
  return vectors.flatMap(([kind, input]) =>
    KINDS.includes(kind) && typeof input === 'string' ? [input] : [],
  );
}

/** By the time this process had a core, so that what else runs here does not count. */
function perSecond(texts: readonly string[], seconds: number): { rate: number; read: number } {
  let done = 0;
  let read = 0;
  const end = performance.now() + seconds * 1000;
  const before = process.cpuUsage();
  while (performance.now() < end) {
    for (const text of texts) if (readLabel(text, OPTIONS).ok) read += 1;
    done += texts.length;
  }
  const { user, system } = process.cpuUsage(before);
  return { rate: done / ((user + system) / 1e6), read: (read / done) * texts.length };
}

function measure(what: string, texts: readonly string[]): boolean {
  for (let done = 0; done < WARM_UP; done += texts.length) {
    for (const text of texts) readLabel(text, OPTIONS);
  }
  const { rate, read } = perSecond(texts, SECONDS);
  const counts = `${Math.round(read)} of ${texts.length} are labels`;
  const verdict = rate >= LIMIT ? '' : `   BELOW ${LIMIT}`;
  console.log(`${what.padEnd(24)} ${rate.toFixed(0).padStart(9)} labels/s   ${counts}${verdict}`);
  return rate >= LIMIT;
}

const fast = [measure('published examples', published()), measure('a delivery', DELIVERY)];
console.log('No library of the registry is installed to compare with.');
if (fast.includes(false)) process.exitCode = 1;
