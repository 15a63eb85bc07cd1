import { Controller, Get, Logger } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { Public } from '#lib/access';
import { OutChoice, refuse } from '#lib/platform';

export class HealthDto {
  @OutChoice(['ok'], { example: 'ok' })
  status: 'ok';
}

@ApiTags('service')
@Controller('health')
export class HealthController {
  private readonly log = new Logger('Health');

  constructor(private readonly dataSource: DataSource) {}

  @Get()
  @Public()
  @ApiOperation({
    operationId: 'getHealth',
    summary: 'Whether the service and its database can work',
  })
  @ApiOkResponse({ type: HealthDto })
  async get(): Promise<HealthDto> {
    try {
      await this.dataSource.query('SELECT 1');
    } catch (error) {
      this.log.warn(`The database does not answer: ${String(error)}`);
      throw refuse('busy', 'The database does not answer.');
    }
    return { status: 'ok' };
  }
}
