import { DateField, IdField, OutId, OutInstant, OutList, OutText, TextField } from '#lib/platform';

export class CreateTokenDto {
  @IdField({ optional: true, description: 'An id made by the sender.' })
  id?: string;

  @TextField(120, { example: 'Label printer' })
  name: string;

  @DateField({ optional: true, description: 'The last day it works; without one, until revoked.' })
  expiresOn?: string;
}

export class TokenDto {
  @OutId()
  id: string;

  @OutText({ example: 'Label printer' })
  name: string;

  @OutInstant({ example: '2026-05-04T08:00:00.000Z' })
  createdAt: Date;

  @OutInstant({ nullable: true, example: '2026-11-30T23:00:00.000Z' })
  expiresAt: Date | null;

  @OutInstant({ nullable: true, example: null })
  revokedAt: Date | null;
}

export class NewTokenDto extends TokenDto {
  @OutText({ description: 'Shown once. Send it as Authorization: Bearer.', example: 'tb_…' })
  secret: string;
}

export class TokensDto {
  @OutList(() => TokenDto)
  items: TokenDto[];
}
