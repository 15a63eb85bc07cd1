import { ApiProperty } from '@nestjs/swagger';
import {
  ChoiceField,
  COST_SHARE_KEYS,
  type CostShareKey,
  OutChoice,
  OutList,
  OutText,
  ROLES,
  type Role,
  TextField,
  WholeField,
} from '#lib/platform';
import { PERMISSIONS, type Permission } from '../domain/permissions.js';

export class ChangePracticeDto {
  @TextField(200, { optional: true, example: 'Practice at the Old Mill' })
  name?: string;

  @TextField(64, { optional: true, example: 'Europe/Berlin' })
  timeZone?: string;

  @ChoiceField(['iso', 'universal'], { optional: true })
  toothNotation?: 'iso' | 'universal';

  @ChoiceField(COST_SHARE_KEYS, { optional: true })
  costShareKey?: CostShareKey;

  @WholeField(0, 3650, { optional: true, example: 60 })
  expiryWarningDays?: number;
}

export class AllowedDto {
  @ApiProperty({ type: String, enum: [...PERMISSIONS], example: 'visits.post' })
  permission: Permission;

  @OutText({ example: 'record visits' })
  words: string;
}

export class RoleDto {
  @OutChoice(ROLES, { example: 'assistant' })
  role: Role;

  @OutList(() => AllowedDto, { description: 'What this role may do.' })
  may: AllowedDto[];
}

export class RolesDto {
  @OutList(() => RoleDto)
  items: RoleDto[];
}
