/** One key as the scanner pressed it. */
export interface Stroke {
  /** What the keyboard of this computer makes of it. */
  readonly key: string;
  /** Which key it was, by its place: 'KeyY' is the key between T and U, or left of X in German. */
  readonly code: string;
  readonly shift: boolean;
  /** Milliseconds, of the event itself. */
  readonly at: number;
}

/** What a hand scanner typed, read in two ways. */
export interface Scanned {
  /** As this computer understood the keys. */
  readonly typed: string;
  /** As a scanner set to a US keyboard meant them. */
  readonly byPosition: string;
}

export const SEPARATOR = '\u001d';

/**
 * Nobody types many keys after another so soon; scanners need 1 to 35 ms for one (common practice, no
 * source). A busy computer may keep a single key waiting longer, so the mean decides.
 */
const LONGEST_PAUSE = 120;
const LONGEST_MEAN = 40;

/** Fewer could be a rolled hand. In a field, where somebody does type, it must also look like a label. */
const FEWEST = 4;
const FEWEST_IN_FIELD = 8;
const LABEL_START = /^(\d|[\](+*]|https?:)/i;

/** Gathers keys that follow each other as fast as only a scanner presses them. */
export class BurstReader {
  private strokes: Stroke[] = [];

  /** True when the key begins anew: what came before is somebody's typing. */
  press(stroke: Stroke): boolean {
    const last = this.strokes.at(-1);
    const fresh = last === undefined || stroke.at - last.at > LONGEST_PAUSE;
    if (fresh) this.strokes = [];
    this.strokes.push(stroke);
    return fresh;
  }

  get isRunning(): boolean {
    return this.strokes.length >= FEWEST;
  }

  reset(): void {
    this.strokes = [];
  }

  /** Enter: what was scanned; undefined when it was typed by hand. */
  end(at: number, inField: boolean): Scanned | undefined {
    const strokes = this.strokes;
    this.reset();
    const [first, last] = [strokes[0], strokes.at(-1)];
    if (!first || !last || at - last.at > LONGEST_PAUSE) return undefined;
    if (strokes.length < (inField ? FEWEST_IN_FIELD : FEWEST)) return undefined;
    if ((last.at - first.at) / (strokes.length - 1) > LONGEST_MEAN) return undefined;
    const typed = strokes.map(({ key }) => key).join('');
    const byPosition = strokes.map(onUsKeyboard).join('');
    if (inField && !LABEL_START.test(typed) && !LABEL_START.test(byPosition)) return undefined;
    return { typed, byPosition };
  }
}

const PLAIN: Readonly<Record<string, string>> = {
  ...{ Minus: '-_', Equal: '=+', BracketLeft: '[{', BracketRight: ']}', Backslash: '\\|' },
  ...{ Semicolon: ';:', Quote: '\'"', Backquote: '`~', Comma: ',<', Period: '.>', Slash: '/?' },
  ...{ Space: '  ' },
};
const SHIFTED_DIGITS = ')!@#$%^&*(';

/** The character on that key of a US keyboard; what the event says where the key is elsewhere. */
function onUsKeyboard({ key, code, shift }: Stroke): string {
  if (key === SEPARATOR) return key;
  const letter = /^Key([A-Z])$/.exec(code)?.[1];
  if (letter !== undefined) return shift ? letter : letter.toLowerCase();
  const digit = /^Digit(\d)$/.exec(code)?.[1];
  if (digit !== undefined) return shift ? (SHIFTED_DIGITS[Number(digit)] ?? key) : digit;
  return PLAIN[code]?.[shift ? 1 : 0] ?? key;
}
