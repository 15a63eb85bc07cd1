import { Body, Controller, Get, Patch } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { type Actor, ROLES } from '#lib/platform';
import { ChangePractice } from '../app/change-practice.js';
import { practiceOf } from '../app/views.js';
import { PERMISSION_WORDS, PERMISSIONS_BY_ROLE } from '../domain/permissions.js';
import { CurrentActor, Needs, SignedIn } from './decorators.js';
import { ChangePracticeDto, RolesDto } from './practice.dto.js';
import { PracticeDto } from './session.dto.js';

@ApiTags('practice')
@Controller('practice')
export class PracticeController {
  constructor(private readonly changePractice: ChangePractice) {}

  @Get()
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'getPractice', summary: 'The settings of the practice' })
  @ApiOkResponse({ type: PracticeDto })
  get(@CurrentActor() actor: Actor): PracticeDto {
    return practiceOf(actor);
  }

  @Patch()
  @Needs('practice.manage')
  @ApiOperation({
    operationId: 'changePractice',
    summary: 'Change the settings of the practice',
    description: 'The currency cannot be changed: every price in the book is in it.',
  })
  @ApiOkResponse({ type: PracticeDto })
  async change(
    @CurrentActor() actor: Actor,
    @Body() body: ChangePracticeDto,
  ): Promise<PracticeDto> {
    return this.changePractice.run(actor, body);
  }
}

@ApiTags('people')
@Controller('roles')
export class RolesController {
  @Get()
  @SignedIn()
  @ApiOperation({ operationId: 'listRoles', summary: 'What each role may do, in plain words' })
  @ApiOkResponse({ type: RolesDto })
  list(): RolesDto {
    return {
      items: ROLES.map((role) => ({
        role,
        may: PERMISSIONS_BY_ROLE[role].map((permission) => ({
          permission,
          words: PERMISSION_WORDS[permission],
        })),
      })),
    };
  }
}
