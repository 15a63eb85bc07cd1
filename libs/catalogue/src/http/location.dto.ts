import {
  ChoiceField,
  FlagField,
  IdField,
  OutChoice,
  OutFlag,
  OutId,
  OutList,
  OutText,
  TextField,
} from '#lib/platform';
import { LOCATION_KINDS, type LocationKind } from '../domain/location-tree.js';

export class NewLocationDto {
  @IdField({ optional: true, description: 'Made by the sender; sent again it changes nothing.' })
  id?: string;

  @TextField(120, { example: 'Surgery 1' })
  name: string;

  @ChoiceField(LOCATION_KINDS, { example: 'room' })
  kind: LocationKind;

  @IdField({ optional: true, description: 'Where it draws from when it has nothing itself.' })
  parentId?: string | null;
}

export class LocationChangesDto {
  @TextField(120, { optional: true })
  name?: string;

  @ChoiceField(LOCATION_KINDS, { optional: true })
  kind?: LocationKind;

  @IdField({ optional: true, description: 'Null: it draws from itself alone.' })
  parentId?: string | null;

  @FlagField({ optional: true, description: 'Only an empty location can be taken out of use.' })
  active?: boolean;
}

export class LocationDto {
  @OutId()
  id: string;

  @OutText({ example: 'Surgery 1' })
  name: string;

  @OutChoice(LOCATION_KINDS, { example: 'room' })
  kind: LocationKind;

  @OutId({ nullable: true })
  parentId: string | null;

  @OutFlag()
  active: boolean;
}

export class LocationPageDto {
  @OutList(() => LocationDto)
  items: readonly LocationDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}
