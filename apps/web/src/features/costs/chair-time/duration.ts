import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';

/** '12.5 h'; below an hour '40 min'. */
export function useDuration(): (minutes: number) => string {
  const t = useText();
  const format = useFormat();
  const { hours, minutes: inMinutes } = t.costReports.chairTime;
  return (minutes) =>
    minutes < 60 && minutes > -60
      ? inMinutes(format.number(String(Math.round(minutes))))
      : hours(format.number((minutes / 60).toFixed(1)));
}
