import { MinLength } from 'class-validator';
import { ChoiceField, ObjectField, OutFlag, OutId, TextField } from '#lib/platform';
import { SHORTEST_PASSWORD } from '../domain/person-rules.js';

export class FirstStartQuery {
  @TextField(200, { description: 'The secret from the link.' })
  token: string;
}

export class LinkStateDto {
  @OutFlag({ description: 'Whether this link can still open the book.', example: true })
  good: boolean;
}

export class FirstPracticeDto {
  @TextField(200, { example: 'Practice at the Old Mill' })
  name: string;

  @TextField(64, { example: 'Europe/Berlin' })
  timeZone: string;

  @TextField(3, { example: 'EUR' })
  currency: string;

  @ChoiceField(['iso', 'universal'], { optional: true })
  toothNotation?: 'iso' | 'universal';
}

export class FirstOwnerDto {
  @TextField(120, { example: 'Dr. Ilse Brandt' })
  displayName: string;

  @TextField(120, { example: 'ilse.brandt' })
  signInName: string;

  @TextField(200, { example: 'a long pass phrase' })
  @MinLength(SHORTEST_PASSWORD, { message: `must be at least ${SHORTEST_PASSWORD} characters` })
  password: string;
}

export class FirstStartDto {
  @TextField(200, { description: 'The secret from the link.' })
  token: string;

  @ObjectField(() => FirstPracticeDto)
  practice: FirstPracticeDto;

  @ObjectField(() => FirstOwnerDto)
  owner: FirstOwnerDto;
}

export class StartedDto {
  @OutId()
  practiceId: string;

  @OutId({ description: 'The owner, who can sign in now.' })
  personId: string;
}
