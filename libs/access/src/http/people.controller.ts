import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiOkResponse,
  ApiOperation,
  ApiResponse,
  ApiTags,
} from '@nestjs/swagger';
import { type Actor, IdPipe, PageQuery, pageLimit } from '#lib/platform';
import { ChangePerson } from '../app/change-person.js';
import { CreatePerson } from '../app/create-person.js';
import { GetPerson } from '../app/get-person.js';
import { ListDentists } from '../app/list-dentists.js';
import { ListPeople } from '../app/list-people.js';
import { CurrentActor, Needs } from './decorators.js';
import {
  ChangePersonDto,
  CreatePersonDto,
  DentistsDto,
  PeopleDto,
  PersonDto,
} from './people.dto.js';

@ApiTags('people')
@Controller('people')
export class PeopleController {
  constructor(
    private readonly listPeople: ListPeople,
    private readonly getPerson: GetPerson,
    private readonly createPerson: CreatePerson,
    private readonly changePerson: ChangePerson,
  ) {}

  @Get()
  @Needs('people.manage')
  @ApiOperation({ operationId: 'listPeople', summary: 'Everybody of the practice, by name' })
  @ApiOkResponse({ type: PeopleDto })
  async list(@CurrentActor() actor: Actor, @Query() query: PageQuery): Promise<PeopleDto> {
    return this.listPeople.run(actor, { limit: pageLimit(query), cursor: query.cursor });
  }

  @Post()
  @Needs('people.manage')
  @ApiOperation({ operationId: 'createPerson', summary: 'Add somebody who can sign in' })
  @ApiCreatedResponse({ type: PersonDto })
  @ApiResponse({ status: 409, description: 'The sign-in name is taken.' })
  async create(@CurrentActor() actor: Actor, @Body() body: CreatePersonDto): Promise<PersonDto> {
    const { id, ...person } = body;
    return this.createPerson.run(actor, person, id);
  }

  @Get(':id')
  @Needs('people.manage')
  @ApiOperation({ operationId: 'getPerson', summary: 'One person' })
  @ApiOkResponse({ type: PersonDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<PersonDto> {
    return this.getPerson.run(actor, id);
  }

  @Patch(':id')
  @Needs('people.manage')
  @ApiOperation({
    operationId: 'changePerson',
    summary: 'Change name, role or password, or let somebody leave',
    description: 'A new password ends their sessions; leaving also ends their tokens.',
  })
  @ApiOkResponse({ type: PersonDto })
  @ApiResponse({ status: 409, description: 'The practice would be left without an owner.' })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: ChangePersonDto,
  ): Promise<PersonDto> {
    return this.changePerson.run(actor, id, body);
  }
}

@ApiTags('people')
@Controller('dentists')
export class DentistsController {
  constructor(private readonly listDentists: ListDentists) {}

  @Get()
  @Needs('visits.read')
  @ApiOperation({ operationId: 'listDentists', summary: 'Those by whom a visit can be done' })
  @ApiOkResponse({ type: DentistsDto })
  async list(@CurrentActor() actor: Actor): Promise<DentistsDto> {
    return { items: await this.listDentists.run(actor) };
  }
}
