import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { notify } from '../../ui/notice-store.js';
import { useReport } from '../../ui/use-report.js';
import { revokeToken, type Token } from './api/tokens.js';
import css from './parts.module.css';

interface Props {
  readonly token: Token | undefined;
  readonly onClose: () => void;
}

export function RevokeDialog({ token, onClose }: Props) {
  const w = useText().setupTokens;
  const report = useReport();
  const { book, isBooking } = useBooking({ send: revokeToken, changes: [['tokens']] });
  const revoke = async ({ id, name }: Token) => {
    await book(id);
    notify({ tone: 'done', text: w.revoked(name) });
    onClose();
  };
  return (
    <Dialog title={w.revokeTitle} opened={token !== undefined} onClose={onClose}>
      {token && (
        <div className={css.stack}>
          <p>{w.revokeWhat(token.name)}</p>
          <div className={css.buttons}>
            <Button
              loading={isBooking}
              onClick={() => void revoke(token).catch(report)}
              data-autofocus
            >
              {w.revoke}
            </Button>
            <Button variant="default" onClick={onClose}>
              {w.keep}
            </Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
