import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { ListCategories } from '../app/list-categories.js';
import { CategoriesDto } from './consumable.dto.js';

@ApiTags('catalogue')
@Controller()
export class CategoriesController {
  constructor(private readonly listCategories: ListCategories) {}

  @Get('categories')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'listCategories', summary: 'The categories in use' })
  @ApiOkResponse({ type: CategoriesDto })
  async list(@CurrentActor() actor: Actor): Promise<CategoriesDto> {
    return this.listCategories.run(actor);
  }
}
