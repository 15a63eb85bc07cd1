import { Button } from '@mantine/core';
import { useText } from '../text/text-provider.js';

export function PrintButton() {
  const t = useText();
  return (
    <Button variant="default" onClick={() => window.print()}>
      {t.ui.print}
    </Button>
  );
}
