import { REASONS } from '#lib/dentition';
import { OutChoice, OutDecimal, OutFlag, OutId, OutObject, OutText, OutWhole } from '#lib/platform';
import { VOLUME_SOURCES } from '#lib/procedures';

export class QuoteNameDto {
  @OutId()
  id: string;

  @OutText()
  name: string;
}

export class QuotedRestorationAnswerDto {
  @OutText({ example: '11' })
  tooth: string;

  @OutText({ example: 'MI' })
  surfaces: string;

  @OutChoice(REASONS)
  reason: string;

  @OutObject(() => QuoteNameDto)
  template: QuoteNameDto;

  @OutWhole({ description: 'How often it is expected to be made; more than 1 are retakes.' })
  attempts: number;

  @OutFlag({ description: 'What its template plans for anaesthesia is left out.' })
  withoutAnaesthetic: boolean;

  @OutDecimal({ description: 'Of the cavity, in mm3; what the paste is planned from.' })
  volumeMm3: string;

  @OutChoice(VOLUME_SOURCES, { description: 'Where the volume comes from.' })
  volumeSource: string;

  @OutText({ nullable: true })
  feeCode: string | null;

  @OutDecimal()
  fee: string;

  @OutDecimal({ nullable: true, description: "The plan's allowed fee; null: it names none." })
  allowedFee: string | null;

  @OutDecimal({ nullable: true, description: 'What a downgrade counts from; null: none.' })
  alternateFee: string | null;

  @OutDecimal({ nullable: true, description: 'Share from 0 to 1; null: not covered.' })
  coverage: string | null;

  @OutWhole({ description: 'Recorded ones of this template and reason that a range rests on.' })
  recorded: number;
}
