import {
  CAVITY_CLASSES,
  CAVITY_SIZES,
  type CavityClass,
  type CavitySize,
  REASONS,
  type Reason,
} from '#lib/dentition';
import {
  ChoiceField,
  DecimalField,
  IdField,
  IdListField,
  TextField,
  WholeField,
} from '#lib/platform';

/** What is said of a restoration besides its template. */
export class RestorationFactsDto {
  @IdField({ optional: true, description: 'Made by the sender; made here when left out.' })
  id?: string;

  @TextField(3, { description: 'In the tooth notation of the visit.', example: '11' })
  tooth: string;

  @TextField(12, {
    description:
      'M, D, F or B or V, L or P, and O on back or I on front teeth; in any order and case.',
    example: 'MI',
  })
  surfaces: string;

  @ChoiceField(CAVITY_CLASSES, {
    optional: true,
    description: 'Left out where there is no cavity, e.g. for a veneer.',
    example: 'IV',
  })
  cavityClass?: CavityClass | null;

  @ChoiceField(CAVITY_SIZES, {
    optional: true,
    description: 'Chooses the planning volume and depth; medium when left out.',
  })
  size?: CavitySize | null;

  @ChoiceField(REASONS, { description: 'Why it is made.', example: 'decay' })
  reason: Reason;

  @IdListField({ optional: true, max: 8, description: 'The consumables chosen as shades.' })
  shades?: string[] | null;

  @WholeField(1, 10, { optional: true, description: '1 when left out; more are retakes.' })
  attempts?: number | null;

  @WholeField(1, 10, { optional: true, description: '1 when left out.' })
  cycles?: number | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '10000',
    description: 'The planning volume of its class and size when left out.',
    example: '25',
  })
  volumeMm3?: string | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '100',
    description: 'Of the cavity; with width and depth instead of a volume.',
    example: '4',
  })
  lengthMm?: string | null;

  @DecimalField({ optional: true, above: '0', max: '100', description: 'Of the cavity.' })
  widthMm?: string | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '100',
    description: 'The planning depth of its class and size when left out.',
    example: '2.5',
  })
  depthMm?: string | null;

  @WholeField(0, 1440, {
    optional: true,
    description: "Chair time; the template's when left out.",
    example: 45,
  })
  minutes?: number | null;

  @WholeField(0, 1440, {
    optional: true,
    description: "Time of assistants; the template's when left out.",
    example: 45,
  })
  assistantMinutes?: number | null;
}

/** One restoration of a visit. */
export class RestorationDto extends RestorationFactsDto {
  @IdField({ description: 'The procedure template it follows.' })
  templateId: string;

  @WholeField(1, 1_000_000, { optional: true, description: 'The latest when left out.' })
  templateVersion?: number | null;
}
