import { Modal } from '@mantine/core';
import type { ReactNode } from 'react';
import { useText } from '../text/text-provider.js';

interface Props {
  readonly title: string;
  readonly opened: boolean;
  readonly onClose: () => void;
  readonly size?: 'md' | 'lg' | 'xl';
  readonly children: ReactNode;
}

export function Dialog({ title, opened, onClose, size = 'md', children }: Props) {
  const t = useText();
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
      {children}
    </Modal>
  );
}
