import type { Page } from 'playwright-core';

const SHIFTED = ')!@#$%^&*(';

interface Key {
  readonly key: string;
  readonly code: string;
  readonly shift: boolean;
}

/** The key of a US keyboard on which a character stands. */
function usKey(key: string): Key {
  if (/[a-z]/i.test(key)) {
    return { key, code: `Key${key.toUpperCase()}`, shift: key !== key.toLowerCase() };
  }
  if (/\d/.test(key)) return { key, code: `Digit${key}`, shift: false };
  const above = SHIFTED.indexOf(key);
  if (above >= 0) return { key, code: `Digit${above}`, shift: true };
  const others: Record<string, [string, boolean]> = {
    ...{ ']': ['BracketRight', false], '-': ['Minus', false], '+': ['Equal', true] },
    ...{ '/': ['Slash', false], '.': ['Period', false] },
  };
  const [code, shift] = others[key] ?? ['', false];
  return { key, code, shift };
}

/** On a computer that is set to German, the keys of a scanner that is set to US. */
const GERMAN: Readonly<Record<string, string>> = {
  ...{ y: 'z', z: 'y', Y: 'Z', Z: 'Y', '-': 'ß', '/': '-', ']': '+', '(': ')', ')': '=' },
};

/**
 * Types like a hand scanner: all keys at once, then Enter, straight into the browser's input queue.
 * U+001D is sent as scanners do it, Ctrl and the key of the closing bracket.
 */
export async function wedge(page: Page, text: string, layout: 'us' | 'de' = 'us'): Promise<void> {
  const tools = await page.context().newCDPSession(page);
  const sent = [...text].map((character) => {
    if (character === '\u001d') {
      const code = 'BracketRight';
      return tools.send('Input.dispatchKeyEvent', {
        type: 'rawKeyDown',
        key: ']',
        code,
        modifiers: 2,
      });
    }
    const { key, code, shift } = usKey(character);
    const typed = layout === 'de' ? (GERMAN[key] ?? key) : key;
    const modifiers = shift ? 8 : 0;
    return tools.send('Input.dispatchKeyEvent', {
      ...{ type: 'keyDown', key: typed, code, text: typed, modifiers },
    });
  });
  const enter = { key: 'Enter', code: 'Enter', text: '\r', windowsVirtualKeyCode: 13 };
  sent.push(tools.send('Input.dispatchKeyEvent', { type: 'keyDown', ...enter }));
  sent.push(tools.send('Input.dispatchKeyEvent', { type: 'keyUp', ...enter }));
  await Promise.all(sent);
  await tools.detach();
}
