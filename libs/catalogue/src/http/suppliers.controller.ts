import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { ChangeSupplier } from '../app/change-supplier.js';
import { CreateSupplier } from '../app/create-supplier.js';
import { GetSupplier } from '../app/get-supplier.js';
import { ListSuppliers } from '../app/list-suppliers.js';
import { listQuery } from './list-query.dto.js';
import {
  NewSupplierDto,
  SupplierChangesDto,
  SupplierDto,
  SupplierPageDto,
  SupplierQueryDto,
} from './supplier.dto.js';

@ApiTags('catalogue')
@Controller()
export class SuppliersController {
  constructor(
    private readonly listSuppliers: ListSuppliers,
    private readonly getSupplier: GetSupplier,
    private readonly createSupplier: CreateSupplier,
    private readonly changeSupplier: ChangeSupplier,
  ) {}

  @Get('suppliers')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'listSuppliers', summary: 'Suppliers, by name' })
  @ApiOkResponse({ type: SupplierPageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: SupplierQueryDto,
  ): Promise<SupplierPageDto> {
    return this.listSuppliers.run(actor, listQuery(query));
  }

  @Get('suppliers/:id')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'getSupplier', summary: 'One supplier' })
  @ApiOkResponse({ type: SupplierDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<SupplierDto> {
    return this.getSupplier.run(actor, id);
  }

  @Post('suppliers')
  @Needs('catalogue.write')
  @ApiOperation({ operationId: 'createSupplier', summary: 'Enter a supplier' })
  @ApiCreatedResponse({ type: SupplierDto })
  async create(@CurrentActor() actor: Actor, @Body() body: NewSupplierDto): Promise<SupplierDto> {
    return this.createSupplier.run(actor, body);
  }

  @Patch('suppliers/:id')
  @Needs('catalogue.write')
  @ApiOperation({ operationId: 'changeSupplier', summary: 'Change the given fields of a supplier' })
  @ApiOkResponse({ type: SupplierDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: SupplierChangesDto,
  ): Promise<SupplierDto> {
    return this.changeSupplier.run(actor, id, body);
  }
}
