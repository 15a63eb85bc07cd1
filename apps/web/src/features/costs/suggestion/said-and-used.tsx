import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { SuggestedLine, Suggestion } from '../api/suggest-version.js';
import { fullNameOf } from '../full-name.js';
import { shortMean } from '../usage.js';
import css from './suggestion-section.module.css';

interface Props {
  readonly data: Suggestion;
}

/** One sentence a line: first what differs, then the rest, closer together. */
export function SaidAndUsed({ data }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.suggestion;
  const n = format.number(String(data.restorations));
  const changed = data.lines.filter((line) => line.changed);
  const kept = data.lines.filter((line) => !line.changed);
  const suggested = data.additions.filter((each) => each.suggested);
  const rare = data.additions.filter((each) => !each.suggested);
  return (
    <>
      <ul className={css.lines} aria-label={words.title}>
        {changed.map((line) => (
          <Line key={line.lineNumber} line={line} n={n} />
        ))}
        {data.restorations > 0 && <Times data={data} n={n} />}
        {suggested.map((addition) => (
          <Addition key={addition.consumable.id} addition={addition} n={n} />
        ))}
      </ul>
      <ul className={css.kept} aria-label={words.kept}>
        {kept.map((line) => (
          <Line key={line.lineNumber} line={line} n={n} />
        ))}
        {rare.map((addition) => (
          <Addition key={addition.consumable.id} addition={addition} n={n} />
        ))}
      </ul>
    </>
  );
}

/** What was used without being planned. */
function Addition({
  addition,
  n,
}: {
  readonly addition: Suggestion['additions'][number];
  readonly n: string;
}) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.suggestion;
  const { consumable, restorations, dispensed, suggested } = addition;
  const amount = format.quantity(shortMean(dispensed), consumable.unit);
  return (
    <li>
      <span className={css.name}>
        {fullNameOf(consumable)}
        <small>{t.costs.one.byHand}</small>
      </span>
      <span>
        {words.unplanned(format.number(String(restorations)), n, amount)}
        {suggested && <span className={css.next}>{words.newLine}</span>}
      </span>
    </li>
  );
}

/** Minutes at the chair, and of assistants where somebody stated them. */
function Times({ data, n }: Props & { readonly n: string }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.suggestion;
  const minutes = (value: number) => words.minutesOf(format.number(String(value)));
  return (
    <>
      <li>
        <span className={css.name}>{words.chairTime}</span>
        <span>{words.took(minutes(data.minutes), n, minutes(data.usedMinutes))}</span>
      </li>
      {data.usedAssistantMinutes !== null && (
        <li>
          <span className={css.name}>{words.assistants}</span>
          <span>
            {words.took(minutes(data.assistantMinutes), n, minutes(data.usedAssistantMinutes))}
          </span>
        </li>
      )}
    </>
  );
}

function Line({ line, n }: { readonly line: SuggestedLine; readonly n: string }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.suggestion;
  const { unit, driver } = line;
  const amount = (value: string) =>
    unit === null ? words.ownUnit(format.number(value)) : format.quantity(shortMean(value), unit);
  const says = amount(line.dispensed);
  return (
    <li>
      <span className={css.name}>
        {line.consumable === null ? words.chosenShade : fullNameOf(line.consumable)}
        <small>{words.per(t.costs.one.drivers[driver] ?? driver)}</small>
      </span>
      {line.usedDispensed === null ? (
        <span className={css.quiet}>{words.saysOnly(says)}</span>
      ) : (
        <span className={line.changed ? undefined : css.quiet}>
          {words.says(says, n, amount(line.usedDispensed))}
          {line.changed && (
            <span className={css.next}>{words.suggested(amount(line.suggestedDispensed))}</span>
          )}
        </span>
      )}
    </li>
  );
}
