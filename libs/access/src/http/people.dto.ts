import { MinLength, ValidateIf } from 'class-validator';
import {
  ChoiceField,
  FlagField,
  IdField,
  OutChoice,
  OutFlag,
  OutId,
  OutList,
  OutText,
  ROLES,
  type Role,
  TextField,
} from '#lib/platform';
import { SHORTEST_PASSWORD } from '../domain/person-rules.js';

const TOO_SHORT = { message: `must be at least ${SHORTEST_PASSWORD} characters` };

export class CreatePersonDto {
  @IdField({ optional: true, description: 'An id made by the sender.' })
  id?: string;

  @TextField(120, { example: 'Mara Lindt' })
  displayName: string;

  @TextField(120, { example: 'mara.lindt' })
  signInName: string;

  @TextField(200, { example: 'a long pass phrase' })
  @MinLength(SHORTEST_PASSWORD, TOO_SHORT)
  password: string;

  @ChoiceField(ROLES, { example: 'assistant' })
  role: Role;
}

export class ChangePersonDto {
  @TextField(120, { optional: true, example: 'Mara Lindt-Oster' })
  displayName?: string;

  @ChoiceField(ROLES, { optional: true, example: 'manager' })
  role?: Role;

  @FlagField({ optional: true, description: 'False ends every session and token at once.' })
  active?: boolean;

  @TextField(200, { optional: true, example: 'another long pass phrase' })
  @ValidateIf((body: ChangePersonDto) => body.password !== undefined && body.password !== null)
  @MinLength(SHORTEST_PASSWORD, TOO_SHORT)
  password?: string;
}

export class PersonDto {
  @OutId()
  id: string;

  @OutText({ example: 'Mara Lindt' })
  displayName: string;

  @OutText({ example: 'mara.lindt' })
  signInName: string;

  @OutChoice(ROLES, { example: 'assistant' })
  role: Role;

  @OutFlag({ example: true })
  active: boolean;
}

export class PeopleDto {
  @OutList(() => PersonDto)
  items: readonly PersonDto[];

  @OutText({ nullable: true, example: null, description: 'Asks for the next page.' })
  nextCursor: string | null;
}

export class DentistDto {
  @OutId()
  id: string;

  @OutText({ example: 'Dr. Ilse Brandt' })
  displayName: string;

  @OutFlag({ example: true })
  active: boolean;
}

export class DentistsDto {
  @OutList(() => DentistDto)
  items: readonly DentistDto[];
}
