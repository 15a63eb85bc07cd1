import { ApiProperty } from '@nestjs/swagger';
import type { CostShareKey, Role } from '#lib/platform';
import {
  COST_SHARE_KEYS,
  OutChoice,
  OutDate,
  OutId,
  OutInstant,
  OutObject,
  OutText,
  OutWhole,
  ROLES,
  TextField,
} from '#lib/platform';
import { PERMISSIONS, type Permission } from '../domain/permissions.js';

export class SignInDto {
  @TextField(120, { example: 'mara.lindt' })
  signInName: string;

  @TextField(200, { example: 'a long pass phrase' })
  password: string;
}

export class MeDto {
  @OutId()
  id: string;

  @OutText({ example: 'Mara Lindt' })
  displayName: string;

  @OutText({ example: 'mara.lindt' })
  signInName: string;

  @OutChoice(ROLES, { example: 'assistant' })
  role: Role;
}

export class PracticeDto {
  @OutId()
  id: string;

  @OutText({ example: 'Practice at the Old Mill' })
  name: string;

  @OutText({ example: 'Europe/Berlin', description: 'Decides which day "today" is.' })
  timeZone: string;

  @OutText({ example: 'EUR', description: 'ISO 4217. Every price in the book is in it.' })
  currency: string;

  @OutChoice(['iso', 'universal'], { description: 'How teeth are written on screens.' })
  toothNotation: 'iso' | 'universal';

  @OutChoice(COST_SHARE_KEYS, { description: 'How the cost of a whole visit is split.' })
  costShareKey: CostShareKey;

  @OutWhole({ example: 60, description: 'Warn so many days before a lot expires.' })
  expiryWarningDays: number;
}

export class SessionDto {
  @OutObject(() => MeDto)
  person: MeDto;

  @OutObject(() => PracticeDto)
  practice: PracticeDto;

  @ApiProperty({
    type: 'array',
    items: { type: 'string', enum: [...PERMISSIONS] },
    description: 'What this person may do.',
    example: ['catalogue.read', 'visits.post'],
  })
  permissions: readonly Permission[];

  @OutDate({ example: '2026-05-04', description: "The practice's day." })
  today: string;
}

export class NewSessionDto extends SessionDto {
  @OutInstant({ example: '2026-05-04T20:00:00.000Z' })
  expiresAt: Date;
}
