import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { ChangeLocation } from '../app/change-location.js';
import { CreateLocation } from '../app/create-location.js';
import { GetLocation } from '../app/get-location.js';
import { ListLocations } from '../app/list-locations.js';
import { ListQueryDto, listQuery } from './list-query.dto.js';
import {
  LocationChangesDto,
  LocationDto,
  LocationPageDto,
  NewLocationDto,
} from './location.dto.js';

@ApiTags('catalogue')
@Controller()
export class LocationsController {
  constructor(
    private readonly listLocations: ListLocations,
    private readonly getLocation: GetLocation,
    private readonly createLocation: CreateLocation,
    private readonly changeLocation: ChangeLocation,
  ) {}

  @Get('locations')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'listLocations', summary: 'Locations, by name' })
  @ApiOkResponse({ type: LocationPageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: ListQueryDto): Promise<LocationPageDto> {
    return this.listLocations.run(actor, listQuery(query));
  }

  @Get('locations/:id')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'getLocation', summary: 'One location' })
  @ApiOkResponse({ type: LocationDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<LocationDto> {
    return this.getLocation.run(actor, id);
  }

  @Post('locations')
  @Needs('catalogue.write')
  @ApiOperation({ operationId: 'createLocation', summary: 'Enter a location' })
  @ApiCreatedResponse({ type: LocationDto })
  async create(@CurrentActor() actor: Actor, @Body() body: NewLocationDto): Promise<LocationDto> {
    return this.createLocation.run(actor, body);
  }

  @Patch('locations/:id')
  @Needs('catalogue.write')
  @ApiOperation({ operationId: 'changeLocation', summary: 'Change the given fields of a location' })
  @ApiOkResponse({ type: LocationDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: LocationChangesDto,
  ): Promise<LocationDto> {
    return this.changeLocation.run(actor, id, body);
  }
}
