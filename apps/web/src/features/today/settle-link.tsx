import { Button } from '@mantine/core';
import { createLink } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { titleOf } from './alert-words.js';
import type { Alert } from './api/list-alerts.js';
import { waysOf } from './ways.js';

const ButtonLink = createLink(Button<'a'>);

/** The one thing that settles an alert, as far as the person may do it. */
export function SettleLink({ alert }: { readonly alert: Alert }) {
  const t = useText();
  const may = useMay();
  const way = waysOf(alert).find(({ needs }) => may(needs));
  if (!way) return null;
  const { label, needs: _, ...link } = way;
  return (
    <ButtonLink
      component="a"
      variant="default"
      aria-label={`${t.today.actions[label]}: ${titleOf(alert, t)}`}
      {...link}
    >
      {t.today.actions[label]}
    </ButtonLink>
  );
}
