import type { KeyboardEvent } from 'react';

// What a part of a drawing is to a keyboard and a screen reader; SVG has no elements for these.

export const GROUP = { role: 'group' } as const;

interface Part {
  readonly label: string;
  readonly isOn: boolean;
  /** The one part of its drawing that the Tab key stops at. */
  readonly isStop: boolean;
  readonly onPress: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
  /** The pointer or the keyboard has come to it, or has left it. */
  readonly onPoint?: (pointed: boolean) => void;
}

function partOf({ label, isStop, onPress, onKey, onPoint }: Part) {
  const come = () => onPoint?.(true);
  const leave = () => onPoint?.(false);
  return {
    'aria-label': label,
    tabIndex: isStop ? 0 : -1,
    onClick: onPress,
    onKeyDown: onKey,
    onPointerEnter: come,
    onPointerLeave: leave,
    onFocus: come,
    onBlur: leave,
  };
}

export function asButton(part: Part) {
  return { ...partOf(part), role: 'button', 'aria-pressed': part.isOn } as const;
}

export function asCheckbox(part: Part) {
  return { ...partOf(part), role: 'checkbox', 'aria-checked': part.isOn } as const;
}
