import { Body, Controller, Get, Param, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { BookedDesk } from '../app/booked-desk.js';
import { BookedList } from '../queries/booked-list.js';
import { BookedUsage } from '../queries/booked-usage.js';
import { BookedDaysUsageDto, BookedUsageQuery, BookedVisitUsageDto } from './booked-usage.dto.js';
import {
  BookedVisitDto,
  BookedVisitPageDto,
  BookedVisitQuery,
  BookVisitDto,
  ChangeBookedVisitDto,
  DropBookedVisitDto,
} from './booked-visits.dto.js';

@ApiTags('booked visits')
@Controller('booked-visits')
export class BookedVisitsController {
  constructor(
    private readonly desk: BookedDesk,
    private readonly list: BookedList,
    private readonly usage: BookedUsage,
  ) {}

  @Get()
  @Needs('visits.read')
  @ApiOperation({ operationId: 'listBookedVisits', summary: 'Booked visits, by day' })
  @ApiOkResponse({ type: BookedVisitPageDto })
  async all(
    @CurrentActor() actor: Actor,
    @Query() query: BookedVisitQuery,
  ): Promise<BookedVisitPageDto> {
    return this.list.run(actor, query);
  }

  @Post()
  @Needs('visits.post')
  @ApiBooking()
  @ApiOperation({
    operationId: 'bookVisit',
    summary: 'Book a visit, or a number of alike ones, for a day to come',
    description:
      'With an external reference that is booked already, that booking is changed instead; a ' +
      'recorded one stays as it is.',
  })
  @ApiCreatedResponse({ type: BookedVisitDto })
  async book(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: BookVisitDto,
  ): Promise<BookedVisitDto> {
    return (await this.desk.book(actor, key, body)).body;
  }

  @Get('usage')
  @Needs('visits.read')
  @ApiOperation({
    operationId: 'getBookedUsage',
    summary: 'What the visits booked for some days will use by their templates, day by day',
  })
  @ApiOkResponse({ type: BookedDaysUsageDto })
  async byDay(
    @CurrentActor() actor: Actor,
    @Query() query: BookedUsageQuery,
  ): Promise<BookedDaysUsageDto> {
    return this.usage.byDay(actor, query);
  }

  @Get(':id')
  @Needs('visits.read')
  @ApiOperation({ operationId: 'getBookedVisit', summary: 'One booked visit' })
  @ApiOkResponse({ type: BookedVisitDto })
  async get(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<BookedVisitDto> {
    return this.list.get(actor, id);
  }

  @Get(':id/usage')
  @Needs('visits.read')
  @ApiOperation({
    operationId: 'getBookedVisitUsage',
    summary: 'What a booked visit will use by its templates',
  })
  @ApiOkResponse({ type: BookedVisitUsageDto })
  async ofVisit(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<BookedVisitUsageDto> {
    return this.usage.ofVisit(actor, id);
  }

  @Put(':id')
  @Needs('visits.post')
  @ApiOperation({
    operationId: 'changeBookedVisit',
    summary: 'Change a booked visit; what is left out has its default',
  })
  @ApiOkResponse({ type: BookedVisitDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: ChangeBookedVisitDto,
  ): Promise<BookedVisitDto> {
    return this.desk.change(actor, id, body);
  }

  @Post(':id/dropping')
  @Needs('visits.post')
  @ApiBooking()
  @ApiOperation({
    operationId: 'dropBookedVisit',
    summary: 'Say that a booked visit will not take place, and why',
  })
  @ApiCreatedResponse({ type: BookedVisitDto })
  async drop(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: DropBookedVisitDto,
  ): Promise<BookedVisitDto> {
    return (await this.desk.drop(actor, key, id, body)).body;
  }
}
