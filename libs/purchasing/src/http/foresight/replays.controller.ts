import { Body, Controller, Get, HttpCode, Param, Post } from '@nestjs/common';
import { ApiAcceptedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { StartReplay } from '../../app/foresight/start-replay.js';
import { ListReplays } from '../../queries/foresight/list-replays.js';
import { NewReplayDto, ReplayDto, ReplayListDto } from './replays.dto.js';

@ApiTags('reorder')
@Controller('reorder/replays')
export class ReplaysController {
  constructor(
    private readonly startReplay: StartReplay,
    private readonly listReplays: ListReplays,
  ) {}

  @Get()
  @Needs('costs.read')
  @ApiOperation({ operationId: 'listReplays', summary: 'Replays of the history, the latest first' })
  @ApiOkResponse({ type: ReplayListDto })
  async list(@CurrentActor() actor: Actor): Promise<ReplayListDto> {
    return this.listReplays.list(actor);
  }

  @Get(':id')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'getReplay',
    summary: 'How far a replay is, and what the computed policy and the old rules made of it',
  })
  @ApiOkResponse({ type: ReplayDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<ReplayDto> {
    return this.listReplays.get(actor, id);
  }

  @Post()
  @HttpCode(202)
  @Needs('ordering.manage')
  @ApiBooking()
  @ApiOperation({
    operationId: 'startReplay',
    summary: 'Replay the history under the computed policy and under the rules it had',
  })
  @ApiAcceptedResponse({ type: ReplayDto })
  async start(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewReplayDto,
  ): Promise<ReplayDto> {
    return this.startReplay.run(actor, key, body);
  }
}
