import type { Row } from './row.js';

/** What is seldom said of a planned restoration; all of it may stay as the planning values are. */
export type Rare = Pick<Row, 'withoutAnaesthetic' | 'retakes' | 'lengthMm' | 'widthMm' | 'depthMm'>;

const MEASURE = String.raw`\d{1,3}(?:p\d{1,3})?`;
const WORD = new RegExp(`^(n?)(?:x(\\d))?(?:l(${MEASURE}))?(?:w(${MEASURE}))?(?:d(${MEASURE}))?$`);

const written = (letter: string, typed: string) => {
  const word = typed.trim().replace(',', '.').replace('.', 'p');
  return word === '' ? '' : letter + word;
};

/** 'nx2l4w3d2p5': without anaesthetic, 2 retakes, 4 by 3 by 2.5 mm; '' where nothing is said. */
export function writeRare(of: Rare): string {
  return [
    of.withoutAnaesthetic ? 'n' : '',
    written('x', of.retakes),
    written('l', of.lengthMm),
    written('w', of.widthMm),
    written('d', of.depthMm),
  ].join('');
}

/** What cannot be read counts as not said, and so does an address of before this could be said. */
export function readRare(word: string): Rare {
  const [, bare = '', retakes = '', ...measures] = WORD.exec(word) ?? [];
  const [lengthMm = '', widthMm = '', depthMm = ''] = measures.map((each) =>
    (each ?? '').replace('p', '.'),
  );
  return { withoutAnaesthetic: bare !== '', retakes, lengthMm, widthMm, depthMm };
}
