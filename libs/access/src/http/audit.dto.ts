import { ApiProperty } from '@nestjs/swagger';
import { IdField, OutId, OutInstant, OutList, OutText, PageQuery, TextField } from '#lib/platform';

export class AuditQuery extends PageQuery {
  @TextField(60, { optional: true, example: 'person', description: 'Only this kind of thing.' })
  subjectKind?: string;

  @TextField(200, { optional: true, description: 'Only what happened to this thing.' })
  subjectId?: string;

  @IdField({ optional: true, description: 'Only what this person did.' })
  personId?: string;
}

export class AuditEntryDto {
  @OutId()
  id: string;

  @OutInstant({ example: '2026-05-04T08:00:00.123456Z' })
  recordedAt: string;

  @OutId({ nullable: true, description: 'Who did it; null when nobody was signed in.' })
  personId: string | null;

  @OutText({ nullable: true, example: 'Dr. Ilse Brandt' })
  personName: string | null;

  @OutText({ example: 'person.changed' })
  action: string;

  @OutText({ example: 'person' })
  subjectKind: string;

  @OutText({ example: '01900000-0000-7000-8000-000000000001' })
  subjectId: string;

  @ApiProperty({ type: 'object', additionalProperties: true, description: 'What changed.' })
  details: Readonly<Record<string, unknown>>;
}

export class AuditEntriesDto {
  @OutList(() => AuditEntryDto)
  items: readonly AuditEntryDto[];

  @OutText({ nullable: true, example: null, description: 'Asks for the next page.' })
  nextCursor: string | null;
}
