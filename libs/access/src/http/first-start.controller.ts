import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiOkResponse,
  ApiOperation,
  ApiResponse,
  ApiTags,
} from '@nestjs/swagger';
import { CheckFirstStart } from '../app/check-first-start.js';
import { FirstStart } from '../app/first-start.js';
import { Public } from './decorators.js';
import { FirstStartDto, FirstStartQuery, LinkStateDto, StartedDto } from './first-start.dto.js';

@ApiTags('first start')
@Controller('first-start')
export class FirstStartController {
  constructor(
    private readonly checkFirstStart: CheckFirstStart,
    private readonly firstStart: FirstStart,
  ) {}

  @Get()
  @Public()
  @ApiOperation({
    operationId: 'checkFirstStart',
    summary: 'Whether a first-start link can still be used',
  })
  @ApiOkResponse({ type: LinkStateDto })
  async check(@Query() query: FirstStartQuery): Promise<LinkStateDto> {
    return { good: await this.checkFirstStart.run(query.token) };
  }

  @Post()
  @Public()
  @ApiOperation({
    operationId: 'firstStart',
    summary: 'Open an empty book: its practice and its first owner',
    description: 'Works once, with the link that the service printed when it found the book empty.',
  })
  @ApiCreatedResponse({ type: StartedDto })
  @ApiResponse({ status: 403, description: 'The link was used, or the book is not empty.' })
  async start(@Body() body: FirstStartDto): Promise<StartedDto> {
    const { token, practice, owner } = body;
    const actor = await this.firstStart.run(token, { practice, owner });
    return { practiceId: actor.practiceId, personId: actor.personId };
  }
}
