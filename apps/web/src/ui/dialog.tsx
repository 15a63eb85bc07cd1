import { Modal } from '@mantine/core';
import { type ReactNode, useEffect } from 'react';
import { useText } from '../text/text-provider.js';

interface Props {
  readonly title: string;
  readonly opened: boolean;
  readonly onClose: () => void;
  readonly size?: 'md' | 'lg' | 'xl';
  readonly children: ReactNode;
}

const FIELDS = 'input:not([role="combobox"], [type="hidden"], :disabled), select, textarea';

/** The keyboard begins in the first field, unless the content names another place. */
function beginInField(content: HTMLElement | null): void {
  if (content === null || content.querySelector('[data-autofocus]') !== null) return;
  const first = content.querySelector('input:not([type="hidden"]), select, textarea');
  if (first?.matches(FIELDS)) first.setAttribute('data-autofocus', '');
}

/** What is done with the focus by others is done by then. */
const SETTLED_MS = 60;

/**
 * The keyboard goes back to where it was before, also when the dialog is taken away as a whole; to
 * the content when that is gone.
 */
function useFocusBack(opened: boolean): void {
  useEffect(() => {
    if (!opened) return;
    const before = document.activeElement;
    return () => {
      window.setTimeout(() => {
        const isLost = () => document.activeElement === document.body;
        if (isLost() && before instanceof HTMLElement) before.focus({ preventScroll: true });
        if (isLost()) document.getElementById('content')?.focus({ preventScroll: true });
      }, SETTLED_MS);
    };
  }, [opened]);
}

export function Dialog({ title, opened, onClose, size = 'md', children }: Props) {
  const t = useText();
  useFocusBack(opened);
  return (
    <Modal
      opened={opened}
      onClose={onClose}
      title={title}
      size={size}
      closeButtonProps={{ 'aria-label': t.ui.close, size: 'lg' }}
      overlayProps={{ backgroundOpacity: 0.45 }}
      centered
    >
      <div ref={beginInField}>{children}</div>
    </Modal>
  );
}
