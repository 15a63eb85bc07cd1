import { useQuery } from '@tanstack/react-query';
import { CAVITY_SIZES, formatSurfaces, formatTooth, REASONS, type Surface } from '#lib/dentition';
import { useText } from '../../../text/text-provider.js';
import { templatesQuery } from '../api/list-templates.js';
import { useChairside } from '../chairside-context.js';
import { withChange } from '../draft/change-draft.js';
import type { RestorationDraft } from '../draft/draft.js';
import { fittingClasses } from '../draft/fitting-class.js';
import { ofRestoration } from '../draft/trouble.js';
import { SurfaceDiagram } from '../mouth/surface-diagram.js';
import { RadioChips } from '../parts/chips.js';
import { CardHead } from './card-head.js';
import { CardMore } from './card-more.js';
import css from './restoration-card.module.css';
import { Retakes } from './retakes.js';
import { ShadeChips } from './shade-chips.js';
import { TemplateField } from './template-field.js';
import { withUsualTemplate } from './usual-template.js';

interface Props {
  readonly of: RestorationDraft;
}

/** One restoration: which faces of which tooth, why, and how it is made. */
export function RestorationCard({ of }: Props) {
  const t = useText();
  const { notation, trouble, change, settle } = useChairside();
  const templates = useQuery(templatesQuery).data?.items ?? [];
  const words = t.chairside.restoration;
  const label = formatTooth(of.tooth, notation);
  const at = (field: string) => {
    const control = ofRestoration(of.key, field);
    return { id: `control-${control}`, error: trouble[control] };
  };
  const set = (part: Partial<RestorationDraft>) => {
    settle(...Object.keys(part).map((field) => ofRestoration(of.key, field)));
    change((draft) => withChange(draft, of.key, part));
  };
  const toggle = (surface: Surface) => {
    const surfaces = of.surfaces.includes(surface)
      ? of.surfaces.filter((each) => each !== surface)
      : [...of.surfaces, surface];
    settle(ofRestoration(of.key, 'cavityClass'));
    set({ surfaces });
    // What was made the same way last time is offered until somebody chooses.
    change((draft) => withUsualTemplate(draft, of.key, templates));
  };
  return (
    <section className={css.card} aria-label={`${label} ${formatSurfaces(of.surfaces)}`}>
      <CardHead of={of} label={label} />
      <div className={css.body}>
        <SurfaceDiagram
          {...at('surfaces')}
          label={`${words.faces}, ${label}`}
          tooth={of.tooth}
          surfaces={of.surfaces}
          onToggle={toggle}
        />
        <div className={css.fields}>
          <RadioChips
            {...at('reason')}
            label={words.reason}
            value={of.reason}
            chips={REASONS.map((reason) => ({ value: reason, label: words.reasons[reason] }))}
            onChoose={(reason) => set({ reason })}
          />
          <div className={css.pair}>
            <ClassChips {...at('cavityClass')} of={of} onClass={set} />
            <RadioChips
              {...at('size')}
              label={words.size}
              value={of.size}
              chips={CAVITY_SIZES.map((size) => ({ value: size, label: words.sizes[size] }))}
              onChoose={(size) => set({ size })}
            />
          </div>
          <TemplateField {...at('templateId')} of={of} onChoose={(id) => set({ templateId: id })} />
          <ShadeChips {...at('shades')} of={of} onShades={(shades) => set({ shades })} />
          <Retakes {...at('attempts')} of={of} onAttempts={(attempts) => set({ attempts })} />
          <CardMore of={of} onChange={set} />
        </div>
      </div>
    </section>
  );
}

interface ClassProps {
  readonly id: string;
  readonly error: string | undefined;
  readonly of: RestorationDraft;
  readonly onClass: (chosen: Pick<RestorationDraft, 'cavityClass' | 'classChosen'>) => void;
}

/** Only the classes that these faces can have. */
function ClassChips({ id, error, of, onClass }: ClassProps) {
  const words = useText().chairside.restoration;
  const classes = fittingClasses(of.tooth, of.surfaces);
  const none = { value: 'none', label: words.noClass } as const;
  const unknown = classes.length === 0;
  return (
    <RadioChips
      id={id}
      error={error}
      label={words.class}
      hint={unknown ? words.classHint : undefined}
      value={of.cavityClass ?? 'none'}
      chips={unknown ? [] : [...classes.map((cls) => ({ value: cls, label: cls })), none]}
      onChoose={(cls) => onClass({ cavityClass: cls === 'none' ? null : cls, classChosen: true })}
    />
  );
}
