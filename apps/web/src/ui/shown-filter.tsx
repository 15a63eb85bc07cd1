import { useText } from '../text/text-provider.js';
import { FilterSelect } from './filters.js';
import type { Shown } from './shown.js';
import { StatusMark } from './status-mark.js';

interface Props {
  readonly value: Shown | undefined;
  readonly onChoose: (show: Shown | undefined) => void;
}

/** Whether a list shows what is in use, what no longer is, or both. */
export function ShownFilter({ value, onChoose }: Props) {
  const w = useText().setup.show;
  return (
    <FilterSelect
      label={w.label}
      value={value}
      all={w.active}
      choices={[
        { value: 'retired', label: w.retired },
        { value: 'all', label: w.all },
      ]}
      onChoose={onChoose}
    />
  );
}

export function InUseMark({ active }: { readonly active: boolean }) {
  const w = useText().setup.state;
  return <StatusMark tone={active ? 'good' : 'quiet'}>{active ? w.active : w.retired}</StatusMark>;
}
