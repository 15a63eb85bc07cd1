import { Body, Controller, Get, HttpCode, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey } from '#lib/platform';
import { NoticeSettingsDesk } from '../app/notice-settings.js';
import { SnoozeAlert } from '../app/snooze-alert.js';
import { TryNotice } from '../app/try-notice.js';
import { ListNotices } from '../queries/list-notices.js';
import {
  NoticePageDto,
  NoticeQueryDto,
  NoticeSettingsChangesDto,
  NoticeSettingsDto,
  TrialDto,
  TrialResultDto,
} from './notices.dto.js';
import { NewSnoozeDto, SnoozeDto } from './snooze.dto.js';

@ApiTags('reorder')
@Controller('reorder')
export class NoticesController {
  constructor(
    private readonly snoozeAlert: SnoozeAlert,
    private readonly settings: NoticeSettingsDesk,
    private readonly listNotices: ListNotices,
    private readonly tryNotice: TryNotice,
  ) {}

  @Post('snoozes')
  @Needs('alerts.snooze')
  @ApiBooking()
  @ApiOperation({ operationId: 'snoozeAlert', summary: 'Put an alert off until a day, or wake it' })
  @ApiCreatedResponse({ type: SnoozeDto })
  async snooze(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewSnoozeDto,
  ): Promise<SnoozeDto> {
    return (await this.snoozeAlert.run(actor, key, body)).body;
  }

  @Get('notice-settings')
  @Needs('practice.manage')
  @ApiOperation({
    operationId: 'getNoticeSettings',
    summary: 'Where messages about alerts go: a daily mail, a signed webhook, or neither',
  })
  @ApiOkResponse({ type: NoticeSettingsDto })
  async get(@CurrentActor() actor: Actor): Promise<NoticeSettingsDto> {
    return this.settings.get(actor);
  }

  @Patch('notice-settings')
  @Needs('practice.manage')
  @ApiOperation({ operationId: 'changeNoticeSettings', summary: 'Turn messages on, off, or round' })
  @ApiOkResponse({ type: NoticeSettingsDto })
  async change(
    @CurrentActor() actor: Actor,
    @Body() body: NoticeSettingsChangesDto,
  ): Promise<NoticeSettingsDto> {
    return this.settings.change(actor, body);
  }

  @Get('notices')
  @Needs('practice.manage')
  @ApiOperation({ operationId: 'listNotices', summary: 'Messages about alerts, and how it went' })
  @ApiOkResponse({ type: NoticePageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: NoticeQueryDto): Promise<NoticePageDto> {
    return this.listNotices.run(actor, query);
  }

  @Post('notices/trial')
  @Needs('practice.manage')
  @HttpCode(200)
  @ApiOperation({ operationId: 'tryNotice', summary: 'Send a trial message and say how it went' })
  @ApiOkResponse({ type: TrialResultDto })
  async trial(@CurrentActor() actor: Actor, @Body() body: TrialDto): Promise<TrialResultDto> {
    return this.tryNotice.run(actor, body.channel);
  }
}
