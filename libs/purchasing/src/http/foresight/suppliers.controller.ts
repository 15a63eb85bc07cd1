import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { CompareSuppliers } from '../../queries/foresight/compare-suppliers.js';
import { SuppliersDto } from './suppliers.dto.js';

@ApiTags('reorder')
@Controller('reorder/suppliers')
export class SuppliersComparisonController {
  constructor(private readonly compareSuppliers: CompareSuppliers) {}

  @Get()
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'compareSuppliers',
    summary: 'Suppliers side by side: price per unit, lead time, reliability, spend',
  })
  @ApiOkResponse({ type: SuppliersDto })
  async list(@CurrentActor() actor: Actor): Promise<SuppliersDto> {
    return this.compareSuppliers.run(actor);
  }
}
