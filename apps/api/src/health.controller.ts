import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Public } from '#lib/access';
import { OutChoice } from '#lib/platform';

export class HealthDto {
  @OutChoice(['ok'], { example: 'ok' })
  status: 'ok';
}

@ApiTags('service')
@Controller('health')
export class HealthController {
  constructor(private readonly dataSource: DataSource) {}

  @Get()
  @Public()
  @ApiOperation({
    operationId: 'getHealth',
    summary: 'Whether the service and its database can work',
  })
  @ApiOkResponse({ type: HealthDto })
  async get(): Promise<HealthDto> {
    await this.dataSource.query('SELECT 1'); // without an answer, the filter of errors says 503
    return { status: 'ok' };
  }
}
