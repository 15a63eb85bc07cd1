import { BurstReader, type Scanned, SEPARATOR } from './burst.js';
import { type FieldState, focusedField, restore } from './field-state.js';

/** A scanner that ends with carriage return and line feed presses Enter twice. */
const SECOND_ENTER = 150;

const MODIFIERS = new Set(['Shift', 'Control', 'Alt', 'AltGraph', 'CapsLock', 'NumLock', 'Meta']);

/** Reads along on the keyboard, wherever the focus is, and tells what a hand scanner typed. */
class KeyboardListener {
  private readonly burst = new BurstReader();
  private before: FieldState | undefined;
  private numpad = '';
  private endedAt = Number.NEGATIVE_INFINITY;

  constructor(private readonly onScan: (scanned: Scanned) => void) {}

  readonly down = (event: KeyboardEvent): void => {
    if (MODIFIERS.has(event.key)) return;
    if (event.key === 'Enter') {
      this.end(event);
      return;
    }
    if (event.altKey && /^Numpad\d$/.test(event.code)) {
      this.numpad += event.code.slice(-1);
      return;
    }
    const key = event.repeat || event.isComposing ? undefined : characterOf(event);
    if (key === undefined) {
      this.burst.reset();
      return;
    }
    this.press(key, event);
    // Ctrl and the key of the separator would make the page larger on a German keyboard.
    if (key === SEPARATOR && this.burst.isRunning) event.preventDefault();
  };

  /** Some scanners write a character as Alt and its number, the same on every keyboard. */
  readonly up = (event: KeyboardEvent): void => {
    if (event.key !== 'Alt' || this.numpad === '') return;
    const character = String.fromCharCode(Number(this.numpad) % 256);
    this.numpad = '';
    this.press(character, event);
  };

  private press(key: string, event: KeyboardEvent): void {
    const { code, shiftKey, timeStamp } = event;
    const before = focusedField();
    const stroke = { key, code: key === SEPARATOR ? '' : code, shift: shiftKey, at: timeStamp };
    if (this.burst.press(stroke)) this.before = before;
  }

  private end(event: KeyboardEvent): void {
    const second = event.timeStamp - this.endedAt < SECOND_ENTER;
    const scanned = second
      ? undefined
      : this.burst.end(event.timeStamp, focusedField() !== undefined);
    if (!second && scanned === undefined) return;
    // The form around the field must not be sent, the button in focus not pressed.
    event.preventDefault();
    event.stopImmediatePropagation();
    if (scanned === undefined) return;
    this.endedAt = event.timeStamp;
    if (this.before) restore(this.before);
    this.before = undefined;
    this.onScan(scanned);
  }
}

/** The character of a key; undefined for keys that no scanner presses. */
function characterOf(event: KeyboardEvent): string | undefined {
  const { key, code, ctrlKey, metaKey, altKey } = event;
  if (key === 'Dead') return '\ufffd'; // an accent that waits for its letter; its place is known
  const altGraph = event.getModifierState('AltGraph');
  if (ctrlKey && !altGraph) return code === 'BracketRight' ? SEPARATOR : undefined;
  if (metaKey || (altKey && !altGraph)) return undefined;
  return [...key].length === 1 ? key : undefined;
}

/** Listens until what it answers with is called. */
export function listenForScans(onScan: (scanned: Scanned) => void): () => void {
  const listener = new KeyboardListener(onScan);
  window.addEventListener('keydown', listener.down, { capture: true });
  window.addEventListener('keyup', listener.up, { capture: true });
  return () => {
    window.removeEventListener('keydown', listener.down, { capture: true });
    window.removeEventListener('keyup', listener.up, { capture: true });
  };
}
