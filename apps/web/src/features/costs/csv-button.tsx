import { Button } from '@mantine/core';
import { useText } from '../../text/text-provider.js';

/** The service's own CSV of what is on the screen. */
export function CsvButton({ href }: { readonly href: string }) {
  const t = useText();
  return (
    <Button component="a" variant="default" href={href} download>
      {t.costs.csv}
    </Button>
  );
}
